package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.quantity.InvalidValue;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Limits of the cure model that no other test stands on. */
class CureEdgesTest {
  /** Neumaier's own example: 1 + 1e100 + 1 - 1e100 is 2. */
  @Test
  void a_sum_keeps_what_rounding_drops_whichever_is_larger() {
    Sum sum = new Sum();
    for (double value : new double[] {1, 1e100, 1, -1e100}) {
      sum.add(value);
    }
    assertEquals(2, sum.value());
    Sum falling = new Sum();
    for (double value : new double[] {1e100, 1, -1e100}) {
      falling.add(value);
    }
    assertEquals(1, falling.value());
  }

  @Test
  void a_shifted_history_is_as_much_colder_everywhere() {
    TemperatureHistory history =
        TemperatureHistory.holdingLast(
            List.of(
                new TemperatureHistory.Point(0, 20),
                new TemperatureHistory.Point(3600, 12),
                new TemperatureHistory.Point(7200, 25)));
    TemperatureHistory colder = history.shiftedBy(-3);
    for (double seconds : new double[] {0, 1800, 3600, 5000, 7200, 90_000}) {
      assertEquals(history.celsiusAt(seconds) - 3, colder.celsiusAt(seconds), 1e-12);
    }
    assertEquals(25, history.warmestC());
    assertEquals(12, history.coldestC());
    assertEquals(22, colder.warmestC());
    assertEquals(9, colder.coldestC());
  }

  @Test
  void a_quantile_of_nothing_or_everything_is_refused() {
    Spread spread = new Spread(0.3);
    assertThrows(InvalidValue.class, () -> spread.factor(0));
    assertThrows(InvalidValue.class, () -> spread.factor(1));
    assertThrows(InvalidValue.class, () -> Spread.NONE.factor(1));
    assertThrows(InvalidValue.class, () -> Spread.NONE.factor(Double.NaN));
  }

  @Test
  void without_spread_a_factor_is_surely_one() {
    assertEquals(1, Spread.NONE.probabilityOfAtMost(1));
    assertEquals(1, Spread.NONE.probabilityOfAtMost(1.5));
    assertEquals(0, Spread.NONE.probabilityOfAtMost(Math.nextDown(1)));
  }

  @Test
  void the_slow_side_needs_energies_in_order_and_the_same_temperatures() {
    SlowestRate.between(40, 40, 22, 5, 40);
    assertThrows(InvalidValue.class, () -> SlowestRate.between(41, 40, 22, 5, 40));
    ArrheniusRate base = new ArrheniusRate(40, 22, 5, 40);
    for (ArrheniusRate other :
        List.of(
            new ArrheniusRate(50, 23, 5, 40),
            new ArrheniusRate(50, 22, 6, 40),
            new ArrheniusRate(50, 22, 5, 41))) {
      assertThrows(InvalidValue.class, () -> new SlowestRate(base, other));
    }
  }

  @Test
  void a_gap_factor_starts_to_grow_at_the_reference() {
    assertEquals(1, GapFactor.of(25, 25, 1));
    assertEquals(2, GapFactor.of(50, 25, 1), 1e-12);
    assertThrows(InvalidValue.class, () -> GapFactor.of(50, 25, 4.1));
    assertThrows(InvalidValue.class, () -> GapFactor.of(Double.NaN, 25, 1));
  }
}
