package annulus.fit.iso286;

import static annulus.fit.FitData.TABLES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Rows recalled from the standard against its own annex of formulas (ISO 286-1 Annex B, from
 * memory) and against values of the hole tables, which the program derives from the shafts.
 */
class Iso286IndependentTest {
  private interface Formula {
    double at(double meanMm, double nominalMm);
  }

  private static double it(ToleranceGrade grade, double nominalMm) {
    return TABLES.toleranceUm(grade, nominalMm);
  }

  private static final Map<String, Formula> ANNEX =
      Map.ofEntries(
          Map.entry("a", (m, d) -> d <= 120 ? -(265 + 1.3 * m) : -3.5 * m),
          Map.entry("b", (m, d) -> d <= 160 ? -(140 + 0.85 * m) : -1.8 * m),
          Map.entry("c", (m, d) -> d <= 40 ? -52 * Math.pow(m, 0.2) : -(95 + 0.8 * m)),
          Map.entry("d", (m, d) -> -16 * Math.pow(m, 0.44)),
          Map.entry("e", (m, d) -> -11 * Math.pow(m, 0.41)),
          Map.entry("f", (m, d) -> -5.5 * Math.pow(m, 0.41)),
          Map.entry("g", (m, d) -> -2.5 * Math.pow(m, 0.34)),
          Map.entry("m", (m, d) -> it(ToleranceGrade.IT7, d) - it(ToleranceGrade.IT6, d)),
          Map.entry("n", (m, d) -> 5 * Math.pow(m, 0.34)),
          Map.entry("p", (m, d) -> it(ToleranceGrade.IT7, d) + 2.5),
          Map.entry(
              "s",
              (m, d) ->
                  d <= 50 ? it(ToleranceGrade.IT8, d) + 2.5 : it(ToleranceGrade.IT7, d) + 0.4 * m),
          Map.entry("t", (m, d) -> it(ToleranceGrade.IT7, d) + 0.63 * m),
          Map.entry("u", (m, d) -> it(ToleranceGrade.IT7, d) + m),
          Map.entry("v", (m, d) -> it(ToleranceGrade.IT7, d) + 1.25 * m),
          Map.entry("x", (m, d) -> it(ToleranceGrade.IT7, d) + 1.6 * m),
          Map.entry("y", (m, d) -> it(ToleranceGrade.IT7, d) + 2 * m),
          Map.entry("z", (m, d) -> it(ToleranceGrade.IT7, d) + 2.5 * m),
          Map.entry("za", (m, d) -> it(ToleranceGrade.IT8, d) + 3.15 * m),
          Map.entry("zb", (m, d) -> it(ToleranceGrade.IT9, d) + 4 * m),
          Map.entry("zc", (m, d) -> it(ToleranceGrade.IT10, d) + 5 * m));

  /** Cells where the printed table is known to leave the formula: letter and upper end. */
  private static final Set<String> KNOWN_TO_DIFFER =
      Set.of("b 120", "b 140", "b 160", "c 30", "c 40", "t 30", "p 400");

  @Test
  void shaft_rows_above_18_mm_follow_the_annex_formulas_within_its_rounding() {
    int checked = 0;
    for (DeviationRow row : TABLES.deviations()) {
      SizeBand band = row.band();
      String cell = row.letters() + " " + (int) band.upToMm();
      Formula formula = row.member() == Member.SHAFT ? ANNEX.get(row.letters()) : null;
      if (formula == null || band.overMm() < 18 || KNOWN_TO_DIFFER.contains(cell)) {
        continue;
      }
      double mean = Math.sqrt(band.overMm() * band.upToMm());
      double expected = formula.at(mean, band.upToMm());
      assertEquals(expected, row.deviationUm(), 1 + 0.025 * Math.abs(expected), cell);
      checked++;
    }
    assertTrue(checked > 250, "checked " + checked);
  }

  /** ISO 286-1 Annex B: r is the geometric mean of p and s. */
  @Test
  void r_lies_between_p_and_s_as_their_geometric_mean() {
    for (double d = 2; d <= 500; d += 2) {
      double p = ei("p", d);
      double s = ei("s", d);
      assertEquals(Math.sqrt(p * s), ei("r", d), 1 + 0.02 * s, "at " + d);
    }
  }

  /** ISO 286-1 Annex B: from IT6 on, five grades up is ten times. One printed cell differs. */
  @Test
  void five_grades_up_is_ten_times_as_wide() {
    List<ToleranceGrade> grades = List.of(ToleranceGrade.values());
    for (int i = grades.indexOf(ToleranceGrade.IT6); i + 5 < grades.size(); i++) {
      for (double d = 2; d <= 500; d += 2) {
        boolean odd = grades.get(i) == ToleranceGrade.IT6 && d > 3 && d <= 6;
        double wide = odd ? 75 : 10 * it(grades.get(i), d);
        assertEquals(wide, it(grades.get(i + 5), d), grades.get(i) + " " + d);
      }
    }
  }

  @Test
  void grades_widen_with_number_and_with_size() {
    List<ToleranceGrade> grades = List.of(ToleranceGrade.values());
    for (double d = 2; d <= 498; d += 2) {
      for (int i = 1; i < grades.size(); i++) {
        assertTrue(it(grades.get(i), d) > it(grades.get(i - 1), d));
        assertTrue(it(grades.get(i), d + 2) >= it(grades.get(i), d));
      }
    }
  }

