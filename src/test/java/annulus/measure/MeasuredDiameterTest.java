package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.measure.Component.Shape;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;

class MeasuredDiameterTest {

  @Test
  void one_reading_takes_the_default_repeatability_and_says_so() {
    MeasuredDiameter bore = Samples.bore(Samples.TELESCOPIC, Samples.readings(42));
    Component repeat = bore.budget().component("repeatability").orElseThrow();
    assertEquals(10 / Math.sqrt(3), repeat.standardUm(), 1e-12);
    assertEquals(Double.POSITIVE_INFINITY, repeat.degreesOfFreedom());
    assertTrue(bore.has(Note.ONE_READING));
    assertFalse(bore.has(Note.ANGLES_NOT_GIVEN));
    assertEquals(OptionalDouble.empty(), bore.ovalityUm());
    assertEquals(bore.budget(), bore.extremeBudget());
  }

  @Test
  void a_second_equal_reading_narrows_but_never_to_nothing() {
    Budget one = Samples.bore(Samples.TELESCOPIC, Samples.readings(42)).budget();
    Budget two = Samples.bore(Samples.TELESCOPIC, Samples.readings(42, 42)).budget();
    double first = one.component("repeatability").orElseThrow().standardUm();
    double second = two.component("repeatability").orElseThrow().standardUm();
    assertEquals(first / Math.sqrt(2), second, 1e-12);
    Budget finer = Samples.bore(Samples.TELESCOPIC, Samples.readings(42, 42.004)).budget();
    double third = finer.component("repeatability").orElseThrow().standardUm();
    assertEquals(second, third, 1e-12, "scatter below the step is not seen");
  }

  @Test
  void readings_without_angles_count_as_scatter_and_their_ends_as_extremes() {
    MeasuredDiameter bore = Samples.bore(Samples.TELESCOPIC, Samples.readings(42.00, 42.04, 42.02));
    Component repeat = bore.budget().component("repeatability").orElseThrow();
    assertEquals(20 / Math.sqrt(3), repeat.standardUm(), 1e-6);
    assertEquals(2, repeat.degreesOfFreedom());
    assertEquals(Shape.T, repeat.shape());
    assertEquals(42.04, bore.largestMm());
    assertEquals(42.00, bore.smallestMm());
    assertEquals(40, bore.spreadUm());
    Component extreme = bore.extremeBudget().component("unplaced").orElseThrow();
    double asForm = Math.sqrt(10 * 10 / 3.0 + 40 * 40 / 3.0); // the step and the whole spread
    assertEquals(asForm, extreme.standardUm(), 1e-6);
    assertEquals(2, extreme.degreesOfFreedom());
    assertTrue(
        bore.extremeBudget().component("repeatability").isEmpty(), "it is in the line above");
    assertTrue(bore.has(Note.ANGLES_NOT_GIVEN));
    assertFalse(bore.budget().component("form").isPresent());
  }

