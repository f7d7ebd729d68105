package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.Units;

/** Lengths at the reference temperature. */
public final class ReferenceLength {
  private ReferenceLength() {}

  /**
   * A length brought to 20 °C.
   *
   * <p>{@code L20 = L·(1 − α·(T − 20))}
   *
   * @param mm true length at the temperature, mm
   * @param celsius temperature T of the member, °C
   * @param expansionPerK1e6 expansion coefficient α, 1e-6/K
   * @return length at 20 °C, mm
   *     <p>Valid for: temperatures of a workshop; the error of the first order is below 1e-6 of the
   *     length within 40 K and 25e-6/K.
   *     <p>Source: ISO 1 (reference temperature 20 °C).
   */
  public static double at20(double mm, double celsius, double expansionPerK1e6) {
    Check.finite("celsius", celsius, "°C");
    Check.finite("expansionPerK1e6", expansionPerK1e6, "1e-6/K");
    return mm * (1 - expansionPerK1e6 * 1e-6 * (celsius - Units.REFERENCE_CELSIUS));
  }
}
