package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Expansion of joints: printed answers and closed forms, and what follows from linearity. */
class ThermalGapPublishedTest {
  private static final RingMaterial.Behaviour METAL = RingMaterial.Behaviour.DUCTILE;

  /** Computed from textbook coefficients (ISO 1 for 20 °C): 50 mm, +10 K gives +5.75 µm. */
  @Test
  void an_aluminium_bore_opens_on_a_steel_part() {
    ThermalGap joint = new ThermalGap(50, 23, 11.5);
    assertEquals(5.75, joint.diametralUm(0, 30, 30), 1e-12);
    assertEquals(2.875, joint.radialUm(0, 30, 30), 1e-12);
  }

  /**
   * 42 mm joint on bearing steel (12.5), µm/K, from textbook coefficients: 6061, quasi-isotropic
   * carbon/epoxy (coefficient rounded to 1.5), Ti-6Al-4V.
   */
  @ParameterizedTest
  @CsvSource({"23.6,0.466,0.0005", "1.5,-0.461,0.0021", "8.6,-0.164,0.0005"})
  void a_42_mm_joint_changes_as_computed(double outer, double perK, double digits) {
    assertEquals(perK, new ThermalGap(42, outer, 12.5).diametralUmPerK(), digits);
  }

  /** Textbook question: ring 50.00 mm, rod 50.50 mm, 24e-6/K, from 20 °C: 436.67 °C. */
  @Test
  void a_ring_heated_alone_slips_at_the_textbook_temperature() {
    ShrinkAssembly ring =
        new ShrinkAssembly(
            new ThermalGap(50, 24, 11),
            500,
            0,
            METAL,
            METAL,
            OptionalDouble.of(300),
            OptionalDouble.empty());
    ShrinkAssembly.Slips slips = assertInstanceOf(ShrinkAssembly.Slips.class, ring.heatingRing(20));
    assertEquals(436.67, slips.ringCelsius(), 0.005);
    assertTrue(slips.cautions().contains(ShrinkAssembly.Caution.ABOVE_RING_LIMIT));
    assertTrue(slips.cautions().contains(ShrinkAssembly.Caution.LIMIT_NOT_KNOWN));
  }

  /** Brass ring 50 µm under 20.00 mm on steel, both heated: +312.5 K (first order). */
  @Test
  void ring_and_part_heated_together_slip_at_the_computed_temperature() {
    ShrinkAssembly both =
        new ShrinkAssembly(
            new ThermalGap(20, 19, 11),
            50,
            0,
            METAL,
            METAL,
            OptionalDouble.of(400),
            OptionalDouble.of(400));
    ShrinkAssembly.Slips slips = assertInstanceOf(ShrinkAssembly.Slips.class, both.heatingBoth());
    assertEquals(332.5, slips.ringCelsius(), 1e-9);
    assertTrue(slips.isWithinLimits());
    double exact = 0.05 / (19.95 * 19e-6 - 20 * 11e-6);
    assertEquals(exact, 312.5, 0.01 * exact);
  }
}
