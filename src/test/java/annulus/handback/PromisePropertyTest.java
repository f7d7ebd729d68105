package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.handback.DrawnShops.Drawn;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

class PromisePropertyTest {

  @Provide
  Arbitrary<Drawn> shops() {
    return DrawnShops.drawn();
  }

  @Provide
  Arbitrary<PromiseRule> rules() {
    Arbitrary<Integer> check = Arbitraries.integers().between(0, 60);
    return Combinators.combine(check, Arbitraries.of(1, 5, 10, 15, 20, 30, 60))
        .as((c, r) -> new PromiseRule(Duration.ofMinutes(c), r));
  }

  @Property(tries = 1000)
  void a_promise_is_after_ready_and_check_in_open_hours_on_a_round_time(
      @ForAll("shops") Drawn drawn,
      @ForAll("rules") PromiseRule rule,
      @ForAll boolean nearClosing,
      @ForAll @IntRange(max = 3599) int seconds) {
    Instant closing = drawn.hours().lastOpenAtOrBefore(drawn.instant()).orElse(drawn.instant());
    Instant ready = (nearClosing ? closing : drawn.instant()).minusSeconds(seconds);
    Optional<Promise> found = rule.promise(ready, drawn.hours());
    Statistics.label("reason").collect(found.map(Promise::reason));
    Statistics.label("reason")
        .coverage(
            c -> {
              for (Promise.Reason reason : Promise.Reason.values()) {
                c.check(Optional.of(reason)).count(n -> n > 0);
              }
            });
    found.ifPresent(p -> assertHolds(p, rule, drawn.hours()));
  }

  private static void assertHolds(Promise p, PromiseRule rule, OpeningHours hours) {
    Instant checked = p.checkStart().plus(rule.handOverCheck());
    assertFalse(p.checkStart().isBefore(p.ready()));
    assertFalse(p.promise().isBefore(checked));
    assertFalse(p.promise().isBefore(p.ready().plus(rule.handOverCheck())));
    assertTrue(hours.isOpen(p.promise()));
    assertTrue(hours.isOpen(p.checkStart()));
    assertEquals(rule.handOverCheck(), hours.openTimeBetween(p.checkStart(), checked));
    assertEquals(0, p.promise().atZone(hours.zone()).getMinute() % rule.roundUpToMinutes());
    assertEquals(0, p.promise().atZone(hours.zone()).getSecond());
    assertEquals(
        Duration.between(p.ready(), p.promise()),
        p.closedWait().plus(hours.openTimeBetween(p.ready(), p.promise())));
  }

  @Property(tries = 1000)
  void a_later_ready_never_gets_an_earlier_promise(
      @ForAll("shops") Drawn drawn,
      @ForAll("rules") PromiseRule rule,
      @ForAll @IntRange(min = 1, max = 3000) int later) {
    Optional<Promise> first = rule.promise(drawn.instant(), drawn.hours());
    Optional<Promise> second =
        rule.promise(drawn.instant().plusSeconds(later * 60L), drawn.hours());
    boolean both = first.isPresent() && second.isPresent();
    Statistics.label("moves")
        .collect(both && !first.get().promise().equals(second.get().promise()));
    Statistics.label("moves").coverage(c -> c.check(true).percentage(p -> p > 15));
    if (both) {
      assertFalse(second.get().promise().isBefore(first.get().promise()));
    }
  }

  /**
   * Tries every minute as the start of the check; none that works is earlier than the one found.
   */
  @Property(tries = 200)
  void no_earlier_check_would_do(@ForAll("shops") Drawn drawn, @ForAll("rules") PromiseRule rule) {
    Optional<Promise> found = rule.promise(drawn.instant(), drawn.hours());
    Instant horizon = drawn.instant().plus(Duration.ofDays(8));
    Instant stop = found.map(Promise::checkStart).filter(horizon::isAfter).orElse(horizon);
    Statistics.label("waits").collect(stop.isAfter(drawn.instant()));
    Statistics.label("waits").coverage(c -> c.check(true).percentage(p -> p > 15));
    for (Instant start = drawn.instant(); start.isBefore(stop); start = start.plusSeconds(60)) {
      assertFalse(works(start, rule, drawn.hours()), start.toString());
    }
  }

  private static boolean works(Instant start, PromiseRule rule, OpeningHours hours) {
    Instant checked = start.plus(rule.handOverCheck());
    for (Instant t = start; t.isBefore(checked); t = t.plusSeconds(60)) {
      if (!hours.isOpen(t)) {
        return false;
      }
    }
    Instant told = checked;
    while (told.atZone(hours.zone()).getMinute() % rule.roundUpToMinutes() != 0) {
      told = told.plusSeconds(60);
    }
    return hours.isOpen(start) && hours.isOpen(told);
  }
}
