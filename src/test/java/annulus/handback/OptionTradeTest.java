package annulus.handback;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

class OptionTradeTest {
  private static final Instant NOON = Instant.parse("2027-03-11T12:00:00Z");

  private static OptionTrade option(int readyHours, double strength, double removability) {
    return new OptionTrade(
        Optional.of(NOON.plus(Duration.ofHours(readyHours))),
        strength,
        removability,
        Duration.ofMinutes(10),
        Duration.ofMinutes(20));
  }

  @Test
  void an_option_later_and_weaker_than_another_is_marked() {
    assertEquals(
        Set.of(1), OptionTrade.noBetterInAnything(List.of(option(4, 20, 1), option(6, 15, 1))));
  }

  @Test
  void an_option_better_in_one_thing_is_kept() {
    assertEquals(
        Set.of(),
        OptionTrade.noBetterInAnything(
            List.of(option(4, 20, 1), option(6, 15, 2), option(3, 5, 0))));
  }

  @Test
  void options_equal_in_everything_do_not_mark_each_other() {
    assertEquals(
        Set.of(), OptionTrade.noBetterInAnything(List.of(option(4, 20, 1), option(4, 20, 1))));
  }

  @Test
  void never_ready_is_later_than_any_time() {
    OptionTrade never =
        new OptionTrade(Optional.empty(), 20, 1, Duration.ofMinutes(10), Duration.ofMinutes(20));
    assertEquals(Set.of(0), OptionTrade.noBetterInAnything(List.of(never, option(999, 20, 1))));
  }

  @Test
  void working_time_is_better_long_and_touch_time_short() {
    OptionTrade base = option(4, 20, 1);
    OptionTrade hurried =
        new OptionTrade(base.ready(), 20, 1, Duration.ofMinutes(9), base.touchTime());
    OptionTrade fiddly =
        new OptionTrade(base.ready(), 20, 1, base.workingTime(), Duration.ofMinutes(21));
    assertEquals(Set.of(0, 2), OptionTrade.noBetterInAnything(List.of(hurried, base, fiddly)));
  }

  @Test
  void numbers_that_cannot_be_compared_are_refused() {
    assertThrows(InvalidValue.class, () -> option(1, Double.NaN, 0));
    assertThrows(InvalidValue.class, () -> option(1, 0, Double.POSITIVE_INFINITY));
    Duration none = Duration.ZERO;
    Duration below = Duration.ofSeconds(-1);
    new OptionTrade(Optional.empty(), 0, 0, none, none);
    InvalidValue working =
        assertThrows(
            InvalidValue.class, () -> new OptionTrade(Optional.empty(), 0, 0, below, none));
    assertEquals("workingTime", working.field());
    InvalidValue touch =
        assertThrows(
            InvalidValue.class, () -> new OptionTrade(Optional.empty(), 0, 0, none, below));
    assertEquals("touchTime", touch.field());
  }

  @Provide
  Arbitrary<List<OptionTrade>> lists() {
    Arbitrary<Integer> few = Arbitraries.integers().between(0, 3);
    return Combinators.combine(few, few, few).as(OptionTradeTest::option).list().ofMaxSize(8);
  }

  @Property
  void what_remains_covers_every_marked_option_and_is_never_empty(
      @ForAll("lists") List<OptionTrade> options) {
    Set<Integer> marked = OptionTrade.noBetterInAnything(options);
    Statistics.label("marked").collect(!marked.isEmpty());
    Statistics.label("marked").coverage(c -> c.check(true).percentage(p -> p > 30));
    assertTrue(options.isEmpty() || marked.size() < options.size());
    for (int i = 0; i < options.size(); i++) {
      boolean covered = false;
      for (int k = 0; k < options.size(); k++) {
        covered |= !marked.contains(k) && beats(options.get(k), options.get(i));
      }
      assertEquals(marked.contains(i), covered);
    }
    assertFalse(marked.stream().anyMatch(i -> i >= options.size()));
  }

  private static boolean beats(OptionTrade a, OptionTrade b) {
    boolean noWorse =
        !a.ready().get().isAfter(b.ready().get())
            && a.strength() >= b.strength()
            && a.removability() >= b.removability();
    return noWorse && !a.equals(b);
  }
}
