package annulus.advice;

import annulus.advice.FactorPosterior.Limits;
import annulus.advice.Observation.Fixed;
import annulus.advice.Observation.Joint;
import annulus.catalog.CompoundClass;
import annulus.cure.Spread;
import annulus.quantity.Numbers;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The joints of one class whose fixture was watched, the slowest last. */
final class WatchedJoints {
  /**
   * A joint.
   *
   * @param joint which
   * @param limits of its own time factor
   */
  private record Watched(Joint joint, Limits limits) {}

  private final CompoundClass.Cure cure;
  private final ObservedCure observed;
  private final LearningRules rules;
  private final List<Watched> joints;
  private final List<String> notCounted = new ArrayList<>();

  WatchedJoints(
      CompoundClass.Cure cure, ObservedCure observed, LearningRules rules, List<Observation> seen) {
    this.cure = cure;
    this.observed = observed;
    this.rules = rules;
    Map<String, Watched> byName = new LinkedHashMap<>();
    for (Observation o : seen) {
      if (o instanceof Fixed fixed) {
        add(byName, fixed);
      }
    }
    this.joints =
        byName.values().stream()
            .sorted(
                Comparator.comparing(Watched::limits, FactorLearning.WORST_LAST)
                    .thenComparing(w -> w.joint().date())
                    .thenComparing(w -> w.joint().id()))
            .toList();
  }

  private void add(Map<String, Watched> byName, Fixed fixed) {
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
    double needed = observed.fixtureHours(joint).orElseThrow();
    double ln = hours <= 0 ? Double.NEGATIVE_INFINITY : Math.log(hours / needed);
    double doubt = observed.temperatureSigma(joint, rules.value("temperature-plus-minus-c"));
    Watched known = byName.get(joint.id());
    Limits before =
        known == null
            ? new Limits(
                Double.NEGATIVE_INFINITY,
                Double.POSITIVE_INFINITY,
                Math.hypot(faces.get().sigmaLn(), doubt))
            : known.limits();
    Limits after =
        fixed.fixed()
            ? new Limits(before.lowLn(), Math.min(before.highLn(), ln), before.sigmaLn())
            : new Limits(Math.max(before.lowLn(), ln), before.highLn(), before.sigmaLn());
    byName.put(joint.id(), new Watched(joint, after));
  }

  List<Limits> limits() {
    return joints.stream().map(Watched::limits).toList();
  }

  int count() {
    return joints.size();
  }

  /** ln of the factor by which the shipped data call a joint surely fixed. */
  private double shippedSureLn() {
    return Spread.LIMIT_Z * cure.spreadLn();
  }

  /** Joints among the first so many that speak for times no longer than shipped. */
  private List<Joint> inTime(int first) {
    return joints.stream()
        .limit(first)
        .filter(w -> w.limits().highLn() <= shippedSureLn())
        .map(Watched::joint)
        .toList();
  }

  /** How many joints were seen fixed when the shipped data say so. */
  int inTime() {
    return inTime(joints.size()).size();
  }

  /** Whether the first so many are too few to shorten a time. */
  boolean isThin(int first) {
    List<Joint> inTime = inTime(first);
    Set<LocalDate> days = new HashSet<>();
    inTime.forEach(j -> days.add(j.date()));
    return inTime.size() < rules.value("least-joints-sooner")
        || days.size() < rules.value("least-days-sooner");
  }

  /** Observations that could not be counted, in words. */
  List<String> notCounted() {
    return notCounted.stream().distinct().sorted().toList();
  }

  /** Joints that were loose when the shipped data call them surely fixed, in words. */
  List<String> tooSlow() {
    List<String> slow = new ArrayList<>();
    for (Watched w : joints) {
      if (w.limits().lowLn() > shippedSureLn()) {
        boolean never = w.limits().highLn() == Double.POSITIVE_INFINITY;
        slow.add(
            w.joint().id()
                + (never ? " was never seen fixed: still loose after " : " was still loose after ")
                + Numbers.fixed(Math.exp(w.limits().lowLn()), 1)
                + " times the expected time, when 95 % are surely fixed after "
                + Numbers.fixed(Math.exp(shippedSureLn()), 1)
                + " times: oil or old compound on the faces, another class or lot, less active"
                + " faces, colder than noted?");
      }
    }
    return slow;
  }
}
