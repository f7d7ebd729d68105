package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.PromiseDesk.Told;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

class PromiseDeskPropertyTest {
  private static final PromiseDesk DESK = DeskData.desk();
  private static final JointOrder ORDER = DeskData.order("2027-03-11T15:30", o -> {});

  private static JointOrder at(double celsius, double doubt) {
    return OrderChange.cure(ORDER, JointOrder.CurePlace.constant(celsius, doubt, celsius + " °C"));
  }

  @Property(tries = 60)
  void warmer_is_never_later(
      @ForAll @DoubleRange(min = 3, max = 45) double celsius,
      @ForAll @DoubleRange(min = 0, max = 5) double more) {
    Instant cool = DESK.tell(at(celsius, 1)).ready().orElse(Instant.MAX);
    Instant warm = DESK.tell(at(celsius + more, 1)).ready().orElse(Instant.MAX);
    Statistics.label("cures").collect(!cool.equals(Instant.MAX));
    Statistics.label("cures").coverage(c -> c.check(true).percentage(p -> p > 20));
    assertFalse(warm.isAfter(cool));
  }

  @Property(tries = 60)
  void the_promise_is_never_before_the_joint_is_ready_and_the_shop_is_open_then(
      @ForAll @IntRange(min = 0, max = 40_000) int minutes,
      @ForAll @IntRange(min = 0, max = 2) int place) {
    ShopPlace there = DESK.shop().places().get(place);
    Told told = DESK.tellAt(ORDER, Optional.of(there), ORDER.start().plusSeconds(minutes * 60L));
    Instant promise = told.promise().orElseThrow().promise();
    assertFalse(promise.isBefore(told.ready().orElseThrow().plus(Duration.ofMinutes(15))));
    assertTrue(DESK.shop().hours().isOpen(promise));
  }

  @Property(tries = 80)
  void a_later_start_never_ends_sooner(
      @ForAll @IntRange(min = 0, max = 30_000) int minutes,
      @ForAll @IntRange(min = 1, max = 3_000) int later,
      @ForAll @IntRange(min = 0, max = 2) int place) {
    ShopPlace there = DESK.shop().places().get(place);
    Instant start = ORDER.start().plusSeconds(minutes * 60L);
    Told one = DESK.tellAt(ORDER, Optional.of(there), start);
    Told two = DESK.tellAt(ORDER, Optional.of(there), start.plusSeconds(later * 60L));
    // a warm place is followed in steps of 10 min on its cold side
    Duration allowed = there.warm() ? Duration.ofMinutes(10) : Duration.ofMinutes(1);
    Instant sooner = two.ready().orElse(Instant.MAX.minus(allowed)).plus(allowed);
    assertFalse(sooner.isBefore(one.ready().orElse(Instant.MAX)));
  }

  @Property(tries = 40)
  void more_doubt_about_the_temperature_is_never_sooner(
      @ForAll @DoubleRange(min = 8, max = 40) double celsius,
      @ForAll @DoubleRange(min = 0, max = 4) double doubt) {
    Instant sure = DESK.tell(at(celsius, 0)).ready().orElse(Instant.MAX);
    Instant unsure = DESK.tell(at(celsius, doubt)).ready().orElse(Instant.MAX);
    assertFalse(unsure.isBefore(sure));
  }
}
