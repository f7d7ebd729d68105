package annulus.select;

import java.util.ArrayList;
import java.util.List;

/**
 * What rules ask on one side, that of the joint or that of the class: a rule that makes a single
 * test there speaks with it, one that makes several speaks when all hold.
 */
final class RuleSide {
  private final Tests tests;

  /** Rules without a test on this side: it never keeps them silent. */
  private final Bits always;

  /** By the number of a test: the rules that make no other one on this side. */
  private final Bits[] alone;

  private final Several[] several;

  private record Several(int rule, Bits tests) {}

  /**
   * @param rules the rules, known by their places in this list
   * @param ofClass whether this is the side of the class
   */
  RuleSide(List<Rule> rules, boolean ofClass) {
    List<Condition> asked = new ArrayList<>();
    for (Rule rule : rules) {
      asked.addAll(rule.parts(ofClass));
    }
    tests = new Tests(asked);
    always = new Bits(rules.size());
    alone = new Bits[tests.size()];
    List<Several> together = new ArrayList<>();
    for (int i = 0; i < rules.size(); i++) {
      List<Condition> all = rules.get(i).parts(ofClass);
      if (all.isEmpty()) {
        always.set(i);
      } else if (all.size() == 1) {
        int only = tests.numberOf(all.get(0));
        alone[only] = alone[only] == null ? new Bits(rules.size()) : alone[only];
        alone[only].set(i);
      } else {
        together.add(new Several(i, tests.bits(all)));
      }
    }
    several = together.toArray(new Several[0]);
  }

  /** The places of the rules that these facts do not keep silent. */
  Bits speaking(Facts facts) {
    Bits holding = tests.holding(facts);
    Bits speaking = always.copy();
    for (int test = holding.next(0); test >= 0; test = holding.next(test + 1)) {
      if (alone[test] != null) {
        speaking.addAll(alone[test]);
      }
    }
    for (Several s : several) {
      if (holding.holdsAll(s.tests())) {
        speaking.set(s.rule());
      }
    }
    return speaking;
  }
}
