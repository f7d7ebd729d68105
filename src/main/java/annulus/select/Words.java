package annulus.select;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** All tests that rules make of one word or flag: a look at its value answers them all. */
final class Words {
  private final Fact fact;

  /** Rules that make a test of it: silent where it has no value, or one that no test knows. */
  private final Bits asking;

  /** Names of constants, interned as those of every enum are, and flags. */
  private final Object[] values;

  /** By the place of a value: the rules that it keeps silent. */
  private final Bits[] silent;

  /**
   * @param fact a word or a flag
   * @param tests every test of it
   * @param rules how many rules there are
   */
  Words(Fact fact, List<Asked> tests, int rules) {
    this.fact = fact;
    this.asking = new Bits(rules);
    List<Object> known = new ArrayList<>();
    for (Asked test : tests) {
      asking.set(test.rule());
      for (Object value : test.holdsOn()) {
        if (!known.contains(value)) {
          known.add(value);
        }
      }
    }
    this.values = new Object[known.size()];
    this.silent = new Bits[known.size()];
    for (int i = 0; i < values.length; i++) {
      Object value = known.get(i);
      values[i] = value instanceof String name ? name.intern() : value;
      silent[i] = silent(value, tests, rules);
    }
  }

  /**
   * A test of the word.
   *
   * @param rule the place of the rule that makes it
   * @param holdsOn names of constants, or flags
   */
  record Asked(int rule, Set<Object> holdsOn) {}

  private static Bits silent(Object value, List<Asked> tests, int rules) {
    Bits silent = new Bits(rules);
    for (Asked test : tests) {
      if (!test.holdsOn().contains(value)) {
        silent.set(test.rule());
      }
    }
    return silent;
  }

  /** Takes away the rules that a test of the word keeps silent. */
  void silence(Facts facts, Bits speaking) {
    speaking.removeAll(silenced(facts.word(fact)));
  }

  private Bits silenced(Object word) {
    Object value = word instanceof Enum<?> constant ? constant.name() : word;
    for (int i = 0; i < values.length; i++) {
      if (values[i] == value) { // both interned, or both one of the two flags
        return silent[i];
      }
    }
    return asking;
  }
}
