package annulus.select;

import annulus.select.Condition.Against;
import annulus.select.Condition.Between;
import annulus.select.Condition.Comparison;
import annulus.select.Condition.Is;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What rules ask on one side, that of the joint or that of the class. Every test that fails keeps
 * the rules silent that make it; a test that several rules make is tried once.
 */
final class RuleSide {
  private final Words[] words;
  private final Limit[] limits;
  private final Pair[] pairs;
  private final Composed[] composed;

  /** A number within a range; outside, or without a value, its rules are silent. */
  private record Limit(Fact fact, double low, double high, Bits rules) {
    static Limit of(Against a, Bits rules) {
      double none = Double.POSITIVE_INFINITY;
      return switch (a.comparison()) {
        case ABOVE -> new Limit(a.fact(), Math.nextUp(a.limit()), none, rules);
        case AT_LEAST -> new Limit(a.fact(), a.limit(), none, rules);
        case BELOW -> new Limit(a.fact(), -none, Math.nextDown(a.limit()), rules);
        case AT_MOST -> new Limit(a.fact(), -none, a.limit(), rules);
      };
    }

    boolean holds(Facts facts) {
      double number = facts.number(fact);
      return number >= low && number <= high;
    }
  }

  /** A number below another, or not above it; else, or without a value, its rules are silent. */
  private record Pair(Fact less, Fact more, boolean strict, Bits rules) {
    static Pair of(Between b, Bits rules) {
      boolean strict = b.comparison() == Comparison.ABOVE || b.comparison() == Comparison.BELOW;
      return b.comparison() == Comparison.ABOVE || b.comparison() == Comparison.AT_LEAST
          ? new Pair(b.other(), b.fact(), strict, rules)
          : new Pair(b.fact(), b.other(), strict, rules);
    }

    boolean holds(Facts facts) {
      double low = facts.number(less);
      double high = facts.number(more);
      return strict ? low < high : low <= high;
    }
  }

  /** A test made of others; tried last, and only where its rule is not silent already. */
  private record Composed(int rule, Condition test) {}

  /**
   * @param rules the rules, known by their places in this list
   * @param ofClass whether this is the side of the class
   */
  RuleSide(List<Rule> rules, boolean ofClass) {
    Map<Fact, List<Words.Asked>> asked = new EnumMap<>(Fact.class);
    Map<Condition, Bits> numbers = new LinkedHashMap<>();
    List<Composed> made = new ArrayList<>();
    for (int i = 0; i < rules.size(); i++) {
      for (Condition test : rules.get(i).parts(ofClass)) {
        if (test instanceof Is is) {
          asked
              .computeIfAbsent(is.fact(), f -> new ArrayList<>())
              .add(new Words.Asked(i, is.found()));
        } else if (test instanceof Against || test instanceof Between) {
          numbers.computeIfAbsent(test, t -> new Bits(rules.size())).set(i);
        } else {
          made.add(new Composed(i, test));
        }
      }
    }
    List<Words> looks = new ArrayList<>();
    asked.forEach((fact, tests) -> looks.add(new Words(fact, tests, rules.size())));
    List<Limit> limited = new ArrayList<>();
    List<Pair> paired = new ArrayList<>();
    numbers.forEach(
        (test, bits) -> {
          if (test instanceof Against against) {
            limited.add(Limit.of(against, bits));
          } else if (test instanceof Between between) {
            paired.add(Pair.of(between, bits));
          }
        });
    words = looks.toArray(new Words[0]);
    limits = limited.toArray(new Limit[0]);
    pairs = paired.toArray(new Pair[0]);
    composed = made.toArray(new Composed[0]);
  }

  /**
   * Takes away the rules that these facts keep silent.
   *
   * @param speaking places of the rules that may still speak
   */
  void silence(Facts facts, Bits speaking) {
    for (Words word : words) {
      word.silence(facts, speaking);
    }
    for (Limit limit : limits) {
      if (!limit.holds(facts)) {
        speaking.removeAll(limit.rules());
      }
    }
    for (Pair pair : pairs) {
      if (!pair.holds(facts)) {
        speaking.removeAll(pair.rules());
      }
    }
    for (Composed test : composed) {
      if (speaking.holds(test.rule()) && !test.test().holds(facts)) {
        speaking.remove(test.rule());
      }
    }
  }
}
