package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.JointOrder;
import annulus.advice.OrderText;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Slips of entry in an order file: each is caught at its value, and the reader says what to do. */
class OrderReaderTest {
  private static OrderText order() {
    return new OrderText();
  }

  private static List<PlacedProblem> problems(String json) {
    return assertThrows(InputRefused.class, () -> OrderText.read(json), json).problems();
  }

  private static PlacedProblem only(String json) {
    List<PlacedProblem> all = problems(json);
    assertEquals(1, all.size(), all.toString());
    return all.get(0);
  }

  /** One problem, at the first place of {@code value} after the field's name. */
  private static void refusedAt(String json, String field, String value, String said, String how) {
    PlacedProblem p = only(json);
    assertEquals("order.json", p.file());
    assertEquals(field, p.field(), p.toString());
    String name = "\"" + field.substring(field.lastIndexOf('.') + 1) + "\"";
    int start = field.contains(".") ? json.indexOf("\"" + field.split("\\.")[0] + "\"") : 0;
    int at = json.indexOf(value, json.indexOf(name, start) + name.length());
    assertTrue(at > 0, value);
    assertEquals(placeOf(json, at), p.line() + ":" + p.column(), p.toString());
    assertTrue(p.problem().contains(said), p.toString());
    assertTrue(p.allowed().contains(how), p.toString());
  }

  private static String placeOf(String text, int at) {
    String before = text.substring(0, at);
    int line = 1 + (int) before.chars().filter(c -> c == '\n').count();
    return line + ":" + (at - before.lastIndexOf('\n'));
  }

  // diameters

  @Test
  void bore_and_part_swapped_are_asked_about() {
    String json =
        order().bore(30).set("part.readingsMm", List.of(30.4)).json(); // 200 µm radial, tight
    refusedAt(json, "bore", "{", "bore and part swapped?", "at most 100 µm radial");
    assertTrue(only(json).problem().contains("400 µm across the diameter"));
  }

  @Test
  void an_interference_at_the_limit_of_swapping_is_no_slip() {
    assertEquals(
        30.2,
        order()
            .bore(30)
            .set("part.readingsMm", List.of(30.2))
            .order()
            .part()
            .readings()
            .get(0)
            .mm());
  }

  @Test
  void inch_beside_mm_is_named_by_its_factor() {
    String json = order().bore(1.1811).set("bore.instrument", "caliper-150").json();
    refusedAt(json, "bore", "{", "differ by the factor 25.4", "\"1.1811 in\"");
  }

  @Test
  void a_slipped_decimal_point_is_named_by_its_factor() {
    String json =
        order().set("part.readingsMm", List.of(3.0)).set("part.instrument", "caliper-150").json();
    refusedAt(json, "bore", "{", "differ by the factor 10", "one decimal place for both");
  }

  @ParameterizedTest
  @CsvSource({"32.01, 1005", "32.5, 1250"})
  void a_gap_beyond_one_millimetre_a_side_is_a_slip(double bore, String um) {
    String json = order().bore(bore).json();
    refusedAt(json, "bore", "{", "radial gap of " + um + " µm", "±1000 µm radial (±2 mm across");
  }

  @Test
  void a_gap_of_just_one_millimetre_a_side_is_read() {
    assertEquals(32, order().bore(32).order().bore().readings().get(0).mm());
  }

  @Test
  void text_with_a_decimal_comma_is_shown_with_a_point() {
    String json = order().set("bore.readingsMm", List.of("30,03")).json();
    refusedAt(json, "bore.readingsMm", "\"30,03\"", "has a decimal comma", "30.03");
  }

  @Test
  void a_decimal_comma_between_bare_numbers_makes_two_readings_that_do_not_fit() {
    String json = order().json().replace("30.03", "30,93");
    refusedAt(json, "bore.readingsMm", "[", "30 and 93 mm can't be the same member", "comma");
  }

  @Test
  void a_lost_decimal_point_is_shown_where_it_may_have_been() {
    refusedAt(
        order().bore(4197).json(), "bore.readingsMm", "4197", "4197 mm is out of range", "41.97");
  }

  @Test
  void thousandths_of_an_inch_are_shown_in_mm() {
    String json = order().bore(1652).json();
    refusedAt(json, "bore.readingsMm", "1652", "out of range", "inch? 41.961 mm");
  }

