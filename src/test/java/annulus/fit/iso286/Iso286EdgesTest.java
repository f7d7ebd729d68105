package annulus.fit.iso286;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.fit.FitData;
import annulus.quantity.InvalidValue;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Tables of ISO 286-1 that contradict themselves, and limits of size at their edges. */
class Iso286EdgesTest {
  private static final Provenance HIGH = new Provenance("table", Confidence.HIGH);
  private static final Provenance LOW = new Provenance("memory", Confidence.LOW);

  private static GradeRow grade(ToleranceGrade grade, double over, double upTo) {
    return new GradeRow(grade, new SizeBand(over, upTo), 25, HIGH);
  }

  private static DeviationRow deviation(
      Member member, String letters, ToleranceGrade from, ToleranceGrade to, SizeBand band) {
    return new DeviationRow(member, letters, from, to, band, 2, LOW);
  }

  private static final GradeRow IT7 = grade(ToleranceGrade.IT7, 30, 50);
  private static final SizeBand BAND = new SizeBand(30, 50);
  private static final DeviationRow K4_7 =
      deviation(Member.SHAFT, "k", ToleranceGrade.IT4, ToleranceGrade.IT7, BAND);

  @Test
  void a_grade_is_given_once_for_each_size() {
    List<GradeRow> apart =
        List.of(
            IT7,
            grade(ToleranceGrade.IT7, 50, 80),
            grade(ToleranceGrade.IT7, 18, 30),
            grade(ToleranceGrade.IT6, 30, 50));
    assertEquals(apart, new Iso286Tables(apart, List.of()).grades());
    for (GradeRow again :
        List.of(
            grade(ToleranceGrade.IT7, 30, 50),
            grade(ToleranceGrade.IT7, 49, 80),
            grade(ToleranceGrade.IT7, 18, 31))) {
      InvalidValue error =
          assertThrows(InvalidValue.class, () -> new Iso286Tables(List.of(IT7, again), List.of()));
      assertTrue(error.problem().startsWith("IT7 is given twice within "));
    }
  }

  @Test
  void a_deviation_is_given_once_for_each_size_and_grade() {
    List<DeviationRow> apart =
        List.of(
            K4_7,
            deviation(Member.SHAFT, "k", ToleranceGrade.IT8, ToleranceGrade.IT18, BAND),
            deviation(Member.SHAFT, "k", ToleranceGrade.IT01, ToleranceGrade.IT3, BAND),
            deviation(Member.SHAFT, "m", ToleranceGrade.IT4, ToleranceGrade.IT7, BAND),
            deviation(Member.HOLE, "K", ToleranceGrade.IT4, ToleranceGrade.IT7, BAND),
            deviation(
                Member.SHAFT, "k", ToleranceGrade.IT4, ToleranceGrade.IT7, new SizeBand(50, 80)));
    assertEquals(apart, new Iso286Tables(List.of(), apart).deviations());
    for (DeviationRow again :
        List.of(
            deviation(Member.SHAFT, "k", ToleranceGrade.IT7, ToleranceGrade.IT9, BAND),
            deviation(Member.SHAFT, "k", ToleranceGrade.IT1, ToleranceGrade.IT4, BAND),
            deviation(
                Member.SHAFT, "k", ToleranceGrade.IT4, ToleranceGrade.IT7, new SizeBand(40, 60)))) {
      InvalidValue error =
          assertThrows(InvalidValue.class, () -> new Iso286Tables(List.of(), List.of(K4_7, again)));
      assertTrue(error.problem().startsWith("k is given twice within "));
    }
  }

  @Test
  void rows_of_both_members_never_collide() {
    DeviationRow hole = deviation(Member.HOLE, "K", ToleranceGrade.IT4, ToleranceGrade.IT7, BAND);
    assertFalse(hole.collides(K4_7));
    assertTrue(K4_7.collides(K4_7));
  }

  @Test
  void a_row_holds_from_the_finer_to_the_coarser_grade() {
    deviation(Member.SHAFT, "k", ToleranceGrade.IT7, ToleranceGrade.IT7, BAND);
    assertThrows(
        InvalidValue.class,
        () -> deviation(Member.SHAFT, "k", ToleranceGrade.IT8, ToleranceGrade.IT7, BAND));
  }

  @Test
  void a_row_has_a_letter_of_its_member() {
    for (String letter : List.of("q", "K")) {
      assertThrows(
          InvalidValue.class,
          () -> deviation(Member.SHAFT, letter, ToleranceGrade.IT4, ToleranceGrade.IT7, BAND));
    }
  }

