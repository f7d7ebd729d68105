package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.cure.TemperatureHistory;
import annulus.handback.ClockClimate.Point;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Climates over many weeks and in the hour that comes twice, told from the wall clock by hand. */
class ClockWeeksTest {
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  private static Instant at(String local) {
    return LocalDateTime.parse(local).atZone(VIENNA).toInstant();
  }

  private static double after(ClockClimate climate, String start, double minutes) {
    return climate.from(at(start)).celsiusAt(minutes * 60);
  }

  /**
   * Warm from 08:00 to 18:00. A week with the change in it is an hour short or long: were it the
   * one that repeats, the clock would drift by an hour a week. Without drift it is off by an hour
   * at the most, for a change that lies beyond what is written out.
   */
  @ParameterizedTest
  @CsvSource({"2027-02-08, 50", "2027-09-12, 50"})
  void no_week_with_a_change_of_the_clock_is_the_one_that_repeats(LocalDate first, int starts) {
    ClockClimate day =
        ClockClimate.daily(
            VIENNA,
            List.of(
                new Point(480, 10), new Point(480, 20), new Point(1080, 20), new Point(1080, 10)));
    for (int i = 0; i < starts; i += 2) {
      LocalDate begun = first.plusDays(i);
      Instant start = begun.atTime(9, 0).atZone(VIENNA).toInstant();
      TemperatureHistory history = day.from(start);
      for (int k = 1; k <= 110; k += 3) {
        LocalDate then = begun.plusDays(k);
        assertEquals(20, history.celsiusAt(since(start, then, 13)), 1e-9, begun + " to " + then);
        assertEquals(10, history.celsiusAt(since(start, then, 1)), 1e-9, begun + " to " + then);
      }
    }
  }

  private static double since(Instant start, LocalDate date, int hour) {
    return Duration.between(start, date.atTime(hour, 0).atZone(VIENNA).toInstant()).toSeconds();
  }

  @Test
  void a_rise_that_begins_in_the_hour_that_comes_twice_waits_and_a_fall_does_not() {
    ClockClimate rise =
        ClockClimate.daily(
            VIENNA,
            List.of(new Point(0, 10), new Point(120, 10), new Point(180, 30), new Point(1439, 10)));
    assertEquals(10, after(rise, "2027-10-31T01:00", 90), 1e-9);
    assertEquals(10, after(rise, "2027-10-31T01:00", 120), 1e-9);
    assertEquals(20, after(rise, "2027-10-31T01:00", 150), 1e-9);
    ClockClimate fall =
        ClockClimate.daily(
            VIENNA,
            List.of(new Point(0, 30), new Point(120, 30), new Point(180, 10), new Point(1439, 30)));
    assertEquals(30, after(fall, "2027-10-31T01:00", 60), 1e-9);
    assertEquals(20, after(fall, "2027-10-31T01:00", 120), 1e-9);
    assertEquals(10, after(fall, "2027-10-31T01:00", 180), 1e-9);
    ClockClimate step =
        ClockClimate.daily(
            VIENNA,
            List.of(new Point(0, 30), new Point(150, 30), new Point(150, 10), new Point(1439, 10)));
    assertEquals(10, after(step, "2027-10-31T01:00", 91), 1e-9);
  }

  /** 10 °C in two hours: half a second is 0.000694 °C. */
  @Test
  void parts_of_a_second_count() {
    ClockClimate bench =
        ClockClimate.daily(VIENNA, List.of(new Point(360, 10), new Point(480, 20)));
    TemperatureHistory history = bench.from(at("2027-01-12T07:00").plusMillis(500));
    assertEquals(15 + 0.5 * 10 / 7200, history.celsiusAt(0), 1e-6);
    assertEquals(15 + 1.0 * 10 / 7200, history.celsiusAt(0.5), 1e-6);
  }

  @Test
  void one_temperature_for_ever_is_that_on_every_day() {
    TemperatureHistory history = ClockClimate.constant(VIENNA, 18).from(at("2027-03-20T09:00"));
    for (double days : new double[] {0, 7.9, 8, 60, 400}) {
      assertEquals(18, history.celsiusAt(days * 86_400));
    }
  }

  /** On from 23:50 and through midnight: warm at once where it has heated up by then. */
  @Test
  void a_cupboard_still_heating_at_midnight_heats_on_afterwards() {
    ClockClimate room = ClockClimate.constant(VIENNA, 18);
    Map<DayOfWeek, List<OpenSpan>> on =
        Map.of(
            DayOfWeek.TUESDAY, List.of(OpenSpan.of("23:50", "24:00")),
            DayOfWeek.WEDNESDAY, List.of(OpenSpan.of("00:00", "06:00")));
    ClockClimate quick = room.warmed(35, on, Duration.ofMinutes(10));
    assertEquals(35, after(quick, "2027-01-13T00:00", 5), 1e-9);
    ClockClimate slow = room.warmed(35, on, Duration.ofMinutes(30));
    assertEquals(18, after(slow, "2027-01-13T00:00", 5), 1e-9);
    assertEquals(18, after(slow, "2027-01-13T00:00", 29), 1e-9);
    assertEquals(35, after(slow, "2027-01-13T00:00", 30), 1e-9);
  }

  @Test
  void hours_no_longer_than_the_heating_up_never_make_it_warm() {
    ClockClimate room = ClockClimate.constant(VIENNA, 18);
    ClockClimate never =
        room.warmed(
            35,
            Map.of(DayOfWeek.TUESDAY, List.of(OpenSpan.of("08:00", "08:40"))),
            Duration.ofMinutes(40));
    for (int minute = 0; minute < 1440; minute += 5) {
      assertEquals(18, after(never, "2027-01-12T00:00", minute), 1e-9);
    }
  }
}
