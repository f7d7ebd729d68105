package annulus.catalog;

import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.CompoundClass.HotPoint;
import annulus.quantity.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;

/** Any row that is allowed says what is left when hot, whatever the last bit of a number does. */
class HotFractionPropertyTest {
  /** Three fractions in order, some of them the same. */
  private static Estimate falling(Random random, double most) {
    double[] three = new double[3];
    for (int i = 0; i < 3; i++) {
      three[i] = i > 0 && random.nextBoolean() ? three[i - 1] : most * random.nextDouble();
    }
    Arrays.sort(three);
    return new Estimate(three[0], three[1], three[2]);
  }

  private static void within(double a, double b, double value) {
    assertTrue(value >= Math.min(a, b) - 1e-15 && value <= Math.max(a, b) + 1e-15);
  }

  @Property(tries = 3000)
  void what_is_left_when_hot_lies_between_its_points_and_in_order(@ForAll long seed) {
    Random random = new Random(seed);
    Estimate cold = falling(random, 1);
    Estimate hot =
        random.nextBoolean()
            ? Estimate.exactly(cold.low() * random.nextDouble())
            : falling(random, cold.low());
    double from = 10 * random.nextDouble();
    double to = from + 100 * random.nextDouble() + 0.1;
    CompoundClass compound =
        Rows.with(
            Rows.COMPOUND, "hotStrength", List.of(new HotPoint(from, cold), new HotPoint(to, hot)));
    boolean atPoint = random.nextBoolean();
    Statistics.label("at a point").collect(atPoint);
    double at = atPoint ? to : from + (to - from) * random.nextDouble();
    Estimate left = compound.hotFraction(at);
    within(cold.low(), hot.low(), left.low());
    within(cold.likely(), hot.likely(), left.likely());
    within(cold.high(), hot.high(), left.high());
  }
}
