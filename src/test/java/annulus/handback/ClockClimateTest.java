package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.TemperatureHistory;
import annulus.handback.ClockClimate.Point;
import annulus.quantity.InvalidValue;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ClockClimateTest {
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
  private static final ClockClimate BENCH =
      ClockClimate.daily(
          VIENNA,
          List.of(
              new Point(360, 10), new Point(480, 20), new Point(1080, 20), new Point(1320, 12)));

  private static Instant at(String local) {
    return LocalDateTime.parse(local).atZone(VIENNA).toInstant();
  }

  private static double celsius(ClockClimate climate, String start, String then) {
    double seconds = Duration.between(at(start), at(then)).toSeconds();
    return climate.from(at(start)).celsiusAt(seconds);
  }

  @Test
  void it_follows_the_wall_clock_day_after_day() {
    assertEquals(20, celsius(BENCH, "2027-01-12T09:00", "2027-01-12T09:00"), 1e-9);
    assertEquals(15, celsius(BENCH, "2027-01-12T09:00", "2027-01-13T07:00"), 1e-9);
    assertEquals(16, celsius(BENCH, "2027-01-12T09:00", "2027-01-20T20:00"), 1e-9);
    // midnight lies a quarter of the way from 22:00 to 06:00
    assertEquals(11.5, celsius(BENCH, "2027-01-12T09:00", "2027-01-13T00:00"), 1e-9);
  }

  @Test
  void on_the_nights_the_clock_changes_the_morning_still_comes_by_the_wall_clock() {
    assertEquals(20, celsius(BENCH, "2027-03-27T09:00", "2027-03-28T08:00"), 1e-9);
    assertEquals(20, celsius(BENCH, "2027-10-30T09:00", "2027-10-31T08:00"), 1e-9);
    assertEquals(10, celsius(BENCH, "2027-10-30T09:00", "2027-11-05T06:00"), 1e-9);
    // five weeks on, across the change, and in the repeated weeks after it
    assertEquals(10, celsius(BENCH, "2027-03-01T09:00", "2027-04-20T06:00"), 1e-9);
    assertEquals(20, celsius(BENCH, "2027-03-01T09:00", "2027-05-20T08:00"), 1e-9);
  }

  @Test
  void the_spring_night_is_an_hour_shorter_and_the_autumn_night_an_hour_longer() {
    double spring = Duration.between(at("2027-03-27T22:00"), at("2027-03-28T06:00")).toHours();
    double autumn = Duration.between(at("2027-10-30T22:00"), at("2027-10-31T06:00")).toHours();
    assertEquals(7, spring);
    assertEquals(9, autumn);
    TemperatureHistory short7 = BENCH.from(at("2027-03-27T22:00"));
    TemperatureHistory long9 = BENCH.from(at("2027-10-30T22:00"));
    assertEquals(11, short7.celsiusAt(3.5 * 3600), 1e-9);
    assertEquals(11, long9.celsiusAt(4.5 * 3600), 1e-9);
  }

  @Test
  void in_the_skipped_hour_a_point_falls_on_the_change() {
    ClockClimate steps =
        ClockClimate.daily(VIENNA, List.of(new Point(149, 10), new Point(150, 30)));
    double before = celsius(steps, "2027-03-27T12:00", "2027-03-28T01:59");
    double after = celsius(steps, "2027-03-27T12:00", "2027-03-28T03:00");
    assertTrue(before < 10.1, "still falling to 10 just before the change: " + before);
    assertEquals(30, after, 1e-9);
  }

  @Test
  void in_the_hour_that_comes_twice_warming_waits_for_the_second_time() {
    ClockClimate rising =
        ClockClimate.daily(
            VIENNA,
            List.of(new Point(0, 10), new Point(150, 10), new Point(150, 30), new Point(1439, 30)));
    TemperatureHistory night = rising.from(at("2027-10-31T01:00"));
    assertEquals(10, night.celsiusAt(100 * 60.0), 1e-9);
    assertEquals(30, night.celsiusAt(151 * 60.0), 1e-9);
  }

  @Test
  void a_leap_day_is_a_day_like_others() {
    assertEquals(20, celsius(BENCH, "2028-02-28T09:00", "2028-02-29T12:00"), 1e-9);
    assertEquals(20, celsius(BENCH, "2028-02-28T09:00", "2028-03-01T08:00"), 1e-9);
  }

  @Test
  void a_cupboard_is_warm_in_its_hours_once_it_has_heated_up_and_else_as_its_room() {
    ClockClimate cupboard =
        BENCH.warmed(
            35,
            Map.of(DayOfWeek.TUESDAY, List.of(OpenSpan.of("08:00", "24:00"))),
            Duration.ofMinutes(40));
    assertEquals(20, celsius(cupboard, "2027-01-12T07:00", "2027-01-12T08:39"), 1e-9);
    assertEquals(35, celsius(cupboard, "2027-01-12T07:00", "2027-01-12T08:40"), 1e-9);
    assertEquals(35, celsius(cupboard, "2027-01-12T07:00", "2027-01-12T23:59"), 1e-9);
    assertEquals(11.5, celsius(cupboard, "2027-01-12T07:00", "2027-01-13T00:00"), 1e-9);
    assertEquals(20, celsius(cupboard, "2027-01-12T07:00", "2027-01-18T12:00"), 1e-9);
    assertEquals(35, celsius(cupboard, "2027-01-12T07:00", "2027-01-19T12:00"), 1e-9);
  }

  @Test
  void a_step_of_the_room_at_the_hour_of_switching_on_is_not_smoothed() {
    ClockClimate steps =
        ClockClimate.daily(
            VIENNA, List.of(new Point(0, 10), new Point(480, 10), new Point(480, 20)));
    ClockClimate cupboard =
        steps.warmed(
            35, Map.of(DayOfWeek.TUESDAY, List.of(OpenSpan.of("08:00", "18:00"))), Duration.ZERO);
    assertEquals(10, celsius(cupboard, "2027-01-12T00:00", "2027-01-12T07:59"), 1e-9);
    assertEquals(35, celsius(cupboard, "2027-01-12T00:00", "2027-01-12T08:00"), 1e-9);
  }

  @Test
  void a_cupboard_warm_across_midnight_stays_warm() {
    ClockClimate cupboard =
        BENCH.warmed(
            35,
            Map.of(
                DayOfWeek.TUESDAY, List.of(OpenSpan.of("08:00", "24:00")),
                DayOfWeek.WEDNESDAY, List.of(OpenSpan.of("00:00", "06:00"))),
            Duration.ofMinutes(30));
    for (int minute = 30; minute < 22 * 60; minute++) {
      double celsius = cupboard.from(at("2027-01-12T08:00")).celsiusAt(minute * 60.0);
      assertEquals(35, celsius, 1e-9, "minute " + minute);
    }
    assertEquals(10, celsius(cupboard, "2027-01-12T07:00", "2027-01-13T06:00"), 1e-9);
  }

  @Test
  void no_point_at_all_or_points_out_of_order_are_refused() {
    assertThrows(InvalidValue.class, () -> ClockClimate.daily(VIENNA, List.of()));
    assertThrows(
        InvalidValue.class,
        () -> ClockClimate.daily(VIENNA, List.of(new Point(600, 10), new Point(500, 12))));
  }

  @Property(tries = 200)
  void a_later_start_sees_the_same_clock(
      @ForAll @IntRange(min = 0, max = 30 * 24 * 60) int laterMinutes,
      @ForAll @DoubleRange(min = 0, max = 30) double days) {
    Instant start = at("2027-03-15T00:00");
    Instant later = start.plusSeconds(laterMinutes * 60L);
    double seconds = Math.rint(days * 86_400);
    double fromLater = BENCH.from(later).celsiusAt(seconds);
    double fromStart = BENCH.from(start).celsiusAt(seconds + laterMinutes * 60.0);
    assertEquals(fromStart, fromLater, 1e-6);
  }
}
