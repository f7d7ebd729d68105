package annulus.advice;

import annulus.advice.Advice.GapFinding;
import annulus.advice.PressReport.Standing;
import annulus.catalog.Material;
import annulus.fit.FrictionTable;
import annulus.fit.Gap;
import annulus.fit.PressAnswer;
import annulus.fit.PressFit;
import annulus.fit.PressGeometry;
import annulus.fit.PressLimit;
import annulus.fit.RingMaterial;
import annulus.fit.ShrinkAssembly;
import annulus.fit.ThermalGap;
import annulus.hold.BondHold;
import annulus.hold.FrictionHold;
import annulus.hold.HybridHold;
import annulus.hold.LoadCheck;
import annulus.quantity.Estimate;
import annulus.quantity.Units;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The press fit of an interference joint, cold, hot and at rest. */
final class PressWork {
  /** Over the joint: a wall as good as none, and one as good as endless. */
  private static final double THIN = 1.0001;

  private static final double THICK = 40;

  private final JointOrder order;
  private final Knowledge knowledge;
  private final GapFinding found;
  private final Estimate tightestUm;

  PressWork(JointOrder order, Knowledge knowledge, GapFinding found) {
    this.order = order;
    this.knowledge = knowledge;
    this.found = found;
    this.tightestUm = tightestUm();
  }

  PressReport report() {
    Optional<PressGeometry> geometry = geometry();
    return geometry.isPresent() ? report(geometry.get()) : withoutFigures();
  }

  private PressReport withoutFigures() {
    return new PressReport(
        Optional.empty(),
        Optional.empty(),
        Standing.DIAMETER_MISSING,
        borneWhateverDiameters(),
        tightestAtC(),
        looseAt(),
        OptionalDouble.empty(),
        Optional.of(slip()),
        found.inService().loosestUm(),
        FrictionHold.notKnown(),
        FrictionHold.notKnown(),
        Optional.empty());
  }

  private PressReport report(PressGeometry geometry) {
    PressAnswer atRest = press(geometry, Estimate.exactly(found.gap().meanUm())).answer();
    PressFit tightest = press(geometry, tightestUm);
    PressAnswer tight = tightest.answer();
    OptionalDouble tooTightAt = tooTightAt(tight);
    PressAnswer loosest = press(geometry, loosestUm()).answer();
    FrictionHold least = after(tightest, tight, loosest, found.inService().loosestUm());
    return new PressReport(
        Optional.of(atRest),
        Optional.of(tight),
        standing(tight),
        false,
        standsSoAt(atRest, tight, tooTightAt),
        looseAt(),
        tooTightAt,
        Optional.of(slip()),
        found.inService().loosestUm(),
        after(tightest, tight, atRest, found.gap().meanUm()),
        least,
        least.isKnown() ? check(least) : Optional.empty());
  }

  /** The stresses are greatest at one end or the other of what a diameter can be. */
  private boolean borneWhateverDiameters() {
    double joint = found.gap().nominalMm();
    OptionalDouble outside = order.bore().otherDiameterMm();
    OptionalDouble inside = order.part().otherDiameterMm();
    for (double hub : ends(outside, joint * THIN, joint * THICK)) {
      for (double bore : ends(inside, joint / THICK, joint / THIN, 0)) {
        PressGeometry geometry = new PressGeometry(joint, hub, bore, order.engagementMm());
        if (standing(press(geometry, tightestUm).answer()) != Standing.WITHIN) {
          return false;
        }
      }
    }
    return true;
  }

  private static double[] ends(OptionalDouble said, double... possible) {
    return said.isPresent() ? new double[] {said.getAsDouble()} : possible;
  }

  /** The grip where the mean gap is this wide, after the fit has been as tight as it gets. */
  private FrictionHold after(
      PressFit tightest, PressAnswer tight, PressAnswer answer, double meanUm) {
    FrictionHold grip = FrictionHold.of(answer);
    if (!(tight instanceof PressAnswer.Pressed pressed)) {
      return grip;
    }
    double left = tightest.surelyLeftMPa(pressed, 2 * (meanUm - tightestUm.low()));
    boolean gives = pressed.standing() == PressLimit.Standing.EXCEEDS;
    return grip.atMost(left, gives ? left : Double.POSITIVE_INFINITY)
        .pressedUpTo(pressed.pressureMPa().high());
  }

