package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Worked examples of JCGM 100:2008 (GUM). */
class UncertaintyPublishedTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  /** JCGM 100 H.1, end gauge; figures in nm instead of µm. */
  private static Budget endGauge(Budget comparison) {
    return new Budget(
        List.of(
            Samples.normal("standard", 25, 18),
            Samples.normal(
                "difference", comparison.combinedUm(), comparison.effectiveDegreesOfFreedom()),
            Samples.normal("expansion", 50_000_000 * 0.1 * 1e-6 / Math.sqrt(3), 50),
            Samples.normal("temperature", 50_000_000 * 11.5e-6 * 0.05 / Math.sqrt(3), 2)));
  }

  private static Budget comparison() {
    return new Budget(
        List.of(
            Samples.normal("repeated", 5.8, 24),
            Samples.normal("random", 3.9, 5),
            Samples.normal("systematic", 6.7, 8)));
  }

  @Test
  void the_comparison_of_gauge_blocks_agrees_with_h_1() {
    assertEquals(9.7, comparison().combinedUm(), 0.05);
    assertEquals(25.4472507774, comparison().effectiveDegreesOfFreedom(), 1e-9);
  }

  @Test
  void the_end_gauge_budget_agrees_with_h_1() {
    Budget gauge = endGauge(comparison());
    assertEquals(16.599, gauge.component("temperature").orElseThrow().standardUm(), 5e-4);
    assertEquals(2.887, gauge.component("expansion").orElseThrow().standardUm(), 5e-4);
    assertEquals(31.66377, gauge.combinedUm(), 5e-6);
    assertEquals(16.75, gauge.effectiveDegreesOfFreedom(), 0.005);
    assertEquals(16, gauge.wholeDegreesOfFreedom());
    assertEquals(2.920781622, gauge.coverageFactor(0.99), 1e-8);
    assertEquals(93, Math.ceil(gauge.expandedUm(0.99)));
    assertEquals(32, Math.rint(gauge.combinedUm()));
  }

  @Test
  void the_twenty_temperatures_agree_with_4_4_3() {
    // JCGM 100 4.4.3, table 1, from memory
    List<Double> readings =
        DoubleStream.of(
                96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33,
                100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72)
            .boxed()
            .toList();
    assertEquals(100.145, Sample.mean(Samples.array(readings)), 1e-10);
    assertEquals(1.48884448, Sample.standardDeviation(Samples.array(readings)), 5e-9);
    MeasuredDiameter bore =
        Samples.bore(
            Samples.IDEAL_BORE, new ArrayList<>(readings.stream().map(Reading::of).toList()));
    Component repeat = bore.budget().component("repeatability").orElseThrow();
    assertEquals(332.91575, repeat.standardUm(), 5e-6);
    assertEquals(19, repeat.degreesOfFreedom());
    assertEquals(100.145, bore.meanMm(), 1e-9);
  }

  @Test
  void ten_resistors_calibrated_from_one_standard_agree_with_5_2_2() {
    // JCGM 100 5.2.2, from memory: 1 Ω in all, 0.316 Ω if the correlation is forgotten
    double[] ones = DoubleStream.generate(() -> 1).limit(10).toArray();
    double[] u = DoubleStream.generate(() -> 0.1).limit(10).toArray();
    double[][] together = new double[10][10];
    double[][] apart = new double[10][10];
    for (int i = 0; i < 10; i++) {
      Arrays.fill(together[i], 1);
      apart[i][i] = 1;
    }
    assertEquals(1, Correlated.standard(ones, u, together), 1e-12);
    assertEquals(0.316, Correlated.standard(ones, u, apart), 5e-4);
  }

  @Test
  void an_instruments_own_error_does_not_average_out_over_readings() {
    // JCGM 100 5.2.2: one standard behind all readings
    for (int n : new int[] {1, 4, 9}) {
      double[] mm = DoubleStream.generate(() -> 42.0).limit(n).toArray();
      Budget budget = Samples.bore(Samples.TELESCOPIC, Samples.readings(mm)).budget();
      double u = budget.component("instrument").orElseThrow().standardUm();
      assertEquals(11.5470, u, 5e-5, "n = " + n);
    }
  }

  @Test
  void three_relative_components_agree_with_g_4_1() {
    // JCGM 100 G.4.1, from memory
    Budget budget =
        new Budget(
            List.of(
                Samples.normal("one", 0.25, 9),
                Samples.normal("two", 0.57, 4),
                Samples.normal("three", 0.82, 14)));
    assertEquals(1.0294659, budget.combinedUm(), 5e-8);
    assertEquals(18.998742, budget.effectiveDegreesOfFreedom(), 5e-7);
    assertEquals(18, budget.wholeDegreesOfFreedom());
    assertEquals(2.2, budget.expandedUm(0.95), 0.05);
  }

  @Test
  void correlated_raw_data_agree_with_h_2() {
    // JCGM 100 H.2: resistance, reactance, impedance from five sets of V, I (mA) and phase
    double[][] data = {
      {5.007, 4.994, 5.005, 4.990, 4.999},
      {19.663, 19.639, 19.640, 19.685, 19.678},
      {1.0456, 1.0438, 1.0468, 1.0428, 1.0433}
    };
    double[] mean = new double[3];
    double[] u = new double[3];
    double[][] r = new double[3][3];
    for (int i = 0; i < 3; i++) {
      mean[i] = Arrays.stream(data[i]).average().orElseThrow();
      u[i] = Math.sqrt(covarianceOfMeans(data[i], data[i]));
    }
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        r[i][j] = i == j ? 1 : covarianceOfMeans(data[i], data[j]) / (u[i] * u[j]);
      }
    }
    assertEquals(-0.36, r[0][1], 0.006);
    assertEquals(0.86, r[0][2], 0.006);
    assertEquals(-0.65, r[1][2], 0.006);
    double z = 1000 * mean[0] / mean[1];
    double resistance = z * Math.cos(mean[2]);
    double reactance = z * Math.sin(mean[2]);
    assertEquals(127.732, resistance, 5.1e-4);
    assertEquals(219.847, reactance, 5.1e-4);
    assertEquals(254.260, z, 5.1e-4);
    double[] toR = {resistance / mean[0], -resistance / mean[1], -reactance};
    double[] toX = {reactance / mean[0], -reactance / mean[1], resistance};
    double[] toZ = {z / mean[0], -z / mean[1], 0};
    assertEquals(0.071, Correlated.standard(toR, u, r), 5.1e-4);
    // 0.29558 without rounding between; the print comes from rounded steps
    assertEquals(0.295, Correlated.standard(toX, u, r), 1e-3);
    assertEquals(0.236, Correlated.standard(toZ, u, r), 5.1e-4);
  }

  /** JCGM 100 equation (17). */
  private static double covarianceOfMeans(double[] a, double[] b) {
    double meanA = Arrays.stream(a).average().orElseThrow();
    double meanB = Arrays.stream(b).average().orElseThrow();
    double sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += (a[k] - meanA) * (b[k] - meanB);
    }
    return sum / (a.length * (a.length - 1));
  }

  @Test
  void rectangular_and_resolution_terms_are_exact() {
    // computed: a/√3 and d/√12
    assertEquals(2.3094, Component.rectangular("a", "a", 4, "test").standardUm(), 5e-5);
    assertEquals(11.5470, Component.rectangular("a", "a", 20, "test").standardUm(), 5e-5);
    assertEquals(28.8675, Component.rectangular("a", "a", 50, "test").standardUm(), 5e-5);
    Budget caliper = Samples.part(Samples.CALIPER, Samples.readings(42)).budget();
    assertEquals(2.88675, caliper.component("resolution").orElseThrow().standardUm(), 5e-6);
    Budget micrometer = Samples.part(Samples.MICROMETER, Samples.readings(42)).budget();
    assertEquals(2.3094, micrometer.component("instrument").orElseThrow().standardUm(), 5e-5);
  }

  @Test
  void the_gap_of_two_diameters_agrees_with_the_closed_form() {
    // computed: g = (D − d)/2, u(D) 3 µm, u(d) 4 µm
    assertEquals(2.5, Correlated.gapStandardUm(3, 4, 0), 1e-12);
    assertEquals(0.5, Correlated.gapStandardUm(3, 4, 1), 1e-12);
    assertEquals(3.5, Correlated.gapStandardUm(3, 4, -1), 1e-12);
    Budget gap =
        Budget.ofGap(
            new Budget(List.of(Samples.normal("a", 3, INFINITE))),
            new Budget(List.of(Samples.normal("a", 4, INFINITE))));
    assertEquals(2.5, gap.combinedUm(), 1e-12);
    assertTrue(gap.component("bore.a").isPresent());
    assertTrue(gap.component("part.a").isPresent());
  }
}
