package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.handback.Promise.Reason;
import annulus.quantity.InvalidValue;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Worked by hand: Thursday 11 and Friday 12 March 2027 in Vienna, UTC+1; lunch 12:00 to 13:00. */
class PromiseRuleTest {
  private static final List<OpenSpan> DAY =
      List.of(OpenSpan.of("08:00", "12:00"), OpenSpan.of("13:00", "18:00"));
  private static final OpeningHours HOURS =
      new OpeningHours(
          ZoneId.of("Europe/Vienna"),
          Map.of(DayOfWeek.THURSDAY, DAY, DayOfWeek.FRIDAY, DAY, DayOfWeek.MONDAY, DAY),
          List.of(Closure.on(LocalDate.of(2027, 3, 15), "Stocktaking")),
          List.of());
  private static final PromiseRule RULE = new PromiseRule(Duration.ofMinutes(15), 15);

  private static Promise of(String ready) {
    return RULE.promise(Instant.parse(ready), HOURS).orElseThrow();
  }

  private static void assertPromise(
      String ready, String checkStart, String promise, Duration closed, Reason reason) {
    Instant readyAt = Instant.parse(ready);
    assertEquals(
        new Promise(readyAt, Instant.parse(checkStart), Instant.parse(promise), closed, reason),
        of(ready));
  }

  @Test
  void ready_while_open_is_checked_at_once_and_rounded_up() {
    assertPromise(
        "2027-03-11T08:31:00Z",
        "2027-03-11T08:31:00Z",
        "2027-03-11T09:00:00Z",
        Duration.ZERO,
        Reason.READY_WHILE_OPEN);
  }

  @Test
  void a_time_that_needs_no_rounding_stays() {
    assertEquals(Instant.parse("2027-03-11T08:45:00Z"), of("2027-03-11T08:30:00Z").promise());
    assertEquals(
        Instant.parse("2027-03-11T09:00:00Z"), of("2027-03-11T08:30:00.000000001Z").promise());
  }

  @Test
  void ready_at_night_waits_for_the_opening_and_the_check() {
    // 03:40 on Friday: opening 08:00, check to 08:15
    assertPromise(
        "2027-03-12T02:40:00Z",
        "2027-03-12T07:00:00Z",
        "2027-03-12T07:15:00Z",
        Duration.ofMinutes(260),
        Reason.READY_WHILE_CLOSED);
  }

  @Test
  void a_check_that_would_run_into_the_break_is_made_after_it() {
    // 11:50: 10 min to the break, check 13:00 to 13:15
    assertPromise(
        "2027-03-11T10:50:00Z",
        "2027-03-11T12:00:00Z",
        "2027-03-11T12:15:00Z",
        Duration.ofHours(1),
        Reason.CHECK_DOES_NOT_FIT);
  }

  @Test
  void a_rounded_time_at_closing_moves_to_the_next_opening() {
    // 17:35: checked 17:50, rounded 18:00 is closed; Friday 08:00 to 08:15
    assertPromise(
        "2027-03-11T16:35:00Z",
        "2027-03-12T07:00:00Z",
        "2027-03-12T07:15:00Z",
        Duration.ofHours(14),
        Reason.ROUNDED_PAST_CLOSING);
  }

  @Test
  void a_weekend_and_a_closed_monday_are_waited_out() {
    // Friday 17:50; Monday 15 March is closed; Thursday 18 March 08:15
    Promise promise = of("2027-03-12T16:50:00Z");
    assertEquals(Instant.parse("2027-03-18T07:15:00Z"), promise.promise());
    assertEquals(Reason.CHECK_DOES_NOT_FIT, promise.reason());
  }

  @Test
  void a_check_longer_than_any_open_stretch_gives_no_promise() {
    PromiseRule slow = new PromiseRule(Duration.ofHours(6), 15);
    assertEquals(Optional.empty(), slow.promise(Instant.parse("2027-03-11T07:00:00Z"), HOURS));
  }

  @Test
  void a_shop_whose_hours_never_hold_a_rounded_time_gives_no_promise() {
    OpeningHours odd =
        OpeningHours.weekly(
            ZoneId.of("Europe/Vienna"),
            Map.of(DayOfWeek.FRIDAY, List.of(OpenSpan.of("08:05", "08:55"))));
    PromiseRule hourly = new PromiseRule(Duration.ZERO, 60);
    assertEquals(Optional.empty(), hourly.promise(Instant.parse("2027-03-11T07:00:00Z"), odd));
  }

  @Test
  void the_rule_refuses_what_is_no_time_people_remember() {
    assertThrows(InvalidValue.class, () -> new PromiseRule(Duration.ofMinutes(15), 0));
    assertThrows(InvalidValue.class, () -> new PromiseRule(Duration.ofMinutes(15), 7));
    assertThrows(InvalidValue.class, () -> new PromiseRule(Duration.ofMinutes(15), 90));
    assertThrows(InvalidValue.class, () -> new PromiseRule(Duration.ofMinutes(-1), 15));
    assertThrows(InvalidValue.class, () -> new PromiseRule(Duration.ofMinutes(481), 15));
    new PromiseRule(Duration.ofHours(8), 15);
  }
}
