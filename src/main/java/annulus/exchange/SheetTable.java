package annulus.exchange;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * A table that a person edits in a spreadsheet.
 *
 * @param file its name
 * @param shape how it is written
 * @param header column names in the file's order
 * @param rows cells as the person sees them
 */
record SheetTable(String file, SheetShape shape, List<String> header, List<Row> rows) {
  private static final int MOST_IN_CELL = 1000;

  SheetTable {
    header = List.copyOf(header);
    rows = List.copyOf(rows);
  }

  /**
   * One row.
   *
   * @param line its first line in the file
   * @param cells one for each column
   */
  record Row(int line, List<String> cells) {
    Row {
      cells = List.copyOf(cells);
    }

    boolean isBlank() {
      return cells.stream().allMatch(String::isBlank);
    }
  }

  /**
   * Reads a table.
   *
   * @param columns all columns it may have
   * @param needed columns it must have
   * @throws InputRefused with every problem of the table's form
   */
  static SheetTable read(String file, Reader in, List<String> columns, Set<String> needed)
      throws IOException {
    String text = WholeText.of(file, in, "a table of a cabinet");
    SheetShape shape = SheetShape.of(file, text);
    String body = text.substring(shape.bom() ? 1 : 0);
    int skipped = shape.declared() ? 1 : 0;
    if (shape.declared()) {
      int end = body.indexOf('\n');
      body = end < 0 ? "" : body.substring(end + 1);
    }
    Problems problems = new Problems();
    List<Row> rows = parsed(file, body, shape, skipped, problems);
    problems.throwIfAny();
    if (rows.isEmpty()) {
      throw refused(file, 1, "is empty", "a header line: " + String.join(",", columns));
    }
    List<String> header = rows.get(0).cells().stream().map(String::strip).toList();
    checkHeader(file, rows.get(0).line(), header, columns, needed, problems);
    List<Row> body2 = rows.subList(1, rows.size());
    body2.forEach(r -> checkRow(file, r, header, problems));
    problems.throwIfAny();
    return new SheetTable(file, shape, header, body2);
  }

  /** The same with columns added at its end, empty. */
  SheetTable withColumns(List<String> more) {
    List<String> wider = new ArrayList<>(header);
    wider.addAll(more);
    List<Row> filled = new ArrayList<>();
    for (Row row : rows) {
      List<String> cells = new ArrayList<>(row.cells());
      more.forEach(m -> cells.add(""));
      filled.add(new Row(row.line(), cells));
    }
    return new SheetTable(file, shape, wider, filled);
  }

  private static InputRefused refused(String file, int line, String problem, String allowed) {
    return new InputRefused(List.of(new PlacedProblem(file, line, 0, "", problem, allowed)));
  }

  private static List<Row> parsed(
      String file, String body, SheetShape shape, int skipped, Problems problems)
      throws IOException {
    CSVFormat format =
        CSVFormat.DEFAULT.builder().setDelimiter(shape.delimiter()).setIgnoreEmptyLines(true).get();
    List<Row> rows = new ArrayList<>();
    long before = skipped;
    try (CSVParser parser = CSVParser.parse(new StringReader(body), format)) {
      for (CSVRecord row : parser) {
        rows.add(new Row((int) before + 1, row.stream().map(SheetCells::unguarded).toList()));
        before = parser.getCurrentLineNumber() + skipped;
      }
    } catch (UncheckedIOException | IOException e) {
      Node.Place place = new Node.Place(file, (int) before + 1, 0);
      problems.add(place, "", "quotes do not match in this row", "CSV (RFC 4180)");
    }
    return rows;
  }

  private static void checkHeader(
      String file,
      int line,
      List<String> header,
      List<String> columns,
      Set<String> needed,
      Problems problems) {
    for (int i = 0; i < header.size(); i++) {
      Node.Place place = new Node.Place(file, line, i + 1);
      String name = header.get(i);
      if (!columns.contains(name)) {
        problems.add(place, name, "is not a column here", Nearest.allowed(name, columns));
      } else if (header.indexOf(name) < i) {
        problems.add(place, name, "stands twice", "each column once");
      }
    }
    for (String name : columns) {
      if (needed.contains(name) && !header.contains(name)) {
        problems.add(
            new Node.Place(file, line, 0), name, "column is missing", String.join(", ", columns));
      }
    }
  }

  private static void checkRow(String file, Row row, List<String> header, Problems problems) {
    if (row.cells().size() != header.size()) {
      problems.add(
          new Node.Place(file, row.line(), 0),
          "",
          row.cells().size() + " cells",
          header.size() + " cells as in the header");
      return;
    }
    for (int i = 0; i < header.size(); i++) {
      String cell = row.cells().get(i);
      Node.Place place = new Node.Place(file, row.line(), i + 1);
      if (cell.length() > MOST_IN_CELL) {
        problems.add(
            place,
            header.get(i),
            "has " + cell.length() + " characters",
            "at most " + MOST_IN_CELL + " characters");
      } else if (SheetCells.isBroken(cell)) {
        problems.add(place, header.get(i), "has broken characters", "plain text");
      }
    }
  }

  /**
   * A row as an object: numbers in the number columns, everything else text, so that a lot number
   * stays as it is written. Blank cells are absent.
   */
  Node.Obj object(Row row, Set<String> numbers) {
    Map<String, Node> members = new LinkedHashMap<>();
    for (int i = 0; i < header.size(); i++) {
      String cell = row.cells().get(i).strip();
      if (!cell.isEmpty()) {
        Node.Place place = new Node.Place(file, row.line(), i + 1);
        boolean number = numbers.contains(header.get(i));
        members.put(header.get(i), number ? number(place, cell) : new Node.Text(place, cell));
      }
    }
    return new Node.Obj(new Node.Place(file, row.line(), 1), members);
  }

  private Node number(Node.Place place, String cell) {
    String sign = shape.decimalComma() ? "," : "\\.";
    if (cell.matches("[+-]?[0-9]{1,9}(" + sign + "[0-9]{1,9})?")) {
      return new Node.Num(place, cell.replace(',', '.'));
    }
    boolean otherSign = cell.matches("[+-]?[0-9]+[.,][0-9]+");
    String here = shape.decimalComma() ? "comma" : "point";
    return new Node.Text(
        place, otherSign ? cell + " (the decimal sign here is the " + here + ")" : cell);
  }

  /** The table as text, in the shape it came in. */
  String text() {
    StringBuilder text = new StringBuilder(shape.head());
    text.append(SheetCells.line(header, shape));
    rows.forEach(r -> text.append(SheetCells.line(r.cells(), shape)));
    return text.toString();
  }
}
