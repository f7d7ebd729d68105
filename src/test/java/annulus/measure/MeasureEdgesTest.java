package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.measure.Decider.Question;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is refused, and hand-worked figures of form, jaws and forecast. */
class MeasureEdgesTest {
  private static String refusedField(Runnable asked) {
    return assertThrows(InvalidValue.class, asked::run).field();
  }

  @Test
  void degrees_of_freedom_and_ranges_are_checked_wherever_they_come_in() {
    for (double freedom : new double[] {0, -1, Double.NaN}) {
      assertEquals("degreesOfFreedom", refusedField(() -> new Belief(0, 1, freedom)));
      assertEquals(
          "degreesOfFreedom", refusedField(() -> Conformity.decide(0, 1, freedom, -1, 1, 0.95)));
    }
    assertEquals("range", refusedField(() -> Conformity.decide(0, 1, 5, 1, -1, 0.95)));
    assertEquals("range", refusedField(() -> new Belief(0, 1, 5).within(1, -1)));
    assertEquals("level", refusedField(() -> Conformity.decide(0, 1, 5, -1, 1, 0.49)));
    assertEquals("standardUm", refusedField(() -> Conformity.decide(0, -1, 5, -1, 1, 0.95)));
    assertEquals("valueUm", refusedField(() -> Conformity.decide(Double.NaN, 1, 5, -1, 1, 0.95)));
    assertEquals(0, new Belief(0, 1, 5).within(1, 1), 1e-12);
  }

  /** An exact value lies in a range that it ends. */
  @Test
  void a_value_without_doubt_belongs_to_a_range_up_to_its_ends() {
    Belief exact = new Belief(10, 0, Double.POSITIVE_INFINITY);
    assertEquals(1, exact.within(10, 20));
    assertEquals(1, exact.within(0, 10));
    assertEquals(0, exact.within(10.001, 20));
    assertEquals(Verdict.INSIDE, Conformity.decide(10, 0, 5, 10, 20, 0.95));
    assertEquals(Verdict.OUTSIDE, Conformity.decide(9.999, 0, 5, 10, 20, 0.95));
    assertEquals(Verdict.OUTSIDE, Conformity.decide(20.001, 0, 5, 10, 20, 0.95));
  }

  @Test
  void correlated_lists_have_one_length() {
    double[] two = {1, 1};
    double[][] square = {{1, 0}, {0, 1}};
    assertEquals(Math.sqrt(2), Correlated.standard(two, two, square), 1e-12);
    double[] three = {1, 1, 1};
    assertEquals("standards", refusedField(() -> Correlated.standard(two, three, square)));
    double[][] tall = {{1, 0}, {0, 1}, {0, 0}};
    assertEquals("correlations", refusedField(() -> Correlated.standard(two, two, tall)));
    double[][] wide = {{1, 0}, {0, 1, 0}};
    assertEquals("correlations[1]", refusedField(() -> Correlated.standard(two, two, wide)));
  }

