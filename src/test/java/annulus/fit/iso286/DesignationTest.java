package annulus.fit.iso286;

import static annulus.fit.FitData.TABLES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.InvalidValue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DesignationTest {
  @ParameterizedTest
  @ValueSource(
      strings = {
        "35 H7",
        "35H7",
        "\u00f835 H7",
        "\u00d8 35 H7",
        "\u230035H7",
        "  35  H7 ",
        "35.0 H7"
      })
  void one_class_is_read_in_every_usual_spelling(String text) {
    Designation read = Designation.parse(text);
    assertEquals(new Designation.OfClass(35, ToleranceClass.parse("H7")), read);
    assertEquals("35 H7", read.toString());
  }

  @Test
  void letters_with_an_i_like_grade_survive_a_turkish_locale() {
    assertEquals("40 js6", Designation.parse("40 js6").toString());
    assertEquals("IT01", ToleranceClass.parse("H01").grade().name());
    assertThrows(InvalidValue.class, () -> Designation.parse("40 i6"));
    assertThrows(InvalidValue.class, () -> Designation.parse("40 \u01306"));
  }

  @Test
  void a_fit_is_read_hole_first() {
    Designation read = Designation.parse("\u00d8 40 H7/s6");
    assertEquals("40 H7/s6", read.toString());
    InvalidValue wrong = assertThrows(InvalidValue.class, () -> Designation.parse("40 s6/H7"));
    assertTrue(wrong.allowed().contains("hole first"));
  }

  @ParameterizedTest
  @CsvSource({
    "42 (+0.010/-0.005),-5,10",
    "42 (-0.005/+0.010),-5,10",
    "41.96 ( +0.030 / 0 ),0,30",
    "42 (\u22120.011/\u22120.033),-33,-11"
  })
  void written_deviations_are_read_in_either_order(String text, double lower, double upper) {
    Designation.Written read = (Designation.Written) Designation.parse(text);
    assertEquals(lower, read.lowerUm());
    assertEquals(upper, read.upperUm());
    assertEquals(upper - lower, read.limits().toleranceUm());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "35",
        "H7",
        "35 H",
        "35 Hk7",
        "35 H19",
        "35 I7",
        "35 o6",
        "0 H7",
        "501 H7",
        "35 H7/",
        "35 H7/k",
        "35,5 H7",
        "-35 H7",
        "42 (+2/-0.1)",
        "35 H7 k6"
      })
  void what_is_no_designation_is_refused_with_what_is_allowed(String text) {
    InvalidValue refused = assertThrows(InvalidValue.class, () -> Designation.parse(text));
    assertTrue(refused.getMessage().contains("allowed: "), refused.getMessage());
  }

  @Test
  void a_decimal_comma_is_named_as_the_trouble() {
    InvalidValue refused = assertThrows(InvalidValue.class, () -> Designation.parse("41,96 H7"));
    assertTrue(refused.problem().contains("decimal point"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "40 K9", "12 t6", "20 cd6", "0.8 a9", "0.8 N9", "0.8 IT", "40 P2", "40 j9", "40 J5"
      })
  void what_the_tables_lack_is_said_to_be_not_tabulated(String text) {
    String[] parts = text.split(" ");
    InvalidValue refused =
        assertThrows(
            InvalidValue.class,
            () -> TABLES.limits(Double.parseDouble(parts[0]), ToleranceClass.parse(parts[1])));
    boolean noClass = parts[1].equals("IT");
    assertEquals(!noClass, refused.problem().contains("not tabulated here"), refused.getMessage());
  }

  @Test
  void coarse_grades_are_not_given_for_a_size_up_to_one_millimetre() {
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> TABLES.toleranceUm(ToleranceGrade.IT14, 1));
    assertTrue(refused.allowed().endsWith("IT12 IT13"), refused.allowed());
    assertEquals(250, TABLES.toleranceUm(ToleranceGrade.IT14, 1.1));
  }

  @Test
  void a_fit_of_two_nominal_sizes_counts_their_difference() {
    Fit fit = new Fit(new LimitsOfSize(42, 0, 10), new LimitsOfSize(41.96, -10, 0));
    assertEquals(60, fit.greatestDiametralClearanceUm());
    assertEquals(40, fit.leastDiametralClearanceUm());
    assertEquals(0, fit.greatestDiametralInterferenceUm());
  }
}