  @Test
  void what_limits_rest_on_is_no_surer_than_the_least_sure_of_its_rows() {
    Iso286Tables sure = new Iso286Tables(List.of(IT7), List.of(K4_7));
    ToleranceClass k7 = ToleranceClass.parse("k7");
    assertEquals(new Provenance("table; memory", Confidence.LOW), sure.basis(40, k7));
    DeviationRow known =
        new DeviationRow(Member.SHAFT, "k", ToleranceGrade.IT4, ToleranceGrade.IT7, BAND, 2, HIGH);
    GradeRow guessed = new GradeRow(ToleranceGrade.IT7, BAND, 25, LOW);
    Iso286Tables unsure = new Iso286Tables(List.of(guessed), List.of(known));
    assertEquals(new Provenance("memory; table", Confidence.LOW), unsure.basis(40, k7));
    assertEquals(LOW, unsure.basis(40, ToleranceClass.parse("js7")));
  }

  @ParameterizedTest
  @EnumSource(ToleranceGrade.class)
  void a_grade_is_found_by_its_name_and_by_its_number(ToleranceGrade grade) {
    assertEquals(grade, ToleranceGrade.named("grade", grade.name()));
    assertEquals(grade, ToleranceGrade.numbered("grade", grade.name().substring(2)));
    assertThrows(InvalidValue.class, () -> ToleranceGrade.named("grade", grade.number()));
  }

  /** ISO 286-1: 25 k6 is +15/+2 µm, 35 H7 is +25/0 µm. */
  @ParameterizedTest
  @CsvSource({"25,k6,25.002,25.015,13", "35,H7,35,35.025,25", "40,P7,39.958,39.983,25"})
  void limits_of_size_are_the_nominal_with_its_deviations(
      double nominal, String tolerance, double smallest, double largest, double width) {
    LimitsOfSize limits = FitData.TABLES.limits(nominal, ToleranceClass.parse(tolerance));
    assertEquals(smallest, limits.smallestMm(), 1e-9);
    assertEquals(largest, limits.largestMm(), 1e-9);
    assertEquals(width, limits.toleranceUm());
    assertEquals(0, limits.deviationUm(nominal));
    assertEquals(7, limits.deviationUm(nominal + 0.007));
    assertEquals(-7, limits.deviationUm(nominal - 0.007));
  }

  @Test
  void limits_stand_in_order_and_leave_a_size_above_nothing() {
    new LimitsOfSize(10, 5, 5);
    assertThrows(InvalidValue.class, () -> new LimitsOfSize(10, 5, 4.9));
    assertThrows(InvalidValue.class, () -> new LimitsOfSize(10, Double.NaN, 4.9));
    assertThrows(InvalidValue.class, () -> new LimitsOfSize(0.5, -500, 0));
    new LimitsOfSize(0.5, -499, 0);
    assertThrows(InvalidValue.class, () -> new Designation.Written(10, 5, 4.9));
    new Designation.Written(10, 5, 5);
  }

  @Test
  void a_deviation_of_nought_is_never_written_minus_nought() {
    LimitsOfSize limits = new LimitsOfSize(10, -0.0, 0.0001);
    assertEquals(0.0, limits.lowerUm());
    assertEquals(0.0, limits.upperUm());
  }

  @Test
  void an_unknown_letter_is_told_the_letters_of_its_member() {
    InvalidValue hole = assertThrows(InvalidValue.class, () -> ToleranceClass.parse("I7"));
    assertTrue(hole.problem().endsWith("of a hole"), hole.problem());
    InvalidValue shaft = assertThrows(InvalidValue.class, () -> ToleranceClass.parse("q7"));
    assertTrue(shaft.problem().endsWith("of a shaft"), shaft.problem());
  }

  /** Printed: 40 H7/s6 is between 18 and 59 µm tight, 25 H7/p6 between 1 and 35 µm. */
  @ParameterizedTest
  @CsvSource({"40,H7,s6,18,59", "25,H7,p6,1,35", "25,H7,n6,0,28", "25,H7,g6,0,0"})
  void interference_on_the_diameter_is_as_printed(
      double nominal, String hole, String shaft, double least, double greatest) {
    Fit fit = FitData.TABLES.fit(nominal, ToleranceClass.parse(hole), ToleranceClass.parse(shaft));
    assertEquals(least, fit.leastDiametralInterferenceUm());
    assertEquals(greatest, fit.greatestDiametralInterferenceUm());
  }

  @Test
  void a_hole_without_the_row_of_its_shaft_is_told_what_is_missing() {
    Iso286Tables bare = new Iso286Tables(List.of(IT7), List.of());
    InvalidValue missing =
        assertThrows(InvalidValue.class, () -> bare.limits(40, ToleranceClass.parse("P7")));
    assertTrue(missing.problem().startsWith("P7 "), missing.problem());
    assertTrue(missing.allowed().contains("deviations"), missing.allowed());
  }
}
