package annulus.select;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The test of a rule: true or false on a set of facts. */
public sealed interface Condition {
  /** Whether it holds; a fact without a value never does. */
  boolean holds(Facts facts);

  /** The facts it looks at, in the order written. */
  Set<Fact> facts();

  /** Whether it looks at a class. */
  boolean ofClass();

  /** The single tests that it is made of, in the order written: itself, unless made of others. */
  default List<Condition> leaves() {
    return List.of(this);
  }

  /** How a number is compared; against NaN, no value, nothing holds. */
  enum Comparison {
    ABOVE(true, false),
    AT_LEAST(true, true),
    BELOW(false, false),
    AT_MOST(false, true);

    private final boolean upwards;
    private final boolean withLimit;

    Comparison(boolean upwards, boolean withLimit) {
      this.upwards = upwards;
      this.withLimit = withLimit;
    }

    boolean holds(double a, double b) {
      return a == b ? withLimit : upwards ? a > b : a < b;
    }
  }

  /** A number against a fixed number. */
  record Against(Fact fact, Comparison comparison, double limit) implements Condition {
    @Override
    public boolean holds(Facts facts) {
      return comparison.holds(facts.number(fact), limit);
    }

    @Override
    public Set<Fact> facts() {
      return Set.of(fact);
    }

    @Override
    public boolean ofClass() {
      return fact.ofClass();
    }
  }

  /** A number against another fact. */
  record Between(Fact fact, Comparison comparison, Fact other) implements Condition {
    @Override
    public boolean holds(Facts facts) {
      return comparison.holds(facts.number(fact), facts.number(other));
    }

    @Override
    public Set<Fact> facts() {
      Set<Fact> both = new LinkedHashSet<>();
      both.add(fact);
      both.add(other);
      return both;
    }

    @Override
    public boolean ofClass() {
      return fact.ofClass() || other.ofClass();
    }
  }

  /** A word among some words, or a flag. */
  final class Is implements Condition {
    private final Fact fact;
    private final Set<Object> values;

    /** The words as the constants of an enum are named. */
    private final Set<String> names;

    /**
     * @param fact a word or a flag
     * @param values the words, in lower case with dashes, or the flags
     */
    public Is(Fact fact, Set<Object> values) {
      this.fact = fact;
      this.values = Set.copyOf(values);
      this.names = names(values);
    }

    private static Set<String> names(Set<Object> values) {
      Set<String> names = new HashSet<>();
      for (Object value : values) {
        String name = value.toString().toUpperCase(Locale.ROOT).replace('-', '_');
        if (Facts.word(name).equals(value)) {
          names.add(name);
        }
      }
      return Set.copyOf(names);
    }

    public Fact fact() {
      return fact;
    }

    public Set<Object> values() {
      return values;
    }

    /** What it holds on: names of an enum's constants, and flags. */
    Set<Object> found() {
      Set<Object> found = new HashSet<>(names);
      for (Object value : values) {
        if (!(value instanceof String)) {
          found.add(value);
        }
      }
      return found;
    }

    @Override
    public boolean holds(Facts facts) {
      Object word = facts.word(fact);
      return word instanceof Enum<?> constant
          ? names.contains(constant.name())
          : word != null && values.contains(word);
    }

    @Override
    public Set<Fact> facts() {
      return Set.of(fact);
    }

    @Override
    public boolean ofClass() {
      return fact.ofClass();
    }

    @Override
    public boolean equals(Object other) {
      return other instanceof Is is && fact == is.fact && values.equals(is.values);
    }

    @Override
    public int hashCode() {
      return 31 * fact.hashCode() + values.hashCode();
    }

    @Override
    public String toString() {
      return fact + " is " + values;
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
      return ofAll(parts);
    }

    @Override
    public boolean ofClass() {
      return anyOfClass(parts);
    }

    @Override
    public List<Condition> leaves() {
      return leavesOf(parts);
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
      return ofAll(parts);
    }

    @Override
    public boolean ofClass() {
      return anyOfClass(parts);
    }

    @Override
    public List<Condition> leaves() {
      return leavesOf(parts);
    }
  }

  private static Set<Fact> ofAll(List<Condition> parts) {
    Set<Fact> all = new LinkedHashSet<>();
    for (Condition part : parts) {
      all.addAll(part.facts());
    }
    return all;
  }

  private static boolean anyOfClass(List<Condition> parts) {
    for (Condition part : parts) {
      if (part.ofClass()) {
        return true;
      }
    }
    return false;
  }

  private static List<Condition> leavesOf(List<Condition> parts) {
    List<Condition> leaves = new ArrayList<>();
    for (Condition part : parts) {
      leaves.addAll(part.leaves());
    }
    return leaves;
  }
}
