package annulus.advice;

import annulus.advice.FactorPosterior.Limits;
import annulus.advice.Observation.Fixed;
import annulus.advice.Observation.Joint;
import annulus.advice.Observation.Pull;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.catalog.Stage;
import annulus.quantity.Estimate;
import annulus.quantity.Numbers;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Updates a class by what a shop saw of its own joints. Slower or weaker than shipped counts at
 * once; quicker or stronger only on as much evidence as the policy asks for.
 */
public final class BenchLearning {
  /** Limits of estimates are 5 % points of a log-normal, as in the cure plan. */
  private static final double LIMIT_Z = 1.6448536269514722;

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
   * @throws annulus.quantity.InvalidValue when a joint was seen fixed before it was seen not fixed
   */
  public List<Learned> learn(List<Observation> seen) {
    List<Learned> learned = new ArrayList<>();
    for (CompoundClass compound : catalog.compounds().values()) {
      List<Observation> own =
          seen.stream().filter(o -> o.joint().compoundId().equals(compound.id())).toList();
      if (!own.isEmpty()) {
        learned.add(new OneClass(compound, own).learned());
      }
    }
    return learned;
  }

  /** The learning of one class. */
  private final class OneClass {
    private final CompoundClass compound;
    private final CompoundClass.Cure cure;
    private final ObservedCure observed;
    private final List<Observation> seen;
    private final List<String> held = new ArrayList<>();
    private final List<String> notCounted = new ArrayList<>();

    OneClass(CompoundClass compound, List<Observation> seen) {
      this.compound = compound;
      this.cure = compound.cure();
      this.observed = new ObservedCure(catalog, compound.cure());
      this.seen = seen;
    }

    Learned learned() {
      Map<String, Limits> limits = limits();
      double prior = Math.max(cure.spreadLn(), rules.value("spread-floor-ln"));
      FactorPosterior time = FactorPosterior.of(prior, List.copyOf(limits.values()));
      List<Double> pulls = pulls();
      double[] strength = strength(pulls);
      double factor = timeFactor(time, limits.size());
      boolean later = pulls.size() >= rules.value("least-pulls-later-stages");
      double laterFactor = later ? factor : Math.max(1, factor);
      if (laterFactor > factor) {
        held.add(
            "stages after fixture stay as shipped: "
                + pulls.size()
                + " of "
                + Numbers.plain(rules.value("least-pulls-later-stages"))
                + " pull tests");
      }
      double strengthFactor = strengthFactor(strength[0], pulls.size());
      boolean thin = !later || isThin(limits.size());
      return new Learned(
          compound,
          changed(time, factor, laterFactor, thin, strengthFactor, strength, pulls.size(), limits),
          time,
          factor,
          laterFactor,
          strength[0],
          strength[1],
          strengthFactor,
          limits.size(),
          pulls.size(),
          date(false),
          date(true),
          held,
          notCounted);
    }

    private LocalDate date(boolean last) {
      return seen.stream()
          .map(o -> o.joint().date())
          .reduce((a, b) -> a.isBefore(b) == last ? b : a)
          .orElseThrow();
    }

    /** Between which limits each joint's own time factor lies, ln. */
    private Map<String, Limits> limits() {
      Map<String, Limits> limits = new LinkedHashMap<>();
      for (Observation o : seen) {
        if (o instanceof Fixed fixed) {
          add(limits, fixed);
        }
      }
      return limits;
    }

    private void add(Map<String, Limits> limits, Fixed fixed) {
      Joint joint = fixed.joint();
      Optional<ObservedCure.Faces> faces = observed.faces(joint);
      double hours = observed.hours(joint, fixed.after());
      if (faces.isEmpty() || (hours <= 0 && fixed.fixed())) {
        notCounted.add(
            joint.id()
                + ": by the data it "
                + (faces.isEmpty() ? "never cures on such faces" : "does not cure that cold"));
        return;
      }
      double needed =
          cure.at(Stage.FIXTURE).hours() * faces.get().timeFactor() * observed.gapFactor(joint);
      double ln = hours <= 0 ? Double.NEGATIVE_INFINITY : Math.log(hours / needed);
      double doubt = rules.value("temperature-plus-minus-c");
      double sigma = Math.hypot(rules.value("joint-spread-ln"), faces.get().sigmaLn());
      double all = Math.hypot(sigma, observed.temperatureSigma(joint, doubt));
      Limits before =
          limits.getOrDefault(
              joint.id(), new Limits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, all));
      limits.put(
          joint.id(),
          fixed.fixed()
              ? new Limits(before.lowLn(), Math.min(before.highLn(), ln), all)
              : new Limits(Math.max(before.lowLn(), ln), before.highLn(), all));
    }

    /** ln(measured strength over shipped) of the pull tests that count. */
    private List<Double> pulls() {
      List<Double> pulls = new ArrayList<>();
      for (Observation o : seen) {
        if (o instanceof Pull pull) {
          double fraction = observed.likelyFraction(pull.joint(), pull.after());
          if (fraction < rules.value("pull-fraction-least")) {
            notCounted.add(
                pull.joint().id()
                    + ": pulled when only "
                    + Numbers.fixed(fraction * 100, 0)
                    + " % of full strength was likely");
          } else if (isSlip(pull)) {
            notCounted.add(
                pull.joint().id()
                    + ": "
                    + Numbers.fixed(pull.strengthMPa(), 0)
                    + " MPa is far above the "
                    + Numbers.plain(compound.strengthMPa().high())
                    + " MPa of this class: a slip in force, diameter or length?");
          } else {
            double primed = pull.joint().primer().map(p -> p.strengthFactor().likely()).orElse(1.0);
            double expected = compound.strengthMPa().likely() * fraction * primed;
            pulls.add(Math.log(pull.strengthMPa() / expected));
          }
        }
      }
      return pulls;
    }

