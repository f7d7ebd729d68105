package annulus.advice;

import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.CompoundClass;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.catalog.Primer;
import annulus.fit.Gap;
import annulus.hold.BondHold;
import annulus.hold.FactorCurve;
import annulus.hold.FrictionHold;
import annulus.hold.HoldFactor;
import annulus.hold.HoldFactor.Kind;
import annulus.hold.HotStrength;
import annulus.hold.HybridHold;
import annulus.hold.Load;
import annulus.hold.LoadCheck;
import annulus.hold.Removal;
import annulus.hold.Tool;
import annulus.quantity.Estimate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** What the bond of the chosen class carries against the load, and what undoes it. */
final class HoldWork {
  private static final Estimate WHOLE = Estimate.exactly(1);
  private static final Estimate NONE = Estimate.exactly(0);

  private final JointOrder order;
  private final Knowledge knowledge;
  private final CompoundClass compound;
  private final Gap gap;
  private final Optional<PlannedPrimer> primer;
  private final List<HoldFactor> whenCold;

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
    this.whenCold = computable() ? whenCold(gap.limits(order.confidence())) : List.of();
  }

  /** Laminates and plastics get no figure: none would be honest. */
  private boolean computable() {
    return order.bore().material().isMetal() && order.part().material().isMetal();
  }

  HoldReport report() {
    Optional<Load> load = load(order, knowledge);
    if (!computable()) {
      return withoutFigures(load);
    }
    HybridHold cold = joint(WHOLE);
    HybridHold hot = joint(hotFraction());
    Optional<LoadCheck> check = load.map(l -> new LoadCheck(hot, l));
    Removal removal = removal(cold);
    return new HoldReport(
        true,
        cold.axialN(),
        hot.axialN(),
        hot.torqueNm(),
        Optional.empty(),
        wanted(load),
        check
            .map(
                c -> OptionalDouble.of(c.strengthFractionNeeded().orElse(Double.POSITIVE_INFINITY)))
            .orElse(OptionalDouble.empty()),
        check.flatMap(LoadCheck::safety),
        hot.bond().factors(),
        removal.breakLooseN(),
        removal.breakLooseTorqueNm(),
        removal.ways(tools()),
        List.of());
  }

  /** Nothing can be computed: a load is then never covered, whatever the cure. */
  private HoldReport withoutFigures(Optional<Load> load) {
    HybridHold nothing =
        new HybridHold(
            new BondHold(gap.nominalMm(), order.engagementMm(), NONE, List.of()),
            new FrictionHold(NONE, NONE, false),
            knowledge.hold().limits());
    return new HoldReport(
        false,
        NONE,
        NONE,
        NONE,
        Optional.empty(),
        wanted(load),
        load.isPresent() ? OptionalDouble.of(Double.POSITIVE_INFINITY) : OptionalDouble.empty(),
        Optional.empty(),
        List.of(),
        NONE,
        NONE,
        removal(nothing).ways(tools()),
        List.of());
  }

  /** Hold at a share of the strength, hot. */
  Optional<Estimate> atFraction(double fraction) {
    return computable()
        ? Optional.of(joint(hotFraction()).atStrength(Math.min(1, fraction)).axialN())
        : Optional.empty();
  }

  private Estimate hotFraction() {
    return compound.hotFraction(order.service().high());
  }

  private OptionalDouble wanted(Optional<Load> load) {
    return load.map(l -> OptionalDouble.of(l.requiredN(gap.nominalMm())))
        .orElse(OptionalDouble.empty());
  }

  /** The order's load with its own safety factor, or that of the consequence. */
  static Optional<Load> load(JointOrder order, Knowledge knowledge) {
    double policy = knowledge.catalog().release().get(order.consequence()).safetyFactor();
    return order
        .load()
        .map(l -> new Load(l.axialN(), l.torqueNm(), l.safetyFactor().orElse(policy)));
  }

  private HybridHold joint(Estimate hotFraction) {
    List<HoldFactor> factors = new ArrayList<>(whenCold.size() + 1);
    factors.add(new HoldFactor(Kind.HOT_STRENGTH, hotFraction));
    factors.addAll(whenCold);
    BondHold bond =
        new BondHold(gap.nominalMm(), order.engagementMm(), compound.strengthMPa(), factors);
    return new HybridHold(bond, FrictionHold.none(), knowledge.hold().limits());
  }

  /** All factors but that of the service temperature. */
  private List<HoldFactor> whenCold(Gap.Limits limits) {
    List<HoldFactor> factors = new ArrayList<>();
    factors.add(
        knowledge
            .hold()
            .gapFactor(limits.lowerUm(), limits.upperUm())
            .orElse(new HoldFactor(Kind.GAP, NONE)));
    factors.add(
        knowledge
            .hold()
            .surfaceFactor(order.bore().material().bondFace(), order.part().material().bondFace()));
    factors.add(new HoldFactor(Kind.FINISH, finish()));
    primerOnFace().ifPresent(p -> factors.add(new HoldFactor(Kind.PRIMER, p.strengthFactor())));
    factors.add(knowledge.hold().engagementFactor(order.engagementMm(), gap.nominalMm()));
    order.load().ifPresent(l -> factors.add(knowledge.hold().dynamicFactor(l.repeats())));
    return factors;
  }

  /** A primer too old to be counted on for speed is still there, and still costs strength. */
  private Optional<Primer> primerOnFace() {
    return primer.map(PlannedPrimer::primer).or(() -> order.primer().used());
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

  private Removal removal(HybridHold cold) {
    List<FactorCurve.Point> points = new ArrayList<>();
    // Colder than the first point it is as strong as there: so said, one point is a curve too.
    CompoundClass.HotPoint first = compound.hotStrength().get(0);
    points.add(new FactorCurve.Point(first.celsius() - 1, first.fraction(), compound.provenance()));
    compound
        .hotStrength()
        .forEach(
            p ->
                points.add(
                    new FactorCurve.Point(p.celsius(), p.fraction(), compound.provenance())));
    double limit =
        Math.min(order.bore().material().heatLimitC(), order.part().material().heatLimitC());
    return new Removal(
        cold,
        new HotStrength(new FactorCurve(points)),
        surroundings(),
        new Removal.Limits(
            OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(limit)));
  }

  private Set<Removal.Surrounding> surroundings() {
    Set<Removal.Surrounding> near = EnumSet.noneOf(Removal.Surrounding.class);
    for (Member member : List.of(order.bore(), order.part())) {
      addIf(near, Removal.Surrounding.LAMINATE, member.material().kind() == Material.Kind.LAMINATE);
      addIf(near, Removal.Surrounding.PLASTIC, member.material().kind() == Material.Kind.PLASTIC);
      addIf(
          near,
          Removal.Surrounding.BRITTLE,
          member.material().kind() == Material.Kind.BRITTLE_METAL);
      addIf(near, Removal.Surrounding.PAINT, member.finish().film() == Finish.Film.COAT);
    }
    addIf(near, Removal.Surrounding.SEAL, order.surroundings().sealNear());
    addIf(near, Removal.Surrounding.BATTERY, order.surroundings().electronicsNear());
    return near;
  }

  private static void addIf(
      Set<Removal.Surrounding> near, Removal.Surrounding what, boolean condition) {
    if (condition) {
      near.add(what);
    }
  }

  private List<Tool> tools() {
    var policy = knowledge.catalog().policy();
    return List.of(
        new Tool.Press(policy.value("tool-press-n")),
        new Tool.Twist(policy.value("tool-wrench-nm")),
        new Tool.Drift(),
        new Tool.LocalHeat(compound.removalHeatC().likely()));
  }
}
