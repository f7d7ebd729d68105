package annulus.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.exchange.HoldFiles;
import annulus.exchange.InputRefused;
import annulus.fit.FitData;
import annulus.fit.PressAnswer;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.StringReader;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

class HoldTest {
  private static final Provenance PRACTICE =
      new Provenance("common practice, no source", Confidence.LOW);

  private static FactorCurve.Point point(double at, double low, double likely, double high) {
    return new FactorCurve.Point(at, new Estimate(low, likely, high), PRACTICE);
  }

  /** Share kept hot by ordinary classes, common practice: 75-90 % at 60, 55-70 at 100, 30-50. */
  static HotStrength ordinary() {
    return new HotStrength(
        new FactorCurve(
            List.of(
                point(22, 1, 1, 1),
                point(60, 0.75, 0.82, 0.9),
                point(100, 0.55, 0.62, 0.7),
                point(150, 0.3, 0.4, 0.5))));
  }

  private static HybridHold joint(FrictionHold grip) {
    BondHold bond = new BondHold(42, 10, new Estimate(8, 10, 14), List.of());
    return new HybridHold(bond, grip, HoldData.TABLES.limits());
  }

  private static FrictionHold grip(double newtons, double pressure) {
    return new FrictionHold(Estimate.exactly(newtons), Estimate.exactly(pressure), true);
  }

  @Test
  void weak_compound_under_high_pressure_is_cautioned_and_not_added() {
    HybridHold hybrid = joint(grip(20_000, 60));
    assertEquals(HybridHold.Basis.LESSER_OF_BOTH, hybrid.basis());
    assertEquals(
        Set.of(
            HybridHold.Caution.WEAK_COMPOUND_UNDER_PRESSURE,
            HybridHold.Caution.PRESSURE_BEYOND_TESTS),
        hybrid.cautions());
    assertEquals(hybrid.bond().axialN().low(), hybrid.axialN().low());
    assertEquals(20_000, hybrid.axialN().likely());
  }

  @Test
  void a_slip_fit_rests_on_the_bond_alone() {
    HybridHold hybrid = joint(FrictionHold.none());
    assertEquals(HybridHold.Basis.BOND_ALONE, hybrid.basis());
    assertTrue(hybrid.cautions().isEmpty());
    assertEquals(hybrid.bond().axialN(), hybrid.axialN());
  }

  @Test
  void a_grip_in_laminate_is_not_counted_on_but_warned_of() {
    FrictionHold unknown =
        FrictionHold.of(
            new PressAnswer.Refused(List.of(PressAnswer.Reason.LAMINATE_IS_NOT_ISOTROPIC)));
    HybridHold hybrid = joint(unknown);
    assertEquals(HybridHold.Basis.GRIP_NOT_KNOWN, hybrid.basis());
    assertEquals(Set.of(HybridHold.Caution.GRIP_MAY_ADD), hybrid.cautions());
    BondHold strong = new BondHold(42, 10, new Estimate(30, 32, 34), List.of());
    assertEquals(strong.axialN(), new HybridHold(strong, unknown, hybrid.limits()).axialN());
    // what is weak may hold as little as the grip, and that may be nothing
    assertEquals(0, hybrid.axialN().low());
    assertEquals(hybrid.bond().axialN().likely(), hybrid.axialN().likely());
    assertEquals(OptionalDouble.empty(), hybrid.strengthFractionFor(1));
    assertEquals(FrictionHold.none(), FrictionHold.of(new PressAnswer.Loose(Estimate.exactly(-3))));
  }

  @Test
  void a_load_that_repeats_lowers_the_grip_too() {
    HybridHold still = joint(grip(1_000, 5));
    BondHold shaken = still.bond().with(HoldFactor.Kind.DYNAMIC, Estimate.exactly(0.5));
    HybridHold moving = new HybridHold(shaken, still.friction(), new HybridHold.Limits(100, 0));
    assertEquals(0.5 * (still.bond().axialN().likely() + 1_000), moving.axialN().likely(), 1e-9);
  }