  /** Two readings 30 µm apart: 30/√2 = 21.2 µm as noise is more than 30/√3 = 17.3 µm as form. */
  @Test
  void two_readings_without_angles_are_as_unsure_as_two_at_one_place() {
    MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, Samples.readings(42.06, 42.09));
    Component extreme = bore.extremeBudget().component("unplaced").orElseThrow();
    assertEquals(30 / Math.sqrt(2), extreme.standardUm(), 1e-6);
    assertEquals(1, extreme.degreesOfFreedom());
    assertEquals(Shape.T, extreme.shape());
    List<Reading> placed = List.of(Reading.at(42.06, 4, 0), Reading.at(42.09, 4, 0));
    MeasuredDiameter atOne = Samples.bore(Samples.IDEAL_BORE, placed);
    assertEquals(
        atOne.extremeBudget().expandedUm(0.95), bore.extremeBudget().expandedUm(0.95), 1e-6);
  }

  @Test
  void readings_at_one_depth_without_angles_may_be_noise_but_not_those_of_two_depths() {
    OptionalDouble none = OptionalDouble.empty();
    OptionalDouble mouth = OptionalDouble.of(2);
    Reading low = new Reading(42.00, mouth, none);
    Reading high = new Reading(42.03, OptionalDouble.of(8), none);
    Budget two = Samples.bore(Samples.IDEAL_BORE, List.of(low, high)).extremeBudget();
    assertEquals(Double.POSITIVE_INFINITY, two.effectiveDegreesOfFreedom());
    Reading besideLow = new Reading(42.03, mouth, OptionalDouble.of(0));
    Budget one = Samples.bore(Samples.IDEAL_BORE, List.of(low, besideLow)).extremeBudget();
    assertEquals(1, one.component("unplaced").orElseThrow().degreesOfFreedom());
    Reading nowhere = Reading.of(42.03);
    Budget perhaps = Samples.bore(Samples.IDEAL_BORE, List.of(low, nowhere)).extremeBudget();
    assertEquals(1, perhaps.component("unplaced").orElseThrow().degreesOfFreedom());
  }

  @Test
  void repeats_at_one_place_give_the_noise_and_places_give_the_form() {
    List<Reading> readings =
        List.of(
            Reading.atAngle(42.000, 0),
            Reading.atAngle(42.004, 0),
            Reading.atAngle(42.060, 90),
            Reading.atAngle(42.064, 90));
    MeasuredDiameter bore = Samples.bore(Samples.DIAL_BORE, readings);
    Component repeat = bore.budget().component("repeatability").orElseThrow();
    double noise = Math.sqrt((2 * 4 + 2 * 4) / 2.0); // 2 µm from each mean, 2 degrees of freedom
    assertEquals(noise / 2, repeat.standardUm(), 1e-6);
    assertEquals(2, repeat.degreesOfFreedom());
    assertEquals(30, bore.budget().component("form").orElseThrow().standardUm(), 1e-6);
    Component extreme = bore.extremeBudget().component("repeatability").orElseThrow();
    assertEquals(noise, extreme.standardUm(), 1e-6);
    assertFalse(bore.extremeBudget().component("form").isPresent());
    assertEquals(60, bore.ovalityUm().orElseThrow());
    assertTrue(bore.has(Note.OVAL));
  }

  @Test
  void ten_readings_at_one_angle_do_not_outvote_one_at_another() {
    List<Reading> readings = new ArrayList<>(List.of(Reading.atAngle(42.02, 90)));
    for (int i = 0; i < 10; i++) {
      readings.add(Reading.atAngle(42.00, 0));
    }
    assertEquals(42.01, Samples.bore(Samples.DIAL_BORE, readings).meanMm(), 1e-9);
  }

  @Test
  void a_difference_of_one_coarse_step_is_not_called_form() {
    FormLimits strict = new FormLimits(5, 5, 30, 1, 0.5, 11.5, 20);
    List<Reading> readings = List.of(Reading.at(42.00, 2, 0), Reading.at(42.01, 2, 90));
    Estimate e = Samples.ALUMINIUM;
    MeasuredDiameter coarse =
        MeasuredDiameter.of(Side.BORE, readings, Samples.TELESCOPIC, 20, 0, e, strict);
    MeasuredDiameter fine =
        MeasuredDiameter.of(Side.BORE, readings, Samples.DIAL_BORE, 20, 0, e, strict);
    assertFalse(coarse.has(Note.OVAL));
    assertTrue(fine.has(Note.OVAL));
  }

  @Test
  void a_slip_of_digits_at_one_place_asks_for_new_readings() {
    List<Reading> slip = List.of(Reading.atAngle(41.97, 0), Reading.atAngle(41.79, 0));
    assertTrue(Samples.bore(Samples.CALIPER, slip).has(Note.READINGS_DISAGREE));
    List<Reading> within = List.of(Reading.atAngle(41.97, 0), Reading.atAngle(41.89, 0));
    assertFalse(Samples.bore(Samples.CALIPER, within).has(Note.READINGS_DISAGREE));
  }

  @Test
  void the_instrument_rules_when_its_error_limit_is_most_of_the_variance() {
    MeasuredDiameter coarse = Samples.bore(Samples.CALIPER, Samples.readings(42, 42, 42));
    assertTrue(coarse.has(Note.INSTRUMENT_RULES));
    MeasuredDiameter noisy = Samples.bore(Samples.DIAL_BORE, Samples.readings(42, 42.05, 42.1));
    assertFalse(noisy.has(Note.INSTRUMENT_RULES));
  }

  @Test
  void an_instrument_that_cannot_measure_this_is_refused_with_what_it_covers() {
    InvalidValue part =
        assertThrows(
            InvalidValue.class, () -> Samples.part(Samples.DIAL_BORE, Samples.readings(42)));
    assertEquals(
        "instrument: dial-bore does not measure a part of 42 mm; allowed: inside 18 to 150 mm",
        part.getMessage());
    InvalidValue small =
        assertThrows(
            InvalidValue.class, () -> Samples.bore(Samples.DIAL_BORE, Samples.readings(17.9)));
    assertTrue(small.getMessage().contains("a bore of 17.9 mm"));
  }

  @Test
  void broken_input_names_its_field() {
    assertField("readings", () -> Samples.bore(Samples.CALIPER, List.of()));
    assertField("mm", () -> Reading.of(0.49));
    assertField("mm", () -> Reading.of(Double.NaN));
    assertField("depthMm", () -> Reading.at(42, 1001, 0));
    assertField("angleDeg", () -> Reading.at(42, 1, 361));
    assertField("memberTemperatureC", () -> hot(81, 0));
    assertField("temperatureUncertaintyC", () -> hot(20, -1));
    assertField("standardUm", () -> Samples.normal("a", -1, 1));
    assertField("degreesOfFreedom", () -> Samples.normal("a", 1, 0));
    assertField("level", () -> new Budget(List.of(Samples.normal("a", 1, 1))).expandedUm(1));
    assertField("components", () -> new Budget(List.of()));
    assertField("range", () -> Conformity.probabilityWithin(0, 1, 1, 2, 1));
    assertField("flatMm", () -> Jaws.readSmallMm(2, 2.5));
  }

  private static MeasuredDiameter hot(double celsius, double doubt) {
    return MeasuredDiameter.of(
        Side.BORE,
        Samples.readings(42),
        Samples.CALIPER,
        celsius,
        doubt,
        Samples.STEEL,
        Samples.LIMITS);
  }

  private static void assertField(String field, Executable call) {
    assertEquals(field, assertThrows(InvalidValue.class, call).field());
  }

  @Test
  void zero_degrees_and_a_full_turn_are_one_place() {
    List<Reading> readings = List.of(Reading.atAngle(42, 0), Reading.atAngle(42, 360));
    assertEquals(1, Places.of(readings, 2).all().size());
    List<Reading> tenths = List.of(Reading.atAngle(42, 10.1), Reading.atAngle(42, 190.1));
    assertEquals(1, Places.of(tenths, 2).all().size());
    assertEquals(1, Places.of(List.of(Reading.atAngle(42, -0.0), readings.get(0)), 2).all().size());
  }
}
