package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.fit.FrictionTable.Method;
import annulus.fit.FrictionTable.Pair;
import annulus.fit.FrictionTable.State;
import annulus.fit.RingMaterial.Behaviour;
import annulus.fit.ShrinkAssembly.Caution;
import annulus.fit.iso286.SizeBand;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Tables, limits and heat of press fits at their edges, worked by hand. */
class FitEdgesTest {
  private static final Provenance SHOP = new Provenance("shop", Confidence.LOW);

  private static BearingLimits.Row bearing(BearingRing ring, double over, double upTo, double um) {
    return new BearingLimits.Row(ring, new SizeBand(over, upTo), um, SHOP);
  }

  @Test
  void a_bearing_table_gives_each_size_of_a_ring_once() {
    BearingLimits.Row small = bearing(BearingRing.BORE, 10, 18, -8);
    BearingLimits.Row next = bearing(BearingRing.BORE, 18, 30, -10);
    BearingLimits.Row other = bearing(BearingRing.OUTSIDE, 10, 40, -9);
    BearingLimits table = new BearingLimits(List.of(small, next, other));
    assertEquals(-8, table.limits(BearingRing.BORE, 18).lowerUm());
    assertEquals(-10, table.limits(BearingRing.BORE, 18.01).lowerUm());
    assertEquals(-9, table.limits(BearingRing.OUTSIDE, 18).lowerUm());
    for (BearingLimits.Row again :
        List.of(
            bearing(BearingRing.BORE, 29.9, 40, -12),
            bearing(BearingRing.BORE, 5, 10.1, -12),
            bearing(BearingRing.BORE, 12, 13, -12),
            bearing(BearingRing.BORE, 5, 50, -12))) {
      List<BearingLimits.Row> rows = List.of(small, next, other, again);
      assertThrows(InvalidValue.class, () -> new BearingLimits(rows));
    }
  }

  @Test
  void a_bearing_size_not_in_the_table_is_told_the_sizes_of_its_own_ring() {
    BearingLimits table =
        new BearingLimits(
            List.of(
                bearing(BearingRing.BORE, 10, 18, -8), bearing(BearingRing.OUTSIDE, 6, 30, -9)));
    InvalidValue error = assertThrows(InvalidValue.class, () -> table.limits(BearingRing.BORE, 10));
    assertEquals("over 10 to 18 mm", error.allowed());
  }

  private static FrictionTable.Row friction(Pair pair, Method method, State state) {
    return new FrictionTable.Row(pair, method, state, Estimate.exactly(0.1), SHOP);
  }

  @Test
  void a_friction_table_answers_each_question_once() {
    FrictionTable.Row row = friction(Pair.STEEL_STEEL, Method.LENGTHWISE, State.DRY);
    List<FrictionTable.Row> different =
        List.of(
            row,
            friction(Pair.STEEL_BRASS, Method.LENGTHWISE, State.DRY),
            friction(Pair.STEEL_STEEL, Method.TRANSVERSE, State.DRY),
            friction(Pair.STEEL_STEEL, Method.LENGTHWISE, State.LUBRICATED));
    assertEquals(different, new FrictionTable(different).rows());
    assertThrows(InvalidValue.class, () -> new FrictionTable(List.of(row, row)));
  }

  @Test
  void friction_without_a_row_and_without_the_wide_row_is_refused() {
    FrictionTable table =
        new FrictionTable(List.of(friction(Pair.STEEL_STEEL, Method.LENGTHWISE, State.DRY)));
    InvalidValue error =
        assertThrows(
            InvalidValue.class, () -> table.row(Pair.STEEL_BRASS, Method.LENGTHWISE, State.DRY));
    assertEquals("friction", error.field());
  }

  @ParameterizedTest
  @CsvSource({"DUCTILE,true", "BRITTLE,true", "PLASTIC,false", "LAMINATE,false"})
  void only_metals_are_isotropic_and_elastic(Behaviour behaviour, boolean elastic) {
    assertEquals(elastic, behaviour.isIsotropicElastic());
  }

  @Test
  void the_short_ways_to_name_a_metal_keep_how_it_gives_way() {
    RingMaterial iron = RingMaterial.brittle(100, 0.211, 200);
    assertEquals(Behaviour.BRITTLE, iron.behaviour());
    assertEquals(OptionalDouble.of(200), iron.limitMPa());
    assertEquals(Behaviour.DUCTILE, RingMaterial.ductile(207, 0.292, 350).behaviour());
  }

