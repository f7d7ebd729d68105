package annulus.cure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Temperature against time since the start: straight lines between points, steps where two points
 * share a time, and a rule for the time after the last point (hold it, or repeat a stretch).
 */
public final class TemperatureHistory {
  /** A temperature, °C, at a time since the start, s. */
  public record Point(double seconds, double celsius) {
    /**
     * @throws InvalidValue when before the start or out of range
     */
    public Point {
      Check.within("seconds", seconds, 0, Double.MAX_VALUE, "s");
      Celsius.check("celsius", celsius);
    }
  }

  private static final int HOLDS = -1;

  /** Points in order; the stretch from the point {@code repeatIndex} to the last one repeats. */
  private final double[] seconds;

  private final double[] celsius;
  private final int repeatIndex;

  /** The left side of a step at the start is dropped: nothing ever has that temperature. */
  private TemperatureHistory(List<Point> points, int repeatIndex) {
    boolean stepsAtStart = points.size() > 1 && points.get(1).seconds() == 0;
    List<Point> kept = stepsAtStart ? points.subList(1, points.size()) : points;
    this.seconds = new double[kept.size()];
    this.celsius = new double[kept.size()];
    for (int i = 0; i < seconds.length; i++) {
      seconds[i] = kept.get(i).seconds();
      celsius[i] = kept.get(i).celsius();
    }
    this.repeatIndex = stepsAtStart && repeatIndex > 0 ? repeatIndex - 1 : repeatIndex;
  }

  private TemperatureHistory(double[] seconds, double[] celsius, int repeatIndex) {
    this.seconds = seconds;
    this.celsius = celsius;
    this.repeatIndex = repeatIndex;
  }

  /** One temperature, °C, for ever. */
  public static TemperatureHistory constant(double celsius) {
    return new TemperatureHistory(List.of(new Point(0, celsius)), HOLDS);
  }

  /**
   * Straight lines between the points; the last temperature stays.
   *
   * @param points first at 0 s, times not falling, at most two at one time (a step)
   * @throws InvalidValue when not so
   */
  public static TemperatureHistory holdingLast(List<Point> points) {
    checkOrder(points);
    return new TemperatureHistory(points, HOLDS);
  }

  /**
   * A profile that repeats, such as a bench's 24 hours. Between the last point and the end of the
   * period the last temperature stays; where the ends differ there is a step.
   *
   * @param points first at 0 s, times not falling, at most two at one time, none after the period
   * @param periodSeconds length of the period, s, above 0
   * @throws InvalidValue when not so
   */
  public static TemperatureHistory repeating(List<Point> points, double periodSeconds) {
    checkOrder(points);
    Check.positive("periodSeconds", periodSeconds, "s");
    Point last = points.get(points.size() - 1);
    if (last.seconds() > periodSeconds) {
      throw new InvalidValue(
          "seconds",
          Numbers.plain(last.seconds()) + " s lies after the period",
          "at most " + Numbers.plain(periodSeconds) + " s");
    }
    List<Point> all = new ArrayList<>(points);
    append(all, new Point(periodSeconds, last.celsius()));
    return new TemperatureHistory(all, 0);
  }

  private static void checkOrder(List<Point> points) {
    if (points.isEmpty() || points.get(0).seconds() != 0) {
      throw new InvalidValue("points", "do not begin at the start", "first point at 0 s");
    }
    for (int i = 1; i < points.size(); i++) {
      double at = points.get(i).seconds();
      if (at < points.get(i - 1).seconds()) {
        throw new InvalidValue(
            "seconds",
            Numbers.plain(at) + " s comes after a later point",
            "at least " + Numbers.plain(points.get(i - 1).seconds()) + " s");
      }
      if (i > 1 && at == points.get(i - 2).seconds()) {
        throw new InvalidValue(
            "seconds", Numbers.plain(at) + " s has three points", "at most two (a step)");
      }
    }
  }

  /** Adds a point, keeping only the first and the last of those that share a time. */
  private static void append(List<Point> points, Point next) {
    int size = points.size();
    if (size > 0 && points.get(size - 1).equals(next)) {
      return;
    }
    if (size > 1
        && points.get(size - 1).seconds() == next.seconds()
        && points.get(size - 2).seconds() == next.seconds()) {
      points.remove(size - 1);
    }
    points.add(next);
  }

  /** The temperature, °C, at a time since the start, s; at a step the one after it. */
  public double celsiusAt(double atSeconds) {
    Check.within("seconds", atSeconds, 0, Double.MAX_VALUE, "s");
    double at = atSeconds;
    if (repeats() && at >= seconds[repeatIndex]) {
      at = seconds[repeatIndex] + (at - seconds[repeatIndex]) % period();
    }
    int after = firstAfter(at);
    if (after == seconds.length) {
      return celsius[after - 1];
    }
    double share = (at - seconds[after - 1]) / (seconds[after] - seconds[after - 1]);
    return celsius[after - 1] + (celsius[after] - celsius[after - 1]) * share;
  }

  private int firstAfter(double at) {
    int found = Arrays.binarySearch(seconds, at);
    int index = found < 0 ? -found - 1 : found;
    while (index < seconds.length && seconds[index] <= at) {
      index++;
    }
    return index;
  }

