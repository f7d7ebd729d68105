package annulus.cure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import annulus.quantity.Units;

/**
 * The Arrhenius rate of one activation energy.
 *
 * @param activationKJ activation energy, kJ/mol, 0 (rate without regard to temperature) to 150
 * @param referenceC temperature at which the rate is 1, °C
 * @param minimumC below this the rate is exactly 0, °C
 * @param holdAboveC above this the rate is held, °C
 */
public record ArrheniusRate(
    double activationKJ, double referenceC, double minimumC, double holdAboveC) implements Rate {

  /** Highest activation energy, kJ/mol, for which the piece integral keeps its stated error. */
  static final double HIGHEST_ACTIVATION_KJ = 150;

  /**
   * @throws InvalidValue when a value is out of range or the hold temperature is below the minimum
   */
  public ArrheniusRate {
    Check.within("activationKJ", activationKJ, 0, HIGHEST_ACTIVATION_KJ, "kJ/mol");
    Celsius.check("referenceC", referenceC);
    Celsius.check("minimumC", minimumC);
    Celsius.check("holdAboveC", holdAboveC);
    if (holdAboveC < minimumC) {
      throw new InvalidValue(
          "holdAboveC",
          Numbers.plain(holdAboveC) + " °C is below the minimum cure temperature",
          "at least " + Numbers.plain(minimumC) + " °C");
    }
  }

  /** A rate that nothing holds: the quick side where a hot part may grab. */
  public static ArrheniusRate unheld(double activationKJ, double referenceC, double minimumC) {
    return new ArrheniusRate(activationKJ, referenceC, minimumC, Celsius.HIGHEST);
  }

  /**
   * The relative cure rate at a temperature.
   *
   * <p>{@code A(T) = exp(−(Ea/R)·(1/T − 1/Tref))}, T in kelvin; 0 below the minimum, A(hold) above
   * the hold temperature.
   *
   * @param celsius temperature, °C
   * @return relative rate, without unit
   *     <p>Valid for: temperatures from the minimum to the hold temperature; outside, the slow side
   *     described above.
   *     <p>Source: Arrhenius equation; R from CODATA 2018 (exact).
   */
  @Override
  public double at(double celsius) {
    return celsius < minimumC ? 0 : Math.exp(exponent(celsius));
  }

  /** The logarithm of the rate at a temperature that is not below the minimum. */
  double exponent(double celsius) {
    double kelvin = Units.kelvin(Math.min(celsius, holdAboveC));
    return -perKelvin() * (1 / kelvin - 1 / Units.kelvin(referenceC));
  }

  /** The activation energy over the gas constant, K. */
  double perKelvin() {
    return activationKJ * 1000 / Units.GAS_CONSTANT;
  }
}
