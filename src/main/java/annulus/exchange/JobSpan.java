package annulus.exchange;

import annulus.advice.ColdSteps;
import annulus.advice.JointOrder;
import annulus.advice.MeasuredCourse;
import annulus.advice.MeasuredCourse.Hole;
import annulus.cure.TemperatureHistory;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * The part of a log that counts for one running job.
 *
 * @param file name of the log, for messages
 * @param zone of the times in messages
 * @param start of the joint
 * @param now the log is cut here
 * @param floorC coldest of the plan, °C; a stretch without readings is not taken warmer
 */
record JobSpan(String file, ZoneId zone, Instant start, Instant now, double floorC) {
  private static final double LEAST_STEP_SECONDS = 60;
  private static final double MOST_STEPS = 10_000;

  /**
   * @throws InputRefused when the joint starts after now
   */
  static JobSpan of(String file, ZoneId zone, JointOrder order, Instant now) {
    double floorC = order.cure().history().coldestC() - order.cure().plusMinusC();
    JobSpan span = new JobSpan(file, zone, order.start(), now, floorC);
    if (span.untilSeconds() <= span.fromSeconds()) {
      throw span.refused(
          "the joint starts at " + span.at(order.start()) + ", after now " + span.at(now));
    }
    return span;
  }

  /** Begin, s since 1970. */
  double fromSeconds() {
    return seconds(start);
  }

  /** End, s since 1970. */
  double untilSeconds() {
    return seconds(now);
  }

  /** What gathers the pieces of the log, still empty. */
  ColdSteps steps() {
    double length = untilSeconds() - fromSeconds();
    double step = Math.max(LEAST_STEP_SECONDS, length / MOST_STEPS);
    return new ColdSteps(fromSeconds(), untilSeconds(), step);
  }

  /**
   * What the log says of the job.
   *
   * @param steps holds the pieces of the log
   * @param reading how it was read, with this floor for its gaps or without one
   * @param plusMinusC doubt in it, half-width, °C
   * @throws InputRefused when no reading lies within
   */
  MeasuredCourse course(ColdSteps steps, LoggerReading reading, double plusMinusC) {
    if (steps.isEmpty()) {
      throw refused(
          "has no readings between "
              + at(start)
              + " and "
              + at(now)
              + "; it runs from "
              + at(reading.first())
              + " to "
              + at(reading.last()));
    }
    List<TemperatureHistory.Point> points = new ArrayList<>(steps.points());
    TemperatureHistory.Point first = points.get(0);
    TemperatureHistory.Point last = points.get(points.size() - 1);
    double length = untilSeconds() - fromSeconds();
    List<Hole> holes = new ArrayList<>();
    if (first.seconds() > 0) {
      double cold = Math.min(floorC, first.celsius());
      holes.add(hole(0, first.seconds(), cold, first.celsius(), first.celsius()));
    }
    TemperatureHistory history = steps.history(floorC);
    for (LoggerReading.Gap gap : reading.gaps()) {
      double from = Math.max(0, seconds(gap.start()) - fromSeconds());
      double to = Math.min(length, seconds(gap.end()) - fromSeconds());
      if (to > from) {
        double before = from > 0 ? beside(points, from, -1) : beside(points, to, 1);
        double after = to < length ? beside(points, to, 1) : beside(points, from, -1);
        holes.add(hole(from, to, Math.min(floorC, gap.takenC()), before, after));
      }
    }
    if (last.seconds() < length) {
      double taken = Math.min(floorC, last.celsius());
      boolean far = length - last.seconds() > reading.gapLimitSeconds();
      if (far) {
        holes.add(hole(last.seconds(), length, taken, last.celsius(), last.celsius()));
      }
      double held = far ? taken : last.celsius();
      history = history.then(last.seconds(), TemperatureHistory.constant(held));
    }
    holes.sort(Comparator.comparing(Hole::from));
    Duration until = Duration.between(start, now);
    return new MeasuredCourse(history, until, plusMinusC, holes);
  }

  private OffsetDateTime at(Instant instant) {
    return instant.truncatedTo(ChronoUnit.SECONDS).atZone(zone).toOffsetDateTime();
  }

  private InputRefused refused(String problem) {
    return new InputRefused(
        List.of(
            new PlacedProblem(
                file, 0, 0, "", problem, "readings from the start of the joint until now")));
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