  private Optional<PressGeometry> geometry() {
    OptionalDouble outside = order.bore().otherDiameterMm();
    OptionalDouble inside = order.part().otherDiameterMm();
    return outside.isPresent() && inside.isPresent()
        ? Optional.of(
            new PressGeometry(
                found.gap().nominalMm(),
                outside.getAsDouble(),
                inside.getAsDouble(),
                order.engagementMm()))
        : Optional.empty();
  }

  /**
   * Mean radial gap at the looser end of service: only its open side takes the worst expansions.
   */
  private Estimate loosestUm() {
    double likely = found.inService().likelyLoosestUm();
    return new Estimate(likely, likely, found.inService().loosestUm());
  }

  /** Mean radial gap at its tightest: only its closed side takes the worst expansions. */
  private Estimate tightestUm() {
    double rest = found.gap().meanUm();
    double likely = Math.min(rest, Math.min(found.atAssemblyUm(), inServiceTightestUm()));
    return new Estimate(Math.min(rest, found.inService().tightestUm()), likely, likely);
  }

  private double inServiceTightestUm() {
    return Math.min(found.inService().atLowUm(), found.inService().atHighUm());
  }

  /** Temperature of the tightest, by the likely expansions, °C. */
  private double tightestAtC() {
    double tightest = tightestUm.likely();
    if (found.gap().meanUm() <= tightest) {
      return Units.REFERENCE_CELSIUS;
    }
    if (found.inService().atHighUm() <= tightest) {
      return order.service().high();
    }
    return found.inService().atLowUm() <= tightest
        ? order.service().low()
        : order.cure().history().celsiusAt(0);
  }

  /** Where it stands so at rest already, at 20 °C; else where the limit is reached, if sure. */
  private double standsSoAt(PressAnswer atRest, PressAnswer tight, OptionalDouble tooTightAt) {
    if (standing(atRest) == standing(tight)) {
      return Units.REFERENCE_CELSIUS;
    }
    return standing(tight) == Standing.EXCEEDS
        ? tooTightAt.orElseGet(this::tightestAtC)
        : tightestAtC();
  }

  /** The fit where its mean radial gap is this, with the doubt of the measurement on top. */
  private PressFit press(PressGeometry geometry, Estimate meanUm) {
    Gap gap = found.gap();
    double doubt = gap.budget().expandedUm(order.confidence());
    Estimate radial =
        new Estimate(
            Math.min(gap.smallestUm() + (meanUm.low() - gap.meanUm()), meanUm.low() - doubt),
            meanUm.likely(),
            Math.max(gap.largestUm() + (meanUm.high() - gap.meanUm()), meanUm.high() + doubt));
    Estimate smoothing =
        PressFit.smoothingUm(
            order.bore().finish().roughnessRzUm().likely(),
            order.part().finish().roughnessRzUm().likely(),
            knowledge.press().smoothingLoss().value());
    return new PressFit(
        geometry,
        ring(order.bore().material()),
        ring(order.part().material()),
        PressFit.interferenceFromRadialGapUm(radial),
        smoothing,
        friction());
  }

  static RingMaterial ring(Material material) {
    RingMaterial.Behaviour behaviour =
        switch (material.kind()) {
          case METAL -> RingMaterial.Behaviour.DUCTILE;
          case BRITTLE_METAL -> RingMaterial.Behaviour.BRITTLE;
          case PLASTIC -> RingMaterial.Behaviour.PLASTIC;
          case LAMINATE -> RingMaterial.Behaviour.LAMINATE;
        };
    OptionalDouble limit =
        material.yieldMPa().map(y -> OptionalDouble.of(y.low())).orElse(OptionalDouble.empty());
    return new RingMaterial(behaviour, material.youngGPa(), material.poisson().likely(), limit);
  }

  private Estimate friction() {
    return knowledge
        .friction()
        .row(
            pair(order.bore().material(), order.part().material()),
            FrictionTable.Method.LENGTHWISE,
            FrictionTable.State.DRY)
        .friction();
  }

