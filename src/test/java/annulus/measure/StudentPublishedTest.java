package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Student t table (JCGM 100:2008, table G.2) and normal and log-normal figures (computed). */
class StudentPublishedTest {

  @ParameterizedTest
  @CsvSource({
    "1, 12.706",
    "2, 4.303",
    "3, 3.182",
    "4, 2.776",
    "5, 2.571",
    "8, 2.306",
    "10, 2.228",
    "16, 2.120",
    "20, 2.086",
    "30, 2.042",
    "100, 1.984"
  })
  void two_sided_95_percent_agrees_with_the_table(double dof, double printed) {
    assertEquals(printed, Student.quantile(0.975, dof), 5.01e-4);
  }

  @ParameterizedTest
  @CsvSource({"1, 63.657", "4, 4.604", "16, 2.921"})
  void two_sided_99_percent_agrees_with_the_table(double dof, double printed) {
    assertEquals(printed, Student.quantile(0.995, dof), 5.01e-4);
  }

  @Test
  void t_with_five_degrees_of_freedom_agrees_to_all_digits() {
    assertEquals(2.5705818356363137, Student.quantile(0.975, 5), 1e-9);
  }

  @Test
  void the_normal_distribution_agrees_with_computed_values() {
    double infinite = Double.POSITIVE_INFINITY;
    assertEquals(0.97500210485178, Student.cumulative(1.96, infinite), 1e-13);
    assertEquals(0.993790334674224, Student.cumulative(2.5, infinite), 1e-13);
    assertEquals(1.644853626951473, Student.quantile(0.95, infinite), 1e-11);
    assertEquals(1.959963984540054, Student.quantile(0.975, infinite), 1e-11);
  }

  @Test
  void the_librarys_log_normal_agrees_with_computed_values() {
    LogNormalDistribution d = LogNormalDistribution.of(0, 0.5);
    assertEquals(0.439364104927492, d.inverseCumulativeProbability(0.05), 1e-10);
    assertEquals(2.27601660851432, d.inverseCumulativeProbability(0.95), 1e-9);
    assertEquals(1.13314845306683, d.getMean(), 1e-13);
    // NIST/SEMATECH e-Handbook 8.1.6.4, from memory: σ 0.5, T50 20000, at 5000
    LogNormalDistribution life = LogNormalDistribution.of(Math.log(20000), 0.5);
    assertEquals(0.0027806178623, life.cumulativeProbability(5000), 1e-12);
  }
}
