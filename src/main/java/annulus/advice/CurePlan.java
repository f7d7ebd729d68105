package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.CurvePoint;
import annulus.advice.Advice.Figure;
import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.Advice.StageTime;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.catalog.Provenance;
import annulus.catalog.Stage;
import annulus.cure.ArrheniusRate;
import annulus.cure.CureCourse;
import annulus.cure.CureCurve;
import annulus.cure.CureModel;
import annulus.cure.GapFactor;
import annulus.cure.SlowestRate;
import annulus.cure.Spread;
import annulus.quantity.WhenAsked;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The cure of one class in one joint. Typical times take the centred gap, the likely factors and
 * the planned temperature; sure times take the upper limit of the gap, the steepest gap exponent,
 * the slow side of the activation energy and the coldest temperature within the doubt, and on top
 * of these the log-normal spread at the wanted confidence. Both gaps are centred ones, as is the
 * reference gap of the class: a part that rests on one side doubles both alike.
 */
final class CurePlan {
  private static final double BEYOND_ANY_CALENDAR_S = 1e11;

  /** How many points a picture's curve has. */
  private static final int POINTS = 49;

  private final JointOrder order;
  private final CompoundClass compound;
  private final Faces faces;
  private final Optional<PlannedPrimer> primer;
  private final Spread spread;
  private final double upperUm;
  private final double typicalGap;
  private final double slowGap;
  private final CureCourse typical;
  private final CureCourse slow;
  private final double slowFullHours;

  private CurePlan(
      JointOrder order,
      CompoundClass compound,
      GapFinding found,
      Optional<PlannedPrimer> primer,
      Faces faces) {
    this.order = order;
    this.compound = compound;
    this.faces = faces;
    this.primer = primer;
    CompoundClass.Cure cure = compound.cure();
    this.slowFullHours = slowFullHours(compound, primer);
    this.spread = Spread.combine(new Spread(cure.spreadLn()), new Spread(faces.sigmaLn()));
    double likelyUm = found.gap().largestUm() + found.widerInColdUm();
    this.upperUm = Math.max(0, found.closedUpperUm());
    this.typicalGap = gapFactor(cure, likelyUm, cure.gapExponent().likely());
    this.slowGap = Math.max(typicalGap, gapFactor(cure, upperUm, cure.gapExponent().high()));
    CureModel likely = model(typicalGap);
    this.typical = likely.in(order.cure().history(), 0.5);
    this.slow = likely.withGapFactor(slowGap).in(order.cure().coldSide(), order.confidence());
  }

  private static double gapFactor(CompoundClass.Cure cure, double um, double exponent) {
    return GapFactor.of(Math.max(0, um), cure.referenceGapUm(), exponent);
  }

  private CureModel model(double gapFactor) {
    CompoundClass.Cure cure = compound.cure();
    SlowestRate slowRate =
        SlowestRate.between(
            cure.activationKJ().low(),
            cure.activationKJ().high(),
            cure.referenceC(),
            cure.minimumC(),
            cure.heldAboveC());
    ArrheniusRate rate = rate(cure, cure.activationKJ().likely());
    return new CureModel(faces.timeFactor(), gapFactor, 1, curve(cure), rate, slowRate, spread);
  }

  /** The plan, or empty when the faces cannot start the cure. */
  static Optional<CurePlan> of(
      JointOrder order,
      Catalog catalog,
      CompoundClass compound,
      GapFinding found,
      Optional<PlannedPrimer> primer) {
    return Faces.of(order, catalog, primer)
        .map(faces -> new CurePlan(order, compound, found, primer, faces));
  }

  /** The class that cures. */
  CompoundClass compound() {
    return compound;
  }

  /** Primed practice counts only with both faces primed by a primer that the order names. */
  private static double slowFullHours(CompoundClass compound, Optional<PlannedPrimer> primer) {
    double bare = compound.cure().slowFullHours();
    return primer
        .filter(p -> p.onBore() && p.onPart() && !p.addedHere())
        .map(p -> Math.min(bare, p.primer().slowFullHours()))
        .orElse(bare);
  }

  private static ArrheniusRate rate(CompoundClass.Cure cure, double activationKJ) {
    return new ArrheniusRate(activationKJ, cure.referenceC(), cure.minimumC(), cure.heldAboveC());
  }

  private static CureCurve curve(CompoundClass.Cure cure) {
    List<CureCurve.Point> points = new ArrayList<>(cure.stages().size() + 1);
    for (CompoundClass.StagePoint stage : cure.stages()) {
      points.add(new CureCurve.Point(stage.fraction(), stage.hours()));
    }
    if (cure.completeHours() > cure.at(Stage.FULL).hours() && cure.at(Stage.FULL).fraction() < 1) {
      points.add(new CureCurve.Point(1, cure.completeHours()));
    }
    return new CureCurve(points);
  }

  /** Time, since the start, at which half of all such joints reach a fraction. */
  private Optional<Duration> typical(double fraction) {
    return duration(typical.secondsTo(fraction));
  }

