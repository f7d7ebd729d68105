package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.handback.DrawnShops.Drawn;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.util.Optional;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/**
 * The searches against a walk minute by minute that reads the wall clock each time. All hours and
 * clock changes of the drawn shops are whole minutes, so the walk misses nothing.
 */
class OpeningHoursIndependentTest {
  private static final int DAYS = 12;

  @Provide
  Arbitrary<Drawn> shops() {
    return DrawnShops.drawn();
  }

  @Property(tries = 500)
  void the_next_open_instant_is_the_first_open_minute_of_a_walk(@ForAll("shops") Drawn drawn) {
    Optional<Instant> walked = Optional.empty();
    for (int m = 0; m < DAYS * 1440 && walked.isEmpty(); m++) {
      Instant minute = drawn.instant().plusSeconds(m * 60L);
      walked = open(drawn.hours(), minute) ? Optional.of(minute) : walked;
    }
    Statistics.label("open at once").collect(walked.filter(drawn.instant()::equals).isPresent());
    Statistics.label("open at once").coverage(c -> c.check(false).percentage(p -> p > 10));
    if (walked.isPresent()) {
      assertEquals(walked, drawn.hours().nextOpenAtOrAfter(drawn.instant()));
    }
    assertEquals(open(drawn.hours(), drawn.instant()), drawn.hours().isOpen(drawn.instant()));
  }

  @Property(tries = 500)
  void adding_open_time_counts_the_open_minutes_of_a_walk(
      @ForAll("shops") Drawn drawn, @ForAll @IntRange(min = 1, max = 2400) int work) {
    int left = work;
    int walkedMinutes = 0;
    while (left > 0 && walkedMinutes < DAYS * 1440) {
      left -= open(drawn.hours(), drawn.instant().plusSeconds(walkedMinutes * 60L)) ? 1 : 0;
      walkedMinutes++;
    }
    Statistics.label("enough open time").collect(left == 0);
    Statistics.label("enough open time").coverage(c -> c.check(true).percentage(p -> p > 50));
    if (left == 0) {
      Instant walked = drawn.instant().plusSeconds(walkedMinutes * 60L);
      Duration open = Duration.ofMinutes(work);
      assertEquals(Optional.of(walked), drawn.hours().addOpenTime(drawn.instant(), open));
      assertEquals(open, drawn.hours().openTimeBetween(drawn.instant(), walked));
    }
  }

  @Property(tries = 500)
  void work_in_one_go_starts_at_the_first_minute_with_enough_open_minutes_in_a_row(
      @ForAll("shops") Drawn drawn, @ForAll @IntRange(min = 1, max = 300) int work) {
    int row = 0;
    int walkedMinutes = 0;
    while (row < work && walkedMinutes < DAYS * 1440) {
      row = open(drawn.hours(), drawn.instant().plusSeconds(walkedMinutes * 60L)) ? row + 1 : 0;
      walkedMinutes++;
    }
    Statistics.label("fits").collect(row == work);
    Statistics.label("fits").coverage(c -> c.check(true).percentage(p -> p > 50));
    if (row == work) {
      Instant walked = drawn.instant().plusSeconds((walkedMinutes - work) * 60L);
      Duration inOneGo = Duration.ofMinutes(work);
      assertEquals(Optional.of(walked), drawn.hours().nextOpenFor(drawn.instant(), inOneGo));
    }
  }

  @Property(tries = 500)
  void the_last_open_instant_is_the_last_open_minute_of_a_walk_back(@ForAll("shops") Drawn drawn) {
    Optional<Instant> walked = Optional.empty();
    for (int m = 0; m < DAYS * 1440 && walked.isEmpty(); m++) {
      Instant minute = drawn.instant().minusSeconds(m * 60L);
      walked = open(drawn.hours(), minute) ? Optional.of(minute) : walked;
    }
    Statistics.label("found").collect(walked.isPresent());
    Statistics.label("found").coverage(c -> c.check(true).percentage(p -> p > 50));
    if (walked.isPresent()) {
      assertEquals(walked, drawn.hours().lastOpenAtOrBefore(drawn.instant()));
    }
  }

  /** Reads the wall clock and compares texts; shares nothing with the code under test. */
  private static boolean open(OpeningHours hours, Instant instant) {
    ZonedDateTime clock = instant.atZone(hours.zone());
    String date = clock.toLocalDate().toString();
    String time = clock.toLocalTime().toString().substring(0, 5);
    boolean closed =
        hours.closures().stream()
            .anyMatch(
                c ->
                    c.from().toString().compareTo(date) <= 0
                        && c.to().toString().compareTo(date) >= 0);
    boolean usual =
        !closed && hours.weekly().get(clock.getDayOfWeek()).stream().anyMatch(s -> within(s, time));
    return usual
        || hours.extraOpenings().stream()
            .filter(e -> e.date().toString().equals(date))
            .anyMatch(e -> e.spans().stream().anyMatch(s -> within(s, time)));
  }

  private static boolean within(OpenSpan span, String time) {
    String from = span.text().substring(0, 5);
    String to = span.text().substring(6);
    return time.compareTo(from) >= 0 && time.compareTo(to) < 0;
  }
}
