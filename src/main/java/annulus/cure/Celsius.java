package annulus.cure;

import annulus.quantity.Check;

/** The temperatures this package computes with. */
final class Celsius {
  private Celsius() {}

  /** Lowest temperature, °C, for which the piece integral keeps its stated error. */
  static final double LOWEST = -80;

  /** Highest temperature, °C, taken as a reading of a part in a workshop. */
  static final double HIGHEST = 300;

  static double check(String field, double celsius) {
    return Check.within(field, celsius, LOWEST, HIGHEST, "°C");
  }
}
