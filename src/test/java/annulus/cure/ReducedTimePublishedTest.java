package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.cure.TemperatureHistory.Point;
import annulus.quantity.Units;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Equivalent-age arithmetic: printed worked examples and values computed to many digits. */
class ReducedTimePublishedTest {
  private static final double H = 3600;

  private static ArrheniusRate rate(double activationKJ, double referenceC) {
    return new ArrheniusRate(activationKJ, referenceC, -80, 300);
  }

  /** The energy whose rate grows by a factor per 10 K about a temperature, matched at both ends. */
  private static double energy(double factor, double fromC, double toC) {
    double inverse = 1 / Units.kelvin(fromC) - 1 / Units.kelvin(toC);
    return Math.log(factor) * Units.GAS_CONSTANT / inverse / 1000;
  }

  // k(T)/k(20 °C), R = 8.314462618; computed.
  @ParameterizedTest
  @CsvSource({
    "40, 5, .41271010959", "40, 10, .560129124596", "40, 30, 1.71832545153",
    "40, 40, 2.85230084692", "50, 5, .330793055903", "50, 10, .484574095359",
    "50, 30, 1.96735067452", "50, 40, 3.7067574031"
  })
  void rates_relative_to_20_degrees_are_those_computed(double kj, double celsius, double ratio) {
    assertEquals(ratio, rate(kj, 20).at(celsius), 1e-10 * ratio);
  }

  // ASTM C1074 equivalent age, E 33.5 kJ/mol: 24 h at 5 °C; computed.
  @Test
  void a_day_at_5_degrees_equals_the_computed_age_at_20() {
    ReducedTime age = new ReducedTime(TemperatureHistory.constant(5), rate(33.5, 20));
    assertEquals(11.4370499829, age.hoursAt(24 * H), 1e-9);
  }

  // Rate doubles from 25 to 35 °C: 52.9 kJ/mol as printed in chemistry textbooks (52.9459 with the
  // rounded R = 8.314 they use).
  @Test
  void a_rate_that_doubles_from_25_to_35_degrees_has_the_printed_energy() {
    assertEquals(52.9459, energy(2, 25, 35) * 8.314 / Units.GAS_CONSTANT, 5e-5);
    assertEquals(52.9, energy(2, 25, 35), 0.05);
    assertEquals(2, rate(52.9459, 25).at(35), 1e-4);
  }

  // Accelerated ageing, Q10 = 2, 55 against 25 °C: factor 8, 730 d → 91.25 d (printed form of the
  // Q10 rule). The Arrhenius rate that has Q10 = 2 over the middle of the span comes within 1 %.
  @Test
  void three_doublings_make_eight() {
    double kj = energy(8, 25, 55);
    ReducedTime ageing = new ReducedTime(TemperatureHistory.constant(55), rate(kj, 25));
    assertEquals(91.25 * 24 * H, ageing.secondsToReach(730 * 24).orElseThrow(), 1e-5);
    assertEquals(2, rate(energy(2, 35, 45), 25).at(45) / rate(energy(2, 35, 45), 25).at(35), 1e-12);
  }

  // Nurse-Saul maturity with datum −11 °C: 28 d at 15 °C → 728 °C·d. Not an Arrhenius model; the
  // same history gives its temperature integral.
  @Test
  void the_temperature_integral_of_a_history_gives_the_printed_maturity() {
    double[] maturity = {0};
    TemperatureHistory.constant(15)
        .forEachPiece(
            28 * 24 * H, (s, a, e, b) -> maturity[0] += ((a + b) / 2 + 11) * (e - s) / (24 * H));
    assertEquals(728, maturity[0], 1e-9);
  }

  // E 50, ramp 10 → 30 °C over 24 h; exact through the exponential integral, computed.
  @Test
  void a_ramp_agrees_with_the_exponential_integral() {
    ReducedTime age =
        new ReducedTime(
            TemperatureHistory.holdingLast(List.of(new Point(0, 10), new Point(24 * H, 30))),
            rate(50, 20));
    double hours = age.hoursAt(24 * H);
    assertEquals(25.7916933062486, hours, 1e-9 * 25.8);
    // First order on that ramp with k20 = 0.1/h; computed.
    assertEquals(0.924163026682870, 1 - Math.exp(-0.1 * hours), 1e-9);
  }

  // E 50, 8 h each at 10, 20 and 30 °C; computed. The rate at the mean would say 24.0.
  @Test
  void three_steps_agree_with_the_sum_of_their_rates() {
    TemperatureHistory steps =
        TemperatureHistory.holdingLast(
            List.of(
                new Point(0, 10),
                new Point(8 * H, 10),
                new Point(8 * H, 20),
                new Point(16 * H, 20),
                new Point(16 * H, 30),
                new Point(24 * H, 30)));
    assertEquals(27.6153981591, new ReducedTime(steps, rate(50, 20)).hoursAt(24 * H), 1e-9);
  }

  /**
   * Cold night: bonded 16:00 at 20 °C, heating off 18:00, straight to 8 °C at 02:00, 8 °C to 06:00,
   * straight to 20 °C at 09:00, repeating.
   */
  static TemperatureHistory coldNight() {
    return TemperatureHistory.repeating(
        List.of(
            new Point(0, 20),
            new Point(2 * H, 20),
            new Point(10 * H, 8),
            new Point(14 * H, 8),
            new Point(17 * H, 20),
            new Point(24 * H, 20)),
        24 * H);
  }

  /**
   * The same night cut into short steps whose temperature is chosen so that the Arrhenius rate is
   * that of the factor-per-10-K rule in the middle of each step: the printed example is for that
   * rule.
   */
  private static TemperatureHistory coldNightUnder(double factor, ArrheniusRate rate) {
    double perKelvin = rate.activationKJ() * 1000 / Units.GAS_CONSTANT;
    double step = 60;
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < 24 * 60; i++) {
      double wanted = Math.pow(factor, (coldNight().celsiusAt((i + 0.5) * step) - 22) / 10);
      double celsius = 1 / (1 / Units.kelvin(22) - Math.log(wanted) / perKelvin) - 273.15;
      points.add(new Point(i * step, celsius));
      points.add(new Point((i + 1) * step, celsius));
    }
    return TemperatureHistory.repeating(points, 24 * H);
  }

  // Needs 24 h at 22 °C: Q10 2 → 38.4 h (06:24 the day after tomorrow), 9.8 equivalent hours at
  // 09:00; Q10 1.7 → 33.1 h; 2.5 → 42.8 h. Computed.
  @ParameterizedTest
  @CsvSource({"2, 38.4", "1.7, 33.1", "2.5, 42.8"})
  void a_cold_night_delays_as_computed(double factor, double hours) {
    ArrheniusRate rate = rate(50, 22);
    ReducedTime cure = new ReducedTime(coldNightUnder(factor, rate), rate);
    assertEquals(hours, cure.secondsToReach(24).orElseThrow() / H, 0.05);
    if (factor == 2) {
      assertEquals(9.8, cure.hoursAt(17 * H), 0.05);
    }
  }
}
