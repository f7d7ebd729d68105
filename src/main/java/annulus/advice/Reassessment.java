package annulus.advice;

import annulus.advice.JointOrder.CurePlace;
import annulus.advice.PromiseDesk.Told;
import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;
import annulus.cure.MeanKineticTemperature;
import annulus.cure.TemperatureHistory;
import annulus.quantity.Units;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A running job judged again by the temperature it really had.
 *
 * @param planned what was told by the plan alone
 * @param now what is told by the log so far and the plan for the rest
 * @param course the log
 * @param at when it is judged
 * @param typicalFraction strength fraction that half of all such joints have now
 * @param sureFraction strength fraction reached now at the wanted confidence
 * @param stage the last stage reached at the wanted confidence; empty before fixture
 * @param plannedC what the plan was worth so far, as one temperature, °C
 * @param measuredC what the log was worth so far, as one temperature, °C
 * @param holesStraight what would be told had the holes run straight between the readings around
 *     them; empty without holes
 */
public record Reassessment(
    Told planned,
    Told now,
    MeasuredCourse course,
    Instant at,
    double typicalFraction,
    double sureFraction,
    Optional<Stage> stage,
    OptionalDouble plannedC,
    OptionalDouble measuredC,
    Optional<Told> holesStraight) {

  /** How far the ready time moved, later above zero; empty where one of the two is never. */
  public Optional<Duration> moved() {
    Optional<Instant> before = planned.ready();
    Optional<Instant> after = now.ready();
    return before.isPresent() && after.isPresent()
        ? Optional.of(Duration.between(before.get(), after.get()))
        : Optional.empty();
  }

  /**
   * What is told later, by the plan or by the log: the safe one of the two where it is not sure
   * that the logger lay beside the joint.
   */
  public Told later() {
    boolean planLater = now.ready().isPresent() && moved().map(Duration::isNegative).orElse(true);
    return planLater ? planned : now;
  }

  /**
   * How long so far it was measured below what the class needs: no cure is counted there.
   *
   * @return zero where no class was chosen
   */
  public Duration tooCold() {
    Optional<CompoundClass> compound = now.advice().decision().compound();
    if (compound.isEmpty()) {
      return Duration.ZERO;
    }
    double least = compound.get().cure().minimumC();
    double[] seconds = {0};
    course
        .history()
        .forEachPiece(
            course.until().toMillis() / 1000.0,
            (fromS, fromC, toS, toC) -> seconds[0] += (toS - fromS) * below(least, fromC, toC));
    return Duration.ofSeconds(Math.round(seconds[0]));
  }

  /** Share of a straight piece that lies below a temperature, 0 to 1. */
  private static double below(double least, double fromC, double toC) {
    double low = Math.min(fromC, toC);
    double high = Math.max(fromC, toC);
    return high < least ? 1 : low >= least ? 0 : (least - low) / (high - low);
  }

  /**
   * Judges again.
   *
   * @param desk the desk
   * @param order the order as planned
   * @param course the log from its start until now
   */
  static Reassessment of(PromiseDesk desk, JointOrder order, MeasuredCourse course) {
    Told planned = desk.tell(order);
    CurePlace plan = order.cure();
    String text = "measured so far, then " + order.cure().describedAs();
    Told now = desk.tellLike(order, joined(course, course.history(), plan, text));
    Optional<Told> straight = Optional.empty();
    if (!course.holes().isEmpty()) {
      TemperatureHistory filled = course.withHolesStraight();
      straight = Optional.of(desk.tellLike(order, joined(course, filled, plan, text)));
    }
    double seconds = course.until().toMillis() / 1000.0;
    Optional<CurePlan> cure = plan(desk, now);
    return new Reassessment(
        planned,
        now,
        course,
        order.start().plus(course.until()),
        cure.map(c -> c.typicalFraction(seconds)).orElse(0.0),
        cure.map(c -> c.sureFraction(seconds)).orElse(0.0),
        stage(now, course.until()),
        worth(planned, seconds),
        worth(now, seconds),
        straight);
  }

  /** The log in its own doubt, then the plan in its. */
  private static CurePlace joined(
      MeasuredCourse course, TemperatureHistory soFar, CurePlace plan, String text) {
    double seconds = course.until().toMillis() / 1000.0;
    TemperatureHistory cold = soFar.shiftedBy(-course.plusMinusC());
    TemperatureHistory joined = soFar.then(seconds, plan.history().from(seconds));
    return new CurePlace(
        joined,
        cold.then(seconds, plan.coldSide().from(seconds)),
        Math.max(plan.plusMinusC(), course.plusMinusC()),
        text,
        joined);
  }

  private static Optional<CurePlan> plan(PromiseDesk desk, Told told) {
    Advice advice = told.advice();
    return advice
        .decision()
        .compound()
        .flatMap(
            c ->
                CurePlan.of(
                    advice.order(), desk.catalog(), c, advice.gap(), advice.decision().primer()));
  }

  private static Optional<Stage> stage(Told told, Duration until) {
    Optional<Stage> last = Optional.empty();
    if (told.advice().cure().isEmpty()) {
      return last;
    }
    for (Advice.StageTime time : told.advice().cure().get().stages()) {
      if (time.sure().filter(d -> d.compareTo(until) <= 0).isPresent()) {
        last = Optional.of(time.stage());
      }
    }
    return last;
  }

  /** What the joint felt so far as one temperature. */
  private static OptionalDouble worth(Told told, double seconds) {
    Optional<CompoundClass> compound = told.advice().decision().compound();
    if (compound.isEmpty()) {
      return OptionalDouble.empty();
    }
    double heat = compound.get().cure().activationKJ().likely() * 1000 / Units.GAS_CONSTANT;
    TemperatureHistory felt = told.advice().order().cure().history();
    return OptionalDouble.of(MeanKineticTemperature.of(heat, felt, seconds));
  }
}
