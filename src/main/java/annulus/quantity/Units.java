package annulus.quantity;

/** Exact unit conversions and constants of nature. */
public final class Units {
  private Units() {}

  /** Molar gas constant, J/(mol·K). Exact since the 2019 SI (CODATA 2018). */
  public static final double GAS_CONSTANT = 8.31446261815324;

  /** 0 °C in kelvin, exact by definition of the Celsius scale. */
  public static final double ZERO_CELSIUS_K = 273.15;

  /** Reference temperature for lengths, °C (ISO 1). */
  public static final double REFERENCE_CELSIUS = 20.0;

  /** One inch in millimetres, exact (international yard and pound agreement, 1959). */
  public static final double INCH_MM = 25.4;

  /** Pounds per square inch in MPa, from the exact pound and inch and standard gravity. */
  public static final double PSI_MPA = 0.45359237 * 9.80665 / (25.4 * 25.4);

  public static double kelvin(double celsius) {
    return celsius + ZERO_CELSIUS_K;
  }

  public static double celsiusFromFahrenheit(double fahrenheit) {
    return (fahrenheit - 32) * 5 / 9;
  }

  public static double fahrenheitFromCelsius(double celsius) {
    return celsius * 9 / 5 + 32;
  }

  public static double mmFromInch(double inch) {
    return inch * INCH_MM;
  }

  public static double inchFromMm(double mm) {
    return mm / INCH_MM;
  }
}