  /** JCGM 100 G.4: a lone component has the degrees of freedom it came with. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 9, 16, 50})
  void a_lone_component_keeps_its_degrees_of_freedom(int freedom) {
    for (int i = 1; i <= 200; i++) {
      Budget lone = new Budget(List.of(Samples.normal("only", i / 7.0, freedom)));
      assertEquals(freedom, lone.wholeDegreesOfFreedom(), "u = " + i + "/7");
    }
  }

  private static final Interval THIN = new Interval(10, 50);

  private static Question question(double gapUm, double level) {
    MeasuredDiameter bore = Samples.bore(Samples.CALIPER, Samples.readings(42.06, 42.06, 42.06));
    MeasuredDiameter part = Samples.part(Samples.CALIPER, Samples.readings(42.00, 42.00, 42.00));
    return new Question(gapUm, bore, part, List.of(THIN, new Interval(50, 125)), level);
  }

  @Test
  void a_question_has_a_level_and_both_members() {
    MeasuredDiameter bore = question(30, 0.95).bore();
    assertEquals("level", refusedField(() -> question(30, 0.49)));
    assertEquals("part", refusedField(() -> new Question(30, bore, bore, List.of(THIN), 0.95)));
  }

  private static int place(Remedy.Pair pair) {
    return Samples.ALL.indexOf(pair.bore()) + Samples.ALL.indexOf(pair.part());
  }

  @Test
  void coarser_pairs_are_named_first_and_a_better_tool_for_one_member_is_among_them() {
    boolean keptTheBoreTool = false;
    for (int gap = 20; gap <= 100; gap += 2) {
      Question question = question(gap, 0.9);
      Remedy remedy = new Decider(Samples.ALL, Samples.LIMITS).remedyFor(question, 3);
      List<Integer> places = remedy.pairs().stream().map(MeasureEdgesTest::place).toList();
      List<Integer> sorted = new ArrayList<>(places);
      sorted.sort(null);
      assertEquals(sorted, places);
      for (Remedy.Pair pair : remedy.pairs()) {
        assertTrue(pair.probability() >= 0.9);
        boolean sameBore = pair.bore().id().equals("caliper");
        assertFalse(sameBore && pair.part().id().equals("caliper"));
        keptTheBoreTool |= sameBore;
      }
    }
    assertTrue(keptTheBoreTool);
  }

  /** 0, 45 and 90 degrees are no thirds: what is seen is all that is said, 40 µm. */
  @Test
  void three_angles_that_are_no_thirds_are_not_fitted() {
    for (double[] angles : new double[][] {{0, 45, 90}, {0, 60, 90}, {0, 30, 90}}) {
      MeasuredDiameter bore =
          Samples.bore(
              Samples.IDEAL_BORE,
              List.of(
                  Reading.atAngle(42.00, angles[0]),
                  Reading.atAngle(42.02, angles[1]),
                  Reading.atAngle(42.04, angles[2])));
      assertEquals(40, bore.ovalityUm().orElseThrow(), 1e-6);
      assertEquals(42.04, bore.largestMm(), 1e-9);
      assertEquals(42.00, bore.smallestMm(), 1e-9);
    }
  }

  /**
   * Flats of 1 mm in a bore of 42.02 mm: D - sqrt(D² - w²) = 11.9 µm; half of it, 5.95 µm, is added
   * to every diameter.
   */
  @Test
  void flat_jaws_add_to_the_largest_and_the_smallest_alike() {
    MeasuredDiameter bore = Samples.bore(Samples.CALIPER, Samples.readings(42.00, 42.04));
    double added = (42.02 - Math.sqrt(42.02 * 42.02 - 1)) / 2;
    assertEquals(0.00595, added, 5e-6);
    assertEquals(42.00 + added, bore.smallestMm(), 1e-9);
    assertEquals(42.04 + added, bore.largestMm(), 1e-9);
    assertEquals(42.02 + added, bore.meanMm(), 1e-9);
    assertTrue(bore.has(Note.JAWS_READ_SMALL));
    assertFalse(Samples.part(Samples.CALIPER, Samples.readings(42)).has(Note.JAWS_READ_SMALL));
  }

  @Test
  void readings_with_angles_are_placed_and_only_those_without_are_doubted_as_form() {
    List<Reading> placed = List.of(Reading.atAngle(42.00, 0), Reading.atAngle(42.04, 90));
    MeasuredDiameter known = Samples.bore(Samples.IDEAL_BORE, placed);
    assertFalse(known.has(Note.ANGLES_NOT_GIVEN));
    assertTrue(known.extremeBudget().component(ErrorSources.UNPLACED).isEmpty());
    MeasuredDiameter unknown = Samples.bore(Samples.IDEAL_BORE, Samples.readings(42.00, 42.04));
    assertTrue(unknown.has(Note.ANGLES_NOT_GIVEN));
    Component spread = unknown.extremeBudget().component(ErrorSources.UNPLACED).orElseThrow();
    assertEquals(40 / Math.sqrt(2), spread.standardUm(), 1e-6); // two at one place: worse than /√3
    MeasuredDiameter same = Samples.bore(Samples.IDEAL_BORE, Samples.readings(42.00, 42.00));
    assertTrue(same.extremeBudget().component(ErrorSources.UNPLACED).isEmpty());
  }

