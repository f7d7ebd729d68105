package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Instrument;
import annulus.measure.Component.Shape;
import annulus.quantity.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.random.RandomGenerator;
import org.hipparchus.random.Well19937c;
import org.junit.jupiter.api.Test;

/** Propagation of distributions (JCGM 101:2008) by Monte Carlo with Hipparchus, seeded. */
class BudgetIndependentTest {
  private static final int TRIALS = 200_000;

  private final RandomGenerator random = new Well19937c(20_080_101L);

  private double draw(Component c) {
    if (c.shape() == Shape.RECTANGULAR) {
      return c.standardUm() * Math.sqrt(3) * (2 * random.nextDouble() - 1);
    }
    double scale = 1;
    if (c.shape() == Shape.T && Double.isFinite(c.degreesOfFreedom())) {
      // Student's t as normal over the root of a chi-square per degree of freedom
      double chi = 0;
      for (int i = 0; i < c.degreesOfFreedom(); i++) {
        double z = random.nextGaussian();
        chi += z * z;
      }
      scale = Math.sqrt(c.degreesOfFreedom() / chi);
    }
    return c.standardUm() * random.nextGaussian() * scale;
  }

  private double[] propagate(Budget budget) {
    double[] sums = new double[TRIALS];
    for (int i = 0; i < TRIALS; i++) {
      for (Component c : budget.components()) {
        sums[i] += draw(c);
      }
    }
    Arrays.sort(sums);
    return sums;
  }

  private static double standardDeviation(double[] values) {
    return Math.sqrt(Arrays.stream(values).map(v -> v * v).average().orElseThrow());
  }

  private static double half95(double[] sorted) {
    int tail = (int) (0.025 * sorted.length);
    return (sorted[sorted.length - 1 - tail] - sorted[tail]) / 2;
  }

  private static Component rectangular(String id, double standard) {
    return Component.rectangular(id, id, standard * Math.sqrt(3), "test");
  }

  @Test
  void four_rectangular_errors_agree_with_jcgm_101_9_2_3() {
    Budget budget =
        new Budget(
            List.of(
                rectangular("a", 1),
                rectangular("b", 1),
                rectangular("c", 1),
                rectangular("d", 1)));
    double[] sums = propagate(budget);
    assertEquals(2, budget.combinedUm(), 1e-12);
    assertEquals(2, standardDeviation(sums), 0.02);
    assertEquals(3.87940674, half95(sums), 0.03); // printed
    assertEquals(3.92, budget.expandedUm(0.95), 0.005); // printed for the budget
  }

  @Test
  void a_ruling_rectangular_error_leaves_the_budget_on_the_wide_side() {
    // JCGM 101 9.2.4, from memory: ±17.0158, while the budget says ±19.9
    Budget budget =
        new Budget(
            List.of(
                rectangular("a", 1),
                rectangular("b", 1),
                rectangular("c", 1),
                rectangular("d", 10)));
    double[] sums = propagate(budget);
    assertEquals(10.14889, budget.combinedUm(), 5e-6);
    assertEquals(17.0158, half95(sums), 0.05);
    assertEquals(19.9, budget.expandedUm(0.95), 0.05);
    assertEquals(0.97, budget.share("d"), 0.002);
  }

  @Test
  void the_propagated_gap_has_the_budgets_uncertainty() {
    Estimate expansion = new Estimate(22, 23, 24);
    List<Reading> readings =
        Samples.readings(42.03, 42.04, 42.02, 42.03, 42.05, 42.04, 42.02, 42.03, 42.05, 42.01);
    MeasuredDiameter bore =
        MeasuredDiameter.of(Side.BORE, readings, Samples.CALIPER, 12, 2, expansion, Samples.LIMITS);
    MeasuredDiameter part = Samples.part(Samples.MICROMETER, Samples.readings(41.97));
    Budget gap = Budget.ofGap(bore.budget(), part.budget());
    double[] sums = propagate(gap);
    assertEquals(1, standardDeviation(sums) / gap.combinedUm(), 0.02);
    assertTrue(half95(sums) <= gap.expandedUm(0.95));
  }

  /** The whole chain: true diameters, biased and rounding instruments, unknown temperature. */
  @Test
  void measured_gaps_cover_the_true_gap_at_least_as_often_as_stated() {
    for (int n : new int[] {2, 3, 5, 10}) {
      int covered = 0;
      int trials = 4000;
      for (int i = 0; i < trials; i++) {
        double trueBore = 42.05 + 0.02 * random.nextDouble();
        double truePart = 42.00 + 0.02 * random.nextDouble();
        MeasuredDiameter bore = simulate(Side.BORE, trueBore, Samples.TELESCOPIC, n, 23);
        MeasuredDiameter part = simulate(Side.PART, truePart, Samples.MICROMETER, n, 11.5);
        Budget gap = Budget.ofGap(bore.budget(), part.budget());
        double error = 500 * ((bore.meanMm() - part.meanMm()) - (trueBore - truePart));
        covered += Math.abs(error) <= gap.expandedUm(0.95) ? 1 : 0;
      }
      assertTrue(covered >= 0.95 * trials, "n = " + n + ": " + covered + " of " + trials);
    }
  }

