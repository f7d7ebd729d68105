package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.FactorPosterior.Limits;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.LongRange;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.integration.IterativeLegendreGaussIntegrator;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;

/** The grid against quadrature and error function of Hipparchus 4.0.3, and against closed forms. */
class FactorPosteriorIndependentTest {
  private static double phi(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }

  private static double likelihood(double theta, List<Limits> joints) {
    double product = 1;
    for (Limits joint : joints) {
      double high =
          joint.highLn() == Double.POSITIVE_INFINITY
              ? 1
              : phi((joint.highLn() - theta) / joint.sigmaLn());
      double low =
          joint.lowLn() == Double.NEGATIVE_INFINITY
              ? 0
              : phi((joint.lowLn() - theta) / joint.sigmaLn());
      product *= high - low;
    }
    return product;
  }

  private static double integral(UnivariateFunction f, double sigma) {
    return new IterativeLegendreGaussIntegrator(20, 1e-11, 1e-14)
        .integrate(2_000_000, f, -6 * sigma, 6 * sigma);
  }

  @Property(tries = 40)
  void mean_and_spread_agree_with_quadrature(@ForAll @LongRange(min = 0, max = 100_000) long seed) {
    Random random = new Random(seed);
    double prior = 0.2 + 0.3 * random.nextDouble();
    List<Limits> joints = new ArrayList<>();
    int count = 1 + random.nextInt(8);
    for (int i = 0; i < count; i++) {
      double low = -0.6 + 0.8 * random.nextDouble();
      double high = low + 0.05 + 0.5 * random.nextDouble();
      double sigma = 0.1 + 0.3 * random.nextDouble();
      int kind = random.nextInt(3);
      joints.add(
          new Limits(
              kind == 0 ? Double.NEGATIVE_INFINITY : low,
              kind == 1 ? Double.POSITIVE_INFINITY : high,
              sigma));
    }
    UnivariateFunction weight = x -> Math.exp(-x * x / (2 * prior * prior)) * likelihood(x, joints);
    double whole = integral(weight, prior);
    double mean = integral(x -> x * weight.value(x), prior) / whole;
    double square = integral(x -> (x - mean) * (x - mean) * weight.value(x), prior) / whole;
    FactorPosterior ours = FactorPosterior.of(prior, joints);
    assertEquals(mean, ours.meanLn(), 1e-6);
    assertEquals(Math.sqrt(square), ours.sigmaLn(), 1e-6);
    double median = Math.log(ours.factor(0.5));
    double below =
        new IterativeLegendreGaussIntegrator(20, 1e-11, 1e-14)
                .integrate(2_000_000, weight, -6 * prior, median)
            / whole;
    assertEquals(0.5, below, 1e-5);
  }

  @Test
  void limits_close_together_come_to_the_conjugate_normal_update() {
    // Gelman et al., Bayesian Data Analysis, section 2.5: precisions add, means weigh by them
    double[] seen = {0.21, 0.35, 0.18, 0.27};
    double sigma = 0.15;
    double prior = 0.3;
    List<Limits> joints = new ArrayList<>();
    double sum = 0;
    for (double value : seen) {
      joints.add(new Limits(value - 1e-4, value + 1e-4, sigma));
      sum += value / (sigma * sigma);
    }
    double precision = 1 / (prior * prior) + seen.length / (sigma * sigma);
    FactorPosterior ours = FactorPosterior.of(prior, joints);
    assertEquals(sum / precision, ours.meanLn(), 1e-6);
    assertEquals(Math.sqrt(1 / precision), ours.sigmaLn(), 1e-6);
  }

  @Test
  void with_nothing_seen_the_prior_stays() {
    FactorPosterior ours = FactorPosterior.of(0.3, List.of());
    assertEquals(0, ours.meanLn(), 1e-9);
    assertEquals(0.3, ours.sigmaLn(), 1e-6);
    // 95 % point of the standard normal: 1.644854 (any table)
    assertEquals(Math.exp(0.3 * 1.644854), ours.factor(0.95), 1e-5);
  }

  @Test
  void fixed_by_a_time_never_makes_it_slower_and_not_fixed_never_quicker() {
    double before = FactorPosterior.of(0.3, List.of()).meanLn();
    Limits fixed = new Limits(Double.NEGATIVE_INFINITY, 0.1, 0.2);
    Limits open = new Limits(0.1, Double.POSITIVE_INFINITY, 0.2);
    assertTrue(FactorPosterior.of(0.3, List.of(fixed)).meanLn() < before);
    assertTrue(FactorPosterior.of(0.3, List.of(open)).meanLn() > before);
  }
}
