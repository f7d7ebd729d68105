package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class OpeningHoursTest {
  private static final ZoneId UTC = ZoneOffset.UTC;
  private static final List<OpenSpan> DAY =
      List.of(OpenSpan.of("08:00", "12:00"), OpenSpan.of("13:00", "18:00"));

  private static Map<DayOfWeek, List<OpenSpan>> everyDay(List<OpenSpan> spans) {
    Map<DayOfWeek, List<OpenSpan>> week = new EnumMap<>(DayOfWeek.class);
    for (DayOfWeek day : DayOfWeek.values()) {
      week.put(day, spans);
    }
    return week;
  }

  private static Instant at(String text) {
    return Instant.parse(text);
  }

  @Test
  void the_opening_minute_is_open_and_the_closing_minute_is_not() {
    OpeningHours hours = OpeningHours.weekly(UTC, everyDay(DAY));
    assertFalse(hours.isOpen(at("2027-03-10T07:59:59.999999999Z")));
    assertTrue(hours.isOpen(at("2027-03-10T08:00:00Z")));
    assertTrue(hours.isOpen(at("2027-03-10T11:59:59.999999999Z")));
    assertFalse(hours.isOpen(at("2027-03-10T12:00:00Z")));
    assertTrue(hours.isOpen(at("2027-03-10T13:00:00Z")));
  }

  @Test
  void a_shop_that_is_never_open_is_an_answer() {
    OpeningHours never = OpeningHours.weekly(UTC, Map.of());
    Instant now = at("2027-03-10T10:00:00Z");
    assertFalse(never.isOpen(now));
    assertEquals(Optional.empty(), never.nextOpenAtOrAfter(now));
    assertEquals(Optional.empty(), never.nextOpenFor(now, Duration.ofMinutes(1)));
    assertEquals(Optional.empty(), never.addOpenTime(now, Duration.ofMinutes(1)));
    assertEquals(Optional.empty(), never.lastOpenAtOrBefore(now));
    assertEquals(Duration.ZERO, never.openTimeBetween(now, now.plusSeconds(1_000_000)));
    assertEquals(Optional.empty(), new PromiseRule(Duration.ZERO, 15).promise(now, never));
  }

  @Test
  void a_shop_that_never_closes_is_open_at_once_for_any_length() {
    OpeningHours always =
        OpeningHours.weekly(UTC, everyDay(List.of(OpenSpan.of("00:00", "24:00"))));
    Instant now = at("2028-02-28T10:00:00Z");
    assertEquals(Optional.of(now), always.nextOpenFor(now, Duration.ofDays(100)));
    assertEquals(
        Optional.of(at("2028-03-01T10:00:00Z")), always.addOpenTime(now, Duration.ofDays(2)));
  }

  @Test
  void a_leap_day_has_the_hours_of_its_weekday() {
    // 29 February 2028 is a Tuesday
    OpeningHours hours = OpeningHours.weekly(UTC, Map.of(DayOfWeek.TUESDAY, DAY));
    assertEquals(
        Optional.of(at("2028-02-29T08:00:00Z")),
        hours.nextOpenAtOrAfter(at("2028-02-28T09:00:00Z")));
    assertEquals(
        Optional.of(at("2028-03-07T09:00:00Z")),
        hours.addOpenTime(at("2028-02-28T09:00:00Z"), Duration.ofHours(10)));
  }

  @Test
  void closed_weeks_are_passed_over_with_their_first_and_last_day() {
    OpeningHours hours =
        new OpeningHours(
            UTC,
            everyDay(DAY),
            List.of(
                new Closure(LocalDate.of(2027, 8, 9), LocalDate.of(2027, 8, 22), "Summer break")),
            List.of());
    assertEquals(
        Optional.of(at("2027-08-23T08:00:00Z")),
        hours.nextOpenAtOrAfter(at("2027-08-08T18:00:00Z")));
    assertEquals(
        Optional.of(at("2027-08-08T17:59:00Z")),
        hours.lastOpenAtOrBefore(at("2027-08-23T07:59:00Z")));
    assertEquals(Optional.of("Summer break"), hours.closureReason(LocalDate.of(2027, 8, 22)));
    assertEquals(Optional.empty(), hours.closureReason(LocalDate.of(2027, 8, 23)));
  }

  @Test
  void a_closure_with_an_extra_opening_is_a_shortened_day() {
    LocalDate eve = LocalDate.of(2026, 12, 24);
    OpeningHours hours =
        new OpeningHours(
            UTC,
            everyDay(DAY),
            List.of(Closure.on(eve, "Short day")),
            List.of(new ExtraOpening(eve, List.of(OpenSpan.of("09:00", "11:00")))));
    assertEquals(List.of(OpenSpan.of("09:00", "11:00")), hours.spansOn(eve));
    assertFalse(hours.isOpen(at("2026-12-24T13:30:00Z")));
  }

  @Test
  void an_extra_opening_before_the_weekly_hours_opens_the_day() {
    LocalDate date = LocalDate.of(2027, 3, 10);
    OpeningHours hours =
        new OpeningHours(
            UTC,
            everyDay(DAY),
            List.of(),
            List.of(new ExtraOpening(date, List.of(OpenSpan.of("06:00", "07:00")))));
    Instant night = at("2027-03-10T05:00:00Z");
    assertEquals(
        Optional.of(at("2027-03-10T06:00:00Z")), hours.nextOpenFor(night, Duration.ofMinutes(30)));
    assertEquals(
        Duration.ofHours(1 + 4 + 5), hours.openTimeBetween(night, at("2027-03-10T20:00:00Z")));
  }

  @Test
  void spans_that_only_touch_do_not_overlap() {
    OpenSpan morning = OpenSpan.of("08:00", "12:00");
    OpenSpan noon = OpenSpan.of("12:00", "13:00");
    assertFalse(morning.overlaps(noon));
    assertFalse(noon.overlaps(morning));
    assertTrue(morning.overlaps(OpenSpan.of("11:59", "13:00")));
  }

  @Test
  void an_extra_opening_comes_on_top_of_the_weekly_hours() {
    LocalDate date = LocalDate.of(2027, 3, 10);
    OpeningHours hours =
        new OpeningHours(
            UTC,
            everyDay(DAY),
            List.of(),
            List.of(new ExtraOpening(date, List.of(OpenSpan.of("18:00", "20:00")))));
    assertEquals(3, hours.spansOn(date).size());
    // 13:00 to 20:00 in one go, across the touching ends
    assertEquals(
        Optional.of(at("2027-03-10T13:00:00Z")),
        hours.nextOpenFor(at("2027-03-10T12:00:00Z"), Duration.ofHours(7)));
  }

  @Test
  void work_of_no_length_is_done_at_once_even_while_closed() {
    OpeningHours hours = OpeningHours.weekly(UTC, everyDay(DAY));
    Instant night = at("2027-03-10T02:00:00Z");
    assertEquals(Optional.of(night), hours.addOpenTime(night, Duration.ZERO));
  }

  @Test
  void seconds_are_kept() {
    OpeningHours hours = OpeningHours.weekly(UTC, everyDay(DAY));
    assertEquals(
        Optional.of(at("2027-03-10T13:00:20Z")),
        hours.addOpenTime(at("2027-03-10T11:59:50Z"), Duration.ofSeconds(30)));
  }

  @Test
  void the_search_ends_after_two_years() {
    LocalDate last = LocalDate.of(2029, 3, 9);
    OpeningHours hours =
        new OpeningHours(UTC, Map.of(), List.of(), List.of(new ExtraOpening(last, DAY)));
    assertEquals(
        Optional.of(at("2029-03-09T08:00:00Z")),
        hours.nextOpenAtOrAfter(at("2027-03-10T10:00:00Z")));
    assertEquals(Optional.empty(), hours.nextOpenAtOrAfter(at("2027-03-09T07:00:00Z")));
    assertEquals(
        Optional.of(at("2029-03-09T17:59:00Z")),
        hours.lastOpenAtOrBefore(at("2031-03-09T18:00:00Z")));
    assertEquals(Optional.empty(), hours.lastOpenAtOrBefore(at("2031-03-11T18:00:00Z")));
  }

  @Test
  void spans_that_overlap_are_refused_with_both_named() {
    InvalidValue weekly =
        assertThrows(
            InvalidValue.class,
            () ->
                OpeningHours.weekly(
                    UTC,
                    Map.of(
                        DayOfWeek.FRIDAY,
                        List.of(OpenSpan.of("12:59", "18:00"), OpenSpan.of("08:00", "13:00")))));
    assertEquals("FRIDAY", weekly.field());
    assertEquals("12:59-18:00 overlaps 08:00-13:00", weekly.problem());
    ExtraOpening extra =
        new ExtraOpening(LocalDate.of(2027, 3, 10), List.of(OpenSpan.of("17:00", "20:00")));
    InvalidValue added =
        assertThrows(
            InvalidValue.class,
            () -> new OpeningHours(UTC, everyDay(DAY), List.of(), List.of(extra)));
    assertEquals("extraOpenings", added.field());
    InvalidValue twice =
        assertThrows(
            InvalidValue.class,
            () -> new OpeningHours(UTC, Map.of(), List.of(), List.of(extra, extra)));
    assertEquals("2027-03-10 comes twice", twice.problem());
  }

  @Test
  void a_span_keeps_within_its_day() {
    assertEquals(new OpenSpan(480, 1440), OpenSpan.of("08:00", "24:00"));
    for (String[] bad :
        new String[][] {
          {"24:00", "24:00"}, {"12:00", "12:00"}, {"22:00", "02:00"}, {"8:00", "12:00"},
          {"08:00", "12.00"}, {"08:60", "12:00"}, {"08:00", "25:00"}, {"08:00", "24:01"}
        }) {
      assertThrows(InvalidValue.class, () -> OpenSpan.of(bad[0], bad[1]), bad[0] + " " + bad[1]);
    }
  }

  @Test
  void a_closure_runs_forward_and_says_why() {
    LocalDate day = LocalDate.of(2027, 3, 10);
    assertThrows(InvalidValue.class, () -> new Closure(day, day.minusDays(1), "x"));
    assertThrows(InvalidValue.class, () -> Closure.on(day, " "));
    assertThrows(InvalidValue.class, () -> new ExtraOpening(day, List.of()));
  }

  @Test
  void negative_work_is_refused() {
    OpeningHours hours = OpeningHours.weekly(UTC, everyDay(DAY));
    Instant now = at("2027-03-10T10:00:00Z");
    Duration back = Duration.ofSeconds(-1);
    assertThrows(InvalidValue.class, () -> hours.addOpenTime(now, back));
    assertThrows(InvalidValue.class, () -> hours.nextOpenFor(now, back));
  }
}
