package annulus.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Hand-worked figures at, just inside and just outside the limits of the hold. */
class HoldEdgesTest {
  private static final Provenance PRACTICE =
      new Provenance("common practice, no source", Confidence.LOW);

  private static FactorCurve.Point point(double at, double low, double likely, double high) {
    return new FactorCurve.Point(at, new Estimate(low, likely, high), PRACTICE);
  }

  /** Weak at 0, best at 20, weak again at 40, worse at 60. */
  private static FactorCurve hump() {
    return new FactorCurve(
        List.of(
            point(0, 0.2, 0.3, 0.4),
            point(20, 0.8, 0.9, 1),
            point(40, 0.4, 0.5, 0.6),
            point(60, 0, 0.1, 0.2)));
  }

  private static HoldTables.Named named(double low, double likely, double high) {
    return new HoldTables.Named(new Estimate(low, likely, high), PRACTICE);
  }

  private static HoldTables tables(double surfaceHigh, double dynamicHigh) {
    return new HoldTables(
        hump(),
        new FactorCurve(List.of(point(0, 1, 1, 1), point(2, 0.5, 0.6, 0.8))),
        Map.of("steel", named(0.5, 0.6, surfaceHigh)),
        Map.of("static", named(1, 1, 1), "shock", named(0.1, 0.3, dynamicHigh)),
        named(15.8, 15.8, 15.8),
        named(22.9, 22.9, 22.9),
        named(2, 5, 10));
  }

  @Test
  void between_two_gaps_the_best_and_the_worst_on_the_way_count_and_nothing_beyond() {
    assertEquals(Optional.of(new Estimate(0.4, 0.5, 1)), hump().between(20, 40));
    Estimate overTheTop = hump().between(10, 30).orElseThrow();
    assertEquals(0.5, overTheTop.low(), 1e-12);
    assertEquals(0.6, overTheTop.likely(), 1e-12);
    assertEquals(1, overTheTop.high());
    Estimate oneSide = hump().between(5, 10).orElseThrow();
    assertEquals(0.35, oneSide.low(), 1e-12);
    assertEquals(0.7, oneSide.high(), 1e-12);
    assertEquals(Optional.empty(), hump().between(50, 60.001));
    assertEquals(Optional.empty(), hump().between(60.001, 70));
  }

  @Test
  void a_dip_between_two_gaps_is_not_stepped_over() {
    FactorCurve dip =
        new FactorCurve(List.of(point(0, 0.8, 0.9, 1), point(10, 0, 0.1, 0.2), point(20, 1, 1, 1)));
    Estimate across = dip.between(0, 20).orElseThrow();
    assertEquals(new Estimate(0, 0.1, 1), across);
  }

  @Test
  void a_curve_needs_two_points_in_rising_order() {
    FactorCurve.Point first = point(10, 0.5, 0.5, 0.5);
    assertThrows(InvalidValue.class, () -> new FactorCurve(List.of(first)));
    assertThrows(InvalidValue.class, () -> new FactorCurve(List.of(first, first)));
    assertThrows(InvalidValue.class, () -> new FactorCurve(List.of(first, point(9, 1, 1, 1))));
  }

  @Test
  void a_share_kept_hot_may_stay_level() {
    FactorCurve level =
        new FactorCurve(List.of(point(20, 0.5, 0.6, 0.7), point(60, 0.5, 0.6, 0.7)));
    assertEquals(new Estimate(0.5, 0.6, 0.7), new HotStrength(level).at(60).orElseThrow());
  }

  @Test
  void a_share_kept_hot_may_rise_at_no_end() {
    List<FactorCurve.Point> rises =
        List.of(point(60, 0.51, 0.6, 0.7), point(60, 0.5, 0.61, 0.7), point(60, 0.5, 0.6, 0.71));
    for (FactorCurve.Point hotter : rises) {
      FactorCurve curve = new FactorCurve(List.of(point(20, 0.5, 0.6, 0.7), hotter));
      assertThrows(InvalidValue.class, () -> new HotStrength(curve));
    }
  }

  @Test
  void a_table_with_a_factor_above_one_is_refused() {
    tables(1, 1);
    assertThrows(InvalidValue.class, () -> tables(1.01, 1));
    assertThrows(InvalidValue.class, () -> tables(1, 1.01));
  }

  @Test
  void a_load_not_described_is_taken_for_the_roughest() {
    HoldTables tables = tables(1, 0.5);
    assertEquals("shock", tables.roughest());
    assertEquals(
        new HoldFactor(HoldFactor.Kind.DYNAMIC, new Estimate(0.1, 0.3, 0.5)),
        tables.dynamicFactor("shock"));
    assertEquals("shock", HoldData.TABLES.roughest());
  }

  /** 20 mm on 40 mm is half the diameter: a quarter of the way from 1 at 0 to 0.5/0.6/0.8 at 2. */
  @Test
  void engagement_counts_length_over_diameter() {
    Estimate short_ = tables(1, 1).engagementFactor(20, 40).value();
    assertEquals(0.875, short_.low(), 1e-12);
    assertEquals(0.9, short_.likely(), 1e-12);
    assertEquals(0.95, short_.high(), 1e-12);
  }

  /** Four diameters deep is twice the table's last point: half its factor, so no more hold. */
  @Test
  void beyond_the_last_engagement_more_length_adds_nothing() {
    Estimate deep = tables(1, 1).engagementFactor(160, 40).value();
    assertEquals(0.25, deep.low(), 1e-12);
    assertEquals(0.3, deep.likely(), 1e-12);
    assertEquals(0.4, deep.high(), 1e-12);
  }

