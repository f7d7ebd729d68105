package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.handback.DrawnShops.Drawn;
import annulus.handback.LatestStart.Found;
import annulus.handback.LatestStart.Limit;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

class LatestStartPropertyTest {

  @Provide
  Arbitrary<Drawn> shops() {
    return DrawnShops.drawn();
  }

  /** Goes through every minute of the range and keeps the last that is possible and in time. */
  @Property(tries = 200)
  void the_latest_start_meets_the_pickup_and_no_later_minute_does(
      @ForAll("shops") Drawn drawn,
      @ForAll @IntRange(min = 600, max = 5000) int range,
      @ForAll @IntRange(max = 60) int touchMinutes,
      @ForAll @IntRange(max = 1500) int cureMinutes,
      @ForAll @IntRange(max = 59) int seconds) {
    OpeningHours hours = drawn.hours();
    Instant earliest = drawn.instant().plusSeconds(seconds);
    Instant wanted = drawn.instant().plusSeconds(range * 60L);
    Duration touch = Duration.ofMinutes(touchMinutes);
    PromiseRule rule = new PromiseRule(Duration.ofMinutes(10), 15);
    Function<Instant, Optional<Instant>> promise =
        s -> rule.promise(s.plusSeconds(cureMinutes * 60L), hours).map(Promise::promise);

    Optional<Instant> walked = Optional.empty();
    Instant first = seconds == 0 ? drawn.instant() : drawn.instant().plusSeconds(60);
    for (Instant m = first; !m.isAfter(wanted); m = m.plusSeconds(60)) {
      if (possible(hours, m, touch)
          && promise.apply(m).filter(p -> !p.isAfter(wanted)).isPresent()) {
        walked = Optional.of(m);
      }
    }
    LatestStart found = LatestStart.find(wanted, earliest, touch, hours, promise);
    Statistics.label("limit").collect(limitOf(found));
    Statistics.label("limit")
        .coverage(
            c -> {
              c.check(Optional.of(Limit.PICKUP)).count(n -> n > 5);
              c.check(Optional.of(Limit.CLOSING)).count(n -> n > 5);
              c.check(Optional.empty()).count(n -> n > 5);
            });
    assertEquals(walked, startOf(found));
    limitOf(found)
        .ifPresent(
            limit ->
                assertEquals(
                    limit == Limit.PICKUP,
                    possible(hours, startOf(found).orElseThrow().plusSeconds(60), touch)));
  }

  private static boolean possible(OpeningHours hours, Instant start, Duration touch) {
    return hours.isOpen(start) && hours.openTimeBetween(start, start.plus(touch)).equals(touch);
  }

  private static Optional<Instant> startOf(LatestStart latest) {
    return latest instanceof Found found ? Optional.of(found.start()) : Optional.empty();
  }

  private static Optional<Limit> limitOf(LatestStart latest) {
    return latest instanceof Found found ? Optional.of(found.limit()) : Optional.empty();
  }
}
