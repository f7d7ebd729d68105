package annulus.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.statistics.Statistics;

/** The quick ways to a text print what the exact decimal of the double prints. */
class NumbersPropertyTest {
  @Property(tries = 20_000)
  void short_numbers_print_as_their_exact_decimal_does(
      @ForAll @LongRange(min = -2_000_000_000L, max = 2_000_000_000L) long units,
      @ForAll @IntRange(min = 0, max = 7) int decimals) {
    double value = units / Math.pow(10, decimals);
    Statistics.label("size").collect(Math.abs(value) < 1e6 ? "quick" : "beyond");
    if (value != 0) {
      assertEquals(Numbers.exactPlain(value), Numbers.plain(value));
    }
    for (int digits = 0; digits <= 8; digits++) {
      assertEquals(Numbers.exactFixed(value, digits), Numbers.fixed(value, digits));
      assertDirectedAsExact(value, digits);
    }
  }

  private static void assertDirectedAsExact(double value, int digits) {
    assertEquals(Numbers.exactFloored(value, digits), Numbers.floored(value, digits));
    for (boolean upwards : new boolean[] {true, false}) {
      assertEquals(
          Numbers.exactDirected(value, digits, upwards), Numbers.directed(value, digits, upwards));
    }
  }

  @Property(tries = 20_000)
  void any_number_prints_as_its_exact_decimal_does(
      @ForAll @DoubleRange(min = -3e6, max = 3e6) double value,
      @ForAll @IntRange(min = 0, max = 8) int digits) {
    if (value != 0) {
      assertEquals(Numbers.exactPlain(value), Numbers.plain(value));
    }
    assertEquals(Numbers.exactFixed(value, digits), Numbers.fixed(value, digits));
    assertEquals(Double.parseDouble(Numbers.fixed(value, digits)), Numbers.rounded(value, digits));
    assertDirectedAsExact(value, digits);
  }

  @Property(tries = 20_000)
  void numbers_beside_a_whole_step_are_not_turned(
      @ForAll @IntRange(min = -3_000_000, max = 3_000_000) int whole,
      @ForAll @IntRange(min = 0, max = 6) int digits,
      @ForAll @IntRange(min = -3, max = 3) int steps) {
    double step = whole / Math.pow(10, digits);
    assertDirectedAsExact(step + steps * Math.ulp(step), digits);
    assertDirectedAsExact(step * (1 + steps * 1e-9), digits);
    assertDirectedAsExact(step * (1 + steps * 1e-4), digits);
  }

  @Property(tries = 20_000)
  void numbers_beside_a_tie_round_as_their_exact_decimal_does(
      @ForAll @IntRange(min = -3_000_000, max = 3_000_000) int whole,
      @ForAll @IntRange(min = 0, max = 6) int digits,
      @ForAll @IntRange(min = -3, max = 3) int steps) {
    double tie = (whole + 0.5) / Math.pow(10, digits);
    double value = tie + steps * Math.ulp(tie);
    assertEquals(Numbers.exactFixed(value, digits), Numbers.fixed(value, digits));
    double near = tie * (1 + steps * 1e-9);
    assertEquals(Numbers.exactFixed(near, digits), Numbers.fixed(near, digits));
  }
}
