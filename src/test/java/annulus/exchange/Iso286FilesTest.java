package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.fit.FitData;
import annulus.quantity.InvalidValue;
import java.io.StringReader;
import org.junit.jupiter.api.Test;

class Iso286FilesTest {
  private static InvalidValue refused(String file, String grades, String deviations) {
    return assertThrows(
        InvalidValue.class,
        () ->
            Iso286Files.tables(
                file, new StringReader(grades), "d.csv", new StringReader(deviations)));
  }

  private static final String GRADES = FitData.text("iso286-grades.csv");
  private static final String DEVIATIONS = FitData.text("iso286-deviations.csv");

  @Test
  void a_bad_number_is_placed_at_its_line() {
    String bad = GRADES.replace("IT01,0,3,0.3,", "IT01,0,3,O.3,");
    InvalidValue error = refused("g.csv", bad, DEVIATIONS);
    assertEquals("g.csv:7: tolerance_um", error.field());
    assertTrue(error.problem().contains("O.3"));
  }

  @Test
  void an_unknown_grade_confidence_or_column_is_named_with_what_is_allowed() {
    assertEquals(
        "g.csv:7: grade",
        refused("g.csv", GRADES.replace("IT01,0,3,", "IT99,0,3,"), DEVIATIONS).field());
    String odd = GRADES.replaceFirst("medium\n", "certain\n");
    assertEquals("high, medium, low", refused("g.csv", odd, DEVIATIONS).allowed());
    String head = GRADES.replace("tolerance_um,source", "tolerance,source");
    assertTrue(refused("g.csv", head, DEVIATIONS).field().endsWith("header"));
  }

  @Test
  void a_size_given_twice_is_refused() {
    String twice = GRADES + "IT7,45,60,25,ISO 286-1:2010 Table 1,high\n";
    assertTrue(refused("g.csv", twice, DEVIATIONS).problem().contains("IT7 is given twice"));
    String letter = DEVIATIONS + "shaft,k,IT6,IT6,18,20,2,shop,low\n";
    assertTrue(refused("g.csv", GRADES, letter).problem().contains("k is given twice"));
  }

  @Test
  void a_short_row_is_refused() {
    String row = GRADES + "IT7,45\n";
    assertTrue(refused("g.csv", row, DEVIATIONS).field().endsWith("row"));
  }
}
