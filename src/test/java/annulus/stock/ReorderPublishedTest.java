package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.quantity.Interval;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples and tables of textbooks, from memory. */
class ReorderPublishedTest {
  /**
   * Chase, Jacobs and Aquilano, Operations Management, fixed order quantity with safety stock: 60 a
   * day, standard deviation 7, six days, 95 %: order at 388. From memory.
   */
  @Test
  void a_fixed_lead_time_gives_the_reorder_point_of_the_textbook() {
    ReorderPoint point = ReorderPoint.of(60, 7, 6, 0, 0.95);
    assertEquals(360, point.duringLead(), 1e-9);
    assertEquals(388, Math.round(point.at()));
  }

  /**
   * Heizer and Render, Operations Management, both random: 150 a day, standard deviation 16, lead
   * time 5 days, standard deviation 1, 95 %: order at 1004. From memory.
   */
  @Test
  void a_random_lead_time_gives_the_reorder_point_of_the_textbook() {
    assertEquals(1004, ReorderPoint.of(150, 16, 5, 1, 0.95).at(), 1.0);
  }

  /**
   * Limits of a Poisson mean at 95 %, Biometrika Tables for Statisticians, table 40, from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0, 3.69",
    "1, 0.0253, 5.57",
    "2, 0.242, 7.22",
    "5, 1.62, 11.67",
    "10, 4.80, 18.39",
    "20, 12.22, 30.89",
  })
  void limits_of_a_count_are_those_of_the_table(long n, double low, double high) {
    Interval limits = UseRate.countLimits(n, 0.95);
    assertEquals(low, limits.low(), 0.006);
    assertEquals(high, limits.high(), 0.006);
  }
}
