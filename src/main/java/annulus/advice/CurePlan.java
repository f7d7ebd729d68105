package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.CurvePoint;
import annulus.advice.Advice.Figure;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.Advice.StageTime;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.catalog.Provenance;
import annulus.catalog.Stage;
import annulus.cure.ArrheniusRate;
import annulus.cure.CureCurve;
import annulus.cure.CureForecast;
import annulus.cure.CureModel;
import annulus.cure.GapFactor;
import annulus.cure.SlowestRate;
import annulus.cure.Spread;
import annulus.cure.TemperatureHistory;
import annulus.fit.Gap;
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

  private final JointOrder order;
  private final CompoundClass compound;
  private final CureForecast typical;
  private final CureForecast slow;
  private final CureModel slowModel;
  private final double surfaceFactor;
  private final double quickFaces;
  private final double slowFullHours;
  private final List<Figure> figures = new ArrayList<>();

  private CurePlan(
      JointOrder order,
      Catalog catalog,
      CompoundClass compound,
      Gap gap,
      Optional<PlannedPrimer> primer,
      Faces faces) {
    this.order = order;
    this.compound = compound;
    CompoundClass.Cure cure = compound.cure();
    this.surfaceFactor = faces.timeFactor();
    this.quickFaces = faces.quickFactor();
    this.slowFullHours = slowFullHours(compound, primer);
    Spread spread = Spread.combine(new Spread(cure.spreadLn()), new Spread(faces.sigmaLn()));
    ArrheniusRate rate = rate(cure, cure.activationKJ().likely());
    SlowestRate slowRate =
        SlowestRate.between(
            cure.activationKJ().low(),
            cure.activationKJ().high(),
            cure.referenceC(),
            cure.minimumC(),
            cure.heldAboveC());
    double centred = Math.max(0, gap.largestUm());
    double upper = Math.max(0, gap.upperUm(order.confidence()));
    double typicalGap = GapFactor.of(centred, cure.referenceGapUm(), cure.gapExponent().likely());
    double slowGap =
        Math.max(typicalGap, GapFactor.of(upper, cure.referenceGapUm(), cure.gapExponent().high()));
    CureModel typicalModel =
        new CureModel(surfaceFactor, typicalGap, 1, curve(cure), rate, slowRate, spread);
    this.slowModel = new CureModel(surfaceFactor, slowGap, 1, curve(cure), rate, slowRate, spread);
    TemperatureHistory coldest = order.cure().coldSide();
    this.typical = typicalModel.in(order.cure().history());
    this.slow = slowModel.in(coldest);
    collect(catalog, faces, primer, spread, typicalGap, slowGap, upper);
  }

  /** The plan, or empty when the faces cannot start the cure. */
  static Optional<CurePlan> of(
      JointOrder order,
      Catalog catalog,
      CompoundClass compound,
      Gap gap,
      Optional<PlannedPrimer> primer) {
    return Faces.of(order, catalog, primer)
        .map(faces -> new CurePlan(order, catalog, compound, gap, primer, faces));
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
    List<CureCurve.Point> points = new ArrayList<>();
    cure.stages().forEach(s -> points.add(new CureCurve.Point(s.fraction(), s.hours())));
    if (cure.completeHours() > cure.at(Stage.FULL).hours() && cure.at(Stage.FULL).fraction() < 1) {
      points.add(new CureCurve.Point(1, cure.completeHours()));
    }
    return new CureCurve(points);
  }

  /** Time, since the start, at which half of all such joints reach a fraction. */
  Optional<Duration> typical(double fraction) {
    return duration(typical.secondsTo(fraction, 0.5));
  }

  /** Time, since the start, at which a fraction is reached at the wanted confidence. */
  Optional<Duration> sure(double fraction) {
    return duration(slow.secondsTo(fraction, order.confidence()));
  }

  /** Strength fraction reached at the wanted confidence at a time since the start. */
  double sureFraction(Duration after) {
    return slow.fractionAt((double) after.toSeconds(), order.confidence());
  }

  /**
   * Full cure as the slowest practice has it. That figure is already a slow one for workshop faces,
   * so only gap and temperature are applied to it; the doubts are not stacked on it a second time.
   */
  Optional<Duration> slowPracticeFull() {
    double hours = slowFullHours * slowModel.gapFactor();
    return duration(typical.reduced(0.5).secondsToReach(hours));
  }

  /** What takes longer than any calendar goes is never reached. */
  private static Optional<Duration> duration(OptionalDouble seconds) {
    return seconds.isPresent() && seconds.getAsDouble() < BEYOND_ANY_CALENDAR_S
        ? Optional.of(Duration.ofSeconds((long) Math.ceil(seconds.getAsDouble())))
        : Optional.empty();
  }

  /** Shortest time in which it may grab: quick side of everything. */
  Duration workingTime(Optional<PlannedPrimer> primer) {
    CompoundClass.Cure cure = compound.cure();
    double warmest = order.cure().history().warmestC() + order.cure().plusMinusC();
    double quickest =
        Math.max(
            rate(cure, cure.activationKJ().low()).at(Math.max(warmest, cure.minimumC())),
            rate(cure, cure.activationKJ().high()).at(Math.max(warmest, cure.minimumC())));
    Optional<Primer> onFace = primer.map(PlannedPrimer::primer).or(() -> order.primer().used());
    double primed = onFace.map(p -> p.workingTimeFactor().low()).orElse(1.0);
    double surface = onFace.isPresent() ? 1 : Math.max(1, quickFaces);
    double minutes = cure.workingMinutes().low() * primed * surface / quickest;
    return Duration.ofSeconds((long) Math.floor(minutes * 60));
  }

  CureTimes times(Optional<PlannedPrimer> primer) {
    List<StageTime> stages = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      double fraction = compound.cure().at(stage).fraction();
      stages.add(new StageTime(stage, typical(fraction), sure(fraction)));
    }
    return new CureTimes(stages, slowPracticeFull(), workingTime(primer), points(stages));
  }

  private List<CurvePoint> points(List<StageTime> stages) {
    StageTime full = stages.get(Stage.FULL.ordinal());
    StageTime fixture = stages.get(0);
    Optional<Duration> end = full.sure().or(full::typical);
    if (end.isEmpty() || fixture.typical().isEmpty()) {
      return List.of();
    }
    int count = 48;
    double first = Math.max(60, fixture.typical().get().toSeconds() / 2.0);
    double last = Math.max(first * 2, end.get().toSeconds() * 1.1);
    List<CurvePoint> points = new ArrayList<>();
    for (int i = 0; i <= count; i++) {
      double seconds = Math.rint(first * Math.pow(last / first, i / (double) count));
      points.add(
          new CurvePoint(
              Duration.ofSeconds((long) seconds),
              typical.fractionAt(seconds, 0.5),
              slow.fractionAt(seconds, order.confidence())));
    }
    return points;
  }

  /** Strength fraction that half of all such joints have after so many seconds. */
  double typicalFraction(double seconds) {
    return typical.fractionAt(seconds, 0.5);
  }

  /** Strength fraction reached after so many seconds at the wanted confidence. */
  double sureFraction(double seconds) {
    return slow.fractionAt(seconds, order.confidence());
  }

  /** The strength fraction that a stage stands for. */
  double fractionOf(Stage stage) {
    return compound.cure().at(stage).fraction();
  }

  List<Figure> figures() {
    return List.copyOf(figures);
  }

  private void collect(
      Catalog catalog,
      Faces faces,
      Optional<PlannedPrimer> primer,
      Spread spread,
      double typicalGap,
      double slowGap,
      double upperGap) {
    CompoundClass.Cure cure = compound.cure();
    Provenance from = compound.provenance();
    add(
        "surface factor",
        surfaceFactor,
        "",
        "time factor of the pair of faces",
        faces.source(catalog));
    primer.ifPresent(
        p ->
            add(
                "primer rate",
                p.primer().rate().likely(),
                "",
                "rate of a primed face, " + p.primer().id(),
                p.primer().provenance()));
    add("gap factor, typical", typicalGap, "", "time factor of the centred gap", from);
    add("gap factor, sure side", slowGap, "", "time factor of the gap's upper limit", from);
    add(
        "gap, upper limit",
        upperGap,
        "µm radial",
        "largest centred gap at the wanted confidence",
        INPUT);
    add("spread", spread.sigmaLn(), "ln", "log-normal spread of class and faces", from);
    add(
        "spread factor",
        spread.factor(order.confidence()),
        "",
        "factor on the time at the wanted confidence",
        from);
    add("activation energy", cure.activationKJ().likely(), "kJ/mol", "typical", from);
    add("activation energy, low", cure.activationKJ().low(), "kJ/mol", "slow side when warm", from);
    add(
        "activation energy, high",
        cure.activationKJ().high(),
        "kJ/mol",
        "slow side when cold",
        from);
    add("reference temperature", cure.referenceC(), "°C", "the class's hours hold here", from);
    add("reference gap", cure.referenceGapUm(), "µm radial", "the class's hours hold here", from);
    for (Stage stage : Stage.values()) {
      add(
          "hours to " + stage.name().toLowerCase(java.util.Locale.ROOT),
          cure.at(stage).hours(),
          "h",
          "at the reference, strength fraction " + cure.at(stage).fraction(),
          from);
    }
    add("slow practice, full", slowFullHours, "h", "at the reference", from);
    add(
        "rate at the planned temperature",
        rate(cure, cure.activationKJ().likely()).at(order.cure().history().celsiusAt(0)),
        "",
        "against the reference temperature, at the start",
        from);
  }

  private static final Provenance INPUT = new Provenance("input", annulus.catalog.Confidence.HIGH);

  private void add(String id, double value, String unit, String meaning, Provenance provenance) {
    figures.add(new Figure(id, value, unit, meaning, provenance));
  }

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
