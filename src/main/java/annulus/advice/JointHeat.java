package annulus.advice;

import annulus.advice.JointOrder.CurePlace;
import annulus.cure.BodyWarmUp;
import annulus.cure.TemperatureHistory;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The temperature of a joint in a place that its parts must first take on: parts that come in
 * colder, and every part in a warm place. The parts are followed from the colder of what they
 * arrive with and the coldest the place ever is, so that a later start never comes out warmer.
 */
final class JointHeat {
  /** How long the part is followed at first, s; longer only where the cure lasts longer. */
  static final double NEAR_SECONDS = 14 * 86_400.0;

  /** Steps of the part's own course, s. */
  private static final double LEAST_STEP_SECONDS = NEAR_SECONDS / 20_000;

  /** Steps of the followed course; they lie on the clock. */
  private static final double STEP_SECONDS = 600;

  /** Turns of the place after which the part goes round with it, whatever it came in with. */
  private static final int TURNS = 4;

  private final BodyWarmUp body;
  private final CurePlace place;
  private final double fromC;
  private final double startSeconds;

  private JointHeat(BodyWarmUp body, CurePlace place, double fromC, double startSeconds) {
    this.body = body;
    this.place = place;
    this.fromC = fromC;
    this.startSeconds = startSeconds;
  }

  /**
   * How a joint comes into the place where it cures.
   *
   * @param warm whether parts must heat up in it
   * @param fan whether its air is moved
   * @param unsaidC what a member comes in with that does not say it, °C; above any place: it lies
   *     there already
   */
  record Entry(boolean warm, boolean fan, double unsaidC) {
    /** The parts lie where they cure, unless they say that they come in colder. */
    static final Entry LIES_THERE = new Entry(false, false, Double.POSITIVE_INFINITY);
  }

  /**
   * The place as the joint feels it; empty where the joint is as warm as the place.
   *
   * @param order the joint, closed at its start, in its place
   * @param entry how it comes into it
   * @param table how parts warm up
   * @param toTheEnd whether the part is followed for as long as anything cures; else for {@link
   *     #NEAR_SECONDS}, after which it counts as cold as the place ever is
   */
  static Optional<CurePlace> felt(
      JointOrder order, Entry entry, WarmUpTable table, boolean toTheEnd) {
    CurePlace place = order.cure();
    double arrives =
        Math.min(
            order.bore().arrivesAtC().orElse(entry.unsaidC()),
            order.part().arrivesAtC().orElse(entry.unsaidC()));
    if (!entry.warm() && arrives >= place.history().warmestC()) {
      return Optional.empty();
    }
    double from = Math.min(arrives, place.history().coldestC());
    double start = order.start().getEpochSecond();
    JointHeat heat = new JointHeat(table.slowestBody(order, entry.fan()), place, from, start);
    return Optional.of(heat.felt(toTheEnd));
  }

  private CurePlace felt(boolean toTheEnd) {
    TemperatureHistory cold = place.coldSide();
    double coldFromC = Math.min(fromC - place.plusMinusC(), cold.coldestC());
    String text =
        place.describedAs()
            + ", parts coming in at "
            + Numbers.plain(Math.rint(fromC * 10) / 10)
            + " °C";
    return new CurePlace(
        followed(fromC, place.history(), toTheEnd),
        followed(coldFromC, cold, toTheEnd),
        place.plusMinusC(),
        text,
        place.air());
  }

  private TemperatureHistory followed(double celsius, TemperatureHistory room, boolean toTheEnd) {
    if (!toTheEnd) {
      TemperatureHistory coldest = TemperatureHistory.constant(room.coldestC());
      return followed(celsius, room, NEAR_SECONDS).then(NEAR_SECONDS, coldest);
    }
    double turn = room.periodSeconds() > 0 ? room.periodSeconds() : NEAR_SECONDS;
    double until = room.settledSeconds() + TURNS * turn;
    TemperatureHistory known = followed(celsius, room, until);
    return known.then(until, asLast(known, room, until));
  }

  private TemperatureHistory followed(double celsius, TemperatureHistory room, double until) {
    ColdSteps steps = new ColdSteps(startSeconds, startSeconds + until, STEP_SECONDS);
    body.following(celsius, room, until, LEAST_STEP_SECONDS)
        .forEachPiece(
            until,
            (start, startC, end, endC) ->
                steps.piece(startSeconds + start, startC, startSeconds + end, endC));
    return steps.history(celsius);
  }

  /**
   * For ever as in the last turn of the place. A part still cooling then goes down by no more than
   * it went down in that turn, as it loses most of the rest in each.
   */
  private static TemperatureHistory asLast(
      TemperatureHistory known, TemperatureHistory room, double until) {
    double turn = room.periodSeconds();
    if (turn == 0) {
      double last = Math.min(known.celsiusAt(until), room.celsiusAt(until));
      return TemperatureHistory.constant(last);
    }
    TemperatureHistory lastTurn = known.from(until - turn);
    double falls = Math.max(0, lastTurn.celsiusAt(0) - known.celsiusAt(until));
    List<TemperatureHistory.Point> points = new ArrayList<>();
    lastTurn.forEachPiece(
        turn,
        (start, startC, end, endC) -> {
          add(points, start, startC - falls);
          add(points, end, endC - falls);
        });
    return TemperatureHistory.repeating(points, turn);
  }

  private static void add(List<TemperatureHistory.Point> points, double seconds, double celsius) {
    TemperatureHistory.Point next = new TemperatureHistory.Point(seconds, celsius);
    if (points.isEmpty() || !points.get(points.size() - 1).equals(next)) {
      points.add(next);
    }
  }
}