  /** Printed compound tube, 20 MPa at 150 mm, 200 outside, 100 bore: hoop 71.42/51.42, -72/-52. */
  @Test
  void a_compound_tube_is_stretched_outside_and_squeezed_inside_as_printed() {
    RingStresses tube = RingStresses.under(new PressGeometry(150, 200, 100, 50), 20);
    assertEquals(71.42, tube.hubBore().hoopMPa(), 0.01);
    assertEquals(51.42, tube.hubRim().hoopMPa(), 0.01);
    assertEquals(-52, tube.partOutside().hoopMPa(), 0.01);
    assertEquals(-72, tube.partBore().hoopMPa(), 0.01);
    assertEquals(-20, tube.hubBore().radialMPa());
    assertEquals(-20, tube.partOutside().radialMPa());
    assertEquals(0, tube.hubRim().radialMPa());
    assertEquals(0, tube.partBore().radialMPa());
  }

  @Test
  void a_solid_part_is_squeezed_alike_all_through() {
    RingStresses solid = RingStresses.under(new PressGeometry(25, 50, 0, 20), 30);
    assertEquals(new SurfaceStress(-30, -30), solid.partBore());
    assertEquals(new SurfaceStress(-30, -30), solid.partOutside());
  }

  private static PressAnswer.Pressed pressed(
      PressLimit hub, PressLimit part, Estimate pressureMPa) {
    return new PressAnswer.Pressed(
        new PressGeometry(40, 60, 0, 10),
        Estimate.exactly(20),
        pressureMPa,
        new Estimate(0.1, 0.15, 0.2),
        hub,
        part);
  }

  private static PressLimit limit(Behaviour behaviour, double limitMPa, Estimate pressureMPa) {
    RingMaterial material =
        new RingMaterial(behaviour, Estimate.exactly(200), 0.3, OptionalDouble.of(limitMPa));
    return PressLimit.of(material, OptionalDouble.of(limitMPa), pressureMPa);
  }

  @ParameterizedTest
  @CsvSource({
    "DUCTILE, 30.1, WITHIN, 10, 20, 30",
    "DUCTILE, 30, MAY_EXCEED, 10, 20, 30",
    "DUCTILE, 20.1, MAY_EXCEED, 10, 20, 20.1",
    "DUCTILE, 20, EXCEEDS, 10, 20, 20",
    "DUCTILE, 5, EXCEEDS, 5, 5, 5",
    "BRITTLE, 30.1, WITHIN, 10, 20, 30",
    "BRITTLE, 30, MAY_EXCEED, 0, 20, 30",
    "BRITTLE, 20, EXCEEDS, 0, 0, 0"
  })
  void a_yielding_member_holds_its_limit_and_a_cracking_one_nothing(
      Behaviour behaviour,
      double limitMPa,
      PressLimit.Standing standing,
      double low,
      double likely,
      double high) {
    Estimate pressure = new Estimate(10, 20, 30);
    PressLimit hub = limit(behaviour, limitMPa, pressure);
    PressLimit part = limit(Behaviour.DUCTILE, 1000, pressure);
    assertEquals(standing, hub.standing());
    assertEquals(
        new Estimate(low, likely, high), pressed(hub, part, pressure).holdingPressureMPa());
    assertEquals(
        new Estimate(low, likely, high), pressed(part, hub, pressure).holdingPressureMPa());
    boolean elastic = standing == PressLimit.Standing.WITHIN;
    assertEquals(elastic, pressed(hub, part, pressure).isElasticThroughout());
    assertEquals(elastic, pressed(part, hub, pressure).isElasticThroughout());
  }

  /** pi 40 mm 10 mm = 1256.64 mm²: 0.1 x 10, 0.15 x 20, 0.2 x 30 MPa; arm 20 mm. */
  @Test
  void force_torque_and_stresses_follow_from_the_pressure() {
    Estimate pressure = new Estimate(10, 20, 30);
    PressLimit far = limit(Behaviour.DUCTILE, 1000, pressure);
    PressAnswer.Pressed joint = pressed(far, far, pressure);
    assertEquals(1256.64, joint.holdN().low(), 0.005);
    assertEquals(3769.91, joint.holdN().likely(), 0.005);
    assertEquals(7539.82, joint.holdN().high(), 0.005);
    assertEquals(25.13, joint.holdTorqueNm().low(), 0.005);
    assertEquals(75.40, joint.holdTorqueNm().likely(), 0.005);
    assertEquals(150.80, joint.holdTorqueNm().high(), 0.005);
    assertEquals(-30, joint.highStresses().partBore().hoopMPa());
  }

  @Test
  void peaks_flatten_by_a_share_of_both_roughnesses() {
    assertEquals(new Estimate(2, 5, 8), PressFit.smoothingUm(6, 4, new Estimate(0.2, 0.5, 0.8)));
  }

