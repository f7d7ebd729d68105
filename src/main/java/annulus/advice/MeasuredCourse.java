package annulus.advice;

import annulus.cure.TemperatureHistory;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.util.List;

/**
 * What a logger says of a running job, from the start of the joint until now.
 *
 * @param history temperature since the start, holes on their cold side
 * @param until how long it reaches: now
 * @param plusMinusC doubt in it, half-width, °C
 * @param holes stretches without readings
 */
public record MeasuredCourse(
    TemperatureHistory history, Duration until, double plusMinusC, List<Hole> holes) {
  /**
   * A stretch without readings, since the start.
   *
   * @param from begin
   * @param to end
   * @param takenC temperature it is taken at, °C
   * @param beforeC last reading before it, °C; at the start the first one after it
   * @param afterC first reading after it, °C; at the end the last one before it
   */
  public record Hole(Duration from, Duration to, double takenC, double beforeC, double afterC) {
    /** Its length. */
    public Duration length() {
      return to.minus(from);
    }
  }

  /**
   * @throws InvalidValue when it does not reach past the start
   */
  public MeasuredCourse {
    holes = List.copyOf(holes);
    if (until.isZero() || until.isNegative()) {
      throw new InvalidValue("now", "is not after the start of the joint", "a later time");
    }
    Check.within("plusMinusC", plusMinusC, 0, 20, "°C");
  }

  /** Time without readings. */
  public Duration missing() {
    return holes.stream().map(Hole::length).reduce(Duration.ZERO, Duration::plus);
  }

  /** The same as if every hole had run straight between the readings around it. */
  TemperatureHistory withHolesStraight() {
    TemperatureHistory result = history;
    for (Hole hole : holes) {
      result = straight(result, hole);
    }
    return result;
  }

  private TemperatureHistory straight(TemperatureHistory in, Hole hole) {
    double from = hole.from().toMillis() / 1000.0;
    double to = hole.to().toMillis() / 1000.0;
    TemperatureHistory line =
        TemperatureHistory.holdingLast(
            List.of(
                new TemperatureHistory.Point(0, hole.beforeC()),
                new TemperatureHistory.Point(to - from, hole.afterC())));
    TemperatureHistory rest = line.then(to - from, in.from(to));
    return from > 0 ? in.then(from, rest) : rest;
  }
}
