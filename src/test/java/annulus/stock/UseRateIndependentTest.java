package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.api.Test;

/** Against simulated years of random jobs. */
class UseRateIndependentTest {
  @Test
  void the_spread_of_a_day_is_that_of_simulated_days() {
    RandomDataGenerator random = new RandomDataGenerator(20261125);
    double sums = 0;
    double squares = 0;
    List<Double> amounts = new ArrayList<>();
    int total = 200_000;
    for (int day = 0; day < total; day++) {
      int jobs = random.nextPoisson(0.4);
      double sum = 0;
      for (int j = 0; j < jobs; j++) {
        double ml = 0.1 + 0.4 * random.nextDouble();
        amounts.add(ml);
        sum += ml;
      }
      sums += sum;
      squares += sum * sum;
    }
    UseRate rate = UseRate.of(amounts, total, 0.9);
    double mean = sums / total;
    double deviation = Math.sqrt(squares / total - mean * mean);
    assertEquals(mean, rate.mlPerDay(), 1e-9);
    assertEquals(deviation, rate.sdPerDay(), 0.01 * rate.sdPerDay());
  }

  @Test
  void limits_of_the_rate_hold_as_often_as_they_say() {
    RandomDataGenerator random = new RandomDataGenerator(7);
    int held = 0;
    int years = 4000;
    for (int year = 0; year < years; year++) {
      long n = random.nextPoisson(12);
      var limits = UseRate.countLimits(n, 0.9);
      held += limits.contains(12) ? 1 : 0;
    }
    assertTrue(held >= 0.89 * years, held + " of " + years);
  }

  @Test
  void only_uses_of_the_class_in_the_window_count() {
    Ledger ledger =
        Ledger.of(
            List.of(
                Lots.move("r", Movement.Kind.RECEIVE, "1", 50, Lots.DAY.minusDays(99), ""),
                Lots.move("u1", Movement.Kind.USE, "1", 1, Lots.DAY.minusDays(60), "J"),
                Lots.move("u2", Movement.Kind.USE, "1", 3, Lots.DAY, "J"),
                Lots.move("later", Movement.Kind.USE, "1", 3, Lots.DAY.plusDays(1), "J"),
                Lots.move("d", Movement.Kind.DISCARD, "1", 9, Lots.DAY, "")));
    UseRate rate = UseRate.of(ledger, "a", Lots.DAY, 365, 0.9).orElseThrow();
    assertEquals(2, rate.uses());
    assertEquals(100, rate.days());
    assertEquals(0.04, rate.mlPerDay(), 1e-12);
    assertEquals(1, UseRate.of(ledger, "a", Lots.DAY, 30, 0.9).orElseThrow().uses());
    assertTrue(UseRate.of(ledger, "b", Lots.DAY, 365, 0.9).isEmpty());
  }
}
