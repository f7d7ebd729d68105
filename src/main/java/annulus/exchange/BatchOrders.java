package annulus.exchange;

import annulus.advice.JointOrder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVException;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Streams the rows of a job list. Comma, semicolon or tab; with or without BOM; a decimal comma
 * where the first line declares it: {@code # decimal: comma}.
 */
public final class BatchOrders {
  private static final Pattern WITH_POINT =
      Pattern.compile("(^|[;\\s])[+-]?[0-9]+\\.[0-9]+($|[;\\s])");
  private static final String NUMBER = "[+-]?[0-9]+(?:,[0-9]+)?(?:\\s*[A-Za-zµμ°\"]+)?";
  private static final Pattern NUMBERS = Pattern.compile(NUMBER + "(?:[;\\s]+" + NUMBER + ")*\\s*");

  private final String file;
  private final OrderReader reader;
  private final Set<String> beside;
  private boolean decimalComma;
  private char delimiter = ',';

  private BatchOrders(String file, OrderReader reader, Set<String> beside) {
    this.file = file;
    this.beside = beside;
    this.reader = reader;
  }

  /**
   * One row: an order, or what is wrong with it.
   *
   * @param line its line in the file
   * @param job its job reference, empty if it has none
   * @param order the order, empty when refused
   * @param problems what is wrong
   * @param beside cells of the columns that were allowed beside those of an order; empty ones lack
   */
  public record Row(
      long line,
      String job,
      Optional<JointOrder> order,
      List<PlacedProblem> problems,
      Map<String, String> beside) {
    public Row {
      problems = List.copyOf(problems);
      beside = Map.copyOf(beside);
    }
  }

  /**
   * Reads all rows in order.
   *
   * @throws InputRefused when the header can't be used
   * @throws IOException when the file can't be read
   */
  public static void read(String file, Reader in, OrderReader reader, Consumer<Row> consumer)
      throws IOException {
    read(file, in, reader, Set.of(), consumer);
  }

  /**
   * Reads all rows in order, with columns that are not of the order.
   *
   * @param beside names of such columns; a file may lack them
   * @throws InputRefused when the header can't be used
   * @throws IOException when the file can't be read
   */
  public static void read(
      String file, Reader in, OrderReader reader, Set<String> beside, Consumer<Row> consumer)
      throws IOException {
    eachUnread(file, in, reader, beside, row -> consumer.accept(row.get()));
  }

  /**
   * As {@link #read}, but leaves the reading of each row to the consumer, at any later time and on
   * any thread: the rows do not depend on each other.
   */
  static void eachUnread(
      String file,
      Reader in,
      OrderReader reader,
      Set<String> beside,
      Consumer<Supplier<Row>> consumer)
      throws IOException {
    try {
      new BatchOrders(file, reader, beside).rows(in, consumer);
    } catch (CharacterCodingException e) {
      throw notText(file);
    }
  }

  private static InputRefused notText(String file) {
    return new InputRefused(
        List.of(new PlacedProblem(file, 0, 0, "", "is not UTF-8 text", "text saved as UTF-8")));
  }

  private void rows(Reader in, Consumer<Supplier<Row>> consumer) throws IOException {
    RowLimit limited = new RowLimit(file, in);
    BufferedReader buffered = new BufferedReader(limited);
    PushbackReader head = declared(buffered);
    CSVFormat format =
        CSVFormat.DEFAULT.builder().setDelimiter(delimiter).setIgnoreEmptyLines(false).get();
    int skipped = decimalDeclared ? 1 : 0;
    try (CSVParser parser = CSVParser.parse(head, format)) {
      Columns columns = null;
      Iterator<CSVRecord> records = parser.iterator();
      for (long line = skipped + 1L; ; line = parser.getCurrentLineNumber() + skipped + 1) {
        Optional<CSVRecord> row = next(records, columns == null, line, consumer);
        limited.nextRow();
        if (row.isEmpty()) {
          break;
        } else if (!isBlank(row.get())) {
          if (columns == null) {
            columns = columns(header(row.get(), (int) line));
          } else {
            consumer.accept(unread(row.get(), columns, line));
          }
        }
      }
      if (columns == null) {
        throw new InputRefused(
            List.of(new PlacedProblem(file, 1, 0, "", "is empty", "a header line and rows")));
      }
    }
  }

  /**
   * The next record. Where the quotes of a row go wrong the rows behind it can't be told apart:
   * that row is refused, and it is the last.
   */
  private Optional<CSVRecord> next(
      Iterator<CSVRecord> records, boolean inHeader, long line, Consumer<Supplier<Row>> consumer)
      throws IOException {
    try {
      return records.hasNext() ? Optional.of(records.next()) : Optional.empty();
    } catch (UncheckedIOException e) {
      if (!(e.getCause() instanceof CSVException)) {
        throw e.getCause();
      }
      PlacedProblem problem =
          new PlacedProblem(
              file,
              (int) line,
              0,
              "",
              "has a quote that does not close its cell; this row and all after it are not read",
              "quotes round the whole cell, doubled inside: \"a \"\"b\"\" c\"");
      return last(problem, inHeader, consumer);
    } catch (InputRefused e) {
      PlacedProblem p = e.problems().get(0);
      return last(
          new PlacedProblem(file, (int) line, 0, "", p.problem(), p.allowed()), inHeader, consumer);
    }
  }

  /** A row behind which nothing can be read. */
  private static Optional<CSVRecord> last(
      PlacedProblem problem, boolean inHeader, Consumer<Supplier<Row>> consumer) {
    if (inHeader) {
      throw new InputRefused(List.of(problem));
    }
    Row refused = new Row(problem.line(), "", Optional.empty(), List.of(problem), Map.of());
    consumer.accept(() -> refused);
    return Optional.empty();
  }

  private static boolean isBlank(CSVRecord row) {
    return row.size() == 1 && row.get(0).isBlank();
  }

  private boolean decimalDeclared;

  /** Looks at the first line for a BOM, a declaration and the delimiter. */
  private PushbackReader declared(BufferedReader in) throws IOException {
    String first = in.readLine();
    first = first == null ? "" : first.startsWith("\uFEFF") ? first.substring(1) : first;
    requireText(first);
    if (first.startsWith("#")) {
      decimalDeclared = true;
      String rule = first.substring(1).replaceAll("[,;\\t]+$", "").strip();
      if (rule.equals("decimal: comma")) {
        decimalComma = true;
      } else if (!rule.equals("decimal: point")) {
        throw new InputRefused(
            List.of(
                new PlacedProblem(
                    file,
                    1,
                    1,
                    "",
                    Fields.quoted(first) + " is not understood",
                    "# decimal: comma or # decimal: point")));
      }
      String next = in.readLine();
      first = next == null ? "" : next;
    }
    requireText(first);
    delimiter = first.indexOf(';') >= 0 ? ';' : first.indexOf('\t') >= 0 ? '\t' : ',';
    String header = first + "\n";
    PushbackReader reader = new PushbackReader(in, header.length() + 1);
    reader.unread(header.toCharArray());
    return reader;
  }

  /** A file of two bytes a letter, or of another encoding, shows in its first line. */
  private void requireText(String line) {
    if (line.indexOf('\0') >= 0 || line.indexOf(SheetCells.NO_CHARACTER) >= 0) {
      throw notText(file);
    }
  }

  /**
   * The columns of a list.
   *
   * @param all in the order of the file
   * @param job where the job reference stands; -1 where it does not
   */
  private record Columns(List<Column> all, int job) {}

  /**
   * What a header says, understood once for all rows.
   *
   * @param name as it stands in the header
   * @param isBeside whether it is not of the order
   * @param hasComma whether its numbers have a decimal comma
   * @param spot where its values go in an order
   */
  private record Column(String name, boolean isBeside, boolean hasComma, FlatOrder.Spot spot) {}

  private Columns columns(List<String> names) {
    List<Column> all = new ArrayList<>();
    for (String name : names) {
      boolean other = beside.contains(name);
      boolean comma = decimalComma && !other && !FlatOrder.isText(name);
      all.add(new Column(name, other, comma, FlatOrder.spot(name)));
    }
    return new Columns(List.copyOf(all), names.indexOf("job"));
  }

  private List<String> header(CSVRecord row, int line) {
    Problems problems = new Problems();
    List<String> names = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      String name = row.get(i).strip();
      if (!FlatOrder.names().contains(name) && !beside.contains(name)) {
        problems.add(
            new Node.Place(file, line, i + 1),
            name,
            "is not a column here",
            Nearest.allowed(name, FlatOrder.names()));
      } else if (names.contains(name)) {
        problems.add(new Node.Place(file, line, i + 1), name, "stands twice", "each column once");
      }
      names.add(name);
    }
    problems.throwIfAny();
    return names;
  }

  private Supplier<Row> unread(CSVRecord row, Columns columns, long line) {
    return () -> row(row, columns, line);
  }

  private Row row(CSVRecord row, Columns columns, long line) {
    Node.Place place = new Node.Place(file, (int) line, 0);
    List<Column> all = columns.all();
    boolean whole = row.size() == all.size();
    String said = whole && columns.job() >= 0 ? row.get(columns.job()) : "";
    String job = SheetCells.isBroken(said) ? "" : said;
    if (!whole) {
      PlacedProblem problem =
          place.problem("", row.size() + " cells", all.size() + " cells as in the header");
      return new Row(line, job, Optional.empty(), List.of(problem), Map.of());
    }
    FlatOrder.Made flat = new FlatOrder.Made();
    Map<String, String> other = new LinkedHashMap<>();
    List<PlacedProblem> wrong = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      String cell = row.get(i).strip();
      Column column = all.get(i);
      if (!cell.isEmpty()) {
        Node.Place at = new Node.Place(file, (int) line, i + 1);
        Optional<PlacedProblem> problem = problem(cell, column, at);
        if (problem.isPresent()) {
          wrong.add(problem.get());
        } else if (column.isBeside()) {
          other.put(column.name(), cell);
        } else {
          String written = column.hasComma() ? withPoint(cell) : cell;
          flat.put(column.spot(), new Node.Text(at, written));
        }
      }
    }
    if (!wrong.isEmpty()) {
      return new Row(line, job, Optional.empty(), wrong, other);
    }
    try {
      JointOrder order = reader.read(flat.order(place), false);
      return new Row(line, job, Optional.of(order), List.of(), other);
    } catch (InputRefused e) {
      return new Row(line, job, Optional.empty(), inColumns(e), other);
    }
  }

  /** What makes a cell unreadable whatever its column. */
  private static Optional<PlacedProblem> problem(String cell, Column column, Node.Place at) {
    if (SheetCells.isBroken(cell)) {
      boolean text = cell.indexOf(SheetCells.NO_CHARACTER) < 0;
      return Optional.of(
          at.problem(
              column.name(),
              text ? "has broken characters" : "is not UTF-8 text",
              text ? "plain text" : "a file saved as UTF-8"));
    }
    return column.hasComma() && WITH_POINT.matcher(cell).find()
        ? Optional.of(
            at.problem(
                column.name(),
                Fields.quoted(cell) + " has a point, but the file declares a decimal comma",
                "a decimal comma: " + cell.replace('.', ',')))
        : Optional.empty();
  }

  /** The problems by the names of the columns. */
  private List<PlacedProblem> inColumns(InputRefused refused) {
    return refused.problems().stream().map(this::inColumns).toList();
  }

  private PlacedProblem inColumns(PlacedProblem p) {
    boolean comma = !decimalDeclared && p.problem().endsWith("has a decimal comma");
    String allowed = p.allowed() + (comma ? ", or a first line # decimal: comma" : "");
    return new PlacedProblem(
        p.file(), p.line(), p.column(), FlatOrder.nameOf(p.field()), p.problem(), allowed);
  }

  /** Under a declared decimal comma, numbers with the point that the readers expect. */
  private static String withPoint(String cell) {
    return NUMBERS.matcher(cell).matches() ? cell.replace(',', '.') : cell;
  }
}
