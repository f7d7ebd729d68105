package annulus.hold;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

class HoldPropertyTest {
  private static BondHold bond(double d, double length, double shear) {
    return new BondHold(
        d,
        length,
        new Estimate(shear * 0.8, shear, shear * 1.2),
        List.of(HoldData.TABLES.engagementFactor(length, d)));
  }

  @Property
  void a_longer_joint_never_holds_less(
      @ForAll @IntRange(min = 10, max = 200) int d,
      @ForAll @IntRange(min = 1, max = 2000) int tenths) {
    Estimate shorter = bond(d, tenths / 10.0, 12).axialN();
    Estimate longer = bond(d, (tenths + 1) / 10.0, 12).axialN();
    assertTrue(longer.low() >= shorter.low() * (1 - 1e-12));
    assertTrue(longer.likely() >= shorter.likely() * (1 - 1e-12));
    assertTrue(longer.high() >= shorter.high() * (1 - 1e-12));
  }

  @Property
  void every_factor_lowers_or_keeps_the_hold(
      @ForAll @IntRange(min = 0, max = 760) int gap, @ForAll("surfaces") String face) {
    BondHold plain = bond(42, 10, 12);
    HoldFactor gapFactor = HoldData.TABLES.gapFactor(gap).orElseThrow();
    HoldFactor surface = HoldData.TABLES.surfaceFactor("steel", face);
    BondHold lowered =
        plain.with(gapFactor.kind(), gapFactor.value()).with(surface.kind(), surface.value());
    assertTrue(lowered.axialN().high() <= plain.axialN().high());
    assertTrue(lowered.axialN().low() <= plain.axialN().low());
  }

  @Provide
  Arbitrary<String> surfaces() {
    return Arbitraries.of(HoldData.TABLES.surfaces().keySet().stream().sorted().toList());
  }

  @Provide
  Arbitrary<HybridHold> hybrids() {
    Arbitrary<Integer> shear = Arbitraries.integers().between(2, 40);
    Arbitrary<Integer> pressure = Arbitraries.integers().between(0, 30);
    Arbitrary<Boolean> known = Arbitraries.of(true, true, true, false);
    return Combinators.combine(shear, pressure, known)
        .as(
            (tau, p, isKnown) -> {
              BondHold bond = bond(42, 10, tau);
              double force = isKnown ? 0.1 * p * bond.areaMm2() : 0;
              FrictionHold grip =
                  new FrictionHold(
                      new Estimate(force * 0.5, force, force * 1.5),
                      Estimate.exactly(isKnown ? p : 0),
                      isKnown);
              return new HybridHold(bond, grip, HoldData.TABLES.limits());
            });
  }

  /** The load check and the stage waited for never disagree. */
  @Property(tries = 6000)
  void at_the_strength_fraction_needed_the_load_is_just_covered(
      @ForAll("hybrids") HybridHold joint,
      @ForAll @IntRange(min = 0, max = 60_000) int axial,
      @ForAll @IntRange(min = 0, max = 400) int torque) {
    Load load = new Load(axial, torque, 1.5);
    OptionalDouble needed = new LoadCheck(joint.atStrength(0), load).strengthFractionNeeded();
    String stage = needed.isEmpty() ? "never" : needed.getAsDouble() > 0 ? "cure" : "at once";
    Statistics.label("basis").collect(joint.basis());
    Statistics.label("needed").collect(stage);
    for (HybridHold.Basis basis : HybridHold.Basis.values()) {
      Statistics.label("basis").coverage(c -> c.check(basis).count(n -> n > 20));
    }
    for (String seen : List.of("never", "cure", "at once")) {
      Statistics.label("needed").coverage(c -> c.check(seen).count(n -> n > 20));
    }
    if (needed.isEmpty()) {
      assertTrue(new LoadCheck(joint.atStrength(1), load).verdict() != LoadCheck.Verdict.COVERED);
      return;
    }
    double fraction = needed.getAsDouble();
    assertEquals(
        LoadCheck.Verdict.COVERED, new LoadCheck(joint.atStrength(fraction), load).verdict());
    if (fraction > 1e-6) {
      LoadCheck before = new LoadCheck(joint.atStrength(fraction * (1 - 1e-6)), load);
      assertTrue(before.verdict() != LoadCheck.Verdict.COVERED);
    }
  }

