package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.fit.FitData;
import java.io.StringReader;
import org.junit.jupiter.api.Test;

class Iso286FilesTest {
  private static PlacedProblem refused(String grades, String deviations) {
    InputRefused refused =
        assertThrows(
            InputRefused.class,
            () ->
                Iso286Files.tables(
                    "g.csv", new StringReader(grades), "d.csv", new StringReader(deviations)));
    return refused.problems().get(0);
  }

  private static final String GRADES = FitData.text("iso286-grades.csv");
  private static final String DEVIATIONS = FitData.text("iso286-deviations.csv");

  @Test
  void a_bad_number_is_placed_at_its_line_and_cell() {
    PlacedProblem error = refused(GRADES.replace("IT01,0,3,0.3,", "IT01,0,3,O.3,"), DEVIATIONS);
    assertTrue(error.toString().startsWith("g.csv:7:4: tolerance_um: "), error.toString());
    assertTrue(error.problem().contains("O.3"));
  }

  @Test
  void a_number_beyond_all_measure_is_refused() {
    for (String odd : new String[] {"NaN", "1e999", "Infinity", "0x1p3", "1d", ""}) {
      PlacedProblem error =
          refused(GRADES.replace("IT01,0,3,0.3,", "IT01,0,3," + odd + ","), DEVIATIONS);
      assertEquals("tolerance_um", error.field(), odd);
      assertEquals(7, error.line(), odd);
    }
  }

  @Test
  void an_unknown_grade_confidence_or_column_is_named_with_what_is_allowed() {
    PlacedProblem grade = refused(GRADES.replace("IT01,0,3,", "IT99,0,3,"), DEVIATIONS);
    assertTrue(grade.toString().startsWith("g.csv:7:1: grade: "), grade.toString());
    String odd = GRADES.replaceFirst("medium\n", "certain\n");
    assertTrue(refused(odd, DEVIATIONS).allowed().endsWith("high, medium, low"));
    String head = GRADES.replace("tolerance_um,source", "tolerance,source");
    assertTrue(refused(head, DEVIATIONS).toString().contains("tolerance_um"));
  }

  @Test
  void a_size_given_twice_is_refused() {
    String twice = GRADES + "IT7,45,60,25,ISO 286-1:2010 Table 1,high\n";
    PlacedProblem error = refused(twice, DEVIATIONS);
    assertTrue(error.problem().contains("IT7 is given twice"));
    assertEquals("g.csv, d.csv", error.file());
    String letter = DEVIATIONS + "shaft,k,IT6,IT6,18,20,2,shop,low\n";
    assertTrue(refused(GRADES, letter).problem().contains("k is given twice"));
  }

  @Test
  void a_short_row_is_refused() {
    assertEquals("2 cells", refused(GRADES + "IT7,45\n", DEVIATIONS).problem());
  }
}