  @Test
  void every_letter_moves_away_from_nominal_as_the_size_grows_and_along_the_alphabet() {
    List<String> tight = List.of("k", "m", "n", "p", "r", "s", "u", "x", "z", "za", "zb", "zc");
    List<String> loose = List.of("h", "g", "f", "e", "d", "c", "b", "a");
    for (double d = 2; d <= 498; d += 2) {
      for (int i = 1; i < tight.size(); i++) {
        assertTrue(ei(tight.get(i), d) > ei(tight.get(i - 1), d), tight.get(i) + " " + d);
        assertTrue(ei(tight.get(i), d + 2) >= ei(tight.get(i), d), tight.get(i) + " " + d);
      }
      for (int i = 1; i < loose.size(); i++) {
        assertTrue(es(loose.get(i), d) < es(loose.get(i - 1), d), loose.get(i) + " " + d);
        assertTrue(es(loose.get(i), d + 2) <= es(loose.get(i), d), loose.get(i) + " " + d);
      }
    }
  }

  /** Letters that start late stand between their neighbours: s t u v x y z. */
  @Test
  void t_v_and_y_stand_between_their_neighbours() {
    for (double d = 26; d <= 500; d += 2) {
      assertTrue(ei("s", d) <= ei("t", d) && ei("t", d) < ei("u", d));
      assertTrue(ei("u", d) < ei("v", d) && ei("v", d) < ei("x", d));
      assertTrue(ei("x", d) < ei("y", d) && ei("y", d) < ei("z", d));
    }
  }

  /** Upper deviations as printed for holes (ISO 286-2 tables, from memory). */
  @ParameterizedTest
  @CsvSource({
    "5 K6,2",
    "5 K7,3",
    "5 K8,5",
    "9 K6,2",
    "15 K6,2",
    "40 K6,3",
    "65 K7,9",
    "100 K7,10",
    "150 K7,12",
    "200 K7,13",
    "300 K7,16",
    "380 K7,17",
    "450 K7,18",
    "25 K8,10",
    "2 K7,0",
    "25 M8,4",
    "25 M9,-8",
    "25 N8,-3",
    "65 N7,-9",
    "100 N7,-10",
    "65 P7,-21",
    "100 P7,-24",
    "25 P8,-22",
    "25 P9,-22",
    "40 R7,-25",
    "90 S7,-58",
    "45 T7,-45",
    "25 U7,-40",
    "2 P7,-6",
    "25 J6,8",
    "25 J7,12",
    "25 J8,20",
    "5 K3,0"
  })
  void holes_derived_from_shafts_equal_the_hole_tables(String text, double upper) {
    Designation.OfClass named = (Designation.OfClass) Designation.parse(text);
    assertEquals(upper, TABLES.limits(named.nominalMm(), named.toleranceClass()).upperUm());
  }

  /** ISO 286-1 Tables 2 to 5 have no empty cell here but for the small-size letters cd, ef, fg. */
  @Test
  void every_letter_is_tabulated_over_24_mm_in_grade_7() {
    Set<String> small = Set.of("cd", "ef", "fg");
    for (double d = 25; d <= 500; d += 1) {
      for (String letters : Letters.SHAFT) {
        if (!small.contains(letters)) {
          assertEquals(it(ToleranceGrade.IT7, d), width(letters + "7", d), 1e-9);
          assertEquals(it(ToleranceGrade.IT7, d), width(upper(letters) + "7", d), 1e-9);
        }
      }
    }
  }

  private static double width(String toleranceClass, double mm) {
    return TABLES.limits(mm, ToleranceClass.parse(toleranceClass)).toleranceUm();
  }

  @Test
  void hole_and_shaft_mirror_on_the_clearance_side() {
    for (String letter : List.of("a", "b", "c", "d", "e", "f", "g", "h")) {
      for (double d = 2; d <= 500; d += 2) {
        ToleranceClass hole = ToleranceClass.parse(upper(letter) + "8");
        assertEquals(-es(letter, d), TABLES.limits(d, hole).lowerUm(), 0.0);
      }
    }
  }

  /** ISO 286-1: with K to ZC the fits H7/p6 and P7/h6 are the same. */
  @Test
  void hole_basis_and_shaft_basis_fits_agree_from_k_to_zc() {
    for (String letter : List.of("p", "r", "s", "u", "x", "z", "zc", "k", "m", "n")) {
      for (double d = 4; d <= 500; d += 1) {
        Fit hole = TABLES.fit(d, ToleranceClass.parse("H7"), ToleranceClass.parse(letter + "6"));
        Fit shaft =
            TABLES.fit(d, ToleranceClass.parse(upper(letter) + "7"), ToleranceClass.parse("h6"));
        assertEquals(hole.greatestDiametralClearanceUm(), shaft.greatestDiametralClearanceUm());
        assertEquals(hole.leastDiametralClearanceUm(), shaft.leastDiametralClearanceUm());
      }
    }
  }

  private static String upper(String letter) {
    return Letters.HOLE.get(Letters.SHAFT.indexOf(letter));
  }

  private static double ei(String letter, double mm) {
    return TABLES.limits(mm, ToleranceClass.parse(letter + "6")).lowerUm();
  }

  private static double es(String letter, double mm) {
    return TABLES.limits(mm, ToleranceClass.parse(letter + "8")).upperUm();
  }
}
