package annulus.cure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Units;

/** The one temperature that would have done as much to a stored compound as the real ones did. */
public final class MeanKineticTemperature {
  private MeanKineticTemperature() {}

  private static final double LEAST_KELVIN = 100;
  private static final double MOST_KELVIN = 18_000;

  /**
   * Mean kinetic temperature of readings that stand for equal times.
   *
   * <p>{@code T = (ΔH/R)/(−ln(Σ exp(−ΔH/(R·Tᵢ))/n))}
   *
   * @param heatOverGasConstantK ΔH/R, K; 10 000 is customary
   * @param celsius readings, °C, at least one
   * @return mean kinetic temperature, °C
   *     <p>Valid for: ΔH/R of 100 to 18 000 K, readings from −80 to 300 °C.
   *     <p>Source: USP ⟨1160⟩, from memory.
   */
  public static double ofReadings(double heatOverGasConstantK, double... celsius) {
    double heat = checkHeat(heatOverGasConstantK);
    if (celsius.length == 0) {
      throw new InvalidValue("celsius", "has no reading", "at least one");
    }
    Sum sum = new Sum();
    for (double reading : celsius) {
      double kelvin = Units.kelvin(Celsius.check("celsius", reading));
      sum.add(Math.exp(-heat * (1 / kelvin - 1 / Units.ZERO_CELSIUS_K)));
    }
    return temperature(heat, sum.value() / celsius.length);
  }

  /**
   * Mean kinetic temperature of a history up to a time.
   *
   * <p>{@code T = (ΔH/R)/(−ln(∫ exp(−ΔH/(R·T(u))) du/t))}
   *
   * @param heatOverGasConstantK ΔH/R, K; 10 000 is customary
   * @param history temperature against time
   * @param seconds time t, s, above 0
   * @return mean kinetic temperature, °C
   *     <p>Valid for: as {@link #ofReadings}.
   *     <p>Source: as {@link #ofReadings}, sum replaced by the integral.
   */
  public static double of(double heatOverGasConstantK, TemperatureHistory history, double seconds) {
    double heat = checkHeat(heatOverGasConstantK);
    Check.positive("seconds", seconds, "s");
    double activationKJ = heat * Units.GAS_CONSTANT / 1000;
    Rate rate = new ArrheniusRate(activationKJ, 0, Celsius.LOWEST, Celsius.HIGHEST);
    return temperature(heat, new ReducedTime(history, rate).hoursAt(seconds) * 3600 / seconds);
  }

  private static double checkHeat(double heatOverGasConstantK) {
    return Check.within(
        "heatOverGasConstantK", heatOverGasConstantK, LEAST_KELVIN, MOST_KELVIN, "K");
  }

  /** The temperature whose rate relative to 0 °C is the mean rate. */
  private static double temperature(double heat, double meanRate) {
    double perKelvin = 1 / Units.ZERO_CELSIUS_K - Math.log(meanRate) / heat;
    return 1 / perKelvin - Units.ZERO_CELSIUS_K;
  }
}
