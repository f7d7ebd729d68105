package annulus.handback;

import annulus.cure.TemperatureHistory;
import annulus.quantity.Check;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * A place whose temperature follows the wall clock, such as a heated workshop: straight lines
 * between points, across midnight as well, and steps where two points share a minute.
 *
 * <p>The wall clock is taken as it runs: on the night the clocks go forward the skipped hour's
 * points fall on the change, on the night they go back a point of the hour that comes twice is
 * taken the second time when it warms up and the first time when it cools down, the cold side.
 *
 * @param zone the place's time zone
 * @param days points per weekday in order; a weekday may have none
 */
public record ClockClimate(ZoneId zone, Map<DayOfWeek, List<Point>> days) {
  private static final int DAY_MINUTES = 24 * 60;

  /** Days written out before the weeks are taken as alike; longer than any usual cure. */
  private static final int LEAD_DAYS = 35;

  private static final int WEEK = 7;

  /**
   * A temperature at a time of day.
   *
   * @param minute after 00:00 on the wall clock, 0 to 1440
   * @param celsius temperature, °C
   */
  public record Point(int minute, double celsius) {
    /**
     * @throws InvalidValue when out of range
     */
    public Point {
      Check.within("at", minute, 0, DAY_MINUTES, "min");
      Check.within("c", celsius, -60, 120, "°C");
    }
  }

  private record Mark(long second, double celsius) {}

