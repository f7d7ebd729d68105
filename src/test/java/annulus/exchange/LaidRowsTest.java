package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Knowledge;
import annulus.fit.BearingRing;
import annulus.hold.FactorCurve;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A shop changes or adds one row of a table; all the others stay. */
class LaidRowsTest {
  @TempDir Path folder;

  private Knowledge knowledge() throws IOException {
    return KnowledgeFiles.readFiles(DataFiles.withShop(folder));
  }

  /** What a table of the folder, laid over the program's, makes. */
  private Object read(String table) throws IOException {
    return switch (table) {
      case "friction.csv" -> knowledge().friction();
      case "press-factors.csv" -> knowledge().press();
      case "hold-factors.csv" -> knowledge().hold();
      case "duty-cases.csv" -> knowledge().duties();
      case "bearing-normal.csv" -> knowledge().bearings();
      case "stock-cover.csv" -> StockFiles.cover(DataFiles.withShop(folder));
      default -> Iso286Files.readFiles(DataFiles.withShop(folder));
    };
  }

  private static List<String> lines(String table) {
    return ShopFolder.shipped(table).lines().filter(l -> !l.startsWith("#")).toList();
  }

  private void put(String table, String... rows) throws IOException {
    String header = lines(table).get(0);
    Files.writeString(folder.resolve(table), header + "\n" + String.join("\n", rows) + "\n");
  }

  /** The row with another confidence, which every record of a table keeps. */
  private static String changed(String row) {
    int comma = row.lastIndexOf(',');
    String other = row.endsWith(",low") ? "medium" : "low";
    return row.substring(0, comma + 1) + other;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "friction.csv",
        "press-factors.csv",
        "hold-factors.csv",
        "duty-cases.csv",
        "bearing-normal.csv",
        "iso286-grades.csv",
        "iso286-deviations.csv",
        "stock-cover.csv"
      })
  void one_row_in_a_shops_file_changes_that_row_and_no_other(String table) throws IOException {
    Object shipped = read(table);
    List<String> rows = lines(table).subList(1, lines(table).size());
    for (int i : new int[] {0, rows.size() / 2, rows.size() - 1}) {
      String row = rows.get(i);
      put(table, changed(row));
      Object alone = read(table);
      String whole = ShopFolder.shipped(table).replace(row + "\n", changed(row) + "\n");
      Files.writeString(folder.resolve(table), whole);
      assertEquals(read(table), alone, row);
      assertNotEquals(shipped, alone, row);
    }
  }

  @Test
  void a_key_is_the_same_however_its_numbers_are_written() throws IOException {
    put("bearing-normal.csv", "bore,10.0,18.00,-7,shop,low");
    assertEquals(-7, knowledge().bearings().row(BearingRing.BORE, 15).lowerUm());
    assertEquals(-10, knowledge().bearings().row(BearingRing.BORE, 20).lowerUm());
  }

  @Test
  void a_row_of_a_new_key_is_added() throws IOException {
    int before = KnowledgeFiles.readFiles(DataFiles.bundled()).friction().rows().size();
    put("friction.csv", "steel-brass,lengthwise,dry,0.05,0.1,0.16,shop,low");
    assertEquals(before + 1, knowledge().friction().rows().size());
    put("stock-cover.csv", "service,oven,to 180 °C,180,180,,,shop,low");
    assertTrue(read("stock-cover.csv").toString().contains("oven"));
    put("hold-factors.csv", "gap,radial,40,um,0.7,0.9,1,shop,low");
    List<FactorCurve.Point> gap = knowledge().hold().gap().points();
    assertEquals(
        List.of(0.0, 10.0, 25.0, 40.0, 65.0, 130.0, 250.0, 500.0, 760.0),
        gap.stream().map(FactorCurve.Point::at).toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "bearing-normal.csv | bore,10,14,-7,shop,low | is given twice",
        "iso286-grades.csv | IT7,18,24,20,shop,low | is given twice",
        "iso286-deviations.csv | shaft,k,IT5,IT6,18,30,2,shop,low | is given twice",
        "friction.csv | steel-steel,lengthwise,dry,0.1,0.1,0.1,shop,low | is given twice",
        "press-factors.csv | slip-clearance,um/mm,1,1,1,shop,low | has 2 rows",
        "hold-factors.csv | surface,steel,0,1,1,1,1,shop,low | steel is given twice",
        "hold-factors.csv | gap,radial,10,um,1,1,1,shop,low | does not rise",
        "duty-cases.csv | headset-cup,cup,1,2,3,0,1,2,static,yes,shop,low | is given twice",
      })
  void rows_that_say_two_things_of_one_case_are_refused_with_the_shops_file(
      String table, String row, String problem) throws IOException {
    put(table, row, row);
    InputRefused refused = assertThrows(InputRefused.class, () -> read(table));
    PlacedProblem first = refused.problems().get(0);
    assertTrue(first.file().contains(folder.resolve(table).toString()), first.toString());
    assertTrue(first.problem().contains(problem), first.toString());
  }
}