  @Test
  void a_depth_of_minus_nought_is_the_depth_of_nought() {
    Reading one = new Reading(42, OptionalDouble.of(0.0), OptionalDouble.of(0));
    Reading two = new Reading(42, OptionalDouble.of(-0.0), OptionalDouble.of(0));
    assertEquals(1, Places.of(List.of(one, two), 2).all().size());
    Reading across = new Reading(42.04, OptionalDouble.of(-0.0), OptionalDouble.of(90));
    MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, List.of(one, across));
    assertTrue(bore.taperUm().isEmpty());
    assertEquals(40, bore.ovalityUm().orElseThrow(), 1e-6);
  }

  /** Error limit 40 µm and jaws in a variance of little else: the instrument rules. */
  @Test
  void the_instrument_is_said_to_rule_where_its_limit_is_most_of_the_doubt() {
    assertTrue(Samples.bore(Samples.CALIPER, Samples.readings(42)).has(Note.INSTRUMENT_RULES));
    MeasuredDiameter scattered =
        Samples.bore(Samples.DIAL_BORE, Samples.readings(42.0, 42.1, 42.2));
    assertFalse(scattered.has(Note.INSTRUMENT_RULES));
  }

  /** Two places 40 µm apart: s = 28.28 µm, and 11.5e-6 for the scale at 30 °C as in the budget. */
  @Test
  void the_forecast_of_what_was_done_keeps_form_and_temperature() {
    List<Reading> placed = List.of(Reading.atAngle(42.00, 0), Reading.atAngle(42.04, 90));
    MeasuredDiameter bore =
        MeasuredDiameter.of(
            Side.BORE, placed, Samples.DIAL_BORE, 30, 2, Samples.ALUMINIUM, Samples.LIMITS);
    Budget forecast = new Forecast(bore, Samples.LIMITS).with(Samples.DIAL_BORE, 2).orElseThrow();
    assertEquals(bore.budget().combinedUm(), forecast.combinedUm(), 1e-9);
    assertEquals(20, forecast.component(ErrorSources.FORM).orElseThrow().standardUm(), 1e-6);
    for (String line : List.of(ErrorSources.TEMPERATURE, ErrorSources.SCALE_TEMPERATURE)) {
      assertEquals(bore.budget().component(line), forecast.component(line));
      assertTrue(forecast.component(line).isPresent());
    }
    Budget once =
        new Forecast(Samples.bore(Samples.DIAL_BORE, Samples.readings(42)), Samples.LIMITS)
            .with(Samples.DIAL_BORE, 2)
            .orElseThrow();
    assertTrue(once.component(ErrorSources.FORM).isEmpty());
  }

  /**
   * 42.0, 42.2, 42.4: s = 200 µm. Explained: one step 10/sqrt(3) and the limit 40/sqrt(3). Left:
   * sqrt(40000 - 33.33 - 533.33) = 198.578 µm, over sqrt(3) readings 114.649 µm.
   */
  @Test
  void scatter_beyond_what_the_old_instrument_explains_is_carried_over() {
    MeasuredDiameter much = Samples.bore(Samples.CALIPER, Samples.readings(42.0, 42.2, 42.4));
    Budget carried = new Forecast(much, Samples.LIMITS).with(Samples.DIAL_BORE, 3).orElseThrow();
    assertEquals(114.649, carried.component("scatter").orElseThrow().standardUm(), 0.001);
  }
}
