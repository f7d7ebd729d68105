package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.exchange.InputRefused;
import annulus.exchange.PressFiles;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.StringReader;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PressFitTest {
  private static final PressGeometry CUP = new PressGeometry(42, 50, 36, 10);
  private static final RingMaterial STEEL = RingMaterial.ductile(207, 0.292, 350);
  private static final RingMaterial ALUMINIUM = RingMaterial.ductile(69, 0.33, 240);
  private static final RingMaterial IRON = RingMaterial.brittle(100, 0.211, 200);
  private static final FrictionTable FRICTION =
      PressFiles.friction("data/friction.csv", FitData.open("friction.csv"));
  private static final PressFactors FACTORS =
      PressFiles.factors("data/press-factors.csv", FitData.open("press-factors.csv"));

  private static PressFit fit(RingMaterial hub, Estimate interference) {
    Estimate smoothing = PressFit.smoothingUm(6, 4, FACTORS.smoothingLoss().value());
    Estimate mu =
        FRICTION
            .row(
                FrictionTable.Pair.STEEL_LIGHT_ALLOY,
                FrictionTable.Method.LENGTHWISE,
                FrictionTable.State.DRY)
            .friction();
    return new PressFit(CUP, hub, STEEL, interference, smoothing, mu);
  }

  private static RingMaterial of(RingMaterial.Behaviour behaviour) {
    return new RingMaterial(behaviour, new Estimate(2, 3, 4), 0.4, OptionalDouble.of(60));
  }

  @Test
  void a_laminate_or_a_plastic_gets_no_isotropic_number() {
    PressAnswer shell = fit(of(RingMaterial.Behaviour.LAMINATE), Estimate.exactly(20)).answer();
    assertEquals(
        new PressAnswer.Refused(List.of(PressAnswer.Reason.LAMINATE_IS_NOT_ISOTROPIC)), shell);
    PressAnswer cup = fit(of(RingMaterial.Behaviour.PLASTIC), Estimate.exactly(20)).answer();
    assertEquals(new PressAnswer.Refused(List.of(PressAnswer.Reason.PLASTIC_CREEPS)), cup);
  }

  @Test
  void interference_loses_what_the_two_schools_of_smoothing_take() {
    Estimate working = fit(ALUMINIUM, new Estimate(5, 20, 30)).workingInterferenceUm();
    assertEquals(new Estimate(0, 15, 28), working);
  }

  @Test
  void a_pair_that_is_loose_at_its_tight_end_is_loose() {
    assertInstanceOf(PressAnswer.Loose.class, fit(ALUMINIUM, new Estimate(-30, -10, 2)).answer());
    PressAnswer unsure = fit(ALUMINIUM, new Estimate(-30, -10, 2.5)).answer();
    PressAnswer.Pressed pressed = assertInstanceOf(PressAnswer.Pressed.class, unsure);
    assertEquals(0, pressed.pressureMPa().likely());
    assertEquals(0, pressed.holdN().low());
  }

  @Test
  void the_radial_gap_turns_into_twice_the_interference_on_the_diameter() {
    assertEquals(
        new Estimate(-10, 20, 50), PressFit.interferenceFromRadialGapUm(new Estimate(-25, -10, 5)));
  }

  /** DIN 7190-1: start of yield in the hub at (1 - Q²) Re / sqrt(3). */
  @Test
  void beyond_the_start_of_yield_the_answer_says_so_and_counts_on_no_more() {
    double start = (1 - 0.84 * 0.84) * 240 / Math.sqrt(3);
    PressAnswer.Pressed tight =
        (PressAnswer.Pressed) fit(ALUMINIUM, Estimate.exactly(400)).answer();
    assertEquals(start, tight.hubLimit().pressureMPa().getAsDouble(), 1e-9);
    assertEquals(PressLimit.Standing.EXCEEDS, tight.hubLimit().standing());
    assertFalse(tight.isElasticThroughout());
    assertTrue(tight.pressureMPa().low() > start);
    assertEquals(start, tight.holdingPressureMPa().low(), 1e-9);
    assertEquals(start, tight.holdingPressureMPa().high(), 1e-9);
  }

  @Test
  void a_limit_between_likely_and_high_may_be_exceeded() {
    PressAnswer.Pressed unsure =
        (PressAnswer.Pressed) fit(ALUMINIUM, new Estimate(20, 40, 400)).answer();
    assertEquals(PressLimit.Standing.MAY_EXCEED, unsure.hubLimit().standing());
  }

  @Test
  void a_brittle_hub_that_may_crack_holds_nothing_for_sure() {
    PressAnswer.Pressed pressed = (PressAnswer.Pressed) fit(IRON, Estimate.exactly(200)).answer();
    assertEquals(PressLimit.Standing.EXCEEDS, pressed.hubLimit().standing());
    assertEquals(0, pressed.holdN().high());
    double hoop = pressed.hubLimit().pressureMPa().getAsDouble();
    assertEquals(200, RingStresses.under(CUP, hoop).hubBore().hoopMPa(), 1e-9);
  }

  @Test
  void an_unknown_strength_is_said_to_be_unknown() {
    RingMaterial metal =
        new RingMaterial(
            RingMaterial.Behaviour.DUCTILE, new Estimate(60, 70, 80), 0.33, OptionalDouble.empty());
    PressAnswer.Pressed pressed = (PressAnswer.Pressed) fit(metal, Estimate.exactly(20)).answer();
    assertEquals(PressLimit.Standing.NOT_KNOWN, pressed.hubLimit().standing());
    assertFalse(pressed.isElasticThroughout());
    assertTrue(pressed.pressureMPa().low() < pressed.pressureMPa().high());
    assertEquals(0, pressed.holdN().low());
    assertTrue(pressed.holdN().likely() > 0);
  }

  @Test
  void at_the_limit_of_the_part_its_own_bore_reaches_the_yield_strength() {
    double limit = fit(ALUMINIUM, Estimate.exactly(20)).partLimitMPa().getAsDouble();
    assertEquals(350, RingStresses.under(CUP, limit).partBore().vonMisesMPa(), 1e-9);
  }

  /** DIN 7190-1 as printed: steel on steel 0.12 oiled, 0.20 degreased; light alloy 0.10 to 0.15. */
  @Test
  void friction_rows_hold_the_printed_values() {
    FrictionTable.Method slipped = FrictionTable.Method.TRANSVERSE;
    FrictionTable.Pair steel = FrictionTable.Pair.STEEL_STEEL;
    assertEquals(0.20, FRICTION.row(steel, slipped, FrictionTable.State.DRY).friction().likely());
    assertEquals(
        0.12, FRICTION.row(steel, slipped, FrictionTable.State.LUBRICATED).friction().likely());
    assertEquals(
        new Estimate(0.10, 0.125, 0.15),
        FRICTION
            .row(FrictionTable.Pair.STEEL_LIGHT_ALLOY, slipped, FrictionTable.State.DRY)
            .friction());
  }

  @Test
  void a_pair_without_a_row_takes_the_wide_one() {
    FrictionTable.Row row =
        FRICTION.row(
            FrictionTable.Pair.STEEL_BRASS,
            FrictionTable.Method.LENGTHWISE,
            FrictionTable.State.DRY);
    assertEquals(FrictionTable.Pair.OTHER, row.pair());
  }

  @Test
  void a_tight_ring_takes_clearance_from_its_bearing() {
    Estimate loss = FACTORS.bearingClearanceLossUm(new Estimate(-5, 10, 20));
    assertEquals(new Estimate(0, 8, 20), loss);
  }

  @Test
  void a_missing_or_doubled_factor_is_named() {
    String text = FitData.text("press-factors.csv");
    String without = text.replaceFirst("(?m)^slip-clearance,.*$", "");
    assertTrue(refused(without).contains("slip-clearance in um/mm has 0 rows"));
    String bad = text.replace("0.2,0.5,0.8", "0.9,0.5,0.8");
    assertTrue(refused(bad).startsWith("p.csv:7:"), refused(bad));
  }

  private static String refused(String text) {
    return assertThrows(
            InputRefused.class, () -> PressFiles.factors("p.csv", new StringReader(text)))
        .getMessage();
  }

  @Test
  void a_part_wider_than_its_hub_is_refused() {
    assertThrows(InvalidValue.class, () -> new PressGeometry(42, 42, 0, 10));
    assertThrows(InvalidValue.class, () -> new PressGeometry(42, 50, 42, 10));
  }
}