    /** One zero too many would hide several weak joints. */
    private boolean isSlip(Pull pull) {
      return pull.strengthMPa() > compound.strengthMPa().high() * rules.value("pull-slip-factor");
    }

    /**
     * Normal prior from the shipped limits, normal pull tests: mean and standard deviation of
     * ln(factor).
     */
    private double[] strength(List<Double> pulls) {
      Estimate shipped = compound.strengthMPa();
      double shippedSpread = Math.log(shipped.high() / shipped.low()) / (2 * LIMIT_Z);
      double prior = Math.max(rules.value("strength-prior-floor-ln"), shippedSpread);
      double scatter = rules.value("pull-spread-ln");
      double precision = 1 / (prior * prior) + pulls.size() / (scatter * scatter);
      double sum = pulls.stream().mapToDouble(Double::doubleValue).sum() / (scatter * scatter);
      return new double[] {sum / precision, Math.sqrt(1 / precision)};
    }

    private boolean isThin(int joints) {
      long days =
          seen.stream()
              .filter(Fixed.class::isInstance)
              .map(o -> o.joint().date())
              .distinct()
              .count();
      return joints < rules.value("least-joints-sooner") || days < rules.value("least-days-sooner");
    }

    private double timeFactor(FactorPosterior time, int joints) {
      double median = joints == 0 ? 1 : time.factor(0.5);
      if (median < 1 && isThin(joints)) {
        held.add(
            "the times are not shortened: "
                + joints
                + " of "
                + Numbers.plain(rules.value("least-joints-sooner"))
                + " joints, on at least "
                + Numbers.plain(rules.value("least-days-sooner"))
                + " days");
        return 1;
      }
      double least = rules.value("time-factor-least");
      if (median < least) {
        held.add("the time factor is held at " + Numbers.plain(least));
      }
      return Math.max(median, least);
    }

    private double strengthFactor(double meanLn, int pulls) {
      double factor = pulls == 0 ? 1 : Math.exp(meanLn);
      double most = rules.value("strength-factor-most");
      if (factor > 1 && pulls < rules.value("least-pulls-stronger")) {
        held.add(
            "the strength is not raised: "
                + pulls
                + " of "
                + Numbers.plain(rules.value("least-pulls-stronger"))
                + " pull tests");
        return 1;
      }
      if (factor > most) {
        held.add("the strength factor is held at " + Numbers.plain(most));
      }
      return Math.min(factor, most);
    }

    private CompoundClass changed(
        FactorPosterior time,
        double factor,
        double laterFactor,
        boolean thin,
        double strengthFactor,
        double[] strength,
        int pulls,
        Map<String, Limits> limits) {
      double own = Math.hypot(time.sigmaLn(), rules.value("joint-spread-ln"));
      double spread = Math.max(own, rules.value("spread-floor-ln"));
      // On thin evidence, and never without pull tests, does the spread narrow.
      double kept = limits.isEmpty() ? cure.spreadLn() : spread;
      double used = Math.min(2, thin ? Math.max(kept, cure.spreadLn()) : kept);
      if (thin && kept < cure.spreadLn()) {
        held.add("the spread stays as shipped");
      }
      int seenCount = limits.size() + pulls;
      String source = "shop: " + seenCount + " observations, " + date(false) + " to " + date(true);
      Provenance provenance =
          new Provenance(source + "; before: " + compound.provenance().source(), Confidence.LOW);
      return ClassChange.with(
          compound,
          strengthMPa(strengthFactor, strength, pulls),
          cure(factor, laterFactor, used, limits.isEmpty() ? 1 : time.factor(0.5)),
          provenance);
    }

    /** The low end falls with the likely value at once and rises only with it. */
    private Estimate strengthMPa(double factor, double[] strength, int pulls) {
      Estimate shipped = compound.strengthMPa();
      if (pulls == 0) {
        return shipped;
      }
      double likely = Math.min(60, shipped.likely() * factor);
      double spread = Math.hypot(strength[1], rules.value("pull-spread-ln"));
      double low = likely * Math.exp(-LIMIT_Z * spread);
      boolean enough = pulls >= rules.value("least-pulls-stronger");
      double lowest = enough ? low : Math.min(low, shipped.low() * Math.min(1, factor));
      double high = Math.max(likely, shipped.high() * factor);
      return new Estimate(Math.max(0.2, lowest), likely, Math.min(60, high));
    }

    private CompoundClass.Cure cure(
        double factor, double laterFactor, double spread, double quickest) {
      List<CompoundClass.StagePoint> stages = new ArrayList<>();
      for (CompoundClass.StagePoint s : cure.stages()) {
        double by = s.stage() == Stage.FIXTURE ? factor : laterFactor;
        stages.add(new CompoundClass.StagePoint(s.stage(), s.fraction(), s.hours() * by));
      }
      double slower = Math.max(1, laterFactor);
      // It may grab sooner than shipped from the first sign of it, and is never given longer.
      double working = Math.min(1, quickest);
      Estimate minutes = cure.workingMinutes();
      return new CompoundClass.Cure(
          cure.referenceC(),
          cure.referenceGapUm(),
          cure.gapExponent(),
          cure.activationKJ(),
          cure.minimumC(),
          cure.cautionBelowC(),
          cure.heldAboveC(),
          spread,
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
