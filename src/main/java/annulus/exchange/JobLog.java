package annulus.exchange;

import annulus.advice.ColdSteps;
import annulus.advice.JointOrder;
import annulus.advice.MeasuredCourse;
import annulus.advice.MeasuredCourse.Hole;
import annulus.cure.TemperatureHistory;
import java.io.IOException;
import java.io.Reader;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;

/**
 * A logger's file read as the course of one running job: cut to the time from the start of the
 * joint until now, in bounded memory. What lies between the start and the first reading, between
 * readings far apart, and between the last reading and now counts as the colder of the readings
 * beside it and the coldest of the plan.
 *
 * @param reading how the file was read
 * @param course what it says of the job
 */
public record JobLog(LoggerReading reading, MeasuredCourse course) {
  private static final double LEAST_STEP_SECONDS = 60;
  private static final double MOST_STEPS = 10_000;

  /**
   * Reads a log.
   *
   * @param file its name, for messages
   * @param source opens it anew
   * @param options what the user declares; the floor of gaps is set here
   * @param rules limits
   * @param order the running job, its cure as planned
   * @param now the log is cut here
   * @throws InputRefused when the file can't be read, or has no reading in that time
   * @throws IOException when reading fails
   */
  public static JobLog read(
      String file,
      Supplier<Reader> source,
      LoggerOptions options,
      LoggerRules rules,
      JointOrder order,
      Instant now)
      throws IOException {
    double floor = order.cure().history().coldestC() - order.cure().plusMinusC();
    double from = seconds(order.start());
    double until = seconds(now);
    ZoneId zone = options.zone();
    if (until <= from) {
      throw refused(
          file, "the joint starts at " + at(order.start(), zone) + ", after now " + at(now, zone));
    }
    double step = Math.max(LEAST_STEP_SECONDS, (until - from) / MOST_STEPS);
    List<ColdSteps> made = new ArrayList<>();
    LoggerReading reading =
        LoggerCsv.read(
            file,
            source,
            options.withFloor(floor),
            rules,
            () -> {
              made.add(new ColdSteps(from, until, step));
              return made.get(made.size() - 1);
            });
    ColdSteps steps = made.get(made.size() - 1);
    if (steps.isEmpty()) {
      throw refused(
          file,
          "has no readings between "
              + at(order.start(), zone)
              + " and "
              + at(now, zone)
              + "; it runs from "
              + at(reading.first(), zone)
              + " to "
              + at(reading.last(), zone));
    }
    return new JobLog(reading, course(steps, reading, order.start(), now, floor, rules));
  }

  private static OffsetDateTime at(Instant instant, ZoneId zone) {
    return instant.truncatedTo(ChronoUnit.SECONDS).atZone(zone).toOffsetDateTime();
  }

  private static InputRefused refused(String file, String problem) {
    return new InputRefused(
        List.of(
            new PlacedProblem(
                file, 0, 0, "", problem, "readings from the start of the joint until now")));
  }

  private static MeasuredCourse course(
      ColdSteps steps,
      LoggerReading reading,
      Instant start,
      Instant now,
      double floor,
      LoggerRules rules) {
    List<TemperatureHistory.Point> points = new ArrayList<>(steps.points());
    TemperatureHistory.Point first = points.get(0);
    TemperatureHistory.Point last = points.get(points.size() - 1);
    double length = seconds(now) - seconds(start);
    List<Hole> holes = new ArrayList<>();
    if (first.seconds() > 0) {
      double cold = Math.min(floor, first.celsius());
      holes.add(hole(0, first.seconds(), cold, first.celsius(), first.celsius()));
    }
    TemperatureHistory history = steps.history(floor);
    for (LoggerReading.Gap gap : reading.gaps()) {
      double from = Math.max(0, seconds(gap.start()) - seconds(start));
      double to = Math.min(length, seconds(gap.end()) - seconds(start));
      if (to > from) {
        double before = from > 0 ? beside(points, from, -1) : beside(points, to, 1);
        double after = to < length ? beside(points, to, 1) : beside(points, from, -1);
        holes.add(hole(from, to, gap.takenC(), before, after));
      }
    }
    if (last.seconds() < length) {
      double taken = Math.min(floor, last.celsius());
      boolean far = length - last.seconds() > reading.gapLimitSeconds();
      if (far) {
        holes.add(hole(last.seconds(), length, taken, last.celsius(), last.celsius()));
      }
      double held = far ? taken : last.celsius();
      history = history.then(last.seconds(), TemperatureHistory.constant(held));
    }
    holes.sort(Comparator.comparing(Hole::from));
    Duration until = Duration.between(start, now);
    return new MeasuredCourse(history, until, rules.plusMinusC(), holes);
  }

  /** The reading at a hole's end on the side away from the hole, or the nearest one, °C. */
  private static double beside(List<TemperatureHistory.Point> points, double at, int direction) {
    double found = points.get(direction < 0 ? 0 : points.size() - 1).celsius();
    for (TemperatureHistory.Point point : points) {
      if (point.seconds() < at && direction < 0) {
        found = point.celsius();
      } else if (point.seconds() == at) {
        found = point.celsius();
        if (direction < 0) {
          return found;
        }
      } else if (point.seconds() > at) {
        return found;
      }
    }
    return found;
  }

  private static Hole hole(double from, double to, double taken, double before, double after) {
    return new Hole(
        Duration.ofMillis(Math.round(from * 1000)),
        Duration.ofMillis(Math.round(to * 1000)),
        taken,
        Math.max(taken, before),
        Math.max(taken, after));
  }

  private static double seconds(Instant instant) {
    return instant.toEpochMilli() / 1000.0;
  }
}