  @Property
  void more_cure_never_holds_less(
      @ForAll("hybrids") HybridHold joint, @ForAll @IntRange(min = 0, max = 99) int percent) {
    Estimate now = joint.atStrength(percent / 100.0).axialN();
    Estimate later = joint.atStrength((percent + 1) / 100.0).axialN();
    assertTrue(later.low() >= now.low());
    assertTrue(later.likely() >= now.likely());
    assertTrue(later.high() >= now.high());
  }

  @Property
  void outside_what_was_tested_the_low_end_counts_on_no_more_than_either_alone(
      @ForAll("hybrids") HybridHold joint) {
    if (joint.basis() == HybridHold.Basis.LESSER_OF_BOTH) {
      assertTrue(joint.axialN().low() <= joint.bond().axialN().low());
      assertTrue(joint.axialN().low() <= joint.friction().axialN().low());
      assertTrue(!joint.cautions().isEmpty());
    }
  }

  @Property
  void a_hot_joint_is_never_stronger_than_a_cold_one(
      @ForAll @IntRange(min = -50, max = 149) int celsius) {
    HotStrength hot = HoldTest.ordinary();
    Estimate colder = hot.at(celsius).orElseThrow();
    Estimate hotter = hot.at(celsius + 1).orElseThrow();
    assertTrue(hotter.low() <= colder.low());
    assertTrue(hotter.likely() <= colder.likely());
    assertTrue(hotter.high() <= colder.high());
  }

  /** Axial force and torque at right angles: between the greater and the sum of the two. */
  @Property
  void a_combined_load_lies_between_the_greater_and_the_sum(
      @ForAll @IntRange(min = 0, max = 10_000) int axial,
      @ForAll @IntRange(min = 0, max = 300) int torque) {
    double round = 2000.0 * torque / 42;
    double combined = new Load(axial, torque, 1).combinedN(42);
    assertTrue(combined >= Math.max(axial, round) - 1e-9);
    assertTrue(combined <= axial + round + 1e-9);
  }

  /** Three numbers of 0 to 1 in order, to the last bit; now and then the same. */
  private static Estimate drawn(Random random) {
    double[] three = new double[3];
    for (int i = 0; i < 3; i++) {
      three[i] = i > 0 && random.nextBoolean() ? three[i - 1] : Math.sqrt(random.nextDouble());
    }
    Arrays.sort(three);
    return new Estimate(three[0], three[1], three[2]);
  }

  private static void within(double a, double b, double value) {
    assertTrue(value >= Math.min(a, b) - 1e-15 && value <= Math.max(a, b) + 1e-15);
  }

  /** Numbers that meet at a point may cross there by a rounding error: that is no refusal. */
  @Property(tries = 3000)
  void a_factor_lies_between_its_points_and_in_order(@ForAll long seed) {
    Random random = new Random(seed);
    Estimate first = drawn(random);
    Estimate last = drawn(random);
    double to = 0.1 + 100 * random.nextDouble();
    Provenance source = new Provenance("drawn", Confidence.LOW);
    FactorCurve curve =
        new FactorCurve(
            List.of(
                new FactorCurve.Point(0, first, source), new FactorCurve.Point(to, last, source)));
    boolean atPoint = random.nextBoolean();
    Statistics.label("at a point").collect(atPoint);
    Estimate value = curve.at(atPoint ? to : to * random.nextDouble()).orElseThrow();
    within(first.low(), last.low(), value.low());
    within(first.likely(), last.likely(), value.likely());
    within(first.high(), last.high(), value.high());
  }
}
