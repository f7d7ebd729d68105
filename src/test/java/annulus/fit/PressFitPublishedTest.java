package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.quantity.Estimate;
import annulus.quantity.Units;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples in print. */
class PressFitPublishedTest {
  private static double psi(double mpa) {
    return mpa / Units.PSI_MPA;
  }

  private static double gpaFromMpsi(double mpsi) {
    return mpsi * 1e6 * Units.PSI_MPA / 1000;
  }

  private static PressGeometry inches(double d, double hub, double bore) {
    return new PressGeometry(d * 25.4, hub * 25.4, bore * 25.4, 25.4);
  }

  /**
   * Shigley, Mechanical Engineering Design, solutions 3-68, 3-69 (steel in cast iron), 3-70, 5-34b:
   * pressure and hoop stress of the hub at the joint, psi. Printed to four or five digits.
   */
  @ParameterizedTest
  @CsvSource({
    "1,2,0.002,30,0.292,30,0.292,22500,37500,1",
    "1,2,0.002,14.5,0.211,30,0.292,13064,21770,5",
    "1,2,0.003,30,0.292,30,0.292,33750,56250,1",
    "2,3,0.001,30,0.292,30,0.292,4167,10830,5"
  })
  void pressure_and_hub_hoop_stress_are_shigleys(
      double d,
      double hub,
      double delta,
      double eo,
      double no,
      double ei,
      double ni,
      double pressure,
      double hoop,
      double lastDigit) {
    PressGeometry geometry = inches(d, hub, 0);
    double p =
        PressFit.pressureMPa(geometry, gpaFromMpsi(eo), no, gpaFromMpsi(ei), ni, delta * 25_400);
    assertEquals(pressure, psi(p), 0.5);
    assertEquals(hoop, psi(RingStresses.under(geometry, p).hubBore().hoopMPa()), lastDigit);
  }

  /** Shigley 5-34b prints 13 410 psi. */
  @Test
  void hub_equivalent_stress_is_shigleys() {
    PressGeometry geometry = inches(2, 3, 0);
    double p = PressFit.pressureMPa(geometry, gpaFromMpsi(30), 0.292, gpaFromMpsi(30), 0.292, 25.4);
    assertEquals(13_410, psi(RingStresses.under(geometry, p).hubBore().vonMisesMPa()), 5);
  }

  /** An open suite of press fits checked by finite elements: von Mises at both bores, MPa. */
  @ParameterizedTest
  @CsvSource({
    "500,600,400,100,68.9,0.33,210,0.3,10.53,11.57,0.005",
    "500,600,400,100,210,0.3,68.9,0.33,12.46,13.70,0.005",
    "30,50,20,100,68.9,0.33,210,0.3,257.6,197.79,0.05"
  })
  void equivalent_stresses_are_those_of_the_element_checked_suite(
      double d,
      double hub,
      double bore,
      double deltaUm,
      double eo,
      double no,
      double ei,
      double ni,
      double inner,
      double outer,
      double digit) {
    PressGeometry geometry = new PressGeometry(d, hub, bore, 10);
    double p = PressFit.pressureMPa(geometry, eo, no, ei, ni, deltaUm);
    RingStresses stresses = RingStresses.under(geometry, p);
    assertEquals(inner, stresses.partBore().vonMisesMPa(), digit);
    assertEquals(outer, stresses.hubBore().vonMisesMPa(), 0.005);
  }

  /** A worked example of 50 on 80 mm, 40 µm, 40 mm long, friction 0.15. */
  @Test
  void pressure_force_torque_and_hoop_are_those_of_the_worked_example() {
    PressGeometry geometry = new PressGeometry(50, 80, 0, 40);
    RingMaterial steel = RingMaterial.ductile(200, 0.3, 1000);
    PressFit fit =
        new PressFit(
            geometry,
            steel,
            steel,
            Estimate.exactly(40),
            Estimate.exactly(0),
            Estimate.exactly(0.15));
    PressAnswer.Pressed pressed = (PressAnswer.Pressed) fit.answer();
    assertEquals(48.75, pressed.pressureMPa().likely(), 0.005);
    assertEquals(45_950, pressed.pressInForceN().likely(), 5);
    assertEquals(1_149, pressed.holdTorqueNm().likely(), 0.5);
    assertEquals(111.3, pressed.highStresses().hubBore().hoopMPa(), 0.051);
  }

  /** Compound tube of 100, 150, 200 mm under 20 MPa; the book cuts 71.428 to 71.42. */
  @Test
  void compound_tube_stresses_are_the_printed_ones() {
    RingStresses stresses = RingStresses.under(new PressGeometry(150, 200, 100, 10), 20);
    assertEquals(71.42, stresses.hubBore().hoopMPa(), 0.01);
    assertEquals(51.42, stresses.hubRim().hoopMPa(), 0.01);
    assertEquals(-72, stresses.partBore().hoopMPa(), 1e-9);
    assertEquals(-52, stresses.partOutside().hoopMPa(), 1e-9);
  }

  /** Computed to four digits for a 30 mm pin in a 60 mm hub with 20 µm. */
  @ParameterizedTest
  @CsvSource({"206,0.3,51.50", "70,0.33,20.88"})
  void pressure_of_a_thirty_millimetre_pin_is_the_computed_one(double e, double nu, double p) {
    PressGeometry geometry = new PressGeometry(30, 60, 0, 30);
    assertEquals(p, PressFit.pressureMPa(geometry, e, nu, 206, 0.3, 20), 0.005);
  }
}
