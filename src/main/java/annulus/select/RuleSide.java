package annulus.select;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

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
   * @param asked the tests of a rule on this side, all of which must hold
   */
  RuleSide(List<Rule> rules, Function<Rule, List<Condition>> asked) {
    tests = new Tests(rules.stream().map(asked).flatMap(List::stream).toList());
    always = new Bits(rules.size());
    alone = new Bits[tests.size()];
    List<Several> together = new ArrayList<>();
    for (int i = 0; i < rules.size(); i++) {
      List<Condition> all = asked.apply(rules.get(i));
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
    several = together.toArray(Several[]::new);
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
