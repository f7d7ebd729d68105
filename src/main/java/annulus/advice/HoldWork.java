package annulus.advice;

import annulus.advice.Advice.GapFinding;
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
import java.util.function.Function;

/** What the bond of the chosen class carries against the load with the grip, and what undoes it. */
final class HoldWork {
  private static final Estimate WHOLE = Estimate.exactly(1);
  private static final Estimate NONE = Estimate.exactly(0);

  private final JointOrder order;
  private final Knowledge knowledge;
  private final CompoundClass compound;
  private final GapFinding found;
  private final Optional<PlannedPrimer> primer;
  private final Optional<PressReport> press;
  private final List<HoldFactor> whenCold;
  private final Optional<Load> load;
  private final HybridHold hot;
  private final Optional<LoadCheck> check;
  private final OptionalDouble fractionWanted;

  /**
   * @param press what the joint does by pressing; empty where its parts do not press at all
   */
  HoldWork(
      JointOrder order,
      Knowledge knowledge,
      CompoundClass compound,
      GapFinding found,
      Optional<PlannedPrimer> primer,
      Optional<PressReport> press) {
    this.order = order;
    this.knowledge = knowledge;
    this.compound = compound;
    this.found = found;
    this.primer = primer;
    this.press = press;
    this.load = load(order, knowledge);
    this.whenCold = computable() ? whenCold(found.limits()) : List.of();
    this.hot = computable() ? hot() : nothing();
    this.check =
        computable() && load.isPresent()
            ? Optional.of(new LoadCheck(hot, load.get()))
            : Optional.empty();
    this.fractionWanted = load.isPresent() ? needed() : OptionalDouble.empty();
  }

  /** Without figures a load is never covered, whatever the cure. */
  private OptionalDouble needed() {
    OptionalDouble needed =
        check.isPresent() ? check.get().strengthFractionNeeded() : OptionalDouble.empty();
    return needed.isPresent() ? needed : OptionalDouble.of(Double.POSITIVE_INFINITY);
  }

  /** The same joint with another class. */
  HoldWork with(CompoundClass other) {
    return new HoldWork(order, knowledge, other, found, primer, press);
  }

  JointOrder order() {
    return order;
  }

  CompoundClass compound() {
    return compound;
  }

  GapFinding found() {
    return found;
  }

  Optional<PlannedPrimer> primer() {
    return primer;
  }

  /** Laminates and plastics get no figure: none would be honest. */
  boolean computable() {
    return order.bore().material().isMetal() && order.part().material().isMetal();
  }

  /**
   * Strength fraction that covers the load; empty without a load, above 1 when the joint never
   * does.
   */
  OptionalDouble fractionWanted() {
    return fractionWanted;
  }

  /**
   * What there is to tell of it.
   *
   * @param atHandBack axial hold at hand-back, N, if there is one
   * @param carriers other classes that carry the load in time
   */
  HoldReport report(Optional<Estimate> atHandBack, List<CompoundClass> carriers) {
    HybridHold cold = computable() ? joint(WHOLE, grip(PressReport::atRest)) : hot;
    Removal removal = removal(cold);
    return computable()
        ? figures(cold.axialN(), removal, atHandBack, carriers)
        : withoutFigures(removal);
  }

  private HoldReport figures(
      Estimate coldN,
      Removal removal,
      Optional<Estimate> atHandBack,
      List<CompoundClass> carriers) {
    return new HoldReport(
        true,
        coldN,
        hot.axialN(),
        hot.torqueNm(),
        atHandBack,
        wanted(),
        fractionWanted,
        check.flatMap(LoadCheck::safety),
        hot.bond().factors(),
        removal.breakLooseN(),
        removal.breakLooseTorqueNm(),
        removal.ways(tools()),
        carriers);
  }

  private HoldReport withoutFigures(Removal removal) {
    return new HoldReport(
        false,
        NONE,
        NONE,
        NONE,
        Optional.empty(),
        wanted(),
        fractionWanted,
        Optional.empty(),
        List.of(),
        NONE,
        NONE,
        removal.ways(tools()),
        List.of());
  }

  /** A bond of which nothing can be said. */
  private HybridHold nothing() {
    return new HybridHold(
        new BondHold(found.gap().nominalMm(), order.engagementMm(), NONE, List.of()),
        FrictionHold.notKnown(),
        knowledge.hold().limits());
  }

  /** Hold at a share of the strength, hot. */
  Optional<Estimate> atFraction(double fraction) {
    return computable()
        ? Optional.of(hot.atStrength(Math.min(1, fraction)).axialN())
        : Optional.empty();
  }

  private OptionalDouble wanted() {
    return load.isPresent()
        ? OptionalDouble.of(load.get().requiredN(found.gap().nominalMm()))
        : OptionalDouble.empty();
  }

  /** The order's load with its own safety factor, or that of the consequence. */
  static Optional<Load> load(JointOrder order, Knowledge knowledge) {
    double policy = knowledge.catalog().release().get(order.consequence()).safetyFactor();
    return order
        .load()
        .map(l -> new Load(l.axialN(), l.torqueNm(), l.safetyFactor().orElse(policy)));
  }

  /** With the grip at the looser end of service, whichever that is. */
  private HybridHold hot() {
    return joint(compound.hotFraction(order.service().high()), grip(PressReport::least));
  }

  private FrictionHold grip(Function<PressReport, FrictionHold> when) {
    return press.map(when).orElse(FrictionHold.none());
  }

  private HybridHold joint(Estimate hotFraction, FrictionHold grip) {
    List<HoldFactor> factors = new ArrayList<>(whenCold.size() + 1);
    factors.add(new HoldFactor(Kind.HOT_STRENGTH, hotFraction));
    factors.addAll(whenCold);
    BondHold bond =
        new BondHold(
            found.gap().nominalMm(), order.engagementMm(), compound.strengthMPa(), factors);
    return new HybridHold(bond, grip, knowledge.hold().limits());
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
    factors.add(knowledge.hold().engagementFactor(order.engagementMm(), found.gap().nominalMm()));
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
