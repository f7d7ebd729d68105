package annulus.advice;

import annulus.advice.FactorLearning.Best;
import annulus.advice.FactorLearning.Outcome;
import annulus.advice.FactorPosterior.Scatter;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.catalog.Stage;
import annulus.cure.Spread;
import annulus.quantity.Estimate;
import annulus.quantity.Numbers;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * Updates a class by what a shop saw of its own joints. Slower or weaker than shipped counts at
 * once; quicker or stronger only on as much evidence as the policy asks for.
 */
public final class BenchLearning {
  /** What a class's strength may be, MPa. */
  static final double LEAST_MPA = 0.2;

  private static final double MOST_MPA = 60;

  /** A factor held back by less is not told: it stands in the table with two places. */
  private static final double TOLD = 1.005;

  private final Catalog catalog;
  private final LearningRules rules;

  /**
   * @param catalog as shipped
   * @param rules policy of learning
   */
  public BenchLearning(Catalog catalog, LearningRules rules) {
    this.catalog = catalog;
    this.rules = rules;
  }

  /**
   * What the observations make of their classes, in the catalogue's order.
   *
   * @throws annulus.quantity.InvalidValue when a joint was seen fixed before it was seen not fixed,
   *     or an observation is not {@link #believed}
   */
  public List<Learned> learn(List<Observation> seen) {
    List<Learned> learned = new ArrayList<>();
    for (CompoundClass compound : catalog.compounds().values()) {
      List<Observation> own =
          seen.stream().filter(o -> o.joint().compoundId().equals(compound.id())).toList();
      own.forEach(this::believed);
      if (!own.isEmpty()) {
        learned.add(new OneClass(compound, own).learned());
      }
    }
    return learned;
  }

  /**
   * The same observation, when it may be learned from.
   *
   * @param seen of a class of the catalogue
   * @throws annulus.quantity.InvalidValue when it is so far from what is expected that something
   *     else is wrong
   */
  public Observation believed(Observation seen) {
    CompoundClass compound = catalog.compounds().get(seen.joint().compoundId());
    new BelievableRange(compound, new ObservedCure(catalog, compound.cure()), rules).check(seen);
    return seen;
  }

  /** The learning of one class. */
  private final class OneClass {
    private final CompoundClass compound;
    private final CompoundClass.Cure cure;
    private final List<Observation> seen;
    private final WatchedJoints joints;
    private final PullTests pulls;
    private final Outcome time;
    private final Outcome weakness;
    private final List<String> held = new ArrayList<>();

    OneClass(CompoundClass compound, List<Observation> seen) {
      this.compound = compound;
      this.cure = compound.cure();
      this.seen = seen;
      ObservedCure observed = new ObservedCure(catalog, cure);
      this.joints = new WatchedJoints(cure, observed, rules, seen);
      this.pulls = new PullTests(compound, observed, rules, seen);
      this.time = time();
      this.weakness = weakness();
    }

    Learned learned() {
      double factor = Math.exp(time.answer().centreLn());
      double laterFactor = isLater() ? factor : Math.max(1, factor);
      double strengthFactor = Math.exp(-weakness.answer().centreLn());
      tellTimes();
      if (laterFactor > factor) {
        held.add("stages after fixture stay as shipped: " + soundPulls("least-pulls-later-stages"));
      }
      tellStrength();
      return new Learned(
          compound,
          changed(factor, laterFactor),
          time.posterior(),
          factor,
          laterFactor,
          -Math.log(weakness.posterior().factor(0.5)),
          weakness.posterior().sigmaLn(),
          strengthFactor,
          joints.count(),
          pulls.count(),
          date(false),
          date(true),
          held,
          Stream.concat(joints.notCounted().stream(), pulls.notCounted().stream()).toList(),
          Stream.concat(joints.tooSlow().stream(), pulls.tooWeak().stream()).toList());
    }

    private LocalDate date(boolean last) {
      return seen.stream()
          .map(o -> o.joint().date())
          .reduce((a, b) -> a.isBefore(b) == last ? b : a)
          .orElseThrow();
    }

    /** Whether enough pull tests show that the later stages may follow the fixture. */
    private boolean isLater() {
      return pulls.sound(pulls.count()) >= rules.value("least-pulls-later-stages");
    }

    private String soundPulls(String wanted) {
      return pulls.sound(pulls.count())
          + " of "
          + Numbers.plain(rules.value(wanted))
          + " pull tests";
    }

    private Outcome time() {
      return FactorLearning.of(
          cure.spreadLn(),
          Math.max(cure.spreadLn(), rules.value("spread-floor-ln")),
          new Scatter(rules.value("joint-spread-ln"), rules.value("joint-spread-more-ln")),
          joints.limits(),
          this::bestTime);
    }

    /** On thin evidence, and never without pull tests, does the spread narrow. */
    private Best bestTime(int first) {
      boolean thin = joints.isThin(first);
      double floor = rules.value("spread-floor-ln");
      return new Best(
          thin ? 0 : Math.log(rules.value("time-factor-least")),
          thin || !isLater() ? Math.max(floor, cure.spreadLn()) : floor);
    }

