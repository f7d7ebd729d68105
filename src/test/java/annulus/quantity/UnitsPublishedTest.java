package annulus.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** Values of NIST SP 811 (2008), appendix B, and CODATA 2018. */
class UnitsPublishedTest {
  @Test
  void an_inch_is_25_4_millimetres_exactly() {
    assertEquals(25.4, Units.mmFromInch(1));
    assertEquals(1, Units.inchFromMm(25.4));
    assertEquals(41.9608, Units.mmFromInch(1.652), 1e-12);
    assertEquals(1.652, Units.inchFromMm(41.9608), 1e-12);
  }

  @Test
  void fahrenheit_and_celsius_meet_at_their_known_points() {
    assertEquals(0, Units.celsiusFromFahrenheit(32));
    assertEquals(100, Units.celsiusFromFahrenheit(212));
    assertEquals(-40, Units.celsiusFromFahrenheit(-40));
    assertEquals(212, Units.fahrenheitFromCelsius(100));
    assertEquals(32, Units.fahrenheitFromCelsius(0));
    assertEquals(-40, Units.fahrenheitFromCelsius(-40));
  }

  @Test
  void kelvin_starts_273_15_below_zero_celsius() {
    assertEquals(273.15, Units.kelvin(0));
    assertEquals(0, Units.kelvin(-273.15));
    assertEquals(293.15, Units.kelvin(Units.REFERENCE_CELSIUS));
  }

  /** 8.314 462 618 J/(mol·K) and 6.894 757 kPa. */
  @Test
  void the_gas_constant_and_the_pound_force_per_square_inch_are_as_printed() {
    assertEquals(8.314462618, Units.GAS_CONSTANT, 1e-9);
    assertEquals(6.894757e-3, Units.PSI_MPA, 1e-9);
  }
}
