package annulus.advice;

import annulus.catalog.CompoundClass;
import annulus.select.Facts;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * What the rules are asked of one order without primer, made ready for the benchmarks.
 *
 * @param joint facts of the joint
 * @param classes facts of each class
 */
public record RuleInputs(Facts joint, Map<CompoundClass, Facts> classes) {
  /** The facts of an order that was advised on. */
  public static RuleInputs of(Advice advice, Knowledge knowledge) {
    JointFacts facts =
        new JointFacts(advice.order(), knowledge.catalog(), advice.gap(), advice.press());
    Map<CompoundClass, Facts> classes = new LinkedHashMap<>();
    for (CompoundClass compound : knowledge.catalog().compounds().values()) {
      classes.put(compound, facts.ofClass(compound, Optional.empty()));
    }
    return new RuleInputs(facts.joint(Optional.empty()), classes);
  }
}
