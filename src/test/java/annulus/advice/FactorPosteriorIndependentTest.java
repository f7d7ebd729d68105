package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.FactorPosterior.Limits;
import annulus.advice.FactorPosterior.Scatter;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
    FactorPosterior ours = FactorPosterior.of(prior, Scatter.NONE, joints);
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
    FactorPosterior ours = FactorPosterior.of(prior, Scatter.NONE, joints);
    assertEquals(sum / precision, ours.meanLn(), 1e-6);
    assertEquals(Math.sqrt(1 / precision), ours.sigmaLn(), 1e-6);
  }

  @Test
  void with_nothing_seen_the_prior_stays() {
    FactorPosterior ours = FactorPosterior.of(0.3, Scatter.NONE, List.of());
    assertEquals(0, ours.meanLn(), 1e-9);
    assertEquals(0.3, ours.sigmaLn(), 1e-6);
    // 95 % point of the standard normal: 1.644854 (any table)
    assertEquals(Math.exp(0.3 * 1.644854), ours.factor(0.95), 1e-5);
  }

  @Test
  void fixed_by_a_time_never_makes_it_slower_and_not_fixed_never_quicker() {
    double before = FactorPosterior.of(0.3, Scatter.NONE, List.of()).meanLn();
    Limits fixed = new Limits(Double.NEGATIVE_INFINITY, 0.1, 0.2);
    Limits open = new Limits(0.1, Double.POSITIVE_INFINITY, 0.2);
    assertTrue(FactorPosterior.of(0.3, Scatter.NONE, List.of(fixed)).meanLn() < before);
    assertTrue(FactorPosterior.of(0.3, Scatter.NONE, List.of(open)).meanLn() > before);
  }

  /** Mean, standard deviation and root mean square scatter, both integrals by midpoints. */
  private static double[] summed(double prior, Scatter scatter, List<Limits> joints, double reach) {
    int scatters = 1500;
    int points = 500;
    double[] sum = new double[4];
    for (int j = 0; j < scatters; j++) {
      double share = (j + 0.5) / scatters;
      // squared, so that most nodes lie where the scatter is small
      double more = 20 * scatter.moreLn() * share * share;
      double tau = scatter.leastLn() + more;
      List<Limits> scattered =
          joints.stream()
              .map(l -> new Limits(l.lowLn(), l.highLn(), Math.hypot(l.sigmaLn(), tau)))
              .toList();
      for (int i = 0; i < points; i++) {
        double x = reach * (2 * (i + 0.5) / points - 1);
        double weight =
            2
                * share
                * Math.exp(-more / scatter.moreLn() - x * x / (2 * prior * prior))
                * likelihood(x, scattered);
        sum[0] += weight;
        sum[1] += weight * x;
        sum[2] += weight * x * x;
        sum[3] += weight * tau * tau;
      }
    }
    double mean = sum[1] / sum[0];
    return new double[] {
      mean, Math.sqrt(sum[2] / sum[0] - mean * mean), Math.sqrt(sum[3] / sum[0])
    };
  }

  /** Joints that agree, joints that don't, and one still loose at a hundred times the rest. */
  @ParameterizedTest
  @CsvSource({"0, 0.1, 0", "-0.8, 1.6, 0", "0.4, 0.5, 0.1", "-1, 4.6, 0.05"})
  void scatter_between_joints_is_integrated_out_as_by_midpoints(
      double most, double slow, double own) {
    Scatter scatter = new Scatter(0.15, 0.15);
    List<Limits> joints = new ArrayList<>();
    for (int i = 0; i < 3; i++) {
      joints.add(new Limits(most - 0.1 - 0.05 * i, most + 0.1, own));
    }
    joints.add(new Limits(Double.NEGATIVE_INFINITY, most, own));
    joints.add(new Limits(slow, Double.POSITIVE_INFINITY, own));
    FactorPosterior ours = FactorPosterior.of(0.3, scatter, joints);
    double[] wanted = summed(0.3, scatter, joints, 6);
    assertEquals(wanted[0], ours.meanLn(), 1e-4);
    assertEquals(wanted[1], ours.sigmaLn(), 1e-4);
    assertEquals(wanted[2], ours.scatterLn(), 5e-4);
    assertEquals(Math.hypot(wanted[1], wanted[2]), ours.nextSigmaLn(), 5e-4);
  }

  @Test
  void joints_that_do_not_fit_each_other_widen_the_scatter_and_those_that_do_narrow_it() {
    Scatter scatter = new Scatter(0.15, 0.15);
    List<Limits> joints = new ArrayList<>();
    double before = FactorPosterior.of(0.3, scatter, joints).nextSigmaLn();
    for (int i = 0; i < 8; i++) {
      joints.add(new Limits(-0.1, 0.1, 0.05));
    }
    double agreed = FactorPosterior.of(0.3, scatter, joints).nextSigmaLn();
    assertTrue(agreed < before);
    joints.add(new Limits(1.5, 1.8, 0.05));
    double parted = FactorPosterior.of(0.3, scatter, joints).nextSigmaLn();
    assertTrue(parted > before && parted > 2 * agreed);
  }

  /** 113 times the expected time, once: ended at six prior deviations, a factor of 6. */
  @Test
  void the_grid_reaches_what_was_seen() {
    double seen = Math.log(113);
    Limits loose = new Limits(seen, Double.POSITIVE_INFINITY, 0.16);
    FactorPosterior known = FactorPosterior.of(0.3, Scatter.NONE, List.of(loose));
    // Gauss tail far beyond its limit: the conjugate update of an exact value, from above
    double mean = seen * 0.09 / (0.09 + 0.16 * 0.16);
    assertTrue(known.meanLn() > mean && known.meanLn() < seen, () -> known.meanLn() + "");
    int last = known.density().size() - 1;
    assertEquals(0, known.density().get(last), 1e-9);
    assertEquals(0, known.density().get(0), 1e-9);
  }
}
