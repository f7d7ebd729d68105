package annulus.fit;

import annulus.quantity.Check;
import annulus.quantity.Interval;
import annulus.quantity.Units;

/**
 * How the clearance of two members changes with temperature. First order: every change is taken on
 * the nominal diameter, which errs by less than the interference's share of the diameter.
 *
 * @param diameterMm nominal diameter of the joint, mm
 * @param outerMicroPerK expansion of the outer member, 1e-6/K
 * @param innerMicroPerK expansion of the inner member, 1e-6/K
 */
public record ThermalGap(double diameterMm, double outerMicroPerK, double innerMicroPerK) {
  public ThermalGap {
    Check.within("diameterMm", diameterMm, 0.1, 5000, "mm");
    Check.within("outerMicroPerK", outerMicroPerK, -10, 300, "1e-6/K");
    Check.within("innerMicroPerK", innerMicroPerK, -10, 300, "1e-6/K");
  }

  /** The temperature of a whole joint at which its clearance takes a wanted value. */
  public sealed interface Crossing {}

  /**
   * It takes the value here.
   *
   * @param celsius temperature of both members, °C
   * @param looserWhenHotter whether the clearance grows with temperature
   */
  public record At(double celsius, boolean looserWhenHotter) implements Crossing {}

  /** Both members grow alike, or the value lies beyond absolute zero: it is never taken. */
  public record Never() implements Crossing {}

  /** Change of the clearance on the diameter for the whole joint warmer by 1 K, µm/K. */
  public double diametralUmPerK() {
    return diameterMm * (outerMicroPerK - innerMicroPerK) / 1000;
  }

  /**
   * Clearance on the diameter at given temperatures.
   *
   * <p>{@code C = C20 + d (alpha_o (To - 20) - alpha_i (Ti - 20))}
   *
   * @param diametralAt20Um clearance on the diameter at 20 °C, µm, negative for interference
   * @param outerCelsius temperature of the outer member, °C
   * @param innerCelsius temperature of the inner member, °C
   * @return clearance on the diameter, µm, negative for interference
   *     <p>Valid for: temperatures over which the expansion coefficients hold (commonly to 100 °C).
   *     <p>Source: linear expansion, ISO 1 for 20 °C.
   */
  public double diametralUm(double diametralAt20Um, double outerCelsius, double innerCelsius) {
    double outer = outerMicroPerK * aboveReference(outerCelsius);
    double inner = innerMicroPerK * aboveReference(innerCelsius);
    return diametralAt20Um + diameterMm * (outer - inner) / 1000;
  }

  /** As {@link #diametralUm} per side: radial gap in, radial gap out, µm. */
  public double radialUm(double radialAt20Um, double outerCelsius, double innerCelsius) {
    return diametralUm(2 * radialAt20Um, outerCelsius, innerCelsius) / 2;
  }

  /** Clearance on the diameter over a range of temperatures (°C) of the whole joint, µm. */
  public Interval diametralOverUm(double diametralAt20Um, Interval celsius) {
    double cold = diametralUm(diametralAt20Um, celsius.low(), celsius.low());
    double hot = diametralUm(diametralAt20Um, celsius.high(), celsius.high());
    return new Interval(Math.min(cold, hot), Math.max(cold, hot));
  }

  /**
   * The temperature of the whole joint at which the clearance takes a value: 0 for where a fit goes
   * loose, a negative value for where an interference reaches its limit.
   *
   * <p>{@code T = 20 + (C - C20) / (d (alpha_o - alpha_i))}
   *
   * @param diametralAt20Um clearance on the diameter at 20 °C, µm
   * @param wantedUm clearance on the diameter sought, µm
   * @return {@link At} or {@link Never}
   *     <p>Valid for: as {@link #diametralUm}; the caller compares with the service range.
   *     <p>Source: as {@link #diametralUm}.
   */
  public Crossing temperatureFor(double diametralAt20Um, double wantedUm) {
    double perK = diametralUmPerK();
    double celsius = Units.REFERENCE_CELSIUS + (wantedUm - diametralAt20Um) / perK;
    if (perK == 0 || !Double.isFinite(celsius) || celsius < -Units.ZERO_CELSIUS_K) {
      return new Never();
    }
    return new At(celsius, perK > 0);
  }

  private static double aboveReference(double celsius) {
    return Check.within("celsius", celsius, -Units.ZERO_CELSIUS_K, 3000, "°C")
        - Units.REFERENCE_CELSIUS;
  }
}
