package annulus.advice;

import annulus.advice.Advice.Condition;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.HandBackCondition;
import annulus.catalog.Catalog;
import annulus.catalog.Consequence;
import annulus.catalog.ReleaseRule;
import annulus.catalog.Stage;
import annulus.hold.LoadCheck;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** When a joint may be handed back: the latest of all conditions, or never. */
final class Release {
  private Release() {}

  /**
   * A dry fit holds when it is home. There is no hand-back when its grip goes to nothing at an end
   * of the service range, or does not surely hold the load, when nobody knows what the members
   * bear, or when old compound has to come off first: then nobody knows yet what was measured.
   */
  static Optional<HandBack> dryFit(JointOrder order, Optional<PressReport> press) {
    boolean covered =
        press.filter(p -> isBorne(p, order.consequence()) && grips(p)).isPresent()
            && !order.hasOldCompound()
            && (order.load().isEmpty()
                || press
                    .flatMap(PressReport::load)
                    .filter(LoadCheck.Verdict.COVERED::equals)
                    .isPresent());
    HandBackCondition none = new HandBackCondition(Condition.DRY_FIT, Duration.ZERO);
    return covered
        ? Optional.of(
            new HandBack(
                wholeMinute(order.start()), Duration.ZERO, List.of(none), Condition.DRY_FIT))
        : Optional.empty();
  }

  /**
   * What reads as a press fit, though not surely, goes out bonded only where it might pressed, too:
   * otherwise a worse measurement would release what a better one holds back.
   */
  static boolean heldBackAsPressFit(JointOrder order, FitBelief fit, Optional<PressReport> press) {
    return fit.readsDry() && dryFit(order, press).isEmpty();
  }

  /**
   * Whether the members are known to bear it. Of a laminate, a plastic or an unknown strength no
   * order can say so: that is the part maker's word, and only a nuisance goes out on it.
   */
  static boolean isBorne(PressReport press, Consequence consequence) {
    return switch (press.standing()) {
      case WITHIN, MAY_EXCEED -> true;
      case DIAMETER_MISSING -> press.borneWhateverDiameters();
      case LIMIT_NOT_KNOWN, NO_HONEST_FIGURE -> consequence == Consequence.NUISANCE;
      case EXCEEDS -> false;
    };
  }

  /**
   * By its least hold, of which something must be sure where a member may give way; where no figure
   * can be given, by the interference that is left.
   */
  private static boolean grips(PressReport press) {
    boolean mayGiveWay = press.standing() == PressReport.Standing.MAY_EXCEED;
    return press
        .leastHold()
        .map(h -> (mayGiveWay ? h.low() : h.likely()) > 0)
        .orElse(press.loosestRadialUm() < 0);
  }

  /**
   * The earliest safe hand-back of a bonded joint; empty when a condition is never met, or when old
   * compound has to come off first: then the gap is another one.
   *
   * @param plan the cure of its class
   * @param cure the times of that plan
   * @param fractionWanted strength fraction that covers the load, above 1 where none does; empty
   *     without a load
   */
  static Optional<HandBack> of(
      JointOrder order,
      Catalog catalog,
      CurePlan plan,
      CureTimes cure,
      OptionalDouble fractionWanted) {
    if (order.hasOldCompound()) {
      return Optional.empty();
    }
    ReleaseRule rule = catalog.release().get(order.consequence());
    List<HandBackCondition> conditions = new ArrayList<>();
    Duration rest =
        Duration.ofSeconds(
            (long) Math.ceil(60 * catalog.policy().value("undisturbed-after-fixture-min")));
    boolean rested =
        add(conditions, Condition.FIXTURE_AND_REST, cure.at(Stage.FIXTURE).sure().map(rest::plus));
    boolean staged = add(conditions, Condition.POLICY_STAGE, cure.at(rule.stage()).sure());
    boolean slow =
        !rule.slowPractice() || add(conditions, Condition.SLOW_PRACTICE, cure.slowPracticeFull());
    boolean carried = load(conditions, plan, fractionWanted);
    if (!(rested && staged && slow && carried)) {
      return Optional.empty();
    }
    HandBackCondition last = conditions.get(0);
    for (HandBackCondition condition : conditions) {
      last = condition.after().compareTo(last.after()) > 0 ? condition : last;
    }
    Duration after = wholeMinutes(last.after());
    Instant at = wholeMinute(order.start().plus(after));
    return Optional.of(new HandBack(at, after, conditions, last.condition()));
  }

  private static boolean load(
      List<HandBackCondition> conditions, CurePlan plan, OptionalDouble fractionWanted) {
    if (fractionWanted.isEmpty()) {
      return true;
    }
    double fraction = fractionWanted.getAsDouble();
    return fraction <= 1
        && add(conditions, Condition.HOLD_COVERS_LOAD, plan.sure(Math.max(fraction, 1e-9)));
  }

  private static boolean add(
      List<HandBackCondition> conditions, Condition condition, Optional<Duration> after) {
    if (after.isEmpty()) {
      return false;
    }
    conditions.add(new HandBackCondition(condition, after.get()));
    return true;
  }

  private static Duration wholeMinutes(Duration duration) {
    return Duration.ofMinutes((duration.toSeconds() + 59) / 60);
  }

  private static Instant wholeMinute(Instant instant) {
    long seconds = instant.getEpochSecond() + (instant.getNano() > 0 ? 1 : 0);
    return Instant.ofEpochSecond(Math.floorDiv(seconds + 59, 60L) * 60);
  }
}