  @Test
  void a_bond_names_its_own_factors_and_one_for_the_rest() {
    Estimate half = Estimate.exactly(0.5);
    BondHold bond =
        new BondHold(42, 10, Estimate.exactly(10), List.of())
            .with(HoldFactor.Kind.GAP, half)
            .with(HoldFactor.Kind.DYNAMIC, Estimate.exactly(0.3));
    assertEquals(half, bond.factor(HoldFactor.Kind.GAP));
    assertEquals(Estimate.exactly(0.3), bond.factor(HoldFactor.Kind.DYNAMIC));
    assertEquals(Estimate.exactly(1), bond.factor(HoldFactor.Kind.SURFACE));
  }

  private static HybridHold joint(double grip, double pressure, double shear) {
    BondHold bond = new BondHold(40, 10, Estimate.exactly(shear), List.of());
    FrictionHold friction =
        new FrictionHold(Estimate.exactly(grip), Estimate.exactly(pressure), true);
    return new HybridHold(bond, friction, new HybridHold.Limits(15.8, 22.9));
  }

  @Test
  void what_was_tested_includes_its_own_limits() {
    assertEquals(HybridHold.Basis.SUM, joint(1_000, 15.8, 22.9).basis());
    assertEquals(HybridHold.Basis.LESSER_OF_BOTH, joint(1_000, 15.81, 22.9).basis());
    assertEquals(HybridHold.Basis.LESSER_OF_BOTH, joint(1_000, 15.8, 22.89).basis());
  }

  @Test
  void a_load_the_grip_alone_bears_needs_no_cure_and_the_full_strength_is_the_most() {
    HybridHold sum = joint(1_000, 5, 25);
    double most = sum.atStrength(1).axialN().low();
    assertEquals(OptionalDouble.of(0), sum.strengthFractionFor(0));
    assertEquals(OptionalDouble.of(0), sum.strengthFractionFor(1_000));
    assertEquals(OptionalDouble.of(1), sum.strengthFractionFor(most));
    assertEquals(OptionalDouble.empty(), sum.strengthFractionFor(Math.nextUp(most)));
  }

  private static Removal removal(Removal.Limits limits, FrictionHold grip) {
    BondHold bond = new BondHold(40, 10, new Estimate(8, 10, 14), List.of());
    HybridHold hold = new HybridHold(bond, grip, new HybridHold.Limits(15.8, 0));
    return new Removal(hold, HoldTest.ordinary(), Set.of(), limits);
  }

  private static Removal.Limits limits(double axial, double torque, double celsius) {
    return new Removal.Limits(
        OptionalDouble.of(axial), OptionalDouble.of(torque), OptionalDouble.of(celsius));
  }

  @Test
  void a_member_limit_is_a_possible_figure() {
    assertThrows(InvalidValue.class, () -> limits(0, 1, 100));
    assertThrows(InvalidValue.class, () -> limits(1, 0, 100));
    assertThrows(InvalidValue.class, () -> limits(1, 1, -0.1));
    assertThrows(InvalidValue.class, () -> limits(1, 1, 1000.1));
  }

  @Test
  void a_tool_and_a_member_exactly_at_the_need_still_do() {
    Estimate need = removal(Removal.Limits.none(), FrictionHold.none()).breakLooseN();
    Removal atHigh = removal(limits(need.high(), 1, 100), FrictionHold.none());
    Removal.Way enough = atHigh.ways(List.of(new Tool.Press(need.high()))).get(0);
    assertEquals(Removal.Outcome.ENOUGH, enough.outcome());
    Removal.Way likelyTool = atHigh.ways(List.of(new Tool.Press(need.likely()))).get(0);
    assertEquals(Set.of(Removal.Reason.TOOL_BELOW_HIGH_END), likelyTool.reasons());
    Removal atLikely = removal(limits(need.likely(), 1, 100), FrictionHold.none());
    Removal.Way likelyMember = atLikely.ways(List.of(new Tool.Press(1e6))).get(0);
    assertEquals(Set.of(Removal.Reason.MEMBER_LIMIT_BELOW_HIGH_END), likelyMember.reasons());
  }

  @Test
  void heat_up_to_what_the_member_bears_is_allowed_and_keeps_the_presss_own_doubts() {
    Removal removal = removal(limits(1e6, 1e6, 100), FrictionHold.none());
    double hotHigh = 0.7 * removal.breakLooseN().high();
    List<Tool> tools = List.of(new Tool.LocalHeat(100), new Tool.Press(hotHigh * 0.99));
    Removal.Way way = removal.ways(tools).get(0);
    assertEquals(
        Set.of(
            Removal.Reason.BURNS_AND_FUMES,
            Removal.Reason.NEEDS_PRESS_OR_TWIST_WHILE_HOT,
            Removal.Reason.TOOL_BELOW_HIGH_END),
        way.reasons());
    assertEquals(Removal.Outcome.DOUBTFUL, way.outcome());
  }

  @Test
  void heat_on_a_member_whose_heat_limit_nobody_knows_is_never_plainly_enough() {
    Removal.Limits noHeat =
        new Removal.Limits(OptionalDouble.of(1e6), OptionalDouble.of(1e6), OptionalDouble.empty());
    Removal removal = removal(noHeat, FrictionHold.none());
    Removal.Way way = removal.ways(List.of(new Tool.LocalHeat(100), new Tool.Press(1e6))).get(0);
    assertEquals(Removal.Outcome.DOUBTFUL, way.outcome());
    Removal.Way weak = removal.ways(List.of(new Tool.LocalHeat(100), new Tool.Press(1))).get(0);
    assertEquals(Removal.Outcome.NOT_ENOUGH, weak.outcome());
  }
}