  @ParameterizedTest
  @CsvSource({"'1.18228 in'", "'1.18228in'", "'1.18228\"'", "'1182.28 thou'", "'3.003 cm'"})
  void a_length_with_its_unit_is_taken_in_that_unit(String written) {
    JointOrder read = order().set("bore.readingsMm", List.of(written)).order();
    assertEquals(30.03, read.bore().readings().get(0).mm(), 1e-4);
  }

  @ParameterizedTest
  @ValueSource(strings = {"30 m", "30 µm", "30.03 30.04", "3e1", "0x1E", "NaN", "Infinity", "30."})
  void a_length_in_no_known_writing_is_refused(String written) {
    String json = order().set("bore.readingsMm", List.of(written)).json();
    refusedAt(json, "bore.readingsMm", "\"" + written, "is no number in mm", "1.652 in");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "-30.03", "0.49", "500.1", "1e-400", "-0"})
  void a_diameter_outside_the_range_is_refused(String written) {
    String json = order().json().replace("30.03", written);
    refusedAt(json, "bore.readingsMm", written, "out of range", "0.5 to 500 mm");
  }

  @Test
  void a_number_too_large_for_any_computer_is_refused() {
    String json = order().json().replace("30.03", "1e999");
    refusedAt(json, "bore.readingsMm", "1e999", "1e999 is too large", "a length such as");
  }

  @Test
  void a_very_long_row_of_digits_is_refused_without_an_accident() {
    String json = order().set("bore.readingsMm", List.of("9".repeat(400))).json();
    assertEquals("bore.readingsMm", only(json).field());
  }

  @Test
  void no_readings_are_no_measurement() {
    String json = order().set("bore.readingsMm", List.of()).json();
    refusedAt(json, "bore.readingsMm", "[", "is an empty list", "at least one");
    PlacedProblem missing = only(order().set("bore.readingsMm", null).json());
    assertEquals("bore.readingsMm is missing", missing.field() + " " + missing.problem());
  }

  @Test
  void a_bare_number_is_not_a_list_of_readings() {
    String json = order().set("bore.readingsMm", 30.03).json();
    refusedAt(json, "bore.readingsMm", "30.03", "is the number 30.03", "a list");
  }

  @Test
  void an_instrument_that_cannot_measure_the_size_is_refused_with_those_that_can() {
    String json = order().set("bore.instrument", "outside-micrometer").json();
    String field = "bore.instrument";
    refusedAt(json, field, "\"outside", "can't measure inside diameters of 30.03", "bore-gauge");
    assertFalse(only(json).allowed().contains("outside-micrometer"));
    String large = order().bore(151).set("part.readingsMm", List.of(150.95)).json();
    assertTrue(problems(large).get(0).problem().contains("151.00 mm"));
  }

  @Test
  void a_wall_needs_a_thickness() {
    refusedAt(
        order().set("bore.outsideDiameterMm", 30).json(),
        "bore.outsideDiameterMm",
        "30",
        "leaves no wall",
        "more than 30.03 mm");
    refusedAt(
        order().set("part.insideDiameterMm", 30.0).json(),
        "part.insideDiameterMm",
        "30.0",
        "leaves no wall",
        "less than 30 mm");
  }

  // the gap itself

  private static OrderText stated() {
    return order().set("bore.readingsMm", null).set("part.readingsMm", null).set("diameterMm", 30);
  }

  @ParameterizedTest
  @ValueSource(strings = {"gap", "clearance", "gapUm", "clearanceUm", "gapMm"})
  void a_gap_that_does_not_say_radial_or_diametral_is_refused(String bare) {
    String json = order().set(bare, 30).json();
    refusedAt(json, bare, "30", "per side or across", "radialGapUm (per side) or diametral");
    assertFalse(
        problems(order().set(bare, null).json().replaceFirst("\\{", "{ \"" + bare + "\": null,"))
            .isEmpty());
  }

  @Test
  void a_radial_and_a_diametral_gap_of_the_same_joint_read_the_same() {
    JointOrder radial = stated().set("radialGapUm", 30).set("radialGapPlusMinusUm", 5).order();
    JointOrder diametral =
        stated().set("diametralClearanceUm", 60).set("diametralClearancePlusMinusUm", 10).order();
    assertEquals(radial.givenGap(), diametral.givenGap());
  }

  @Test
  void radial_and_diametral_at_once_are_refused() {
    String json =
        stated()
            .set("radialGapUm", 30)
            .set("radialGapPlusMinusUm", 5)
            .set("diametralClearanceUm", 60)
            .json();
    List<PlacedProblem> all = problems(json);
    assertTrue(
        all.stream().anyMatch(p -> p.problem().equals("stands beside radialGapUm")),
        all.toString());
  }

  @Test
  void a_doubt_across_the_diameter_is_not_taken_for_one_per_side() {
    String json = stated().set("radialGapUm", 30).set("diametralClearancePlusMinusUm", 5).json();
    List<String> fields = problems(json).stream().map(PlacedProblem::field).toList();
    assertTrue(fields.contains("radialGapPlusMinusUm"), fields.toString());
    assertTrue(fields.contains("diametralClearancePlusMinusUm"), fields.toString());
  }

  @Test
  void readings_beside_a_given_gap_are_refused() {
    String json =
        order().set("diameterMm", 30).set("radialGapUm", 30).set("radialGapPlusMinusUm", 5).json();
    List<PlacedProblem> all = problems(json);
    assertEquals(
        List.of("bore.readingsMm", "part.readingsMm"),
        all.stream().map(PlacedProblem::field).toList());
    all.forEach(p -> assertEquals("stands beside a given gap", p.problem()));
  }

  @ParameterizedTest
  @CsvSource({"radialGapUm, 1001, 1000", "diametralClearanceUm, -2001, 2000"})
  void a_given_gap_beyond_one_millimetre_a_side_is_a_slip(String field, double um, String limit) {
    String doubt = field.replace("Um", "PlusMinusUm");
    refusedAt(
        stated().set(field, um).set(doubt, 10).json(),
        field,
        Double.toString(um),
        "out of range",
        "-" + limit + " to " + limit + " µm");
  }

  @ParameterizedTest
  @ValueSource(strings = {"radialGapPlusMinusUm", "diametralClearancePlusMinusUm", "diameterMm"})
  void what_belongs_to_a_given_gap_does_not_stand_alone(String field) {
    String json = order().set(field, 30).json();
    refusedAt(json, field, "30", "stands without a given gap", "radialGapUm or diametral");
  }

  @Test
  void a_given_gap_needs_its_doubt_and_a_diameter() {
    List<String> fields =
        problems(stated().set("diameterMm", null).set("radialGapUm", 30).json()).stream()
            .map(PlacedProblem::field)
            .toList();
    assertEquals(List.of("radialGapPlusMinusUm", "diameterMm"), fields);
  }

  // temperatures

  @Test
  void a_room_of_sixty_eight_degrees_is_taken_for_fahrenheit_only_when_written_so() {
    String json = order().set("temperatureC", 68).json();
    refusedAt(json, "temperatureC", "68", "68 °C is out of range", "write \"68 F\" (20.0 °C)");
    JointOrder read = order().set("temperatureC", "68 °F").order();
    assertEquals(20, read.cure().history().celsiusAt(0), 1e-9);
  }

  @ParameterizedTest
  @CsvSource({
    "temperatureC, -21",
    "temperatureC, 51",
    "bore.temperatureC, 61",
    "part.arrivesAtC, -41",
    "serviceLowC, -101",
    "serviceHighC, 351",
    "temperaturePlusMinusC, -1",
    "bore.temperaturePlusMinusC, 21",
    "engagementMm, 0",
    "engagementMm, -11",
    "confidence, 0.79",
    "confidence, 1",
    "confidence, 95",
    "bore.outsideDiameterMm, -5",
    "load.axialN, -1",
    "load.torqueNm, 1000001",
    "load.safetyFactor, 0.5",
    "load.safetyFactor, 21"
  })
  void a_figure_out_of_its_range_is_refused_at_its_place(String field, double value) {
    OrderText order = order();
    if (field.equals("load.safetyFactor")) {
      order.set("load.axialN", 100);
    }
    PlacedProblem p =
        problems(order.set(field, value).json()).stream()
            .filter(q -> q.field().equals(field))
            .findFirst()
            .orElseThrow();
    String json = order.json();
    int line = p.line() - 1;
    assertTrue(json.lines().toList().get(line).startsWith(Double.toString(value), p.column() - 1));
    assertTrue(p.allowed().contains(" to "), p.toString());
  }

  @Test
  void a_service_range_the_wrong_way_round_is_refused() {
    refusedAt(
        order().set("serviceLowC", 50).set("serviceHighC", 10).json(),
        "serviceLowC",
        "50",
        "serviceLowC 50 °C is above serviceHighC 10 °C",
        "at or below");
    refusedAt(
        order().set("serviceLowC", 90).set("serviceHighC", null).json(),
        "serviceLowC",
        "90",
        "above serviceHighC 60 °C (assumed)",
        "at or below");
  }

  @Test
  void a_wrong_service_temperature_is_not_blamed_on_the_other() {
    assertEquals("serviceLowC", only(order().set("serviceLowC", 999).json()).field());
  }

  // names

  @ParameterizedTest
  @CsvSource({
    "engagementMM, engagementMm", "temprature, temperatureC", "bore.raedingsMm, readingsMm",
    "part.insideDiameter, insideDiameterMm", "comesApart, comesApartLater", "load.axial, axialN"
  })
  void an_unknown_field_is_told_the_nearest_one(String wrong, String right) {
    String json = order().set("load.torqueNm", 1).set(wrong, 1).json();
    refusedAt(json, wrong, "1", "is not a field here", "did you mean " + right + "?");
  }

  @Test
  void an_unknown_field_is_never_sent_to_a_refused_name() {
    assertFalse(only(order().set("gaps", 1).json()).allowed().contains("gap?"));
  }

  @ParameterizedTest
  @CsvSource({
    "bore.material, aluminum-6061, aluminium-6061", "part.finish, anodized, anodised",
    "bore.instrument, calliper-150, caliper-150", "consequence, injure, injury",
    "bore.state, cleen, clean", "primer, primer-solvant, primer-solvent",
    "class, thin-lastin, thin-lasting", "load.repeats, reversed, reversing",
    "load.duty, bottom-bracket-cap, bottom-bracket-cup"
  })
  void an_unknown_name_is_told_the_nearest_one(String field, String wrong, String right) {
    OrderText order = order();
    if (field.equals("load.repeats")) {
      order.set("load.axialN", 100);
    }
    String json = order.set(field, wrong).json();
    refusedAt(json, field, "\"" + wrong, "is unknown", "did you mean " + right + "?");
  }

  @Test
  void a_name_that_repeats_is_refused_at_its_second_place() {
    String json = "{\"format\": 1,\n \"job\": \"A\",\n  \"job\": \"B\"}";
    PlacedProblem p = only(json);
    assertEquals("3:3 job stands twice", p.line() + ":" + p.column() + " job " + p.problem());
  }

  // times

  /** Europe/Dublin 2027: forward on 28 March at 01:00 UTC, back on 31 October at 01:00 UTC. */
  @Test
  void a_time_the_spring_night_skips_does_not_exist() {
    String json = order().set("zone", "Europe/Dublin").set("start", "2027-03-28T01:30").json();
    refusedAt(json, "start", "\"2027", "2027-03-28T01:30 does not exist", "another time");
  }

  @Test
  void a_time_the_autumn_night_has_twice_needs_its_offset() {
    String local = "2027-10-31T01:30";
    String json = order().set("zone", "Europe/Dublin").set("start", local).json();
    refusedAt(json, "start", "\"2027", "happens twice", local + "+01:00 or " + local + "Z");
    JointOrder first = order().set("zone", "Europe/Dublin").set("start", local + "+01:00").order();
    assertEquals(Instant.parse("2027-10-31T00:30:00Z"), first.start());
    JointOrder second = order().set("zone", "Europe/Dublin").set("start", local + "Z").order();
    assertEquals(Instant.parse("2027-10-31T01:30:00Z"), second.start());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2028-04-16T10:00",
        "2026-02-03T08:00",
        "+999999999-12-31T23:59",
        "-999999999-01-01T00:00",
        "+999999999-12-31T23:59:59-18:00"
      })
  void a_start_too_far_away_is_a_slip(String start) {
    String json = order().set("start", start).json();
    refusedAt(json, "start", "\"" + start, "more than 400 days from now", "within 400 days");
  }

  @Test
  void a_start_at_the_last_day_of_the_horizon_is_read() {
    assertEquals(
        Instant.parse("2028-04-14T09:00:00Z"),
        order().set("start", "2028-04-14T09:00Z").order().start());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "tomorrow",
        "2027-02-29T10:00",
        "2027-03-11",
        "15:30",
        "11.03.2027 15:30",
        "2027-03-11T25:00",
        "2027-03-11T10:00+25:00",
        "2027-03-11T10:00+0100"
      })
  void what_is_no_date_and_time_is_refused(String start) {
    String json = order().set("start", start).json();
    refusedAt(json, "start", "\"" + start, "is no date and time", "2026-11-25T15:30");
  }

  @Test
  void a_move_before_the_start_is_a_slip() {
    String json = order().set("movedAt", "2027-03-11T09:59Z").json();
    refusedAt(json, "movedAt", "\"2027", "2027-03-11T09:59 is before the start", "after 2027");
  }

  @Test
  void a_move_in_another_age_is_a_slip() {
    String json = order().set("movedAt", "+999999999-12-31T23:59").json();
    refusedAt(json, "movedAt", "\"+999", "more than 400 days", "within 400 days");
  }

  @Test
  void a_zone_nobody_knows_is_refused() {
    String json = order().set("zone", "Europe/Dubln").json();
    refusedAt(json, "zone", "\"Europe", "is no time zone", "Europe/Dublin");
  }

  // primer and load

  @Test
  void a_primer_put_on_more_than_a_year_ago_is_a_slip() {
    String json =
        order()
            .set("primer", null)
            .set("primer.id", "primer-solvent")
            .set("primer.minutesOnPart", 600_000)
            .json();
    refusedAt(json, "primer.minutesOnPart", "600000", "out of range", "0 to 525600 min");
  }

  @Test
  void a_primer_past_its_life_on_the_part_is_told_so_in_the_answer() {
    OrderText order = order().set("primer", null).set("primer.id", "primer-solvent");
    String fresh =
        order.set("primer.minutesOnPart", 60).advice().cautions().toString()
            + order.advice().table();
    String old =
        order.set("primer.minutesOnPart", 60 * 24 * 60).advice().cautions().toString()
            + order.advice().table();
    assertFalse(fresh.contains("primer-expired"));
    assertFalse(fresh.equals(old));
  }

  @Test
  void a_load_of_zero_is_no_load() {
    String allowed = "above 0, or a duty case";
    refusedAt(order().set("load.axialN", 0).json(), "load.axialN", "0", "is zero", allowed);
    refusedAt(order().set("load.torqueNm", 0).json(), "load.torqueNm", "0", "is zero", allowed);
    String dust = order().set("load.axialN", "1e-300").json().replace("\"1e-300\"", "1e-300");
    refusedAt(dust, "load.axialN", "1e-300", "is next to nothing", allowed);
    PlacedProblem none = only(order().set("load.repeats", "static").json());
    assertEquals("load has no figure", none.field() + " " + none.problem());
  }

  @Test
  void a_duty_case_beside_figures_is_refused() {
    String json = order().set("load.duty", "bottom-bracket-cup").set("load.axialN", 100).json();
    refusedAt(json, "load.duty", "\"bottom", "stands beside figures", "a duty case or figures");
  }

  // the document

  @ParameterizedTest
  @ValueSource(strings = {"job", "title", "zone", "start", "class", "consequence", "movedAt"})
  void a_number_where_text_belongs_is_refused(String field) {
    String json = order().set(field, 301).json();
    refusedAt(json, field, "301", "is the number 301", "some text in quotes");
  }

  @ParameterizedTest
  @ValueSource(strings = {"comesApartLater", "sealNear", "electronicsNear", "warranty"})
  void yes_in_quotes_is_not_true(String field) {
    String json = order().set(field, "yes").json();
    refusedAt(json, field, "\"yes\"", "is the text \"yes\"", "true or false");
  }

  @ParameterizedTest
  @ValueSource(strings = {"bore", "part", "load", "primer"})
  void a_list_where_an_object_belongs_is_refused(String field) {
    String json = order().set(field, List.of()).json();
    refusedAt(json, field, "[", "is a list", "an object");
  }

  @ParameterizedTest
  @ValueSource(strings = {"format", "bore", "part", "engagementMm"})
  void what_every_order_needs_is_missed(String field) {
    PlacedProblem p = only(order().set(field, null).json());
    assertEquals(field + " is missing", p.field() + " " + p.problem());
    assertEquals(1, p.line());
  }

  @Test
  void a_null_is_a_field_left_out() {
    String json = order().json().replaceFirst("\"job\"[^,]*,", "\"job\": null, \"load\": null,");
    assertEquals("", OrderText.read(json).job());
    String without = order().json().replaceFirst("\"engagementMm\" : 20", "\"engagementMm\": null");
    assertEquals("engagementMm", only(without).field());
  }

  @Test
  void a_job_number_in_quotes_stays_as_it_was_typed() {
    assertEquals("0012", order().set("job", "0012").order().job());
    assertEquals("1e3", order().set("job", "1e3").order().job());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"2|2 is out of range", "1.5|1.5 is out of range", "\"1\"|is the text"})
  void another_format_is_refused(String format, String said) {
    String json = order().json().replace("\"format\" : 1", "\"format\" : " + format);
    refusedAt(json, "format", format, said, "1");
  }

  @Test
  void nesting_without_end_is_refused() {
    PlacedProblem p = only("{\"bore\": " + "[".repeat(3000));
    assertTrue(p.problem().contains("depth"), p.toString());
    assertEquals(1, p.line());
    assertFalse(p.toString().contains("StreamReadConstraints"));
  }

  @Test
  void text_after_the_end_is_refused_at_its_place() {
    PlacedProblem p = only("{}\n  {}");
    assertEquals("2:3", p.line() + ":" + p.column());
    assertEquals("text after the end of the object", p.problem());
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "  ", "{", "[", "nul", "{\"a\"}", "{'a': 1}", "{\"a\": 01}", "// x"})
  void what_is_no_json_is_refused_with_a_place(String text) {
    PlacedProblem p = only(text);
    assertTrue(p.line() == 1 && p.column() >= 1, p.toString());
    assertFalse(p.problem().isBlank());
  }

  @ParameterizedTest
  @ValueSource(strings = {"null", "1", "\"order\"", "[]", "true"})
  void what_is_json_but_no_object_is_refused(String text) {
    assertEquals("an object { … }", only(text).allowed());
  }

  private static JointOrder bytes(byte[] bytes) throws IOException {
    return new OrderReader(OrderText.KNOWLEDGE, OrderText.NOW, ZoneOffset.UTC)
        .json("order.json", DataFiles.utf8(new ByteArrayInputStream(bytes)));
  }

  @Test
  void a_byte_order_mark_is_no_fault() throws IOException {
    String json = order().set("job", "Ünter-7").json();
    assertEquals("Ünter-7", bytes(("\uFEFF" + json).getBytes(StandardCharsets.UTF_8)).job());
  }

  @Test
  void a_file_that_is_not_utf_8_is_refused() {
    byte[] latin = order().set("job", "Ünter-7").json().getBytes(StandardCharsets.ISO_8859_1);
    InputRefused e = assertThrows(InputRefused.class, () -> bytes(latin));
    assertEquals("is not UTF-8 text", e.problems().get(0).problem());
    byte[] wide = order().json().getBytes(StandardCharsets.UTF_16LE);
    assertThrows(InputRefused.class, () -> bytes(wide));
  }

  @Test
  void one_run_tells_every_slip_in_file_order() throws IOException {
    String json =
        order().set("temperatureC", 68).set("bore.material", "steal").set("wrong", 1).json();
    List<PlacedProblem> all = problems(json);
    assertEquals(
        List.of("bore.material", "temperatureC", "wrong"),
        all.stream().map(PlacedProblem::field).toList());
    String text =
        assertThrows(
                InputRefused.class,
                () ->
                    new OrderReader(OrderText.KNOWLEDGE, OrderText.NOW, ZoneOffset.UTC)
                        .json("jobs/a.json", new StringReader(json)))
            .getMessage();
    assertTrue(text.lines().allMatch(l -> l.matches("jobs/a.json:[0-9]+:[0-9]+: .+: .+; .+")));
  }

  @Test
  void what_is_not_said_is_assumed_in_sight() {
    JointOrder read =
        order()
            .set("serviceHighC", null)
            .set("start", null)
            .set("zone", null)
            .set("bore.instrument", null)
            .set("primer", null)
            .set("primer.id", "primer-dry")
            .order();
    List<String> fields = read.assumptions().stream().map(JointOrder.Assumption::field).toList();
    assertTrue(
        fields.containsAll(
            List.of(
                "serviceHighC",
                "start",
                "zone",
                "bore.instrument",
                "bore.temperatureC",
                "primer.on",
                "primer.minutesOnPart",
                "consequence")),
        fields.toString());
  }

  @ParameterizedTest
  @CsvSource({
    "headset-cup, nuisance, true",
    "headset-cup, stranding, true",
    "headset-cup, injury, false",
    "headset-cup, , false",
    "pulley-hub, nuisance, false"
  })
  void a_light_consequence_is_doubted_where_the_usual_load_could_hurt(
      String duty, String consequence, boolean doubted) {
    boolean told =
        new OrderText()
            .set("load.duty", duty).set("consequence", consequence).order().assumptions().stream()
                .anyMatch(a -> a.field().equals("consequence") && a.why().contains("enter injury"));
    assertEquals(doubted, told);
  }
}
