package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.CureCurve.Point;
import annulus.cure.SurfaceActivity.Active;
import annulus.cure.SurfaceActivity.Inert;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class CurePartsTest {
  private static final Rate RATE = new ArrheniusRate(45, 22, 5, 40);

  @Test
  void the_rate_counts_at_the_minimum_is_nothing_just_below_and_is_held_above() {
    assertEquals(0, RATE.at(Math.nextDown(5.0)));
    assertTrue(RATE.at(5) > 0.3);
    assertEquals(RATE.at(40), RATE.at(40.0001));
    assertEquals(1, RATE.at(22), 1e-15);
  }

  @Test
  void the_slowest_rate_takes_the_high_energy_below_the_reference_and_the_low_above() {
    SlowestRate slowest = SlowestRate.between(38, 55, 22, 5, 40);
    assertEquals(slowest.highest().at(10), slowest.at(10));
    assertEquals(slowest.lowest().at(30), slowest.at(30));
    assertTrue(slowest.lowest().at(10) > slowest.at(10));
    assertThrows(InvalidValue.class, () -> SlowestRate.between(55, 38, 22, 5, 40));
  }

  @Test
  void a_hold_temperature_below_the_minimum_is_refused_by_name() {
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> new ArrheniusRate(45, 22, 15, 10));
    assertEquals("holdAboveC", refused.field());
  }

  @Test
  void the_curve_passes_through_its_points_and_claims_nothing_before_the_first() {
    CureCurve curve =
        new CureCurve(List.of(new Point(0.1, 0.3), new Point(0.5, 3), new Point(0.9, 27)));
    assertEquals(0, curve.fractionAt(0));
    assertEquals(0, curve.fractionAt(Math.nextDown(0.3)));
    assertEquals(0.1, curve.fractionAt(0.3));
    assertEquals(0.5, curve.fractionAt(3));
    assertEquals(0.9, curve.fractionAt(27));
    assertEquals(0.9, curve.fractionAt(1e9));
    // Half way in the logarithm: the geometric mean of 3 and 27 is 9.
    assertEquals(0.7, curve.fractionAt(9), 1e-12);
    assertEquals(9, curve.hoursAt(0.7).orElseThrow(), 1e-12);
    assertEquals(0, curve.hoursAt(0).orElseThrow());
    assertEquals(0.3, curve.hoursAt(0.02).orElseThrow());
    assertEquals(3, curve.hoursAt(0.5).orElseThrow());
    assertTrue(curve.hoursAt(0.91).isEmpty());
  }

  @Test
  void points_that_do_not_rise_are_refused() {
    Point first = new Point(0.5, 3);
    assertThrows(InvalidValue.class, () -> new CureCurve(List.of()));
    assertThrows(InvalidValue.class, () -> new CureCurve(List.of(first, new Point(0.5, 4))));
    assertThrows(InvalidValue.class, () -> new CureCurve(List.of(first, new Point(0.6, 3))));
    assertThrows(InvalidValue.class, () -> new Point(1.01, 3));
    assertThrows(InvalidValue.class, () -> new Point(0, 3));
  }

  @Test
  void a_place_that_is_always_too_cold_never_cures() {
    assertTrue(new ReducedTime(TemperatureHistory.constant(4.9), RATE).secondsToReach(1).isEmpty());
    TemperatureHistory coldDays =
        TemperatureHistory.repeating(
            List.of(new TemperatureHistory.Point(0, -3), new TemperatureHistory.Point(43_200, 4.9)),
            86_400);
    assertTrue(new ReducedTime(coldDays, RATE).secondsToReach(1e-6).isEmpty());
  }

  @Test
  void an_amount_reached_as_the_cold_begins_is_not_moved_past_the_night() {
    TemperatureHistory days =
        TemperatureHistory.repeating(
            List.of(
                new TemperatureHistory.Point(0, 21.7),
                new TemperatureHistory.Point(30_000, 21.7),
                new TemperatureHistory.Point(30_000, 0)),
            86_400);
    ReducedTime reduced = new ReducedTime(days, RATE);
    double oneDay = reduced.hoursAt(86_400);
    for (int day = 1; day <= 400; day++) {
      double at = reduced.secondsToReach(day * oneDay).orElseThrow();
      assertEquals((day - 1) * 86_400.0 + 30_000, at, 1e-4);
    }
  }

  @Test
  void equal_surfaces_keep_their_rate_and_a_mixed_pair_lies_between() {
    assertEquals(0.5, rate(new Active(0.5), new Active(0.5)), 1e-15);
    // 2/(1/1 + 1/0.25) = 0.4
    assertEquals(0.4, rate(new Active(1), new Active(0.25)), 1e-15);
    assertEquals(
        2.5, SurfaceActivity.surfaceFactor(new Active(1), new Active(0.25)).orElseThrow(), 1e-12);
  }

  private static double rate(SurfaceActivity one, SurfaceActivity other) {
    return SurfaceActivity.pairRate(one, other).orElseThrow();
  }

  @Test
  void two_inert_surfaces_cannot_cure_until_one_or_both_are_primed() {
    Inert credited = new Inert(OptionalDouble.of(0.2));
    assertTrue(SurfaceActivity.pairRate(credited, credited).isEmpty());
    assertTrue(SurfaceActivity.pairRate(Inert.always(), new Active(1)).isEmpty());
    assertTrue(SurfaceActivity.pairRate(Inert.always(), Inert.always().primed(3)).isEmpty());
    assertEquals(1.0 / 3, rate(credited, new Active(1)), 1e-15);
    assertEquals(3, rate(Inert.always().primed(3), Inert.always().primed(3)), 1e-15);
    assertEquals(4, new Active(4).primed(3).rate());
  }

  @Test
  void the_gap_factor_is_one_up_to_the_reference_and_grows_above() {
    assertEquals(1, GapFactor.of(-12, 25, 1));
    assertEquals(1, GapFactor.of(25, 25, 1));
    assertEquals(3, GapFactor.of(75, 25, 1), 1e-12);
    assertEquals(9, GapFactor.of(75, 25, 2), 1e-12);
  }

  @Test
  void pieces_that_do_not_join_are_refused() {
    CureAccumulator sum = new CureAccumulator(RATE);
    sum.piece(0, 20, 10, 20);
    assertThrows(InvalidValue.class, () -> sum.piece(11, 20, 12, 20));
    assertThrows(InvalidValue.class, () -> sum.piece(10, 20, 10, 20));
    assertThrows(InvalidValue.class, () -> sum.piece(10, Double.NaN, 11, 20));
  }

  // Lumped capacity: ring 62/42 × 12 mm, steel 7850 kg/m³, 486 J/(kg·K); worked by hand:
  // faces 2·π/4·(62² − 42²) = 3267.3 mm², sides π·104·12 = 3920.7 mm², mass 0.15389 kg,
  // τ(8) = 0.15389·486/(8·7.188e-3) = 1300.6 s.
  @Test
  void a_ring_has_the_time_constant_worked_by_hand() {
    BodyWarmUp ring = BodyWarmUp.ring(62, 42, 12, 7850, 486, new Interval(4, 16));
    assertEquals(0.15389, ring.massKg(), 1e-5);
    assertEquals(1300.6, ring.timeConstantSeconds(8), 0.5);
  }

  @Test
  void a_part_never_runs_warmer_than_the_exponential_course() {
    BodyWarmUp ring = BodyWarmUp.ring(62, 42, 12, 7850, 486, new Interval(4, 16));
    double[][] starts = {{2, 22}, {40, 22}};
    for (double[] startAndRoom : starts) {
      boolean warming = startAndRoom[0] < startAndRoom[1];
      double constant = ring.timeConstantSeconds(warming ? 4 : 16);
      TemperatureHistory course = ring.course(startAndRoom[0], startAndRoom[1]);
      double difference = startAndRoom[0] - startAndRoom[1];
      for (int i = 0; i < 2000; i++) {
        double at = i * constant / 150;
        double exact = startAndRoom[1] + difference * Math.exp(-at / constant);
        double here = course.celsiusAt(at);
        assertTrue(here <= exact + 1e-9, here + " is warmer than " + exact);
        assertEquals(exact, here, 0.012 * Math.abs(difference));
      }
    }
  }
}
