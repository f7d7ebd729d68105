package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.stock.Cabinet;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.Lots;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.StockItem;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class StockSheetTest {
  private static final Path DEMO = Path.of("demo-data");

  private static StockSheet demo(Path path) throws IOException {
    try (Reader in = DataFiles.utf8(Files.newInputStream(path))) {
      return StockSheet.read(path.getFileName().toString(), in, items());
    }
  }

  private static Map<String, StockItem> items() throws IOException {
    DataFiles files = DataFiles.bundled();
    return StockItem.all(CatalogFiles.read(files), StockFiles.policy(files));
  }

  private static StockSheet read(String text) throws IOException {
    return StockSheet.read("s.csv", new StringReader(text), Lots.items());
  }

  @ParameterizedTest
  @ValueSource(strings = {"stock.csv", "stock-semicolon.csv", "stock-tab.csv"})
  void each_shape_comes_back_byte_for_byte(String name) throws IOException {
    assertEquals(Files.readString(DEMO.resolve(name)), demo(DEMO.resolve(name)).text());
  }

  @Test
  void the_three_shapes_hold_the_same_lots() throws IOException {
    List<Lot> lots = demo(DEMO.resolve("stock.csv")).cabinet().lots();
    assertEquals(9, lots.size());
    assertEquals(lots, demo(DEMO.resolve("stock-semicolon.csv")).cabinet().lots());
    assertEquals(lots, demo(DEMO.resolve("stock-tab.csv")).cabinet().lots());
    assertEquals(SheetShape.COMMA, demo(DEMO.resolve("stock.csv")).shape());
    assertEquals(SheetShape.SEMICOLON, demo(DEMO.resolve("stock-semicolon.csv")).shape());
    assertEquals(SheetShape.TAB, demo(DEMO.resolve("stock-tab.csv")).shape());
  }

  @ParameterizedTest
  @CsvSource({"007", "1E5", "0x10", "1.50", "-5", "12e", "TRUE", "2026-01-01"})
  void a_lot_number_stays_the_text_it_is(String lot) throws IOException {
    StockSheet sheet = read("lot,class,container_ml,left_ml\n" + lot + ",a,10,5\n");
    assertEquals(lot, sheet.cabinet().lots().get(0).lot());
  }

  @Test
  void a_changed_amount_changes_one_cell_and_keeps_how_the_others_were_written()
      throws IOException {
    StockSheet sheet = read("lot;class;left_ml;container_ml;note\r\n007;a;5,50;10,0;\"x;y\"\r\n");
    Lot lot = sheet.cabinet().lots().get(0);
    Cabinet now = new Cabinet(List.of(lot.withLeft(Millilitres.of(4.25))), Lots.items());
    assertEquals(
        "lot;class;left_ml;container_ml;note\r\n007;a;4,25;10,0;\"x;y\"\r\n",
        sheet.with(now).text());
  }

  @Test
  void a_declared_decimal_sign_counts_more_than_the_delimiter() throws IOException {
    String text = "# decimal: point\nlot;class;container_ml;left_ml\n007;a;10;5.5\n";
    assertEquals(Millilitres.of(5.5), read(text).cabinet().lots().get(0).left());
    assertEquals(text, read(text).text());
  }

  @Test
  void rows_without_a_single_word_are_kept_but_are_no_lots() throws IOException {
    String text = "lot,class,container_ml,left_ml\n007,a,10,5\n,,,\n008,a,10,5\n";
    assertEquals(2, read(text).cabinet().lots().size());
    assertEquals(text, read(text).text());
  }

  @Test
  void every_problem_of_a_sheet_is_said_at_once() {
    String text = "lot,class,container_ml,left_ml\n007,aa,10,5\n,a,x,5\n";
    InputRefused refused = assertThrows(InputRefused.class, () -> read(text));
    assertEquals(3, refused.problems().size());
    assertEquals(
        "s.csv:2:2: class: \"aa\" is unknown; allowed: did you mean a? one of: a, b, p",
        refused.problems().get(0).toString());
  }

  @Test
  void a_lot_held_back_in_the_sheet_needs_its_reason_and_its_day() throws IOException {
    String head = "lot,class,container_ml,left_ml,held_back,held_back_on\n";
    StockSheet sheet = read(head + "007,a,10,5,seen frozen,2026-11-20\n008,a,10,5,,\n");
    HeldBack held = HeldBack.inSheet(LocalDate.of(2026, 11, 20), "seen frozen");
    assertEquals(List.of(held), sheet.cabinet().lots().get(0).heldBack());
    assertEquals(List.of(), sheet.cabinet().lots().get(1).heldBack());
    String halves =
        head
            + "007,a,10,5,no,\n008,a,10,5,,2026-11-20\n009,a,10,5,frozen,20.11.2026\n"
            + "010,a,10,5,"
            + "x".repeat(201)
            + ",2026-11-20\n";
    InputRefused refused = assertThrows(InputRefused.class, () -> read(halves));
    String told = refused.getMessage();
    assertTrue(told.contains("s.csv:2:5: held_back_on: is missing"), told);
    assertTrue(told.contains("s.csv:3:6: held_back: is missing"), told);
    assertTrue(told.contains("s.csv:4:6: held_back_on: \"20.11.2026\" is not a day"), told);
    assertTrue(told.contains("s.csv:5:5: held_back: 201 characters"), told);
    assertEquals(4, refused.problems().size());
  }

  @Test
  void an_export_says_what_the_ledger_holds_back_and_no_more_what_it_cleared() throws IOException {
    LocalDate day = LocalDate.of(2026, 11, 20);
    String text = "lot,class,container_ml,left_ml,held_back,held_back_on\n007,a,10,5,,\n";
    StockSheet sheet = read(text);
    Movement held = Lots.holdBack("h1", "007", day, "=frozen, \"maybe\"");
    Ledger ledger = Ledger.of(List.of(held));
    String told = sheet.with(sheet.cabinet().with(ledger)).text();
    StockSheet again = read(told);
    assertEquals(
        List.of(HeldBack.inSheet(day, held.reason())), again.cabinet().lots().get(0).heldBack());
    Cabinet cleared = again.cabinet().with(ledger.with(Lots.clear(held, day)));
    assertEquals(text, again.with(cleared).text());
    StockSheet without = read("lot,class,container_ml,left_ml\n007,a,10,5\n");
    Cabinet now = without.cabinet().with(ledger);
    StockSheet widened = read(without.with(now).text());
    assertEquals(
        now.lots().get(0).heldBack().size(), widened.cabinet().lots().get(0).heldBack().size());
    assertEquals(held.reason(), widened.cabinet().lots().get(0).heldBack().get(0).reason());
  }

  @Test
  void a_column_that_a_sheet_lacks_is_added_at_its_end_and_no_other() throws IOException {
    StockSheet sheet =
        read("lot,class,container_ml,left_ml,note\n007,a,10,5,x\n,,,,\n008,b,10,5,y\n");
    LocalDate day = LocalDate.of(2026, 11, 20);
    Cabinet now =
        new Cabinet(
            List.of(sheet.cabinet().lots().get(0).openedOn(day), sheet.cabinet().lots().get(1)),
            sheet.cabinet().items());
    assertEquals(
        "lot,class,container_ml,left_ml,note,opened\n007,a,10,5,x,2026-11-20\n,,,,,\n008,b,10,5,y,\n",
        sheet.with(now).text());
  }

  @Test
  void every_number_of_the_stock_is_asked_for() throws IOException {
    StringBuilder all = new StringBuilder();
    try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
        all.append(Files.readString(file));
      }
    }
    for (String id : StockFiles.policy(DataFiles.bundled()).numbers().keySet()) {
      assertTrue(all.indexOf('"' + id + '"') >= 0, id);
    }
  }

  static Stream<Path> malformed() throws IOException {
    try (Stream<Path> files = Files.list(DEMO.resolve("malformed/stock"))) {
      return files.sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("malformed")
  void a_malformed_sheet_is_refused_with_its_place_and_what_is_allowed(Path path) {
    InputRefused refused = assertThrows(InputRefused.class, () -> demo(path));
    for (PlacedProblem problem : refused.problems()) {
      assertEquals(path.getFileName().toString(), problem.file());
      assertFalse(problem.problem().isBlank());
      assertFalse(problem.allowed().isBlank());
    }
    boolean wholeFile = path.toString().matches(".*(latin-1|utf-16)\\.csv");
    assertEquals(wholeFile, refused.problems().get(0).line() == 0);
  }

  @ParameterizedTest
  @CsvSource({
    "unknown-column.csv, did you mean class",
    "decimal-comma-undeclared.csv, the decimal sign here is the point",
    "point-in-semicolons.csv, the decimal sign here is the comma",
    "lot-twice.csv, stands twice",
    "date-of-the-shop.csv, year-month-day",
    "open-quote.csv, quotes do not match",
    "sheet-word.csv, yes",
    "short-row.csv, 3 cells",
  })
  void a_malformed_sheet_is_told_what_is_wrong(String name, String words) {
    Path path = DEMO.resolve("malformed/stock").resolve(name);
    InputRefused refused = assertThrows(InputRefused.class, () -> demo(path));
    assertTrue(refused.getMessage().contains(words), refused.getMessage());
  }

  @Test
  void a_cabinet_written_as_a_sheet_is_read_as_it_was() throws IOException {
    StockSheet demo = demo(DEMO.resolve("stock.csv"));
    Lot first = demo.cabinet().lots().get(0);
    HeldBack frozen = HeldBack.inSheet(LocalDate.of(2026, 11, 20), "=frozen; \"maybe\"");
    List<Lot> lots = new java.util.ArrayList<>(demo.cabinet().lots());
    lots.set(0, first.heldBackFor(List.of(frozen)));
    Cabinet cabinet = new Cabinet(lots, demo.cabinet().items());
    Path file = Files.createTempFile("sheet", ".csv");
    try {
      Files.writeString(file, StockSheet.of(cabinet).text());
      assertEquals(lots, demo(file).cabinet().lots());
    } finally {
      Files.delete(file);
    }
  }
}
