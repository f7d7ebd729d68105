package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.cure.CureCurve.Point;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.random.RandomDataGenerator;
import org.junit.jupiter.api.Test;

/** Quantiles in closed form against a Monte Carlo drawn with Hipparchus' generator. */
class QuantileIndependentTest {
  private static final int DRAWS = 20_000;

  @Test
  void the_times_drawn_fall_on_the_quantiles_computed() {
    Rate rate = new ArrheniusRate(45, 22, 5, 40);
    CureCurve curve = new CureCurve(List.of(new Point(0.1, 0.5), new Point(1, 24)));
    Spread surface = new Spread(0.2);
    Spread gap = new Spread(0.25);
    CureModel model = new CureModel(1.5, 1.2, 0.8, curve, rate, rate, Spread.combine(surface, gap));
    TemperatureHistory night = ReducedTimePublishedTest.coldNight();
    ReducedTime reduced = new ReducedTime(night, rate);
    RandomDataGenerator random = new RandomDataGenerator(20_260_314L);
    double[] seconds = new double[DRAWS];
    for (int i = 0; i < DRAWS; i++) {
      double one = 1.5 * Math.exp(random.nextNormal(0, 0.2));
      double two = 1.2 * Math.exp(random.nextNormal(0, 0.25));
      seconds[i] = reduced.secondsToReach(24 * one * two * 0.8).orElseThrow();
    }
    Arrays.sort(seconds);
    CureForecast forecast = model.in(night);
    for (double q : new double[] {0.05, 0.5, 0.8, 0.95, 0.99}) {
      double computed = forecast.secondsTo(1, q).orElseThrow();
      int below = -Arrays.binarySearch(seconds, computed) - 1;
      double sd = Math.sqrt(q * (1 - q) / DRAWS);
      assertEquals(q, below / (double) DRAWS, 4 * sd, "share drawn up to the quantile " + q);
      assertEquals(q, forecast.probabilityReached(1, computed), 1e-8);
    }
  }

  // Lognormal(0, 0.5): q05 0.439364104927492, q95 2.27601660851432; computed.
  @Test
  void the_factors_are_those_of_the_log_normal_distribution() {
    assertEquals(0.439364104927492, new Spread(0.5).factor(0.05), 1e-12);
    assertEquals(2.27601660851432, new Spread(0.5).factor(0.95), 1e-12);
    assertEquals(0.5, Spread.combine(new Spread(0.3), new Spread(0.4)).sigmaLn(), 1e-15);
    assertEquals(2, Spread.ofLimits95(0.5, 2).factor(0.975), 1e-12);
    // NIST/SEMATECH handbook, lognormal sigma 0.5, T50 20000 at 5000; from memory.
    assertEquals(0.0027806178623, new Spread(0.5).probabilityOfAtMost(0.25), 1e-12);
  }
}
