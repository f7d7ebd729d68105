package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Estimate;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class PressFitPropertyTest {
  private static final RingMaterial STEEL = RingMaterial.ductile(207, 0.292, 350);
  private static final RingMaterial ALUMINIUM = RingMaterial.ductile(69, 0.33, 240);

  private static double pressure(PressGeometry g, double um) {
    return PressFit.pressureMPa(g, 69, 0.33, 207, 0.292, um);
  }

  private static PressGeometry geometry(int d, int wall, int bore) {
    return new PressGeometry(d, d + wall, bore * d / 100.0, 12);
  }

  @Property
  void pressure_rises_in_proportion_with_interference_and_is_nought_without(
      @ForAll @IntRange(min = 10, max = 200) int d,
      @ForAll @IntRange(min = 1, max = 100) int wall,
      @ForAll @IntRange(min = 0, max = 95) int bore,
      @ForAll @IntRange(min = 1, max = 100) int um) {
    PressGeometry g = geometry(d, wall, bore);
    double p = pressure(g, um);
    assertTrue(p > 0);
    assertEquals(3 * p, pressure(g, 3.0 * um), 1e-9 * p);
    assertEquals(0, pressure(g, 0));
    assertEquals(0, pressure(g, -um));
  }

  @Property
  void a_thinner_part_or_hub_presses_less(
      @ForAll @IntRange(min = 10, max = 200) int d,
      @ForAll @IntRange(min = 1, max = 100) int wall,
      @ForAll @IntRange(min = 0, max = 94) int bore) {
    assertTrue(pressure(geometry(d, wall, bore + 1), 20) < pressure(geometry(d, wall, bore), 20));
    assertTrue(pressure(geometry(d, wall, bore), 20) < pressure(geometry(d, wall + 1, bore), 20));
  }

  @Property
  void a_solid_part_is_the_limit_of_a_pinhole_for_pressure(
      @ForAll @IntRange(min = 10, max = 200) int d, @ForAll @IntRange(min = 1, max = 99) int wall) {
    PressGeometry solid = new PressGeometry(d, d + wall, 0, 10);
    PressGeometry pinhole = new PressGeometry(d, d + wall, d * 1e-6, 10);
    assertEquals(pressure(solid, 20), pressure(pinhole, 20), 1e-9 * pressure(solid, 20));
  }

  /** Same material and solid shaft: p = E delta (D² - d²) / (2 d D²), Poisson's ratio drops out. */
  @Property
  void one_material_and_a_solid_shaft_leave_no_trace_of_poissons_ratio(
      @ForAll @IntRange(min = 10, max = 200) int d,
      @ForAll @IntRange(min = 1, max = 99) int wall,
      @ForAll @IntRange(min = 0, max = 49) int nu) {
    double hub = d + wall;
    double expected = 207_000 * 0.02 / 1000 * 1000 * (hub * hub - d * d) / (2.0 * d * hub * hub);
    PressGeometry g = new PressGeometry(d, hub, 0, 10);
    double p = PressFit.pressureMPa(g, 207, nu / 100.0, 207, nu / 100.0, 20);
    assertEquals(expected, p, 1e-9 * p);
  }

  /** Also the change of units: every length times k is the same joint read in another unit. */
  @Property
  void scaling_every_length_keeps_pressure_and_squares_force_and_cubes_torque(
      @ForAll @IntRange(min = 10, max = 60) int d,
      @ForAll @IntRange(min = 1, max = 40) int wall,
      @ForAll @IntRange(min = 0, max = 95) int bore,
      @ForAll @IntRange(min = 1, max = 254) int tenths) {
    double k = tenths / 10.0;
    PressAnswer.Pressed one = pressed(d, d + wall, bore * d / 100.0, 12, 15);
    PressAnswer.Pressed big = pressed(d * k, (d + wall) * k, bore * d / 100.0 * k, 12 * k, 15 * k);
    assertEquals(one.pressureMPa().likely(), big.pressureMPa().likely(), 1e-6);
    double force = one.pressInForceN().likely();
    assertEquals(force * k * k, big.pressInForceN().likely(), 1e-9 * force * k * k);
    double torque = one.holdTorqueNm().likely();
    assertEquals(torque * k * k * k, big.holdTorqueNm().likely(), 1e-9 * torque * k * k * k);
  }

  private static PressAnswer.Pressed pressed(
      double d, double hub, double bore, double length, double um) {
    PressFit fit =
        new PressFit(
            new PressGeometry(d, hub, bore, length),
            ALUMINIUM,
            STEEL,
            Estimate.exactly(um),
            Estimate.exactly(0),
            new Estimate(0.05, 0.1, 0.2));
    return (PressAnswer.Pressed) fit.answer();
  }

  @Property
  void what_holds_is_never_more_than_what_the_elastic_pressure_gives(
      @ForAll @IntRange(min = 10, max = 60) int d,
      @ForAll @IntRange(min = 1, max = 40) int wall,
      @ForAll @IntRange(min = 1, max = 200) int um) {
    PressAnswer.Pressed pressed = pressed(d, d + wall, 0, 12, um);
    assertTrue(pressed.holdN().low() <= pressed.holdN().likely());
    assertTrue(pressed.holdN().high() <= pressed.pressInForceN().high());
    double limit = pressed.hubLimit().pressureMPa().getAsDouble();
    assertTrue(pressed.holdingPressureMPa().high() <= limit);
    boolean within = pressed.pressureMPa().high() < limit;
    assertEquals(within, pressed.hubLimit().standing() == PressLimit.Standing.WITHIN);
  }
}
