package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.stock.Lots;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

class StockSheetPropertyTest {
  private static final List<SheetShape> SHAPES =
      List.of(SheetShape.COMMA, SheetShape.SEMICOLON, SheetShape.TAB);

  @Provide
  Arbitrary<String> texts() {
    Arbitrary<String> words =
        Arbitraries.strings().withChars("ab09'=+-@\t,;\"\n .éİ").ofMinLength(1).ofMaxLength(12);
    return Arbitraries.oneOf(
        words, Arbitraries.of("=1+1", "'=1", "''@x", "-5", "-5+x", "+A1", "\tx", "007", "1E5"));
  }

  @Provide
  Arbitrary<List<List<String>>> rows() {
    return Combinators.combine(texts(), texts(), Arbitraries.integers().between(0, 10_000), texts())
        .as((lot, label, left, note) -> List.of(lot, label, Integer.toString(left), note))
        .list()
        .ofMaxSize(6);
  }

  private static String sheet(List<List<String>> rows, SheetShape shape) {
    StringBuilder text = new StringBuilder(shape.head());
    text.append(
        SheetCells.line(
            List.of("lot", "class", "label", "container_ml", "left_ml", "note"), shape));
    int number = 0;
    for (List<String> row : rows) {
      String left = shape.number(new Millilitres(Long.parseLong(row.get(2))).toString());
      String lot = row.get(0).strip() + "#" + number++;
      text.append(SheetCells.line(List.of(lot, "a", row.get(1), "10", left, row.get(3)), shape));
    }
    return text.toString();
  }

  @Property(tries = 400)
  void what_is_written_is_read_again_and_written_the_same(
      @ForAll("rows") List<List<String>> rows, @ForAll @IntRange(max = 2) int which)
      throws IOException {
    SheetShape shape = SHAPES.get(which);
    String text = sheet(rows, shape);
    StockSheet sheet = StockSheet.read("s.csv", new StringReader(text), Lots.items());
    assertEquals(shape, sheet.shape());
    assertEquals(text, sheet.text());
    for (int i = 0; i < rows.size(); i++) {
      var lot = sheet.cabinet().lots().get(i);
      assertEquals(rows.get(i).get(0).strip() + "#" + i, lot.lot());
      assertEquals(Long.parseLong(rows.get(i).get(2)), lot.left().microlitres());
    }
  }

  @Property(tries = 400)
  void no_cell_that_is_written_starts_a_formula(
      @ForAll("rows") List<List<String>> rows, @ForAll @IntRange(max = 2) int which)
      throws IOException {
    SheetShape shape = SHAPES.get(which);
    String body = sheet(rows, shape).substring(shape.head().length());
    CSVFormat format = CSVFormat.DEFAULT.builder().setDelimiter(shape.delimiter()).get();
    boolean guarded = false;
    try (CSVParser parser = CSVParser.parse(body, format)) {
      for (CSVRecord record : parser) {
        for (String cell : record) {
          boolean number = cell.matches("[+-][0-9]+([.,][0-9]+)?");
          boolean starts = !cell.isEmpty() && "=+-@\t\r\n".indexOf(cell.charAt(0)) >= 0;
          assertTrue(!starts || number, cell);
          guarded |= cell.startsWith("'");
        }
      }
    }
    Statistics.label("some cell guarded").collect(guarded);
  }

  @Property
  void the_guard_comes_off_again(@ForAll("texts") String text) {
    assertEquals(text, SheetCells.unguarded(SheetCells.guarded(text)));
  }

  /** Deletes, doubles or swaps characters of a good sheet: a clear refusal or a sheet, no more. */
  @Property(tries = 600)
  void a_broken_sheet_is_read_or_refused_with_a_place(
      @ForAll("rows") List<List<String>> rows,
      @ForAll @IntRange(max = 2) int which,
      @ForAll long seed)
      throws IOException {
    StringBuilder text = new StringBuilder(sheet(rows, SHAPES.get(which)));
    Random random = new Random(seed);
    int changes = 1 + random.nextInt(3);
    for (int i = 0; i < changes && text.length() > 0; i++) {
      int at = random.nextInt(text.length());
      switch (random.nextInt(4)) {
        case 0 -> text.deleteCharAt(at);
        case 1 -> text.insert(at, text.charAt(at));
        case 2 -> text.setCharAt(at, ",;\t\"\n\r0-=\u0000\uFEFF".charAt(random.nextInt(11)));
        default -> text.setLength(Math.max(1, at));
      }
    }
    try {
      StockSheet sheet = StockSheet.read("s.csv", new StringReader(text.toString()), Lots.items());
      assertTrue(sheet.cabinet().lots().size() <= rows.size() + 3);
      Statistics.label("outcome").collect("read");
    } catch (InputRefused e) {
      e.problems().forEach(p -> assertEquals("s.csv", p.file()));
      e.problems().forEach(p -> assertFalse(p.allowed().isBlank()));
      Statistics.label("outcome").collect("refused");
    }
  }

  @Property
  void a_ledger_line_holds_any_text_in_one_line(
      @ForAll("texts") String who, @ForAll("texts") String lot, @ForAll("texts") String reason) {
    Movement movement =
        new Movement(
            "id\\" + lot,
            java.time.Instant.parse("2026-11-25T10:00:00Z"),
            Lots.DAY,
            Movement.Kind.CORRECT,
            who + ".",
            lot,
            lot + ".",
            "",
            Millilitres.of(-0.125),
            reason + ".",
            "\\n");
    String line = LedgerLines.line(movement);
    assertFalse(line.contains("\n") || line.contains("\r"));
    assertEquals(movement, LedgerLines.movement("l", 1, line));
  }

  @Property
  void a_ledger_line_with_one_other_character_is_damaged(
      @ForAll @IntRange(max = 200) int at, @ForAll char other) {
    String line = LedgerLines.line(Lots.move("m1", Movement.Kind.USE, "007", 0.4, Lots.DAY, "J"));
    int place = at % line.length();
    boolean same = line.charAt(place) == other || Character.isSurrogate(other);
    StringBuilder text = new StringBuilder(line);
    text.setCharAt(place, other);
    assertTrue(same || !LedgerLines.isWhole(text.toString()));
  }
}