  @Test
  void a_load_is_covered_likely_covered_or_not() {
    HybridHold hold = joint(FrictionHold.none());
    double low = hold.axialN().low();
    double likely = hold.axialN().likely();
    assertEquals(LoadCheck.Verdict.COVERED, new LoadCheck(hold, new Load(low, 0, 1)).verdict());
    assertEquals(
        LoadCheck.Verdict.LIKELY_ONLY, new LoadCheck(hold, new Load(low + 0.001, 0, 1)).verdict());
    assertEquals(
        LoadCheck.Verdict.LIKELY_ONLY, new LoadCheck(hold, new Load(likely, 0, 1)).verdict());
    assertEquals(
        LoadCheck.Verdict.NOT_COVERED,
        new LoadCheck(hold, new Load(likely + 0.001, 0, 1)).verdict());
    LoadCheck half = new LoadCheck(hold, new Load(low / 4, 0, 2));
    assertEquals(4, half.safety().orElseThrow().low(), 1e-12);
    assertEquals(0.5, half.strengthFractionNeeded().getAsDouble(), 1e-12);
    assertTrue(new LoadCheck(hold, new Load(0, 0, 2)).safety().isEmpty());
  }

  @Test
  void hot_strength_above_its_data_is_not_given_and_never_rises() {
    assertEquals(Optional.of(new Estimate(1, 1, 1)), ordinary().at(-20));
    assertEquals(Optional.empty(), ordinary().at(150.1));
    FactorCurve rising =
        new FactorCurve(List.of(point(20, 0.5, 0.6, 0.7), point(60, 0.5, 0.7, 0.7)));
    InvalidValue refused = assertThrows(InvalidValue.class, () -> new HotStrength(rising));
    assertTrue(refused.problem().contains("60 °C"));
  }

  @Test
  void a_factor_of_one_kind_is_given_once() {
    HoldFactor gap = new HoldFactor(HoldFactor.Kind.GAP, Estimate.exactly(0.9));
    assertThrows(
        InvalidValue.class, () -> new BondHold(42, 10, Estimate.exactly(10), List.of(gap, gap)));
    assertThrows(
        InvalidValue.class, () -> new HoldFactor(HoldFactor.Kind.GAP, Estimate.exactly(1.01)));
  }

  @Test
  void the_weaker_face_rules() {
    Estimate steel = HoldData.TABLES.surfaceFactor("steel", "steel").value();
    Estimate mixed = HoldData.TABLES.surfaceFactor("steel", "laminate").value();
    assertEquals(mixed, HoldData.TABLES.surfaceFactor("laminate", "steel").value());
    assertTrue(mixed.low() < steel.low());
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> HoldData.TABLES.surfaceFactor("steel", "alumium"));
    assertTrue(refused.allowed().contains("aluminium"));
  }

  @Test
  void every_duty_is_wide_low_confidence_and_checked_at_its_high_end() {
    assertFalse(HoldData.DUTIES.isEmpty());
    for (DutyCase duty : HoldData.DUTIES) {
      assertEquals(Confidence.LOW, duty.provenance().confidence());
      assertEquals("common practice, no source", duty.provenance().source());
      assertTrue(duty.axialN().high() >= 3 * duty.axialN().likely(), duty.id());
      assertEquals(duty.axialN().high(), duty.load(2).axialN());
      assertEquals(duty.torqueNm().high(), duty.load(2).torqueNm());
    }
  }

  @Test
  void bad_factor_rows_are_placed() {
    String text = FitData.text("hold-factors.csv");
    String unit = text.replaceFirst("gap,radial,0,um", "gap,radial,0,mm");
    assertTrue(refusedFactors(unit).startsWith("h.csv:9:4: unit: "), refusedFactors(unit));
    String twice = text + "surface,steel,0,1,0.9,1,1,shop,low\n";
    assertTrue(refusedFactors(twice).contains("steel is given twice"), refusedFactors(twice));
    String duty = FitData.text("duty-cases.csv").replaceFirst("reversing", "wobbling");
    InputRefused unknown =
        assertThrows(
            InputRefused.class,
            () -> HoldFiles.duties("d.csv", new StringReader(duty), HoldData.TABLES));
    assertTrue(unknown.getMessage().startsWith("d.csv:6:9: dynamic: "), unknown.getMessage());
  }

  private static String refusedFactors(String text) {
    return assertThrows(
            InputRefused.class, () -> HoldFiles.factors("h.csv", new StringReader(text)))
        .getMessage();
  }

  @Test
  void without_limits_nobody_is_told_enough() {
    Removal removal =
        new Removal(joint(FrictionHold.none()), ordinary(), Set.of(), Removal.Limits.none());
    Removal.Way way = removal.ways(List.of(new Tool.Press(1e6))).get(0);
    assertEquals(Removal.Outcome.DOUBTFUL, way.outcome());
    assertEquals(Set.of(Removal.Reason.MEMBER_LIMIT_NOT_KNOWN), way.reasons());
    assertEquals(OptionalDouble.empty(), removal.limits().axialN());
  }
}
