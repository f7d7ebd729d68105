package annulus.advice;

import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.CompoundClass;
import annulus.catalog.Material;
import annulus.fit.Gap;
import annulus.hold.BondHold;
import annulus.hold.FrictionHold;
import annulus.hold.HoldFactor;
import annulus.hold.HoldFactor.Kind;
import annulus.hold.HybridHold;
import annulus.hold.Load;
import annulus.hold.LoadCheck;
import annulus.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the bond of the chosen class carries, against the load. */
final class HoldWork {
  private static final Estimate WHOLE = Estimate.exactly(1);

  private final JointOrder order;
  private final Knowledge knowledge;
  private final CompoundClass compound;
  private final Gap gap;
  private final Optional<PlannedPrimer> primer;

  HoldWork(
      JointOrder order,
      Knowledge knowledge,
      CompoundClass compound,
      Gap gap,
      Optional<PlannedPrimer> primer) {
    this.order = order;
    this.knowledge = knowledge;
    this.compound = compound;
    this.gap = gap;
    this.primer = primer;
  }

  /** Laminates and plastics get no figure: none would be honest. */
  static boolean isComputable(JointOrder order) {
    return isIsotropic(order.bore().material()) && isIsotropic(order.part().material());
  }

  private static boolean isIsotropic(Material material) {
    return material.isMetal();
  }

  HoldReport report() {
    Optional<Load> load = load();
    if (!isComputable(order)) {
      Estimate none = Estimate.exactly(0);
      OptionalDouble never =
          load.isPresent() ? OptionalDouble.of(Double.POSITIVE_INFINITY) : OptionalDouble.empty();
      return new HoldReport(none, none, none, wanted(load), never);
    }
    HybridHold cold = joint(WHOLE);
    HybridHold hot = joint(compound.hotFraction(order.service().high()));
    OptionalDouble fraction = OptionalDouble.empty();
    if (load.isPresent()) {
      OptionalDouble needed = new LoadCheck(hot, load.get()).strengthFractionNeeded();
      fraction = OptionalDouble.of(needed.orElse(Double.POSITIVE_INFINITY));
    }
    return new HoldReport(cold.axialN(), hot.axialN(), hot.torqueNm(), wanted(load), fraction);
  }

  private OptionalDouble wanted(Optional<Load> load) {
    return load.map(l -> OptionalDouble.of(l.requiredN(gap.nominalMm())))
        .orElse(OptionalDouble.empty());
  }

  private Optional<Load> load() {
    double policy = knowledge.catalog().release().get(order.consequence()).safetyFactor();
    return order
        .load()
        .map(l -> new Load(l.axialN(), l.torqueNm(), l.safetyFactor().orElse(policy)));
  }

  private HybridHold joint(Estimate hotFraction) {
    List<HoldFactor> factors = new ArrayList<>();
    factors.add(new HoldFactor(Kind.HOT_STRENGTH, hotFraction));
    double upper = gap.upperUm(order.confidence());
    factors.add(
        knowledge.hold().gapFactor(upper).orElse(new HoldFactor(Kind.GAP, Estimate.exactly(0))));
    factors.add(
        knowledge
            .hold()
            .surfaceFactor(order.bore().material().bondFace(), order.part().material().bondFace()));
    factors.add(new HoldFactor(Kind.FINISH, finish()));
    primer.ifPresent(p -> factors.add(new HoldFactor(Kind.PRIMER, p.primer().strengthFactor())));
    factors.add(knowledge.hold().engagementFactor(order.engagementMm(), gap.nominalMm()));
    order.load().ifPresent(l -> factors.add(knowledge.hold().dynamicFactor(l.repeats())));
    BondHold bond =
        new BondHold(gap.nominalMm(), order.engagementMm(), compound.strengthMPa(), factors);
    return new HybridHold(bond, FrictionHold.none(), knowledge.hold().limits());
  }

  /** The weaker face rules; a factor never lifts the strength above the specimen's. */
  private Estimate finish() {
    Estimate a = order.bore().finish().strengthFactor();
    Estimate b = order.part().finish().strengthFactor();
    return new Estimate(
        Math.min(1, Math.min(a.low(), b.low())),
        Math.min(1, Math.min(a.likely(), b.likely())),
        Math.min(1, Math.min(a.high(), b.high())));
  }
}
