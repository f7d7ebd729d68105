package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.measure.Decider.Question;
import annulus.measure.Remedy.Outcome;
import annulus.measure.Remedy.State;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.List;
import org.junit.jupiter.api.Test;

class DeciderTest {
  private static final Interval THIN = new Interval(10, 50);
  private static final Interval THICK = new Interval(50, 125);
  private static final Decider DECIDER = new Decider(Samples.ALL, Samples.LIMITS);

  private static Remedy remedy(
      double gapUm, MeasuredDiameter bore, MeasuredDiameter part, int readings) {
    return DECIDER.remedyFor(new Question(gapUm, bore, part, List.of(THIN, THICK), 0.95), readings);
  }

  private static MeasuredDiameter caliperBore() {
    return Samples.bore(Samples.CALIPER, Samples.readings(42.06, 42.06, 42.06));
  }

  private static MeasuredDiameter caliperPart() {
    return Samples.part(Samples.CALIPER, Samples.readings(42.00, 42.00, 42.00));
  }

  @Test
  void a_gap_in_the_middle_of_a_wide_range_is_decided_as_measured() {
    Remedy remedy = remedy(87, caliperBore(), caliperPart(), 3);
    assertEquals(State.DECIDED, remedy.state());
    assertEquals(THICK, remedy.bestRange().orElseThrow());
    assertEquals(Outcome.NOT_NEEDED, remedy.moreReadings().outcome());
  }

  @Test
  void two_calipers_need_a_better_instrument_and_more_readings_do_not_help() {
    Remedy remedy = remedy(35, caliperBore(), caliperPart(), 3);
    assertEquals(State.CAN_BE_DECIDED, remedy.state());
    assertTrue(remedy.probabilityNow() < 0.95);
    assertEquals(Outcome.INSTRUMENT_ERROR_FORBIDS, remedy.moreReadings().outcome());
    assertTrue(remedy.moreReadings().perMember().isEmpty());
    assertTrue(remedy.moreReadings().probability() < 0.95);
    // by hand: error limits 20 and 20 µm, rectangular, radial half: u = √(133+133)/2 = 8.2 µm and
    // more with steps, edge 15 µm off at t 1.64 needs u below 9.1
    assertEquals("telescopic", remedy.pairs().get(0).bore().id());
    assertEquals("caliper", remedy.pairs().get(0).part().id());
    assertEquals(THIN, remedy.pairs().get(0).range());
    assertEquals(15, remedy.edgeDistanceUm());
  }

  @Test
  void the_present_pair_is_not_offered_again() {
    Remedy remedy = remedy(35, caliperBore(), caliperPart(), 3);
    assertFalse(
        remedy.pairs().stream()
            .anyMatch(p -> p.bore().id().equals("caliper") && p.part().id().equals("caliper")));
  }

  @Test
  void a_gap_on_an_edge_is_decided_by_nothing_and_says_so() {
    Remedy remedy = remedy(49.5, caliperBore(), caliperPart(), 10);
    assertEquals(State.TOO_NEAR_AN_EDGE, remedy.state());
    assertTrue(remedy.pairs().isEmpty());
    assertTrue(remedy.mostReachable() < 0.95);
    assertEquals(0.5, remedy.edgeDistanceUm());
  }

  @Test
  void a_gap_outside_all_ranges_says_so() {
    Remedy remedy = remedy(140, caliperBore(), caliperPart(), 3);
    assertEquals(State.OUTSIDE_ALL_RANGES, remedy.state());
    assertEquals(-15, remedy.edgeDistanceUm());
  }

  @Test
  void scattered_readings_with_good_instruments_ask_for_the_least_number_that_does() {
    MeasuredDiameter bore = Samples.bore(Samples.DIAL_BORE, Samples.readings(42.05, 42.07, 42.09));
    MeasuredDiameter part = Samples.part(Samples.MICROMETER, Samples.readings(42.00, 42.0, 42.0));
    Remedy remedy = remedy(42, bore, part, 3);
    assertEquals(Outcome.REACHES, remedy.moreReadings().outcome());
    int least = remedy.moreReadings().perMember().orElseThrow();
    assertTrue(least > 3);
    assertTrue(reached(bore, part, least) >= 0.95);
    assertTrue(reached(bore, part, least - 1) < 0.95);
  }

  private static double reached(MeasuredDiameter bore, MeasuredDiameter part, int n) {
    Budget gap =
        Budget.ofGap(
            new Forecast(bore, Samples.LIMITS).with(bore.instrument(), n).orElseThrow(),
            new Forecast(part, Samples.LIMITS).with(part.instrument(), n).orElseThrow());
    double dof = gap.effectiveDegreesOfFreedom();
    return Conformity.probabilityWithin(42, gap.combinedUm(), dof, 10, 50);
  }

  @Test
  void the_forecast_for_what_was_done_is_what_was_found() {
    MeasuredDiameter bore = Samples.bore(Samples.DIAL_BORE, Samples.readings(42.05, 42.07, 42.09));
    Budget forecast = new Forecast(bore, Samples.LIMITS).with(Samples.DIAL_BORE, 3).orElseThrow();
    assertEquals(bore.budget().combinedUm(), forecast.combinedUm(), 1e-9);
    double dof = bore.budget().effectiveDegreesOfFreedom();
    assertEquals(dof, forecast.effectiveDegreesOfFreedom(), 1e-9);
    Budget more = new Forecast(bore, Samples.LIMITS).with(Samples.DIAL_BORE, 12).orElseThrow();
    Component repeat = more.component("repeatability").orElseThrow();
    assertEquals(20 / Math.sqrt(12), repeat.standardUm(), 1e-6);
    assertEquals(11, repeat.degreesOfFreedom());
  }

  @Test
  void scatter_that_the_old_instrument_explains_is_not_carried_to_a_new_one() {
    MeasuredDiameter little = Samples.bore(Samples.CALIPER, Samples.readings(42.00, 42.02, 42.04));
    Forecast explained = new Forecast(little, Samples.LIMITS);
    Budget fine = explained.with(Samples.DIAL_BORE, 3).orElseThrow();
    assertTrue(fine.component("scatter").isEmpty());
    MeasuredDiameter much = Samples.bore(Samples.CALIPER, Samples.readings(42.0, 42.2, 42.4));
    Budget carried = new Forecast(much, Samples.LIMITS).with(Samples.DIAL_BORE, 3).orElseThrow();
    assertTrue(carried.component("scatter").orElseThrow().standardUm() > 100);
  }

  @Test
  void swapped_members_are_refused() {
    MeasuredDiameter bore = caliperBore();
    MeasuredDiameter part = caliperPart();
    List<Interval> ranges = List.of(THIN);
    InvalidValue thrown =
        assertThrows(InvalidValue.class, () -> new Question(30, part, bore, ranges, 0.95));
    assertEquals("bore", thrown.field());
    assertThrows(InvalidValue.class, () -> new Question(30, bore, part, List.of(), 0.95));
  }
}
