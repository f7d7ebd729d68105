package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Activity;
import annulus.catalog.Confidence;
import annulus.catalog.Consequence;
import annulus.catalog.Finish;
import annulus.catalog.Instrument;
import annulus.catalog.Material;
import annulus.catalog.Severity;
import annulus.catalog.Stage;
import annulus.fit.BearingRing;
import annulus.fit.FrictionTable;
import annulus.fit.iso286.Member;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every CSV table of {@code data/}, cell by cell, against {@code data/schema/columns.json}. */
class DataColumnsTest {
  private static final JsonNode TABLES = columns().get("tables");

  private static JsonNode columns() {
    try {
      return new ObjectMapper().readTree(ShopFolder.shipped("schema/columns.json"));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  static Stream<String> tables() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("data"))) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(f -> f.endsWith(".csv"))
          .sorted()
          .toList()
          .stream();
    }
  }

  private static List<CSVRecord> records(String table) {
    try {
      return CSVFormat.DEFAULT
          .builder()
          .setCommentMarker('#')
          .get()
          .parse(new StringReader(ShopFolder.shipped(table)))
          .getRecords();
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  @Test
  void every_table_has_its_name_in_the_list_that_a_shops_folder_is_held_to() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("data"))) {
      assertEquals(
          DataFiles.TABLES,
          files.filter(Files::isRegularFile).map(f -> f.getFileName() + "").sorted().toList());
    }
  }

  @Test
  void every_table_is_described_and_every_description_has_its_table() throws IOException {
    Set<String> described = new TreeSet<>();
    TABLES.fieldNames().forEachRemaining(described::add);
    assertEquals(new TreeSet<>(tables().toList()), described);
  }

  @ParameterizedTest
  @MethodSource("tables")
  void a_table_opens_with_title_source_date_and_version(String table) {
    String text = ShopFolder.shipped(table);
    String opening = text.substring(0, text.indexOf("\n" + header(table)));
    assertTrue(opening.lines().allMatch(l -> l.startsWith("# ")), opening);
    assertTrue(
        opening.matches("(?s).*# transcribed 20\\d\\d-\\d\\d-\\d\\d, version [1-9]\\d*"), opening);
  }

  private static String header(String table) {
    List<String> names = new ArrayList<>();
    TABLES.get(table).get("columns").forEach(c -> names.add(c.get("name").asText()));
    return String.join(",", names);
  }

  @ParameterizedTest
  @MethodSource("tables")
  void the_header_names_the_described_columns(String table) {
    assertEquals(header(table), String.join(",", records(table).get(0).toList()));
    assertTrue(header(table).endsWith(",source,confidence"), header(table));
  }

  @ParameterizedTest
  @MethodSource("tables")
  void every_cell_is_what_its_column_says(String table) {
    JsonNode columns = TABLES.get(table).get("columns");
    List<String> wrong = new ArrayList<>();
    for (CSVRecord row : records(table).subList(1, records(table).size())) {
      assertEquals(columns.size(), row.size(), row.toString());
      for (int i = 0; i < columns.size(); i++) {
        if (!fits(columns.get(i), row.get(i))) {
          wrong.add(columns.get(i).get("name").asText() + ": " + row);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  private static boolean fits(JsonNode column, String cell) {
    if (cell.isEmpty()) {
      return column.path("optional").asBoolean(false);
    }
    return switch (column.get("type").asText()) {
      case "number" -> {
        double value = Double.parseDouble(cell);
        yield value >= column.get("least").asDouble() && value <= column.get("most").asDouble();
      }
      case "word" -> words(column).contains(cell);
      case "text" -> cell.equals(cell.strip());
      default -> throw new IllegalStateException(column.toString());
    };
  }

  private static List<String> words(JsonNode column) {
    List<String> words = new ArrayList<>();
    column.get("allowed").forEach(w -> words.add(w.asText()));
    return words;
  }

  @ParameterizedTest
  @MethodSource("tables")
  void a_number_column_names_its_unit_and_every_column_its_meaning(String table) {
    for (JsonNode column : TABLES.get(table).get("columns")) {
      assertFalse(column.path("meaning").asText().isBlank(), column.toString());
      boolean ownUnit = header(table).contains(",unit,");
      if (column.get("type").asText().equals("number") && !ownUnit) {
        assertFalse(column.path("unit").asText().isBlank(), column.toString());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void the_key_makes_a_row_unique(String table) {
    List<String> names = records(table).get(0).toList();
    Set<List<String>> keys = new HashSet<>();
    for (CSVRecord row : records(table).subList(1, records(table).size())) {
      List<String> key = new ArrayList<>();
      TABLES.get(table).get("key").forEach(k -> key.add(row.get(names.indexOf(k.asText()))));
      assertTrue(keys.add(key), key.toString());
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void practice_or_memory_alone_is_of_low_confidence(String table) {
    for (CSVRecord row : records(table)) {
      String source = row.get(row.size() - 2);
      if (Set.of("common practice, no source", "from memory").contains(source)) {
        assertEquals("low", row.get(row.size() - 1), row.toString());
      }
    }
  }

  @Test
  void the_words_are_those_of_the_program() {
    Map<String, Enum<?>[]> enums =
        Map.ofEntries(
            Map.entry("materials.csv kind", Material.Kind.values()),
            Map.entry("materials.csv activity", Activity.Level.values()),
            Map.entry("materials.csv attack", Material.Attack.values()),
            Map.entry("finishes.csv film", Finish.Film.values()),
            Map.entry("finishes.csv activity", Activity.Level.values()),
            Map.entry("activities.csv level", Activity.Level.values()),
            Map.entry("instruments.csv use", Instrument.Use.values()),
            Map.entry("caution-ranks.csv severity", Severity.values()),
            Map.entry("consequences.csv consequence", Consequence.values()),
            Map.entry("consequences.csv stage", Stage.values()),
            Map.entry("friction.csv pair", FrictionTable.Pair.values()),
            Map.entry("friction.csv method", FrictionTable.Method.values()),
            Map.entry("friction.csv state", FrictionTable.State.values()),
            Map.entry("iso286-deviations.csv member", Member.values()),
            Map.entry("bearing-normal.csv surface", BearingRing.values()));
    enums.forEach(
        (place, values) -> {
          String[] parts = place.split(" ");
          assertEquals(Fields.words(values), words(column(parts[0], parts[1])), place);
        });
    TABLES
        .fieldNames()
        .forEachRemaining(
            t ->
                assertEquals(Fields.words(Confidence.values()), words(column(t, "confidence")), t));
  }

  private static JsonNode column(String table, String name) {
    for (JsonNode column : TABLES.get(table).get("columns")) {
      if (column.get("name").asText().equals(name)) {
        return column;
      }
    }
    throw new AssertionError(table + " " + name);
  }

  @Test
  void the_readers_want_the_described_columns() {
    Map<String, List<String>> wanted =
        Map.of(
            "materials.csv", MaterialRows.HEADER,
            "finishes.csv", MaterialRows.FINISH_HEADER,
            "activities.csv", MaterialRows.ACTIVITY_HEADER,
            "cautions.csv", MaterialRows.CAUTION_HEADER,
            "caution-ranks.csv", MaterialRows.RANK_HEADER,
            "limited-use.csv", MaterialRows.LIMIT_HEADER,
            "consequences.csv", MaterialRows.RELEASE_HEADER,
            "instruments.csv", InstrumentRows.HEADER,
            "policy.csv", NumberRows.HEADER,
            "form-limits.csv", NumberRows.HEADER);
    wanted.forEach(
        (table, columns) ->
            assertEquals(
                new TreeSet<>(columns), new TreeSet<>(List.of(header(table).split(","))), table));
  }

  @Test
  void a_word_that_names_a_row_of_hold_factors_finds_it() {
    Set<String> faces = keys("surface");
    for (CSVRecord row : records("materials.csv").subList(1, records("materials.csv").size())) {
      int face = records("materials.csv").get(0).toList().indexOf("bond_face");
      assertTrue(faces.contains(row.get(face)), row.toString());
    }
    Set<String> dynamics = keys("dynamic");
    for (CSVRecord row : records("duty-cases.csv").subList(1, records("duty-cases.csv").size())) {
      assertTrue(dynamics.contains(row.get(8)), row.toString());
    }
  }

  private static Set<String> keys(String factor) {
    Set<String> keys = new HashSet<>();
    for (CSVRecord row : records("hold-factors.csv")) {
      if (row.get(0).equals(factor)) {
        keys.add(row.get(1));
      }
    }
    return keys;
  }
}