  /**
   * The same clock history seen from a later start.
   *
   * @param laterSeconds how much later, s, 0 or more
   */
  public TemperatureHistory from(double laterSeconds) {
    double here = celsiusAt(laterSeconds);
    double last = seconds[seconds.length - 1];
    if (!repeats() || laterSeconds < seconds[repeatIndex]) {
      List<Point> rest = new ArrayList<>();
      append(rest, new Point(0, here));
      int at = appendShifted(rest, 0, laterSeconds, -laterSeconds);
      return new TemperatureHistory(rest, repeats() ? at : HOLDS);
    }
    double phase = (laterSeconds - seconds[repeatIndex]) % period();
    double from = seconds[repeatIndex] + phase;
    List<Point> rest = new ArrayList<>();
    append(rest, new Point(0, here));
    appendShifted(rest, repeatIndex, from, -from);
    append(rest, new Point(last - from, celsius[repeatIndex]));
    int again = rest.size() - 1;
    appendShifted(rest, repeatIndex + 1, seconds[repeatIndex], last - from - seconds[repeatIndex]);
    return new TemperatureHistory(rest, again);
  }

  /** Appends the points later than a time, moved; gives where the repeat point went. */
  private int appendShifted(List<Point> to, int firstIndex, double laterThan, double shift) {
    int at = 0;
    for (int i = firstIndex; i < seconds.length; i++) {
      if (seconds[i] > laterThan) {
        append(to, new Point(Math.max(0, seconds[i] + shift), celsius[i]));
        at = i == repeatIndex ? to.size() - 1 : at;
      }
    }
    return at;
  }

  /**
   * This history up to a time, another one after it: a log so far and the plan for the rest.
   *
   * @param atSeconds when the other begins, s since the start of this one, above 0
   * @param next the history from then on
   */
  public TemperatureHistory then(double atSeconds, TemperatureHistory next) {
    Check.positive("atSeconds", atSeconds, "s");
    List<Point> points = new ArrayList<>();
    forEachPiece(
        atSeconds,
        (startSeconds, startC, endSeconds, endC) -> {
          append(points, new Point(startSeconds, startC));
          append(points, new Point(endSeconds, endC));
        });
    int repeat = HOLDS;
    for (int i = 0; i < next.seconds.length; i++) {
      append(points, new Point(atSeconds + next.seconds[i], next.celsius[i]));
      repeat = next.repeatIndex == i ? points.size() - 1 : repeat;
    }
    return new TemperatureHistory(points, repeat);
  }

  /**
   * Gives the linear pieces from the start to a time, s, in order; each begins exactly where the
   * last one ended, steps have no piece.
   */
  public void forEachPiece(double untilSeconds, PieceConsumer consumer) {
    Check.within("untilSeconds", untilSeconds, 0, Double.MAX_VALUE, "s");
    int last = seconds.length - 1;
    walk(0, 0, untilSeconds, consumer);
    if (repeats()) {
      for (long turn = 1; time(last, turn - 1) < untilSeconds; turn++) {
        walk(repeatIndex, turn, untilSeconds, consumer);
      }
    } else if (untilSeconds > seconds[last]) {
      consumer.piece(seconds[last], celsius[last], untilSeconds, celsius[last]);
    }
  }

  private void walk(int first, long turn, double until, PieceConsumer consumer) {
    for (int i = first; i < seconds.length - 1; i++) {
      double start = time(i, turn);
      double end = time(i + 1, turn);
      if (start >= until) {
        return;
      }
      if (end > start) {
        double stop = Math.min(end, until);
        double share = stop == end ? 1 : (stop - start) / (end - start);
        double stopC =
            share == 1 ? celsius[i + 1] : celsius[i] + (celsius[i + 1] - celsius[i]) * share;
        consumer.piece(start, celsius[i], stop, stopC);
      }
    }
  }

  /** When a point comes round for the given time; the first point of a turn ends the last turn. */
  private double time(int index, long turn) {
    if (turn == 0) {
      return seconds[index];
    }
    return index == repeatIndex
        ? time(seconds.length - 1, turn - 1)
        : seconds[index] + turn * period();
  }

  /** The same history, every temperature moved by the same amount, K. */
  public TemperatureHistory shiftedBy(double kelvin) {
    double[] moved = new double[celsius.length];
    for (int i = 0; i < moved.length; i++) {
      moved[i] = Celsius.check("celsius", celsius[i] + kelvin);
    }
    return new TemperatureHistory(seconds, moved, repeatIndex);
  }

  /** Lowest temperature that ever occurs, °C. */
  public double coldestC() {
    double coldest = celsius[0];
    for (double c : celsius) {
      coldest = Math.min(coldest, c);
    }
    return coldest;
  }

  /** Highest temperature that ever occurs, °C. */
  public double warmestC() {
    double warmest = celsius[0];
    for (double c : celsius) {
      warmest = Math.max(warmest, c);
    }
    return warmest;
  }

  /** From when on it repeats itself or stays as it is, s since the start. */
  public double settledSeconds() {
    return seconds[leadEnd()];
  }

  /** Length of what repeats, s; 0 where the last temperature stays. */
  public double periodSeconds() {
    return repeats() ? period() : 0;
  }

  boolean repeats() {
    return repeatIndex != HOLDS;
  }

  /** Index of the point from which the history repeats; that of the last point when it holds. */
  int leadEnd() {
    return repeats() ? repeatIndex : seconds.length - 1;
  }

  int size() {
    return seconds.length;
  }

  double pointSeconds(int index) {
    return seconds[index];
  }

  double pointCelsius(int index) {
    return celsius[index];
  }

  private double period() {
    return seconds[seconds.length - 1] - seconds[repeatIndex];
  }
}