  /**
   * @throws InvalidValue when there is no point, or points of a day are out of order
   */
  public ClockClimate {
    Map<DayOfWeek, List<Point>> ordered = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      List<Point> points = List.copyOf(days.getOrDefault(day, List.of()));
      for (int i = 1; i < points.size(); i++) {
        if (points.get(i).minute() < points.get(i - 1).minute()) {
          throw new InvalidValue("profile", "times of day are out of order", "a rising order");
        }
      }
      ordered.put(day, points);
    }
    days = Collections.unmodifiableMap(ordered);
    if (days.values().stream().allMatch(List::isEmpty)) {
      throw new InvalidValue("profile", "has no point", "at least one time and temperature");
    }
  }

  /** The same points every day. */
  public static ClockClimate daily(ZoneId zone, List<Point> points) {
    Map<DayOfWeek, List<Point>> days = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      days.put(day, points);
    }
    return new ClockClimate(zone, days);
  }

  /** One temperature, °C, for ever. */
  public static ClockClimate constant(ZoneId zone, double celsius) {
    return daily(zone, List.of(new Point(0, celsius)));
  }

  /**
   * A cupboard in this place that is warm during its hours. While it heats up, and from the minute
   * it is switched off, it counts as no warmer than the place around it.
   *
   * @param warmC temperature when warm, °C
   * @param hours switched on, per weekday, in order and apart
   * @param heatUp from switching on until it is warm
   */
  public ClockClimate warmed(double warmC, Map<DayOfWeek, List<OpenSpan>> hours, Duration heatUp) {
    Map<DayOfWeek, List<Point>> warmed = new EnumMap<>(DayOfWeek.class);
    Map<DayOfWeek, List<OpenSpan>> on = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      on.put(day, OpeningHours.inOrder("hours", hours.getOrDefault(day, List.of())));
    }
    for (DayOfWeek day : DayOfWeek.values()) {
      List<OpenSpan> yesterday = on.get(day.minus(1));
      boolean stillOn =
          !yesterday.isEmpty()
              && yesterday.get(yesterday.size() - 1).toMinute() == DAY_MINUTES
              && yesterday.get(yesterday.size() - 1).fromMinute() + heatUp.toMinutes()
                  <= DAY_MINUTES;
      warmed.put(day, warmed(day, warmC, warmSpans(on.get(day), stillOn, heatUp)));
    }
    return new ClockClimate(zone, warmed);
  }

  /**
   * When it is warm: its hours less the time to heat up, which a span that goes on does not need.
   */
  private static List<OpenSpan> warmSpans(List<OpenSpan> on, boolean stillOn, Duration heatUp) {
    List<OpenSpan> warm = new ArrayList<>();
    int warmUntil = stillOn ? 0 : -1;
    for (OpenSpan span : on) {
      boolean goesOn = span.fromMinute() == warmUntil;
      int from = span.fromMinute() + (goesOn ? 0 : (int) heatUp.toMinutes());
      if (from < span.toMinute()) {
        warm.add(new OpenSpan(from, span.toMinute()));
        warmUntil = span.toMinute();
      }
    }
    return warm;
  }

  private List<Point> warmed(DayOfWeek day, double warmC, List<OpenSpan> spans) {
    List<Point> points = new ArrayList<>();
    int done = -1;
    for (OpenSpan span : spans) {
      around(points, day, done, span.fromMinute() + 1);
      points.add(new Point(span.fromMinute(), at(day, span.fromMinute())));
      points.add(new Point(span.fromMinute(), warmC));
      points.add(new Point(span.toMinute(), warmC));
      points.add(new Point(span.toMinute(), at(day, span.toMinute())));
      done = span.toMinute();
    }
    around(points, day, done, DAY_MINUTES + 1);
    return points;
  }

  private void around(List<Point> to, DayOfWeek day, int after, int before) {
    for (Point point : days.get(day)) {
      if (point.minute() > after && point.minute() < before) {
        to.add(point);
      }
    }
  }

  /** The coldest and the warmest that it is for any length of time, °C. */
  public Interval range() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    List<Point> week = new ArrayList<>();
    List<Integer> minutes = new ArrayList<>();
    for (int day = 0; day <= 2 * WEEK; day++) { // whichever day it begins with
      for (Point point : days.get(DayOfWeek.MONDAY.plus(day))) {
        week.add(point);
        minutes.add(day * DAY_MINUTES + point.minute());
      }
    }
    for (int i = 1; i < week.size(); i++) {
      if (minutes.get(i) > minutes.get(i - 1)) {
        low = Math.min(low, Math.min(week.get(i - 1).celsius(), week.get(i).celsius()));
        high = Math.max(high, Math.max(week.get(i - 1).celsius(), week.get(i).celsius()));
      }
    }
    return new Interval(low, high);
  }

  /** Temperature at a time of day, °C, by the wall clock alone; at a step the one after it. */
  private double at(DayOfWeek day, int minute) {
    double beforeAt = Double.NEGATIVE_INFINITY;
    double beforeC = 0;
    for (int back = -WEEK; back <= WEEK; back++) {
      for (Point point : days.get(day.plus(back))) {
        double here = back * (double) DAY_MINUTES + point.minute();
        if (here > minute) {
          double share = (minute - beforeAt) / (here - beforeAt);
          return beforeC + (point.celsius() - beforeC) * share;
        }
        beforeAt = here;
        beforeC = point.celsius();
      }
    }
    throw new IllegalStateException("a week without a point");
  }

  /**
   * The temperature from an instant on, on the shop's clock, changes of the clock included. After
   * five weeks the following week repeats; a change of the clock after that is not followed.
   *
   * @param start the instant
   * @return the history since then
   */
  public TemperatureHistory from(Instant start) {
    LocalDate today = LocalDateTime.ofInstant(start, zone).toLocalDate();
    LocalDate lead = today.plusDays(LEAD_DAYS);
    while (changesWithin(lead)) {
      lead = lead.plusDays(WEEK);
    }
    List<Mark> marks = marks(today.minusDays(WEEK + 1), lead.plusDays(2L * WEEK + 1));
    TemperatureHistory all = since(marks, marks.get(0).second());
    long leadEnd = midnight(lead);
    long weekEnd = midnight(lead.plusDays(WEEK));
    TemperatureHistory week = all.from(leadEnd - (double) marks.get(0).second());
    List<TemperatureHistory.Point> points = new ArrayList<>();
    week.forEachPiece(
        weekEnd - (double) leadEnd,
        (from, fromC, to, toC) -> {
          add(points, from, fromC);
          add(points, to, toC);
        });
    TemperatureHistory again = TemperatureHistory.repeating(points, weekEnd - (double) leadEnd);
    double gone = seconds(start) - marks.get(0).second();
    return all.from(gone).then(leadEnd - seconds(start), again);
  }

  private static double seconds(Instant instant) {
    return instant.getEpochSecond() + instant.getNano() * 1e-9;
  }

  private boolean changesWithin(LocalDate from) {
    ZoneOffsetTransition next =
        zone.getRules().nextTransition(Instant.ofEpochSecond(midnight(from.minusDays(1))));
    return next != null && next.toEpochSecond() <= midnight(from.plusDays(WEEK + 1L));
  }

  private long midnight(LocalDate date) {
    return at(date, 0, false);
  }

  private List<Mark> marks(LocalDate from, LocalDate to) {
    List<Point> points = new ArrayList<>();
    List<LocalDate> dates = new ArrayList<>();
    for (LocalDate date = from; date.isBefore(to); date = date.plusDays(1)) {
      for (Point point : days.get(date.getDayOfWeek())) {
        points.add(point);
        dates.add(date);
      }
    }
    List<Mark> marks = new ArrayList<>();
    long last = Long.MIN_VALUE;
    for (int i = 0; i < points.size(); i++) {
      double here = points.get(i).celsius();
      boolean rises = i > 0 && points.get(i - 1).celsius() < here;
      boolean willRise = i + 1 < points.size() && points.get(i + 1).celsius() > here;
      last = Math.max(last, at(dates.get(i), points.get(i).minute(), rises || willRise));
      marks.add(new Mark(last, here));
    }
    return marks;
  }

  private long at(LocalDate date, int minute, boolean secondTime) {
    LocalDateTime local = date.atStartOfDay().plusMinutes(minute);
    ZoneOffsetTransition change = zone.getRules().getTransition(local);
    if (change == null) {
      return local.toEpochSecond(zone.getRules().getOffset(local));
    }
    if (change.isGap()) {
      return change.toEpochSecond();
    }
    ZoneOffset offset = secondTime ? change.getOffsetAfter() : change.getOffsetBefore();
    return local.toEpochSecond(offset);
  }

  private static TemperatureHistory since(List<Mark> marks, long origin) {
    List<TemperatureHistory.Point> points = new ArrayList<>();
    marks.forEach(m -> add(points, m.second() - (double) origin, m.celsius()));
    return TemperatureHistory.holdingLast(points);
  }

  /** Adds a point; of those that share a time only the first and the last stay. */
  private static void add(List<TemperatureHistory.Point> points, double seconds, double celsius) {
    int size = points.size();
    if (size > 0
        && points.get(size - 1).seconds() == seconds
        && points.get(size - 1).celsius() == celsius) {
      return;
    }
    if (size > 1
        && points.get(size - 1).seconds() == seconds
        && points.get(size - 2).seconds() == seconds) {
      points.remove(size - 1);
    }
    points.add(new TemperatureHistory.Point(seconds, celsius));
  }
}
