package annulus.advice;

import annulus.catalog.CompoundClass;
import annulus.select.ClassVerdict;
import annulus.select.Fact;
import annulus.select.Facts;
import java.util.IdentityHashMap;
import java.util.Optional;

/**
 * What the rules are asked of one order without primer, made ready for the benchmarks.
 *
 * @param joint facts of the joint
 * @param classes facts of each class together with those of the joint; at hand by the class itself,
 *     whose hash would be the work of all its figures
 */
public record RuleInputs(Facts joint, IdentityHashMap<CompoundClass, Facts> classes) {
  /** The facts of an order that was advised on. */
  public static RuleInputs of(Advice advice, Knowledge knowledge) {
    FitBelief fit =
        FitBelief.of(advice.gap().gap(), knowledge.catalog().policy(), advice.order().confidence());
    Facts joint =
        new JointFacts(advice.order(), advice.gap(), fit, advice.press()).joint(Optional.empty());
    IdentityHashMap<CompoundClass, Facts> classes = new IdentityHashMap<>();
    for (ClassVerdict verdict : advice.table()) {
      classes.put(verdict.compound(), joint.with(ofClass(verdict, advice.order())));
    }
    return new RuleInputs(joint, classes);
  }

  private static Facts ofClass(ClassVerdict verdict, JointOrder order) {
    CompoundClass compound = verdict.compound();
    return Facts.builder()
        .number(Fact.CLASS_GAP_LOW, compound.gapUm().low())
        .number(Fact.CLASS_GAP_HIGH, compound.gapUm().high())
        .number(Fact.CLASS_COVERS, verdict.covers())
        .number(Fact.CLASS_SERVICE_LOW, compound.serviceC().low())
        .number(Fact.CLASS_SERVICE_HIGH, compound.serviceC().high())
        .number(Fact.CLASS_MINIMUM, compound.cure().minimumC())
        .number(Fact.CLASS_CAUTION, compound.cure().cautionBelowC())
        .number(Fact.CLASS_HOT_FRACTION, compound.hotFraction(order.service().high()).likely())
        .word(Fact.CLASS_PERMANENCE, compound.permanence())
        .word(Fact.CLASS_ROLE, compound.role())
        .build();
  }
}
