package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** A shop may move the program's numbers, but not beyond all reason. */
class NumberLimitsTest {
  @TempDir Path folder;

  private static List<CSVRecord> records(String table) throws IOException {
    return CSVFormat.DEFAULT
        .builder()
        .setCommentMarker('#')
        .setHeader()
        .setSkipHeaderRecord(true)
        .get()
        .parse(new StringReader(ShopFolder.shipped(table)))
        .getRecords();
  }

  private static Map<String, CSVRecord> limits(String table) throws IOException {
    Map<String, CSVRecord> limits = new TreeMap<>();
    for (CSVRecord row : records("number-limits.csv")) {
      if (row.get("table").equals(table)) {
        limits.put(row.get("id"), row);
      }
    }
    return limits;
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "policy.csv",
        "form-limits.csv",
        "stock-policy.csv",
        "learning.csv",
        "logger-rules.csv"
      })
  void every_number_of_the_program_has_limits_and_stands_within_them(String table)
      throws IOException {
    Map<String, CSVRecord> limits = limits(table);
    List<String> wrong = new ArrayList<>();
    for (CSVRecord row : records(table)) {
      CSVRecord own = limits.remove(row.get("id"));
      double value = Double.parseDouble(row.get("value"));
      boolean fault = row.get("id").startsWith("fault-value-");
      boolean within =
          own != null
              && Double.parseDouble(own.get("least")) <= value
              && value <= Double.parseDouble(own.get("most"));
      if (!fault && !within) {
        wrong.add(row.get("id"));
      }
    }
    assertEquals(List.of(), wrong);
    assertTrue(limits.isEmpty(), "limits of numbers that are not there: " + limits.keySet());
  }

  private static void read(DataFiles files) throws IOException {
    KnowledgeFiles.read(files);
    StockFiles.policy(files);
    LearningFile.rules(files);
    LoggerRules.read(files);
  }

  @ParameterizedTest
  @CsvSource({
    "policy.csv, wanted-confidence, 0.05",
    "policy.csv, undisturbed-after-fixture-min, -15",
    "policy.csv, hand-over-check-min, -1",
    "policy.csv, waste-factor, 0.5",
    "form-limits.csv, single-reading-steps, 0",
    "stock-policy.csv, label-spread-ln, 0",
    "stock-policy.csv, primer-open-months, 600",
    "learning.csv, least-joints-sooner, 0",
    "logger-rules.csv, gap-longest-s, 1000000",
  })
  void a_number_of_a_shop_beyond_them_is_refused_at_its_cell(String table, String id, String value)
      throws IOException {
    String header = "id,value,unit,meaning,source,confidence";
    CSVRecord row =
        records(table).stream().filter(r -> r.get("id").equals(id)).findFirst().orElseThrow();
    String own = id + "," + value + "," + row.get("unit") + ",m,shop,low";
    Path file = Files.writeString(folder.resolve(table), header + "\n" + own + "\n");
    InputRefused refused = assertThrows(InputRefused.class, () -> read(DataFiles.withShop(folder)));
    PlacedProblem problem = refused.problems().get(0);
    assertEquals(file + ":2:2", problem.file() + ":" + problem.line() + ":" + problem.column());
    assertTrue(problem.problem().contains("is out of range"), problem.toString());
  }

  @Test
  void the_limits_themselves_can_not_be_laid_over() throws IOException {
    Files.writeString(folder.resolve("number-limits.csv"), "table,id,least,most\n");
    InputRefused refused = assertThrows(InputRefused.class, () -> read(DataFiles.withShop(folder)));
    assertTrue(refused.getMessage().contains("can't be laid over"), refused.getMessage());
  }
}
