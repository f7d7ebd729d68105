package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * Nights on which the clock changes. The instants of change are worked out by hand from the rules:
 * directive 2000/84/EC (last Sundays of March and October, 01:00 UTC); Energy Policy Act of 2005,
 * section 110 (second Sunday of March, first Sunday of November, 02:00 local); Lord Howe Island, a
 * shift of half an hour (first Sundays of October and April, 02:00 local; IANA time zone database,
 * file australasia).
 */
class ClockChangePublishedTest {

  private static OpeningHours sundays(String zone, String from, String to) {
    return OpeningHours.weekly(
        ZoneId.of(zone), Map.of(DayOfWeek.SUNDAY, List.of(OpenSpan.of(from, to))));
  }

  private static Instant at(String text) {
    return Instant.parse(text);
  }

  @Test
  void in_berlin_a_skipped_opening_time_moves_to_the_first_minute_that_exists() {
    OpeningHours hours = sundays("Europe/Berlin", "02:30", "04:00");
    Instant saturday = at("2027-03-27T12:00:00Z");
    // 28 March 2027: 02:00 +01:00 becomes 03:00 +02:00 at 01:00 UTC; open 03:00 to 04:00
    assertEquals(Optional.of(at("2027-03-28T01:00:00Z")), hours.nextOpenAtOrAfter(saturday));
    assertEquals(
        Optional.of(at("2027-03-28T02:00:00Z")), hours.addOpenTime(saturday, Duration.ofHours(1)));
  }

  @Test
  void in_berlin_hours_that_are_skipped_whole_do_not_come_that_day() {
    OpeningHours hours = sundays("Europe/Berlin", "02:00", "03:00");
    // the next Sunday, 4 April 2027, 02:00 +02:00
    assertEquals(
        Optional.of(at("2027-04-04T00:00:00Z")),
        hours.nextOpenAtOrAfter(at("2027-03-27T12:00:00Z")));
  }

  @Test
  void in_berlin_repeated_hours_are_open_both_times() {
    OpeningHours hours = sundays("Europe/Berlin", "02:15", "02:45");
    // 31 October 2027: 03:00 +02:00 becomes 02:00 +01:00 at 01:00 UTC
    assertFalse(hours.isOpen(at("2027-10-31T00:14:59Z")));
    assertTrue(hours.isOpen(at("2027-10-31T00:15:00Z")));
    assertFalse(hours.isOpen(at("2027-10-31T00:45:00Z")));
    assertTrue(hours.isOpen(at("2027-10-31T01:15:00Z")));
    assertFalse(hours.isOpen(at("2027-10-31T01:45:00Z")));
    assertEquals(
        Optional.of(at("2027-10-31T01:20:00Z")),
        hours.addOpenTime(at("2027-10-30T12:00:00Z"), Duration.ofMinutes(35)));
  }

  @Test
  void in_berlin_a_night_shift_lasts_an_hour_less_in_spring_and_an_hour_more_in_autumn() {
    OpeningHours hours = sundays("Europe/Berlin", "00:00", "06:00");
    assertEquals(
        Duration.ofHours(5),
        hours.openTimeBetween(at("2027-03-27T12:00:00Z"), at("2027-03-28T12:00:00Z")));
    assertEquals(
        Duration.ofHours(7),
        hours.openTimeBetween(at("2027-10-30T12:00:00Z"), at("2027-10-31T12:00:00Z")));
    assertEquals(
        Optional.of(at("2027-10-30T22:00:00Z")),
        hours.nextOpenFor(at("2027-10-30T12:00:00Z"), Duration.ofHours(7)));
  }

  @Test
  void in_new_york_both_changes_hold() {
    OpeningHours hours = sundays("America/New_York", "01:30", "03:30");
    // 14 March 2027: 02:00 -05:00 becomes 03:00 -04:00 at 07:00 UTC
    assertEquals(
        Duration.ofHours(1),
        hours.openTimeBetween(at("2027-03-14T00:00:00Z"), at("2027-03-15T00:00:00Z")));
    assertEquals(
        Optional.of(at("2027-03-14T07:30:00Z")),
        hours.addOpenTime(at("2027-03-14T00:00:00Z"), Duration.ofHours(1)));
    // 7 November 2027: 02:00 -04:00 becomes 01:00 -05:00 at 06:00 UTC; 01:00 to 01:30 comes again
    assertTrue(hours.isOpen(at("2027-11-07T05:59:00Z")));
    assertFalse(hours.isOpen(at("2027-11-07T06:00:00Z")));
    assertEquals(
        Optional.of(at("2027-11-07T06:30:00Z")),
        hours.nextOpenAtOrAfter(at("2027-11-07T06:00:00Z")));
    assertEquals(
        Duration.ofMinutes(30 + 120),
        hours.openTimeBetween(at("2027-11-07T00:00:00Z"), at("2027-11-08T00:00:00Z")));
  }

  @Test
  void on_lord_howe_island_the_shift_is_half_an_hour() {
    OpeningHours hours = sundays("Australia/Lord_Howe", "01:00", "03:00");
    // 4 April 2027: 02:00 +11:00 becomes 01:30 +10:30 at 15:00 UTC on the 3rd
    assertEquals(
        Duration.ofMinutes(150),
        hours.openTimeBetween(at("2027-04-03T00:00:00Z"), at("2027-04-04T00:00:00Z")));
    // 3 October 2027: 02:00 +10:30 becomes 02:30 +11:00 at 15:30 UTC on the 2nd
    assertEquals(
        Duration.ofMinutes(90),
        hours.openTimeBetween(at("2027-10-02T00:00:00Z"), at("2027-10-03T00:00:00Z")));
  }

  @Test
  void a_promise_on_the_repeated_hour_is_told_by_the_wall_clock_and_stays_after_the_check() {
    OpeningHours hours = sundays("Europe/Berlin", "00:00", "24:00");
    PromiseRule rule = new PromiseRule(Duration.ofMinutes(15), 60);
    // ready 02:40 +02:00, checked 02:55; the next full hour the wall clock shows is 02:00 +01:00
    Promise promise = rule.promise(at("2027-10-31T00:40:00Z"), hours).orElseThrow();
    assertEquals(at("2027-10-31T01:00:00Z"), promise.promise());
  }

  @Test
  void a_promise_is_a_multiple_on_the_wall_clock_where_the_offset_is_no_whole_hour() {
    OpeningHours hours = sundays("Australia/Lord_Howe", "08:00", "18:00");
    PromiseRule rule = new PromiseRule(Duration.ofMinutes(10), 60);
    // 6 June 2027 09:05 +10:30, checked 09:15, told 10:00
    Promise promise = rule.promise(at("2027-06-05T22:35:00Z"), hours).orElseThrow();
    assertEquals(at("2027-06-05T23:30:00Z"), promise.promise());
  }
}
