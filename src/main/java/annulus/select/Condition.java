package annulus.select;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** The test of a rule: true or false on a set of facts. */
public sealed interface Condition {
  /** Whether it holds; a fact without a value never does. */
  boolean holds(Facts facts);

  /** The facts it looks at, in the order written. */
  Set<Fact> facts();

  /** How a number is compared. */
  enum Comparison {
    ABOVE,
    AT_LEAST,
    BELOW,
    AT_MOST;

    boolean holds(double a, double b) {
      return switch (this) {
        case ABOVE -> a > b;
        case AT_LEAST -> a >= b;
        case BELOW -> a < b;
        case AT_MOST -> a <= b;
      };
    }
  }

  /** A number against a fixed number. */
  record Against(Fact fact, Comparison comparison, double limit) implements Condition {
    @Override
    public boolean holds(Facts facts) {
      return facts.value(fact) instanceof Double d && comparison.holds(d, limit);
    }

    @Override
    public Set<Fact> facts() {
      return Set.of(fact);
    }
  }

  /** A number against another fact. */
  record Between(Fact fact, Comparison comparison, Fact other) implements Condition {
    @Override
    public boolean holds(Facts facts) {
      return facts.value(fact) instanceof Double a
          && facts.value(other) instanceof Double b
          && comparison.holds(a, b);
    }

    @Override
    public Set<Fact> facts() {
      return ordered(List.of(Set.of(fact), Set.of(other)));
    }
  }

  /** A word among some words, or a flag. */
  record Is(Fact fact, Set<Object> values) implements Condition {
    public Is {
      values = Set.copyOf(values);
    }

    @Override
    public boolean holds(Facts facts) {
      Object value = facts.value(fact);
      return value != null && values.contains(value);
    }

    @Override
    public Set<Fact> facts() {
      return Set.of(fact);
    }
  }

  /** All parts hold. */
  record All(List<Condition> parts) implements Condition {
    public All {
      parts = List.copyOf(parts);
    }

    @Override
    public boolean holds(Facts facts) {
      for (Condition part : parts) {
        if (!part.holds(facts)) {
          return false;
        }
      }
      return true;
    }

    @Override
    public Set<Fact> facts() {
      return ordered(parts.stream().map(Condition::facts).toList());
    }
  }

  /** At least one part holds. */
  record Any(List<Condition> parts) implements Condition {
    public Any {
      parts = List.copyOf(parts);
    }

    @Override
    public boolean holds(Facts facts) {
      for (Condition part : parts) {
        if (part.holds(facts)) {
          return true;
        }
      }
      return false;
    }

    @Override
    public Set<Fact> facts() {
      return ordered(parts.stream().map(Condition::facts).toList());
    }
  }

  private static Set<Fact> ordered(List<Set<Fact>> sets) {
    Set<Fact> all = new LinkedHashSet<>();
    sets.forEach(all::addAll);
    return all;
  }
}
