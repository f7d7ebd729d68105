package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Interval;
import java.util.OptionalDouble;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

class ThermalGapTest {
  private static final RingMaterial.Behaviour METAL = RingMaterial.Behaviour.DUCTILE;

  @Test
  void heat_is_refused_on_laminate_and_plastic_and_where_the_part_grows_more() {
    assertEquals(
        new ShrinkAssembly.Refused(ShrinkAssembly.Reason.LAMINATE),
        shrink(23, 12, RingMaterial.Behaviour.LAMINATE, METAL).heatingRing(20));
    assertEquals(
        new ShrinkAssembly.Refused(ShrinkAssembly.Reason.PLASTIC),
        shrink(23, 12, METAL, RingMaterial.Behaviour.PLASTIC).heatingRing(20));
    assertEquals(
        new ShrinkAssembly.Refused(ShrinkAssembly.Reason.RING_NEVER_OUTGROWS_PART),
        shrink(11, 12, METAL, METAL).heatingBoth());
  }

  private static ShrinkAssembly shrink(
      double outer, double inner, RingMaterial.Behaviour ring, RingMaterial.Behaviour part) {
    return new ShrinkAssembly(
        new ThermalGap(42, outer, inner),
        20,
        42,
        ring,
        part,
        OptionalDouble.empty(),
        OptionalDouble.empty());
  }

  @Test
  void a_cold_part_needs_less_heat_in_the_ring() {
    ShrinkAssembly joint = shrink(12, 12, METAL, METAL);
    ShrinkAssembly.Slips warm = (ShrinkAssembly.Slips) joint.heatingRing(20);
    ShrinkAssembly.Slips cold = (ShrinkAssembly.Slips) joint.heatingRing(-20);
    assertEquals(warm.ringCelsius() - 40, cold.ringCelsius(), 1e-9);
  }

  @Test
  void members_that_grow_alike_never_come_loose() {
    assertEquals(new ThermalGap.Never(), new ThermalGap(42, 12, 12).temperatureFor(-20, 0));
    assertEquals(new ThermalGap.Never(), new ThermalGap(42, 24, 12).temperatureFor(500, 0));
  }

  @Property
  void at_the_temperature_found_the_clearance_is_the_one_sought(
      @ForAll @IntRange(min = 10, max = 200) int d,
      @ForAll @IntRange(min = 0, max = 30) int outer,
      @ForAll @IntRange(min = 0, max = 30) int inner,
      @ForAll @IntRange(min = -50, max = 50) int now,
      @ForAll @IntRange(min = -50, max = 50) int wanted) {
    ThermalGap joint = new ThermalGap(d, outer, inner);
    if (joint.temperatureFor(now, wanted) instanceof ThermalGap.At at && at.celsius() < 3000) {
      assertEquals(wanted, joint.diametralUm(now, at.celsius(), at.celsius()), 1e-9);
      assertEquals(outer > inner, at.looserWhenHotter());
    } else {
      double change = Math.abs(joint.diametralUmPerK());
      assertTrue(change == 0 || Math.abs(wanted - now) / change > 290);
    }
  }

  @Property
  void over_a_range_the_clearance_stays_between_its_ends(
      @ForAll @IntRange(min = 0, max = 30) int outer,
      @ForAll @IntRange(min = 0, max = 30) int inner,
      @ForAll @IntRange(min = -20, max = 80) int celsius) {
    ThermalGap joint = new ThermalGap(42, outer, inner);
    Interval range = joint.diametralOverUm(10, new Interval(-20, 80));
    double here = joint.diametralUm(10, celsius, celsius);
    assertTrue(range.low() - 1e-9 <= here && here <= range.high() + 1e-9);
  }
}
