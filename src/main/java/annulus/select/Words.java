package annulus.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** All tests that rules make of one word or flag: a look at its value answers them all. */
final class Words {
  private final Fact fact;
  private final int size;
  private final List<Object> values = new ArrayList<>();
  private final List<Bits> tests = new ArrayList<>();

  /**
   * @param fact a word or a flag
   * @param size how many tests there are of all facts together
   */
  Words(Fact fact, int size) {
    this.fact = fact;
    this.size = size;
  }

  Fact fact() {
    return fact;
  }

  /** A test with its number that holds on each of these names of constants, or flags. */
  void add(int test, Set<Object> holdsOn) {
    for (Object value : holdsOn) {
      int at = values.indexOf(value);
      if (at < 0) {
        at = values.size();
        values.add(value);
        tests.add(new Bits(size));
      }
      tests.get(at).set(test);
    }
  }

  /** Adds the tests that hold. */
  void addHolding(Facts facts, Bits to) {
    Object word = facts.word(fact);
    if (word == null) {
      return;
    }
    Object value = word instanceof Enum<?> constant ? constant.name() : word;
    int at = values.indexOf(value);
    if (at >= 0) {
      to.addAll(tests.get(at));
    }
  }
}
