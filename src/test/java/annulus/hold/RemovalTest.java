package annulus.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Joint 42 x 10 mm, 8 / 10 / 14 MPa: 10.6, 13.2, 18.5 kN. */
class RemovalTest {
  private static final BondHold BOND = new BondHold(42, 10, new Estimate(8, 10, 14), List.of());

  private static Removal removal(
      FrictionHold grip, double axialLimit, double heatLimit, Removal.Surrounding... near) {
    HybridHold hold = new HybridHold(BOND, grip, HoldData.TABLES.limits());
    Removal.Limits limits =
        new Removal.Limits(
            OptionalDouble.of(axialLimit), OptionalDouble.of(500), OptionalDouble.of(heatLimit));
    return new Removal(hold, HoldTest.ordinary(), Set.copyOf(Arrays.asList(near)), limits);
  }

  private static Removal.Way way(Removal removal, Tool... tools) {
    return removal.ways(List.of(tools)).get(0);
  }

  @Test
  void a_press_is_judged_against_the_range_and_the_member() {
    Removal strong = removal(FrictionHold.none(), 50_000, 200);
    assertEquals(Removal.Outcome.ENOUGH, way(strong, new Tool.Press(19_000)).outcome());
    assertEquals(
        Set.of(Removal.Reason.TOOL_BELOW_HIGH_END), way(strong, new Tool.Press(15_000)).reasons());
    assertEquals(Removal.Outcome.NOT_ENOUGH, way(strong, new Tool.Press(13_000)).outcome());
    Removal fragile = removal(FrictionHold.none(), 5_000, 200);
    Removal.Way refused = way(fragile, new Tool.Press(19_000));
    assertEquals(Removal.Outcome.REFUSED, refused.outcome());
    assertEquals(Set.of(Removal.Reason.MEMBER_LIMIT_BELOW_LIKELY), refused.reasons());
    Removal unsure = removal(FrictionHold.none(), 15_000, 200);
    assertEquals(Removal.Outcome.DOUBTFUL, way(unsure, new Tool.Press(19_000)).outcome());
  }

  @Test
  void a_wrench_is_judged_by_torque() {
    Removal strong = removal(FrictionHold.none(), 50_000, 200);
    double torque = strong.breakLooseTorqueNm().high();
    assertEquals(strong.breakLooseN().high() * 0.021, torque, 1e-9);
    assertEquals(Removal.Outcome.ENOUGH, way(strong, new Tool.Twist(torque)).outcome());
    assertEquals(Removal.Outcome.DOUBTFUL, way(strong, new Tool.Twist(torque - 0.001)).outcome());
  }

  @ParameterizedTest
  @EnumSource(
      value = Removal.Surrounding.class,
      names = {"LAMINATE", "PLASTIC", "SEAL", "PAINT", "BATTERY"})
  void heat_is_refused_on_or_near(Removal.Surrounding near) {
    Removal.Way way =
        way(
            removal(FrictionHold.none(), 50_000, 200, near),
            new Tool.LocalHeat(100),
            new Tool.Press(19_000));
    assertEquals(Removal.Outcome.REFUSED, way.outcome());
    assertEquals(1, way.reasons().size());
    String reason = way.reasons().iterator().next().name();
    assertTrue(reason.startsWith("NO_HEAT_") && reason.endsWith(near.name()), reason);
  }

  @Test
  void heat_above_what_the_member_bears_is_refused() {
    Removal.Way way = way(removal(FrictionHold.none(), 50_000, 99), new Tool.LocalHeat(100));
    assertEquals(Set.of(Removal.Reason.HEAT_ABOVE_MEMBER_LIMIT), way.reasons());
  }

  @Test
  void heat_makes_a_press_enough_that_was_too_weak_cold() {
    Removal joint = removal(FrictionHold.none(), 50_000, 200);
    Tool press = new Tool.Press(12_999);
    assertEquals(Removal.Outcome.NOT_ENOUGH, way(joint, press).outcome());
    Removal.Way hot = way(joint, new Tool.LocalHeat(100), press);
    assertEquals(0.7 * joint.breakLooseN().high(), hot.axialN().high(), 1e-9);
    assertEquals(Removal.Outcome.ENOUGH, hot.outcome());
    assertEquals(Removal.Outcome.NOT_ENOUGH, way(joint, new Tool.LocalHeat(100)).outcome());
  }

  @Test
  void heat_beyond_the_strength_data_takes_the_last_share_and_says_so() {
    Removal joint = removal(FrictionHold.none(), 50_000, 250);
    Removal.Way way = way(joint, new Tool.LocalHeat(200), new Tool.Press(19_000));
    assertEquals(0.5 * joint.breakLooseN().high(), way.axialN().high(), 1e-9);
    assertTrue(way.reasons().contains(Removal.Reason.HEAT_BEYOND_STRENGTH_DATA));
    assertEquals(Removal.Outcome.DOUBTFUL, way.outcome());
  }

  @ParameterizedTest
  @EnumSource(
      value = Removal.Surrounding.class,
      names = {"LAMINATE", "PLASTIC", "SEAL"})
  void a_drift_is_refused_on(Removal.Surrounding near) {
    Removal.Way way = way(removal(FrictionHold.none(), 50_000, 200, near), new Tool.Drift());
    assertEquals(Removal.Outcome.REFUSED, way.outcome());
    assertTrue(way.reasons().iterator().next().name().endsWith("ON_" + near.name()));
  }

  @Test
  void a_drift_is_never_promised_to_do() {
    Removal.Way way =
        way(
            removal(FrictionHold.none(), 50_000, 200, Removal.Surrounding.BEARING),
            new Tool.Drift());
    assertEquals(Removal.Outcome.DOUBTFUL, way.outcome());
    assertEquals(
        Set.of(Removal.Reason.BLOW_FORCE_NOT_KNOWN, Removal.Reason.BLOWS_MARK_BEARINGS),
        way.reasons());
  }

  @Test
  void a_grip_nobody_can_compute_leaves_a_doubt() {
    FrictionHold unknown = new FrictionHold(Estimate.exactly(0), Estimate.exactly(0), false);
    Removal.Way way = way(removal(unknown, 50_000, 200), new Tool.Press(1e6));
    assertEquals(Removal.Outcome.DOUBTFUL, way.outcome());
    assertEquals(Set.of(Removal.Reason.GRIP_NOT_KNOWN), way.reasons());
  }

  @Test
  void breaking_loose_counts_the_full_cold_strength_whatever_the_day_of_asking() {
    BondHold young =
        BOND.atStrength(0.2)
            .with(HoldFactor.Kind.DYNAMIC, Estimate.exactly(0.3))
            .with(HoldFactor.Kind.HOT_STRENGTH, Estimate.exactly(0.5));
    HybridHold hold = new HybridHold(young, FrictionHold.none(), HoldData.TABLES.limits());
    Removal removal = new Removal(hold, HoldTest.ordinary(), Set.of(), Removal.Limits.none());
    assertEquals(BOND.axialN(), removal.breakLooseN());
  }
}
