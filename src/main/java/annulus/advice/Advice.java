package annulus.advice;

import annulus.catalog.CompoundClass;
import annulus.catalog.LimitedUse;
import annulus.catalog.Primer;
import annulus.catalog.Provenance;
import annulus.catalog.Stage;
import annulus.fit.Gap;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Remedy;
import annulus.quantity.WhenAsked;
import annulus.select.ClassVerdict;
import annulus.select.Finding;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The answer to one order, typed; words are made from it last, in one place.
 *
 * @param dataVersion version of the data used
 * @param order what was asked
 * @param decision what to do
 * @param handBack earliest safe hand-back; empty when none can be promised
 * @param primed the hand-back if a primer that the order did not name were counted; none where the
 *     primer is counted or there is none, else at most one
 * @param limitedUse what must not be done between hand-back and full cure
 * @param gap what was found out about the gap
 * @param cure cure of the chosen class; empty when no class is chosen
 * @param press what the interference does; empty for a joint that does not read as one
 * @param holds what the cured joint carries; none when no class is chosen, else one
 * @param steps what to do, in workshop order
 * @param cautions what the rules say of the joint and the chosen class
 * @param table every class with its verdict
 * @param figures every factor that went into the answer with its source
 */
public record Advice(
    String dataVersion,
    JointOrder order,
    Decision decision,
    Optional<HandBack> handBack,
    List<HandBack> primed,
    LimitedUse limitedUse,
    GapFinding gap,
    Optional<CureTimes> cure,
    Optional<PressReport> press,
    List<HoldReport> holds,
    List<Step> steps,
    List<Finding> cautions,
    List<ClassVerdict> table,
    List<Figure> figures) {
  public Advice {
    primed = WhenAsked.copyOf(primed);
    holds = WhenAsked.copyOf(holds);
    steps = WhenAsked.copyOf(steps);
    cautions = List.copyOf(cautions);
    table = List.copyOf(table);
    figures = WhenAsked.copyOf(figures);
  }

  /** What the cured joint carries; empty when no class is chosen. */
  public Optional<HoldReport> hold() {
    return holds.isEmpty() ? Optional.empty() : Optional.of(holds.get(0));
  }

  /** The limit of use after the hand-back; empty where there is none. */
  public Optional<Limit> limited() {
    if (handBack.isEmpty() || cure.isEmpty()) {
      return Optional.empty();
    }
    Optional<Duration> full = cure.get().at(Stage.FULL).sure();
    return handBack.get().isBefore(full)
        ? Optional.of(new Limit(full.map(order.start()::plus)))
        : Optional.empty();
  }

  /**
   * Use that stays limited after the hand-back.
   *
   * @param until when full cure is sure; empty: it never is
   */
  public record Limit(Optional<Instant> until) {}

  /** Whether a primer goes on that the hand-back does not count. */
  public boolean primerNotCounted() {
    return decision.kind() == Kind.USE_COMPOUND
        && decision.primer().filter(PlannedPrimer::addedHere).isPresent();
  }

  /** Whether the joint may be made as told and handed back afterwards. */
  public boolean isYes() {
    return decision.kind().isYes() && handBack.isPresent();
  }

  /** The first step of a kind, if the joint has one. */
  public Optional<Step> step(StepKind kind) {
    for (Step step : steps) {
      if (step.kind() == kind) {
        return Optional.of(step);
      }
    }
    return Optional.empty();
  }

  /** Whether the members are known to bear what presses on them; so they are where nothing does. */
  public boolean isPressBorne() {
    return press.map(p -> Release.isBorne(p, order.consequence())).orElse(true);
  }

  /** What to do. */
  public enum Kind {
    /** Use the chosen class. */
    USE_COMPOUND,
    /** Press it dry. */
    PRESS_DRY,
    /** Too tight for a dry press of workshop size. */
    TOO_TIGHT,
    /** The measurement can't decide: measure again as told. */
    MEASURE_AGAIN,
    /** Wider than any class fills: sleeve, replace or rebuild. */
    TOO_WIDE,
    /** Classes fit the gap but something else forbids all of them. */
    NO_CLASS,
    /** Moved after it may have grabbed: strip, clean, redo. */
    STRIP_AND_REDO;

    /** Whether it is a way to join; whether it may go out depends on the hand-back too. */
    public boolean isYes() {
      return this == USE_COMPOUND || this == PRESS_DRY;
    }
  }

  /**
   * The decision.
   *
   * @param kind what to do
   * @param compound the chosen class, for {@link Kind#USE_COMPOUND}
   * @param primer the primer that goes with it
   * @param probability that the gap lies in the range of what was decided, 0 to 1
   * @param because the findings that decided against, for a no
   */
  public record Decision(
      Kind kind,
      Optional<CompoundClass> compound,
      Optional<PlannedPrimer> primer,
      double probability,
      List<Finding> because) {
    public Decision {
      because = List.copyOf(because);
    }
  }

  /**
   * Primer that the answer counts on.
   *
   * @param primer which
   * @param onBore whether the bore is primed
   * @param onPart whether the part is primed
   * @param addedHere whether the order left it open and a rule asked for it
   */
  public record PlannedPrimer(Primer primer, boolean onBore, boolean onPart, boolean addedHere) {
    /** The primed faces as a mechanic calls them. */
    public String faces() {
      return onBore && onPart ? "both faces" : onBore ? "the bore" : "the part";
    }
  }

  /**
   * What was found out about the gap.
   *
   * @param gap at 20 °C
   * @param level probability of the limits, two-sided
   * @param limits of the centred gap at that level
   * @param bore the measured bore; empty for a stated gap
   * @param part the measured part; empty for a stated gap
   * @param atAssemblyUm mean radial gap at the assembly temperature, µm
   * @param widerInColdUm how much wider it is when its cure is coldest, if that is below 20 °C, µm
   *     radial; 0 where the cold makes it narrower, so that colder is never sooner
   * @param closedUpperUm upper limit of the largest gap, µm radial, wider by what the coldest
   *     temperature within the doubt adds
   * @param inService mean radial gap at the ends of the service range, µm
   * @param remedies what would decide, where the measurement can't; at most one
   */
  public record GapFinding(
      Gap gap,
      double level,
      Gap.Limits limits,
      Optional<MeasuredDiameter> bore,
      Optional<MeasuredDiameter> part,
      double atAssemblyUm,
      double widerInColdUm,
      double closedUpperUm,
      ServiceGap inService,
      List<Remedy> remedies) {
    public GapFinding {
      remedies = WhenAsked.copyOf(remedies);
    }

    /** Whether the parts press on each other, at least where the readings are tightest. */
    boolean mayPress() {
      return gap.smallestUm() < 0;
    }

    /** What would decide, where the measurement can't. */
    public Optional<Remedy> remedy() {
      return remedies.isEmpty() ? Optional.empty() : Optional.of(remedies.get(0));
    }

    GapFinding withRemedies(List<Remedy> found) {
      return new GapFinding(
          gap,
          level,
          limits,
          bore,
          part,
          atAssemblyUm,
          widerInColdUm,
          closedUpperUm,
          inService,
          found);
    }
  }

  /**
   * Mean radial gap over the service range.
   *
   * @param atLowUm at the lowest service temperature, µm radial
   * @param atHighUm at the highest service temperature, µm radial
   * @param loosestUm most that is there at the ends, by the expansions that open it most, µm radial
   * @param growthUm most that it opens against assembly, slow side of both expansions, µm radial
   * @param tightestUm least that is left at the ends or when it is closed, by the expansions that
   *     close it most, µm radial; negative is interference
   * @param loosestAtC temperature of the loosest, °C
   * @param tightestAtC temperature of the tightest, °C
   */
  public record ServiceGap(
      double atLowUm,
      double atHighUm,
      double loosestUm,
      double growthUm,
      double tightestUm,
      double loosestAtC,
      double tightestAtC) {
    /** By the likely expansions: the wider of both ends, µm radial. */
    double likelyLoosestUm() {
      return Math.max(atLowUm, atHighUm);
    }
  }

  /**
   * Cure of the chosen class in this joint.
   *
   * @param stages fixture, handling, functional, full
   * @param slowPracticeFull full cure as the slowest practice has it, since the start; empty: never
   * @param workingTime time to push home and leave it, counted on the quick side
   * @param curve strength against time, for a picture
   */
  public record CureTimes(
      List<StageTime> stages,
      Optional<Duration> slowPracticeFull,
      Duration workingTime,
      List<CurvePoint> curve) {
    public CureTimes {
      stages = List.copyOf(stages);
      curve = WhenAsked.copyOf(curve);
    }

    /** The times of one stage. */
    public StageTime at(Stage stage) {
      return stages.get(stage.ordinal());
    }
  }

  /**
   * Times of one stage since the start; empty means never.
   *
   * @param stage which
   * @param typical half of all such joints are there by then
   * @param sure reached at the wanted confidence
   */
  public record StageTime(Stage stage, Optional<Duration> typical, Optional<Duration> sure) {}

  /**
   * Strength fractions at a time.
   *
   * @param after since the start
   * @param typical reached by half of all such joints
   * @param sure reached at the wanted confidence
   */
  public record CurvePoint(Duration after, double typical, double sure) {}

  /**
   * Earliest safe hand-back.
   *
   * @param at instant, rounded up to the minute
   * @param after since the start, rounded up to the minute
   * @param conditions every condition with the time it asks for, the ruling one among them
   * @param ruling which condition is the latest
   */
  public record HandBack(
      Instant at, Duration after, List<HandBackCondition> conditions, Condition ruling) {
    public HandBack {
      conditions = List.copyOf(conditions);
    }

    /** Whether it comes before full cure, which may never be sure. */
    boolean isBefore(Optional<Duration> full) {
      return full.isEmpty() || full.get().compareTo(after) > 0;
    }
  }

  /** What a hand-back waits for. */
  public enum Condition {
    /** Fixture and the time left alone after it. */
    FIXTURE_AND_REST,
    /** The stage that the policy asks for, at the wanted confidence. */
    POLICY_STAGE,
    /** Full cure as the slowest practice has it. */
    SLOW_PRACTICE,
    /** The hold covers the load with its safety factor. */
    HOLD_COVERS_LOAD,
    /** Nothing to wait for: a dry fit holds when it is home. */
    DRY_FIT
  }

  /**
   * One condition.
   *
   * @param condition which
   * @param after since the start
   */
  public record HandBackCondition(Condition condition, Duration after) {}

  /** One step in workshop order. */
  public enum StepKind {
    MEASURE_AGAIN,
    WARM_UP,
    COOL_DOWN,
    TOO_QUICK,
    PROTECT,
    STRIP,
    REMOVE_OLD_COMPOUND,
    TRY_FIRST,
    CLEAN,
    KEEP_PRIMED,
    ABRADE,
    PRIME,
    FLASH_OFF,
    APPLY,
    APPLY_FILM,
    PRESS_STRAIGHT,
    CENTRE,
    PRESS_DRY,
    WIPE,
    LEAVE_UNDISTURBED,
    HANDLE,
    CHECK,
    HAND_BACK,
    TELL_LIMITED,
    REDO
  }

  /**
   * A step.
   *
   * @param kind which
   * @param time how long it takes or lasts, where that matters
   * @param at when it ends, where a clock time matters
   * @param values what its words mention, by name
   */
  public record Step(
      StepKind kind, Optional<Duration> time, Optional<Instant> at, Map<String, String> values) {
    public Step {
      values = Map.copyOf(values);
    }
  }

  /**
   * One number that went into the answer.
   *
   * @param id what it is
   * @param value the number as used
   * @param unit its unit, may be empty
   * @param meaning one sentence
   * @param provenance source of the row it came from; {@code input} for what the order says
   */
  public record Figure(
      String id, double value, String unit, String meaning, Provenance provenance) {}
}
