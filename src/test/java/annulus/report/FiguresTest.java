package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class FiguresTest {
  @Test
  void a_probability_just_below_the_wanted_one_is_not_printed_as_reaching_it() {
    assertEquals("94.97 %", Figures.percent(0.9497, 0.95));
    assertEquals("94.9997 %", Figures.percent(0.949997, 0.95));
    assertEquals("just under 95 %", Figures.percent(0.95 - 1e-11, 0.95));
    assertEquals("95.0 %", Figures.percent(0.95, 0.95));
    assertEquals("95.1 %", Figures.percent(0.9512, 0.95));
    assertEquals("85 %", Figures.percent(0.852, 0.95));
  }

  @Test
  void a_doubt_is_not_printed_as_certainty() {
    assertEquals("100 %", Figures.percent(1, 0.95));
    assertEquals("0 %", Figures.percent(0, 0.95));
    assertEquals("99.97 %", Figures.percent(0.9997, 0.95));
    assertEquals("more than 99.99 %", Figures.percent(1 - 1e-12, 0.95));
    assertEquals("less than 0.01 %", Figures.percent(1e-9, 0.95));
  }

  @Property
  void a_printed_percent_stands_on_the_same_side_of_the_wanted_one(
      @ForAll @IntRange(min = 100, max = 999_900) int millionths) {
    double probability = millionths / 1e6;
    String text = Figures.percent(probability, 0.95);
    assertTrue(text.endsWith(" %"));
    double printed = Double.parseDouble(text.substring(0, text.length() - 2)) / 100;
    assertEquals(Math.signum(probability - 0.95), Math.signum(printed - 0.95), text);
    assertEquals(probability, printed, 0.0051);
  }

  @Property
  void limits_are_rounded_outwards(@ForAll @IntRange(min = -9_999, max = 9_999) int thousandths) {
    double value = thousandths / 1000.0;
    assertTrue(Double.parseDouble(Figures.roundedUp(value, 1)) >= value);
    assertTrue(Double.parseDouble(Figures.roundedDown(value, 1)) <= value);
    assertFalse(Figures.roundedUp(value, 1).startsWith("-0.0"));
  }

  @Property
  void a_force_in_three_digits_stays_on_the_safe_side(
      @ForAll @IntRange(min = 0, max = 99_999_999) int thousandths) {
    double value = thousandths / 1000.0;
    double up = Double.parseDouble(Figures.forceUp(value, 3));
    double down = Double.parseDouble(Figures.forceDown(value, 3));
    assertTrue(down <= value && value <= up);
    assertTrue(up - down <= Math.max(0.1, value / 100) * 1.000001, down + " " + value + " " + up);
  }

  @Test
  void a_force_has_three_digits_and_one_decimal_at_most() {
    assertEquals("9390", Figures.forceDown(9398.4, 3));
    assertEquals("36300", Figures.forceUp(36254, 3));
    assertEquals("24400", Figures.force(24364, 3));
    assertEquals("15.3", Figures.forceDown(15.34, 3));
    assertEquals("1.9", Figures.forceDown(1.98, 3));
    assertEquals("0", Figures.forceDown(0.04, 3));
    assertEquals("0.1", Figures.forceUp(0.04, 3));
    assertEquals("100", Figures.forceUp(100, 3));
    assertEquals("1018.4", Figures.forceDown(1018.47, 5));
  }

  @Test
  void small_lengths_get_a_decimal_and_large_ones_none() {
    assertEquals("3.4 µm", Figures.um(3.44));
    assertEquals("9.9 µm", Figures.um(9.94));
    assertEquals("10 µm", Figures.um(9.96));
    assertEquals("31 µm", Figures.um(30.6));
    assertEquals("8 µm", Figures.um(8));
    assertEquals("-4.5 µm", Figures.um(-4.5));
  }

  @Test
  void a_probability_in_a_data_cell_is_rounded_down() {
    assertEquals("0.949999", Figures.probability(0.9499999, 6));
    assertEquals("0.95", Figures.probability(0.95, 6));
    assertEquals("1", Figures.probability(1, 6));
    assertEquals("0", Figures.probability(1e-300, 6));
  }
}
