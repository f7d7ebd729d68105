package annulus.select;

import annulus.select.Condition.Against;
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
  private final AnyOf[] anyOf;
  private final Other[] others;

  private record Limit(Against test, int number) {}

  private record Pair(Between test, int number) {}

  private record AnyOf(Bits tests, int number) {}

  private record Other(Condition test, int number) {}

  Tests(Collection<Condition> all) {
    for (Condition test : all) {
      number(test);
    }
    Map<Fact, Words> byFact = new EnumMap<>(Fact.class);
    List<Limit> limited = new ArrayList<>();
    List<Pair> paired = new ArrayList<>();
    List<AnyOf> any = new ArrayList<>();
    List<Other> rest = new ArrayList<>();
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
      } else if (isOfSingles(test)) {
        any.add(new AnyOf(bits(((Any) test).parts()), number));
      } else {
        rest.add(new Other(test, number));
      }
    }
    words = byFact.values().toArray(new Words[0]);
    limits = limited.toArray(new Limit[0]);
    pairs = paired.toArray(new Pair[0]);
    anyOf = any.toArray(new AnyOf[0]);
    others = rest.toArray(new Other[0]);
  }

  private void number(Condition test) {
    if (isOfSingles(test)) {
      for (Condition part : ((Any) test).parts()) {
        number(part);
      }
    }
    numbers.putIfAbsent(test, numbers.size());
  }

  private static boolean isOfSingles(Condition test) {
    if (!(test instanceof Any any)) {
      return false;
    }
    for (Condition part : any.parts()) {
      if (!isSingle(part)) {
        return false;
      }
    }
    return true;
  }

  private static boolean isSingle(Condition test) {
    return test instanceof Is || test instanceof Against || test instanceof Between;
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
    addComposed(facts, holding);
    return holding;
  }

  private void addComposed(Facts facts, Bits holding) {
    for (AnyOf any : anyOf) {
      if (holding.holdsAny(any.tests())) {
        holding.set(any.number());
      }
    }
    for (Other other : others) {
      if (other.test().holds(facts)) {
        holding.set(other.number());
      }
    }
  }
}
