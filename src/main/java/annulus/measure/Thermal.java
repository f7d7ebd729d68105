package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import annulus.quantity.Units;

/**
 * The member's temperature while it was measured.
 *
 * @param celsius temperature, °C; -40 to 80
 * @param halfWidthC doubt about it, ± °C, rectangular; 0 to 50
 * @param expansionPerK1e6 the member's expansion coefficient, 1e-6/K
 */
record Thermal(double celsius, double halfWidthC, Estimate expansionPerK1e6) {
  Thermal {
    Check.within("memberTemperatureC", celsius, -40, 80, "°C");
    Check.within("temperatureUncertaintyC", halfWidthC, 0, 50, "°C");
    expansionPerK1e6.checkedWithin("expansionPerK1e6", -20, 300, "1e-6/K");
  }

  double at20(double mm) {
    return ReferenceLength.at20(mm, celsius, expansionPerK1e6.likely());
  }

  double offsetC() {
    return Math.abs(celsius - Units.REFERENCE_CELSIUS);
  }

  /** Largest size of the coefficient. */
  double steepest() {
    return Math.max(Math.abs(expansionPerK1e6.low()), Math.abs(expansionPerK1e6.high()));
  }

  /** Largest distance of a limit of the coefficient from its likely value. */
  double halfWidthPerK1e6() {
    Estimate e = expansionPerK1e6;
    return Math.max(e.high() - e.likely(), e.likely() - e.low());
  }
}