  private MeasuredDiameter simulate(
      Side side, double trueAt20, Instrument instrument, int n, double expansion) {
    Instrument.Span span = instrument.spanFor(side.use(), trueAt20).orElseThrow();
    double celsius = 24;
    double real = celsius + 2 * (2 * random.nextDouble() - 1);
    double atTemperature = trueAt20 * (1 + expansion * 1e-6 * (real - 20));
    double bias = span.mpeUm() / 1000 * (2 * random.nextDouble() - 1);
    double step = span.resolutionUm() / 1000;
    List<Reading> readings = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      double noisy = atTemperature + bias + 0.008 * random.nextGaussian();
      readings.add(Reading.of(Math.rint(noisy / step) * step));
    }
    Estimate exact = Estimate.exactly(expansion);
    return MeasuredDiameter.of(side, readings, instrument, celsius, 2, exact, Samples.LIMITS);
  }

  @Test
  void the_mean_of_an_oval_bore_is_covered_from_two_places_on() {
    for (int places : new int[] {2, 3, 4}) {
      int covered = 0;
      int trials = 4000;
      for (int i = 0; i < trials; i++) {
        double phase = Math.PI * random.nextDouble();
        List<Reading> readings = new ArrayList<>();
        for (int k = 0; k < places; k++) {
          double angle = 180.0 * k / places;
          double form = 0.03 * Math.cos(2 * Math.toRadians(angle) - phase);
          double noise = 0.001 * random.nextGaussian();
          readings.add(Reading.at(42 + form + noise, 5, angle));
        }
        Collections.rotate(readings, i);
        MeasuredDiameter bore = Samples.bore(Samples.DIAL_BORE, readings);
        double error = 1000 * Math.abs(bore.meanMm() - 42);
        covered += error <= bore.budget().expandedUm(0.95) ? 1 : 0;
      }
      assertTrue(covered >= 0.95 * trials, places + " places: " + covered);
    }
  }

  @Test
  void student_and_normal_agree_with_hipparchus() {
    NormalDistribution normal = new NormalDistribution();
    for (double p : new double[] {0.01, 0.3, 0.5, 0.9, 0.975, 0.9995}) {
      double infinite = Double.POSITIVE_INFINITY;
      assertEquals(normal.inverseCumulativeProbability(p), Student.quantile(p, infinite), 1e-8);
      for (double dof : new double[] {1, 2.5, 7, 16.75, 300}) {
        TDistribution t = new TDistribution(dof);
        assertEquals(t.inverseCumulativeProbability(p), Student.quantile(p, dof), 1e-6);
        double x = 3 * p;
        assertEquals(t.cumulativeProbability(x), Student.cumulative(x, dof), 1e-10);
      }
    }
  }

  @Test
  void the_series_of_students_quantile_is_right_to_the_order_it_leaves_out() {
    NormalDistribution normal = new NormalDistribution();
    for (double p : new double[] {0.6, 0.8, 0.9, 0.975}) {
      double z = normal.inverseCumulativeProbability(p);
      for (double dof : new double[] {10, 30, 100}) {
        double exact = new TDistribution(dof).inverseCumulativeProbability(p);
        // the next term of Abramowitz and Stegun 26.7.5 is g4(z)/ν⁴, below 2 here
        assertEquals(exact, Student.series(z, dof), 2 / Math.pow(dof, 4) + 1e-8, p + " " + dof);
      }
    }
  }

  @Test
  void what_is_believed_of_a_gap_is_that_of_its_whole_budget() {
    for (int readings : new int[] {2, 3, 6}) {
      double[] bores = new double[readings];
      for (int i = 0; i < readings; i++) {
        bores[i] = 42.05 + 0.013 * i;
      }
      Budget bore = Samples.bore(Samples.TELESCOPIC, Samples.readings(bores)).budget();
      Budget part =
          Samples.part(Samples.MICROMETER, Samples.readings(41.98, 41.985, 41.97)).budget();
      Budget gap = Budget.ofGap(bore, part);
      Belief whole = new Belief(35, gap.combinedUm(), gap.effectiveDegreesOfFreedom());
      Belief quick = Budget.beliefInGap(35, bore, part);
      for (double edge : new double[] {0, 20, 30, 34, 36, 50}) {
        assertEquals(whole.within(edge, 90), quick.within(edge, 90), 1e-12);
      }
    }
    Component nothing =
        new Component("none", "no doubt", 0, Double.POSITIVE_INFINITY, Component.Shape.T, "a test");
    Budget none = new Budget(List.of(nothing));
    assertEquals(1, Budget.beliefInGap(35, none, none).within(35, 36));
    assertEquals(0, Budget.beliefInGap(35, none, none).within(36, 37));
  }
}
