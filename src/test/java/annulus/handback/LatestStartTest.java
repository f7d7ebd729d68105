package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.handback.LatestStart.Found;
import annulus.handback.LatestStart.Limit;
import annulus.handback.LatestStart.None;
import annulus.handback.LatestStart.Reason;
import annulus.quantity.InvalidValue;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

/** Worked by hand: Thursday 11 and Friday 12 March 2027, lunch 12:00 to 13:00, UTC. */
class LatestStartTest {
  private static final List<OpenSpan> DAY =
      List.of(OpenSpan.of("08:00", "12:00"), OpenSpan.of("13:00", "18:00"));
  private static final OpeningHours HOURS =
      OpeningHours.weekly(ZoneOffset.UTC, Map.of(DayOfWeek.THURSDAY, DAY, DayOfWeek.FRIDAY, DAY));
  private static final Duration TOUCH = Duration.ofMinutes(20);
  private static final PromiseRule RULE = new PromiseRule(Duration.ofMinutes(15), 15);

  private static Function<Instant, Optional<Instant>> after(Duration cure) {
    return start -> RULE.promise(start.plus(cure), HOURS).map(Promise::promise);
  }

  private static LatestStart find(String wanted, String earliest, Duration cure) {
    return LatestStart.find(
        Instant.parse(wanted), Instant.parse(earliest), TOUCH, HOURS, after(cure));
  }

  private static Instant at(String text) {
    return Instant.parse(text);
  }

  @Test
  void the_pickup_stops_a_later_start() {
    // start 09:15 + 6 h = 15:15, check 15:30, told 15:30; 09:16 is told 15:45
    assertEquals(
        new Found(at("2027-03-11T09:15:00Z"), at("2027-03-11T15:30:00Z"), Limit.PICKUP),
        find("2027-03-11T15:40:00Z", "2027-03-11T08:00:00Z", Duration.ofHours(6)));
  }

  @Test
  void a_pickup_is_looked_at_up_to_the_days_that_the_refusal_names() {
    Instant earliest = at("2027-03-11T08:00:00Z");
    Instant last = earliest.plus(OpeningHours.SEARCH_LIMIT);
    LatestStart.find(last, earliest, TOUCH, HOURS, after(Duration.ofHours(5)));
    assertThrows(
        InvalidValue.class,
        () ->
            LatestStart.find(
                last.plusSeconds(1), earliest, TOUCH, HOURS, after(Duration.ofHours(5))));
  }

  @Test
  void the_break_stops_a_later_start() {
    // any start before 12:15 would do, but 20 min of work must end by 12:00
    assertEquals(
        new Found(at("2027-03-11T11:40:00Z"), at("2027-03-11T17:00:00Z"), Limit.CLOSING),
        find("2027-03-11T17:30:00Z", "2027-03-11T08:00:00Z", Duration.ofHours(5)));
  }

  @Test
  void a_day_long_cure_starts_the_day_before() {
    // Friday 10:00 wanted: 24 h cure and 15 min check from Thursday 09:45
    assertEquals(
        new Found(at("2027-03-11T09:45:00Z"), at("2027-03-12T10:00:00Z"), Limit.PICKUP),
        find("2027-03-12T10:00:00Z", "2027-03-11T08:00:00Z", Duration.ofHours(24)));
  }

  @Test
  void an_earliest_start_with_seconds_counts_from_the_next_minute() {
    assertEquals(
        new Found(at("2027-03-11T09:45:00Z"), at("2027-03-12T10:00:00Z"), Limit.PICKUP),
        find("2027-03-12T10:00:00Z", "2027-03-11T09:44:01Z", Duration.ofHours(24)));
    assertEquals(
        new None(
            Reason.FIRST_START_TOO_LATE,
            Optional.of(at("2027-03-11T09:46:00Z")),
            Optional.of(at("2027-03-12T10:15:00Z"))),
        find("2027-03-12T10:00:00Z", "2027-03-11T09:45:01Z", Duration.ofHours(24)));
  }

  @Test
  void when_the_first_start_is_too_late_its_promise_is_told() {
    assertEquals(
        new None(
            Reason.FIRST_START_TOO_LATE,
            Optional.of(at("2027-03-11T13:00:00Z")),
            Optional.of(at("2027-03-12T13:15:00Z"))),
        find("2027-03-12T10:00:00Z", "2027-03-11T11:50:00Z", Duration.ofHours(24)));
  }

  @Test
  void without_open_time_before_the_pickup_there_is_no_start() {
    assertEquals(
        new None(
            Reason.NOT_OPEN_BEFORE_PICKUP,
            Optional.of(at("2027-03-18T08:00:00Z")),
            Optional.of(at("2027-03-18T09:15:00Z"))),
        find("2027-03-13T10:00:00Z", "2027-03-12T17:45:00Z", Duration.ofHours(1)));
  }

  @Test
  void a_pickup_before_the_earliest_start_is_not_met() {
    None none = (None) find("2027-03-11T09:00:00Z", "2027-03-11T10:00:00Z", Duration.ofMinutes(1));
    assertEquals(Reason.NOT_OPEN_BEFORE_PICKUP, none.reason());
  }

  @Test
  void a_joint_that_never_gets_ready_says_so() {
    assertEquals(
        new None(Reason.NEVER_READY, Optional.of(at("2027-03-11T08:00:00Z")), Optional.empty()),
        LatestStart.find(
            at("2027-03-12T10:00:00Z"),
            at("2027-03-11T06:00:00Z"),
            TOUCH,
            HOURS,
            start -> Optional.empty()));
  }

  @Test
  void work_may_run_over_midnight_where_the_shop_stays_open() {
    OpeningHours night =
        OpeningHours.weekly(
            ZoneOffset.UTC,
            Map.of(
                DayOfWeek.THURSDAY,
                List.of(OpenSpan.of("20:00", "24:00")),
                DayOfWeek.FRIDAY,
                List.of(OpenSpan.of("00:00", "04:00"))));
    Instant wanted = at("2027-03-11T23:50:00Z");
    assertEquals(
        new Found(wanted, wanted, Limit.PICKUP),
        LatestStart.find(
            wanted, at("2027-03-11T18:00:00Z"), TOUCH, night, start -> Optional.of(start)));
  }

  @Test
  void a_start_at_the_wanted_minute_itself_counts() {
    Instant opening = at("2027-03-11T08:00:00Z");
    assertEquals(
        new Found(opening, opening, Limit.PICKUP),
        LatestStart.find(
            opening,
            at("2027-03-11T06:00:00Z"),
            Duration.ZERO,
            HOURS,
            start -> Optional.of(start)));
  }

  @Test
  void the_closing_minute_is_no_start_even_for_work_that_takes_no_time() {
    Instant last = at("2027-03-11T17:59:00Z");
    assertEquals(
        new Found(last, last, Limit.CLOSING),
        LatestStart.find(
            at("2027-03-11T22:00:00Z"),
            at("2027-03-11T06:00:00Z"),
            Duration.ZERO,
            HOURS,
            start -> Optional.of(start)));
  }

  @Test
  void ranges_beyond_the_search_limit_and_negative_touch_are_refused() {
    assertThrows(
        InvalidValue.class,
        () -> find("2030-03-12T10:00:00Z", "2027-03-11T06:00:00Z", Duration.ofHours(1)));
    assertThrows(
        InvalidValue.class,
        () ->
            LatestStart.find(
                at("2027-03-12T10:00:00Z"),
                at("2027-03-11T06:00:00Z"),
                Duration.ofMinutes(-1),
                HOURS,
                after(Duration.ofHours(1))));
  }
}
