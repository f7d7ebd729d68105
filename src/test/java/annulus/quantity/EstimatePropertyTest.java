package annulus.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Estimates between two others. */
class EstimatePropertyTest {
  private static final double ROUNDING = 1e-12;

  @Test
  void a_share_goes_straight_from_the_first_to_the_second() {
    Estimate first = new Estimate(1, 2, 4);
    Estimate second = new Estimate(3, 8, 8);
    assertEquals(first, Estimate.between(first, second, 0));
    assertEquals(second, Estimate.between(first, second, 1));
    assertEquals(new Estimate(1.5, 3.5, 5), Estimate.between(first, second, 0.25));
  }

  /** Where low, likely and high meet, a rounding error must not put them out of order. */
  @Property(tries = 5000)
  void between_two_estimates_there_always_is_one(
      @ForAll @DoubleRange(min = 0, max = 1) double low,
      @ForAll @DoubleRange(min = 0, max = 1) double other,
      @ForAll @DoubleRange(min = 0, max = 1) double width,
      @ForAll @DoubleRange(min = 0, max = 1) double share) {
    Estimate wide = new Estimate(low, low + width / 2, low + width);
    Estimate exact = Estimate.exactly(other);
    for (Estimate end : new Estimate[] {wide, exact, Estimate.exactly(low)}) {
      Estimate between = Estimate.between(exact, end, share);
      assertEquals(other + (end.low() - other) * share, between.low(), ROUNDING);
      assertEquals(other + (end.high() - other) * share, between.high(), ROUNDING);
      assertTrue(between.low() <= between.likely() && between.likely() <= between.high());
    }
  }
}
