package annulus.cure;

import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;

/**
 * The slow side of an uncertain activation energy: at every temperature the smaller of the rates of
 * the lowest and the highest energy. Below the reference that is the high energy's rate, above it
 * the low energy's, so the rate still never falls as it gets warmer.
 *
 * @param lowest rate with the lowest activation energy
 * @param highest rate with the highest activation energy; all temperatures as in {@code lowest}
 */
public record SlowestRate(ArrheniusRate lowest, ArrheniusRate highest) implements Rate {
  /**
   * @throws InvalidValue when the energies are out of order or the temperatures differ
   */
  public SlowestRate {
    if (lowest.activationKJ() > highest.activationKJ()) {
      throw new InvalidValue(
          "activationKJ",
          Numbers.plain(lowest.activationKJ())
              + " kJ/mol is above the highest energy "
              + Numbers.plain(highest.activationKJ())
              + " kJ/mol",
          "lowest <= highest");
    }
    sameTemperature("referenceC", lowest.referenceC(), highest.referenceC());
    sameTemperature("minimumC", lowest.minimumC(), highest.minimumC());
    sameTemperature("holdAboveC", lowest.holdAboveC(), highest.holdAboveC());
  }

  /** The slow side of a range of activation energies, kJ/mol; temperatures in °C. */
  public static SlowestRate between(
      double lowestKJ, double highestKJ, double referenceC, double minimumC, double holdAboveC) {
    return new SlowestRate(
        new ArrheniusRate(lowestKJ, referenceC, minimumC, holdAboveC),
        new ArrheniusRate(highestKJ, referenceC, minimumC, holdAboveC));
  }

  private static void sameTemperature(String field, double a, double b) {
    if (a != b) {
      throw new InvalidValue(
          field,
          Numbers.plain(a) + " °C and " + Numbers.plain(b) + " °C differ",
          "the same temperature for both energies");
    }
  }

  @Override
  public double at(double celsius) {
    // the exponential never falls: that of the lesser exponent is the lesser rate
    return celsius < minimumC()
        ? 0
        : Math.exp(Math.min(lowest.exponent(celsius), highest.exponent(celsius)));
  }

  @Override
  public double minimumC() {
    return lowest.minimumC();
  }

  @Override
  public double holdAboveC() {
    return lowest.holdAboveC();
  }

  @Override
  public double referenceC() {
    return lowest.referenceC();
  }
}
