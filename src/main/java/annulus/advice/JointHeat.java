package annulus.advice;

import annulus.advice.JointOrder.CurePlace;
import annulus.cure.BodyWarmUp;
import annulus.cure.TemperatureHistory;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * The temperature of a joint in a place that its parts must first take on: parts that come in
 * colder, and every part in a warm place. The parts are followed from the colder of what they
 * arrive with and the coldest the place ever is, so that a later start never comes out warmer.
 */
final class JointHeat {
  /** After this the part is taken at the coldest the place ever is. */
  private static final double FOLLOWED_SECONDS = 14 * 86_400.0;

  /** Steps of the followed course; they lie on the clock. */
  private static final double STEP_SECONDS = 600;

  private JointHeat() {}

  /**
   * The place as the joint feels it.
   *
   * @param order the joint, closed at its start
   * @param place the place since then
   * @param warm whether parts must heat up in it
   * @param fan whether its air is moved
   * @param table how parts warm up
   */
  static CurePlace felt(
      JointOrder order, CurePlace place, boolean warm, boolean fan, WarmUpTable table) {
    TemperatureHistory room = place.history();
    OptionalDouble coldest =
        Stream.of(order.bore(), order.part())
            .map(Member::arrivesAtC)
            .filter(OptionalDouble::isPresent)
            .mapToDouble(OptionalDouble::getAsDouble)
            .min();
    boolean comesColder = coldest.isPresent() && coldest.getAsDouble() < room.warmestC();
    if (!warm && !comesColder) {
      return place;
    }
    double bench = order.cure().history().coldestC();
    double arrives = Math.min(coldest.orElse(bench), bench);
    double from = Math.min(arrives, room.coldestC());
    BodyWarmUp body = table.slowestBody(order, fan);
    double start = order.start().getEpochSecond();
    TemperatureHistory cold = place.coldSide();
    double coldFrom = Math.min(from - place.plusMinusC(), cold.coldestC());
    return new CurePlace(
        followed(body, from, room, start),
        followed(body, coldFrom, cold, start),
        place.plusMinusC(),
        place.describedAs());
  }

  private static TemperatureHistory followed(
      BodyWarmUp body, double from, TemperatureHistory room, double origin) {
    ColdSteps steps = new ColdSteps(origin, origin + FOLLOWED_SECONDS, STEP_SECONDS);
    body.following(from, room, FOLLOWED_SECONDS)
        .forEachPiece(
            FOLLOWED_SECONDS,
            (start, startC, end, endC) -> steps.piece(origin + start, startC, origin + end, endC));
    return steps.history(from).then(FOLLOWED_SECONDS, TemperatureHistory.constant(room.coldestC()));
  }
}