  private static ShrinkAssembly shrink(
      double outer, double inner, OptionalDouble ringLimit, OptionalDouble partLimit) {
    return new ShrinkAssembly(
        new ThermalGap(42, outer, inner),
        20,
        42,
        Behaviour.DUCTILE,
        Behaviour.DUCTILE,
        ringLimit,
        partLimit);
  }

  private static ShrinkAssembly.Slips slips(ShrinkAssembly.Answer answer) {
    return assertInstanceOf(ShrinkAssembly.Slips.class, answer);
  }

  /** 62 µm to open; 42 mm at 24e-6/K grows 1.008 µm/K, 0.504 µm/K more than 12e-6/K. */
  @Test
  void interference_and_slip_clearance_both_have_to_be_grown() {
    ShrinkAssembly joint = shrink(24, 12, OptionalDouble.of(200), OptionalDouble.of(200));
    assertEquals(81.508, slips(joint.heatingRing(20)).ringCelsius(), 0.001);
    ShrinkAssembly.Slips both = slips(joint.heatingBoth());
    assertEquals(143.016, both.ringCelsius(), 0.001);
    assertEquals(both.ringCelsius(), both.partCelsius());
  }

  @Test
  void limits_of_ring_and_part_are_minded_each_for_itself() {
    Set<Caution> always = EnumSet.of(Caution.BURNS_AND_FUMES, Caution.NO_COMPOUND_ON_HOT_FACES);
    Set<Caution> ring = EnumSet.copyOf(always);
    ring.add(Caution.ABOVE_RING_LIMIT);
    Set<Caution> part = EnumSet.copyOf(always);
    part.add(Caution.ABOVE_PART_LIMIT);
    Set<Caution> unknown = EnumSet.copyOf(always);
    unknown.add(Caution.LIMIT_NOT_KNOWN);
    assertEquals(always, heated(OptionalDouble.of(82), OptionalDouble.of(82)).cautions());
    assertTrue(heated(OptionalDouble.of(82), OptionalDouble.of(82)).isWithinLimits());
    assertEquals(ring, heated(OptionalDouble.of(81), OptionalDouble.of(82)).cautions());
    assertFalse(heated(OptionalDouble.of(81), OptionalDouble.of(82)).isWithinLimits());
    assertEquals(part, heated(OptionalDouble.of(82), OptionalDouble.of(81)).cautions());
    assertFalse(heated(OptionalDouble.of(82), OptionalDouble.of(81)).isWithinLimits());
    assertEquals(unknown, heated(OptionalDouble.empty(), OptionalDouble.of(82)).cautions());
    assertEquals(unknown, heated(OptionalDouble.of(82), OptionalDouble.empty()).cautions());
  }

  private static ShrinkAssembly.Slips heated(OptionalDouble ringLimit, OptionalDouble partLimit) {
    return slips(shrink(24, 12, ringLimit, partLimit).heatingRing(20));
  }

  @Test
  void heat_beyond_the_handbook_coefficients_is_called_rough() {
    OptionalDouble high = OptionalDouble.of(500);
    assertFalse(has(shrink(24, 12, high, high).heatingRing(20)));
    assertTrue(has(shrink(18, 12, high, high).heatingRing(20)));
    assertTrue(has(shrink(24, 12, high, high).heatingBoth()));
  }

  private static boolean has(ShrinkAssembly.Answer answer) {
    return slips(answer).cautions().contains(Caution.EXPANSION_STRETCHED);
  }

  @Test
  void a_ring_that_does_not_grow_never_slips() {
    ShrinkAssembly.Refused never =
        new ShrinkAssembly.Refused(ShrinkAssembly.Reason.RING_NEVER_OUTGROWS_PART);
    OptionalDouble none = OptionalDouble.empty();
    assertEquals(never, shrink(0, 0, none, none).heatingRing(20));
    assertEquals(never, shrink(-1, 0, none, none).heatingRing(20));
    assertEquals(never, shrink(12, 12, none, none).heatingBoth());
  }

  @ParameterizedTest
  @EnumSource(
      value = Behaviour.class,
      names = {"PLASTIC", "LAMINATE"})
  void heat_on_both_is_refused_as_heat_on_one(Behaviour behaviour) {
    ShrinkAssembly joint =
        new ShrinkAssembly(
            new ThermalGap(42, 24, 12),
            20,
            42,
            Behaviour.DUCTILE,
            behaviour,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    ShrinkAssembly.Refused refused =
        assertInstanceOf(ShrinkAssembly.Refused.class, joint.heatingBoth());
    assertEquals(behaviour.name(), refused.reason().name());
    assertEquals(refused, joint.heatingRing(20));
  }
}