    /**
     * Normal prior from the shipped limits; weaker is worse, so it is the weakness that is sought.
     */
    private Outcome weakness() {
      Estimate shipped = compound.strengthMPa();
      double shippedSpread = Math.log(shipped.high() / shipped.low()) / (2 * Spread.LIMIT_Z);
      return FactorLearning.of(
          pulls.shippedSpreadLn(),
          Math.max(rules.value("strength-prior-floor-ln"), shippedSpread),
          new Scatter(rules.value("pull-spread-ln"), rules.value("pull-spread-more-ln")),
          pulls.weakness(),
          this::bestStrength);
    }

    private Best bestStrength(int first) {
      return pulls.sound(first) >= rules.value("least-pulls-stronger")
          ? new Best(-Math.log(rules.value("strength-factor-most")), 0)
          : new Best(0, pulls.shippedSpreadLn());
    }

    private void tellTimes() {
      double median = joints.count() == 0 ? 1 : time.posterior().factor(0.5);
      double least = rules.value("time-factor-least");
      boolean thin = joints.isThin(joints.count());
      if (time.contradicting()) {
        held.add(
            "the joints do not fit each other or the shipped times: neither times nor spread are"
                + " taken below the shipped ones");
      } else if (median < 1 && thin) {
        held.add(
            "the times are not shortened: "
                + joints.inTime()
                + " of "
                + Numbers.plain(rules.value("least-joints-sooner"))
                + " joints, on at least "
                + Numbers.plain(rules.value("least-days-sooner"))
                + " days");
      } else if (median < least) {
        held.add("the time factor is held at " + Numbers.plain(least));
      }
      if (!time.contradicting() && !thin && isHeldBack(time, Math.max(median, least))) {
        held.add("a slow joint is no evidence for sooner: the times are those of the others");
      }
      if (joints.count() > 0
          && (thin || !isLater())
          && time.posterior().nextSigmaLn() < cure.spreadLn()) {
        held.add("the spread stays as shipped");
      }
    }

    private void tellStrength() {
      double factor = pulls.count() == 0 ? 1 : 1 / weakness.posterior().factor(0.5);
      double most = rules.value("strength-factor-most");
      if (weakness.contradicting()) {
        held.add(
            "the pull tests do not fit each other or the shipped strength: the strength is not"
                + " raised and its low end not either");
      } else if (factor > 1 && pulls.sound(pulls.count()) < rules.value("least-pulls-stronger")) {
        held.add("the strength is not raised: " + soundPulls("least-pulls-stronger"));
      } else if (factor > most) {
        held.add("the strength factor is held at " + Numbers.plain(most));
      } else if (isHeldBack(weakness, 1 / factor)) {
        held.add(
            "a weak pull test is no evidence for stronger: the strength is that of the others");
      }
    }

    /** Whether the worst joints left the answer worse than all joints together say. */
    private boolean isHeldBack(Outcome outcome, double all) {
      return Math.exp(outcome.answer().centreLn()) > all * TOLD;
    }

    private CompoundClass changed(double factor, double laterFactor) {
      int seenCount = joints.count() + pulls.count();
      String source = "shop: " + seenCount + " observations, " + date(false) + " to " + date(true);
      Provenance provenance =
          new Provenance(source + "; before: " + compound.provenance().source(), Confidence.LOW);
      return ClassChange.with(compound, strengthMPa(), cure(factor, laterFactor), provenance);
    }

    /** The low end falls with the likely value at once and rises only with it. */
    private Estimate strengthMPa() {
      Estimate shipped = compound.strengthMPa();
      if (pulls.count() == 0) {
        return shipped;
      }
      double factor = Math.exp(-weakness.answer().centreLn());
      double likely = Math.min(MOST_MPA, Math.max(LEAST_MPA, shipped.likely() * factor));
      double low = shipped.likely() * Math.exp(-weakness.answer().sureLn());
      double high = Math.max(likely, shipped.high() * factor);
      return new Estimate(
          Math.min(likely, Math.max(LEAST_MPA, low)), likely, Math.min(MOST_MPA, high));
    }

    private CompoundClass.Cure cure(double factor, double laterFactor) {
      List<CompoundClass.StagePoint> stages = new ArrayList<>();
      for (CompoundClass.StagePoint s : cure.stages()) {
        double by = s.stage() == Stage.FIXTURE ? factor : laterFactor;
        stages.add(new CompoundClass.StagePoint(s.stage(), s.fraction(), s.hours() * by));
      }
      double slower = Math.max(1, laterFactor);
      // It may grab sooner than shipped from the first sign of it, and is never given longer.
      double working = Math.exp(time.bestLn());
      Estimate minutes = cure.workingMinutes();
      return new CompoundClass.Cure(
          cure.referenceC(),
          cure.referenceGapUm(),
          cure.gapExponent(),
          cure.activationKJ(),
          cure.minimumC(),
          cure.cautionBelowC(),
          cure.heldAboveC(),
          time.answer().spreadLn(),
          stages,
          cure.completeHours() * laterFactor,
          cure.slowFullHours() * slower,
          new Estimate(
              Math.max(0.1, minutes.low() * working),
              Math.max(0.1, minutes.likely() * working),
              minutes.high()));
    }
  }
}