  /** Time, since the start, at which a fraction is reached at the wanted confidence. */
  Optional<Duration> sure(double fraction) {
    return duration(slow.secondsTo(fraction));
  }

  /** Strength fraction reached at the wanted confidence at a time since the start. */
  double sureFraction(Duration after) {
    return slow.fractionAt((double) after.toSeconds());
  }

  /**
   * Full cure as the slowest practice has it. That figure is already a slow one for workshop faces,
   * so only gap and temperature are applied to it; the doubts are not stacked on it a second time.
   */
  private Optional<Duration> slowPracticeFull() {
    double hours = slowFullHours * slowGap;
    return duration(typical.reduced().secondsToReach(hours));
  }

  /** What takes longer than any calendar goes is never reached. */
  private static Optional<Duration> duration(OptionalDouble seconds) {
    return seconds.isPresent() && seconds.getAsDouble() < BEYOND_ANY_CALENDAR_S
        ? Optional.of(Duration.ofSeconds((long) Math.ceil(seconds.getAsDouble())))
        : Optional.empty();
  }

  /**
   * Shortest time in which it may grab: quick side of everything. To hold the rate above what the
   * data covers is the slow side, and so not done here.
   */
  Duration workingTime(Optional<PlannedPrimer> primer) {
    CompoundClass.Cure cure = compound.cure();
    double warmest =
        Math.max(
            Math.max(order.cure().air().warmestC(), arrives(order.bore())), arrives(order.part()));
    warmest = Math.max(warmest + order.cure().plusMinusC(), cure.minimumC());
    double quickest =
        Math.max(
            quickRate(cure, cure.activationKJ().low()).at(warmest),
            quickRate(cure, cure.activationKJ().high()).at(warmest));
    Optional<Primer> onFace = primer.map(PlannedPrimer::primer).or(() -> order.primer().used());
    double primed = onFace.map(p -> p.workingTimeFactor().low()).orElse(1.0);
    double surface = onFace.isPresent() ? 1 : Math.max(1, faces.quickFactor());
    double minutes = cure.workingMinutes().low() * primed * surface / quickest;
    return Duration.ofSeconds((long) Math.floor(minutes * 60));
  }

  private static ArrheniusRate quickRate(CompoundClass.Cure cure, double activationKJ) {
    return ArrheniusRate.unheld(activationKJ, cure.referenceC(), cure.minimumC());
  }

  /** A member that comes in hot makes it grab sooner; one that comes in cold does not delay it. */
  private static double arrives(Member member) {
    return member.arrivesAtC().orElse(Double.NEGATIVE_INFINITY);
  }

