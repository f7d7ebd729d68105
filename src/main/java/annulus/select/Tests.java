package annulus.select;

import annulus.select.Condition.Against;
import annulus.select.Condition.All;
import annulus.select.Condition.Any;
import annulus.select.Condition.Between;
import annulus.select.Condition.Is;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The tests of many rules, each once and with a number, made ready to be tried together on a set of
 * facts. A word is looked at once for all tests of it.
 */
final class Tests {
  private final Map<Condition, Integer> numbers = new LinkedHashMap<>();
  private final Words[] words;
  private final Limit[] limits;
  private final Pair[] pairs;

  /** In an order in which the parts of each stand before it. */
  private final Composed[] composed;

  private record Limit(Against test, int number) {}

  private record Pair(Between test, int number) {}

  /** A test made of others: all of them, or any. */
  private record Composed(boolean all, Bits parts, int number) {
    boolean holds(Bits holding) {
      return all ? holding.holdsAll(parts) : holding.holdsAny(parts);
    }
  }

  Tests(Collection<Condition> all) {
    for (Condition test : all) {
      number(test);
    }
    Map<Fact, Words> byFact = new EnumMap<>(Fact.class);
    List<Limit> limited = new ArrayList<>();
    List<Pair> paired = new ArrayList<>();
    List<Composed> made = new ArrayList<>();
    for (Map.Entry<Condition, Integer> entry : numbers.entrySet()) {
      Condition test = entry.getKey();
      int number = entry.getValue();
      if (test instanceof Is is) {
        byFact.putIfAbsent(is.fact(), new Words(is.fact(), size()));
        byFact.get(is.fact()).add(number, is.found());
      } else if (test instanceof Against against) {
        limited.add(new Limit(against, number));
      } else if (test instanceof Between between) {
        paired.add(new Pair(between, number));
      } else {
        made.add(new Composed(test instanceof All, bits(parts(test)), number));
      }
    }
    words = byFact.values().toArray(new Words[0]);
    limits = limited.toArray(new Limit[0]);
    pairs = paired.toArray(new Pair[0]);
    composed = made.toArray(new Composed[0]);
  }

  private void number(Condition test) {
    for (Condition part : parts(test)) {
      number(part);
    }
    numbers.putIfAbsent(test, numbers.size());
  }

  private static List<Condition> parts(Condition test) {
    if (test instanceof All all) {
      return all.parts();
    }
    return test instanceof Any any ? any.parts() : List.of();
  }

  int size() {
    return numbers.size();
  }

  int numberOf(Condition test) {
    return numbers.get(test);
  }

  /** The numbers of some of these tests. */
  Bits bits(Collection<Condition> tests) {
    Bits bits = new Bits(size());
    for (Condition test : tests) {
      bits.set(numberOf(test));
    }
    return bits;
  }

  /** The tests that hold. */
  Bits holding(Facts facts) {
    Bits holding = new Bits(size());
    for (Words word : words) {
      word.addHolding(facts, holding);
    }
    for (Limit limit : limits) {
      if (limit.test().holds(facts)) {
        holding.set(limit.number());
      }
    }
    for (Pair pair : pairs) {
      if (pair.test().holds(facts)) {
        holding.set(pair.number());
      }
    }
    for (Composed test : composed) {
      if (test.holds(holding)) {
        holding.set(test.number());
      }
    }
    return holding;
  }
}