  private static FrictionTable.Pair pair(Material bore, Material part) {
    List<String> faces = List.of(bore.bondFace(), part.bondFace());
    long steel = faces.stream().filter(f -> f.equals("steel")).count();
    if (steel == 2) {
      return FrictionTable.Pair.STEEL_STEEL;
    }
    if (steel == 1 && faces.contains("cast-iron")) {
      return FrictionTable.Pair.STEEL_CAST_IRON;
    }
    if (steel == 1 && faces.contains("aluminium")) {
      return FrictionTable.Pair.STEEL_LIGHT_ALLOY;
    }
    if (steel == 1 && faces.contains("brass")) {
      return FrictionTable.Pair.STEEL_BRASS;
    }
    return FrictionTable.Pair.OTHER;
  }

  private static Standing standing(PressAnswer answer) {
    if (answer instanceof PressAnswer.Refused) {
      return Standing.NO_HONEST_FIGURE;
    }
    if (!(answer instanceof PressAnswer.Pressed pressed)) {
      return Standing.WITHIN;
    }
    return switch (pressed.standing()) {
      case WITHIN -> Standing.WITHIN;
      case MAY_EXCEED -> Standing.MAY_EXCEED;
      case EXCEEDS -> Standing.EXCEEDS;
      case NOT_KNOWN -> Standing.LIMIT_NOT_KNOWN;
    };
  }

  private OptionalDouble looseAt() {
    return temperatureFor(0);
  }

  /** Temperature at which the mean diametral clearance, µm, is reached. */
  private OptionalDouble temperatureFor(double diametralUm) {
    return thermal().temperatureFor(2 * found.gap().meanUm(), diametralUm)
            instanceof ThermalGap.At at
        ? OptionalDouble.of(at.celsius())
        : OptionalDouble.empty();
  }

  private ThermalGap thermal() {
    return new ThermalGap(
        found.gap().nominalMm(),
        order.bore().material().expansion().likely(),
        order.part().material().expansion().likely());
  }

  /** Pressure is linear in the working interference: scale it to the lower of the two limits. */
  private OptionalDouble tooTightAt(PressAnswer tight) {
    if (!(tight instanceof PressAnswer.Pressed pressed) || pressed.pressureMPa().likely() <= 0) {
      return OptionalDouble.empty();
    }
    double limit =
        Math.min(
            pressed.hubLimit().pressureMPa().orElse(Double.POSITIVE_INFINITY),
            pressed.partLimit().pressureMPa().orElse(Double.POSITIVE_INFINITY));
    if (Double.isInfinite(limit)) {
      return OptionalDouble.empty();
    }
    double working = pressed.workingInterferenceUm().likely();
    double flattened = -2 * tightestUm.likely() - working;
    double atLimit = working * limit / pressed.pressureMPa().likely() + flattened;
    return temperatureFor(-atLimit);
  }

  private ShrinkAssembly.Answer slip() {
    double room = order.cure().air().celsiusAt(0);
    double tightest =
        -2
            * (found.gap().smallestUm()
                - found.gap().extremeBudget().expandedUm(order.confidence()));
    Material bore = order.bore().material();
    Material part = order.part().material();
    double clearance = knowledge.press().slipClearance().value().high() * found.gap().nominalMm();
    return new ShrinkAssembly(
            thermal(),
            Math.max(0, tightest),
            clearance,
            ring(bore).behaviour(),
            ring(part).behaviour(),
            OptionalDouble.of(bore.heatLimitC()),
            OptionalDouble.of(part.heatLimitC()))
        .heatingRing(room);
  }

  private Optional<LoadCheck.Verdict> check(FrictionHold hold) {
    return HoldWork.load(order, knowledge)
        .map(
            load -> {
              BondHold none =
                  new BondHold(
                      found.gap().nominalMm(),
                      order.engagementMm(),
                      Estimate.exactly(0),
                      List.of(
                          knowledge.hold().dynamicFactor(order.load().orElseThrow().repeats())));
              HybridHold joint = new HybridHold(none, hold, knowledge.hold().limits());
              return hold.axialN().low() >= required(load, joint)
                  ? LoadCheck.Verdict.COVERED
                  : LoadCheck.Verdict.NOT_COVERED;
            });
  }

  private double required(annulus.hold.Load load, HybridHold joint) {
    double dynamic = joint.bond().factor().low();
    return load.requiredN(found.gap().nominalMm()) / Math.max(1e-9, dynamic);
  }
}