  CureTimes times(Optional<PlannedPrimer> primer) {
    List<StageTime> stages = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      double fraction = compound.cure().at(stage).fraction();
      stages.add(new StageTime(stage, typical(fraction), sure(fraction)));
    }
    return new CureTimes(
        stages, slowPracticeFull(), workingTime(primer), WhenAsked.list(() -> points(stages)));
  }

  private List<CurvePoint> points(List<StageTime> stages) {
    StageTime full = stages.get(Stage.FULL.ordinal());
    StageTime fixture = stages.get(0);
    Optional<Duration> end = full.sure().or(full::typical);
    if (end.isEmpty() || fixture.typical().isEmpty()) {
      return List.of();
    }
    double first = Math.max(60, fixture.typical().get().toSeconds() / 2.0);
    double last = Math.max(first * 2, end.get().toSeconds() * 1.1);
    double[] seconds = new double[POINTS];
    for (int i = 0; i < POINTS; i++) {
      seconds[i] = Math.rint(first * Math.pow(last / first, i / (POINTS - 1.0)));
    }
    double[] likely = typical.fractionsAt(seconds);
    double[] sure = slow.fractionsAt(seconds);
    List<CurvePoint> points = new ArrayList<>(POINTS);
    for (int i = 0; i < POINTS; i++) {
      points.add(new CurvePoint(Duration.ofSeconds((long) seconds[i]), likely[i], sure[i]));
    }
    return points;
  }

  /** Strength fraction that half of all such joints have after so many seconds. */
  double typicalFraction(double seconds) {
    return typical.fractionAt(seconds);
  }

  /** Strength fraction reached after so many seconds at the wanted confidence. */
  double sureFraction(double seconds) {
    return slow.fractionAt(seconds);
  }

  /** Every factor of the cure with its source. */
  List<Figure> figures(Catalog catalog) {
    List<Figure> figures = new ArrayList<>();
    CompoundClass.Cure cure = compound.cure();
    Provenance from = compound.provenance();
    figures.add(
        new Figure(
            "surface factor",
            faces.timeFactor(),
            "",
            "time factor of the pair of faces",
            faces.source(catalog)));
    primer.ifPresent(
        p ->
            figures.add(
                new Figure(
                    "primer rate",
                    p.primer().rate().likely(),
                    "",
                    "rate of a primed face, " + p.primer().id(),
                    p.primer().provenance())));
    figures.add(
        new Figure("gap factor, typical", typicalGap, "", "time factor of the centred gap", from));
    figures.add(
        new Figure(
            "gap factor, sure side", slowGap, "", "time factor of the gap's upper limit", from));
    figures.add(
        new Figure(
            "gap, upper limit",
            upperUm,
            "µm radial",
            "largest centred gap at the wanted confidence",
            INPUT));
    figures.add(
        new Figure("spread", spread.sigmaLn(), "ln", "log-normal spread of class and faces", from));
    figures.add(
        new Figure(
            "spread factor",
            spread.factor(order.confidence()),
            "",
            "factor on the time at the wanted confidence",
            from));
    figures.add(
        new Figure("activation energy", cure.activationKJ().likely(), "kJ/mol", "typical", from));
    figures.add(
        new Figure(
            "activation energy, low",
            cure.activationKJ().low(),
            "kJ/mol",
            "slow side when warm",
            from));
    figures.add(
        new Figure(
            "activation energy, high",
            cure.activationKJ().high(),
            "kJ/mol",
            "slow side when cold",
            from));
    figures.add(
        new Figure(
            "reference temperature", cure.referenceC(), "°C", "the class's hours hold here", from));
    figures.add(
        new Figure(
            "reference gap",
            cure.referenceGapUm(),
            "µm radial",
            "the class's hours hold here",
            from));
    for (Stage stage : Stage.values()) {
      figures.add(
          new Figure(
              "hours to " + stage.name().toLowerCase(java.util.Locale.ROOT),
              cure.at(stage).hours(),
              "h",
              "at the reference, strength fraction " + cure.at(stage).fraction(),
              from));
    }
    figures.add(new Figure("slow practice, full", slowFullHours, "h", "at the reference", from));
    figures.add(
        new Figure(
            "rate at the planned temperature",
            rate(cure, cure.activationKJ().likely()).at(order.cure().history().celsiusAt(0)),
            "",
            "against the reference temperature, at the start",
            from));
    return figures;
  }

  private static final Provenance INPUT = new Provenance("input", annulus.catalog.Confidence.HIGH);

  /**
   * Time factor and spread of the pair of faces.
   *
   * @param timeFactor on the reference time
   * @param sigmaLn spread of its logarithm
   * @param quickFactor time factor on the quick side, for the working time
   * @param levels the two faces' levels
   */
  record Faces(double timeFactor, double sigmaLn, double quickFactor, List<Activity.Level> levels) {

    /**
     * Whatever the rows of the data say, a pair of faces is never counted as quicker or surer than
     * any pair of more active ones, and a primer that the order did not name never as quicker than
     * none.
     */
    static Optional<Faces> of(JointOrder order, Catalog catalog, Optional<PlannedPrimer> primer) {
      Activity.Level bore = order.bore().activity();
      Activity.Level part = order.part().activity();
      Optional<PairFactor> own = new PairFactor.Rates(catalog, primer).of(bore, part);
      if (own.isEmpty()) {
        return Optional.empty();
      }
      PairFactor slowest = PairFactor.slowest(catalog, primer, bore, part).orElse(own.get());
      for (Optional<PlannedPrimer> plan : plansAsGood(primer)) {
        slowest =
            PairFactor.slowest(catalog, plan, bore, part).map(slowest::slower).orElse(slowest);
      }
      Optional<PairFactor> stale =
          stale(order, primer)
              .flatMap(p -> PairFactor.slowest(catalog, Optional.of(p), bore, part));
      slowest = stale.isPresent() ? slowest.slower(stale.get()) : slowest;
      return Optional.of(
          new Faces(slowest.likely(), slowest.sigmaLn(), own.get().quick(), List.of(bore, part)));
    }

    /** What else a primer the order did not name might have been planned as: none of it quicker. */
    private static List<Optional<PlannedPrimer>> plansAsGood(Optional<PlannedPrimer> primer) {
      if (primer.isEmpty() || !primer.get().addedHere()) {
        return List.of();
      }
      Primer added = primer.get().primer();
      return List.of(
          Optional.empty(),
          Optional.of(new PlannedPrimer(added, true, false, true)),
          Optional.of(new PlannedPrimer(added, false, true, true)),
          Optional.of(new PlannedPrimer(added, true, true, true)));
    }

    /** A primer too old to be counted: no surer than a fresh one either. */
    private static Optional<PlannedPrimer> stale(JointOrder order, Optional<PlannedPrimer> primer) {
      return primer.isEmpty() && order.primer() instanceof JointOrder.PrimerPlan.Used u
          ? Optional.of(new PlannedPrimer(u.primer(), u.onBore(), u.onPart(), false))
          : Optional.empty();
    }

    Provenance source(Catalog catalog) {
      return catalog.activities().get(levels.get(0)).provenance();
    }
  }
}
