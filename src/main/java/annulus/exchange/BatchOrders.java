package annulus.exchange;

import annulus.advice.JointOrder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Pattern;
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
  private static final Pattern NUMBERS =
      Pattern.compile("[+-]?[0-9]+(,[0-9]+)?([;\\s]+[+-]?[0-9]+(,[0-9]+)?)*");

  private final String file;
  private final OrderReader reader;
  private boolean decimalComma;
  private char delimiter = ',';

  private BatchOrders(String file, OrderReader reader) {
    this.file = file;
    this.reader = reader;
  }

  /**
   * One row: an order, or what is wrong with it.
   *
   * @param line its line in the file
   * @param job its job reference, empty if it has none
   * @param order the order, empty when refused
   * @param problems what is wrong
   */
  public record Row(
      long line, String job, Optional<JointOrder> order, List<PlacedProblem> problems) {}

  /**
   * Reads all rows in order.
   *
   * @throws InputRefused when the header can't be used
   * @throws IOException when the file can't be read
   */
  public static void read(String file, Reader in, OrderReader reader, Consumer<Row> consumer)
      throws IOException {
    new BatchOrders(file, reader).rows(in, consumer);
  }

  private void rows(Reader in, Consumer<Row> consumer) throws IOException {
    BufferedReader buffered = new BufferedReader(in);
    PushbackReader head = declared(buffered);
    CSVFormat format =
        CSVFormat.DEFAULT.builder().setDelimiter(delimiter).setIgnoreEmptyLines(true).get();
    int skipped = decimalDeclared ? 1 : 0;
    try (CSVParser parser = CSVParser.parse(head, format)) {
      List<String> names = null;
      long before = skipped;
      for (CSVRecord row : parser) {
        long line = before + 1;
        before = parser.getCurrentLineNumber() + skipped;
        if (names == null) {
          names = header(row, (int) line);
        } else {
          consumer.accept(row(row, names, line));
        }
      }
      if (names == null) {
        throw new InputRefused(
            List.of(new PlacedProblem(file, 1, 0, "", "is empty", "a header line and rows")));
      }
    } catch (UncheckedIOException e) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  file, 0, 0, "", "is not readable CSV: " + reason(e), "CSV (RFC 4180), UTF-8")));
    }
  }

  private static String reason(UncheckedIOException e) {
    String text = e.getCause() == null ? e.getMessage() : e.getCause().getMessage();
    return text == null ? "wrong characters" : text;
  }

  private boolean decimalDeclared;

  /** Looks at the first line for a BOM, a declaration and the delimiter. */
  private PushbackReader declared(BufferedReader in) throws IOException {
    String first = in.readLine();
    first = first == null ? "" : first.startsWith("\uFEFF") ? first.substring(1) : first;
    if (first.startsWith("#")) {
      decimalDeclared = true;
      String rule = first.substring(1).strip();
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
    delimiter = first.indexOf(';') >= 0 ? ';' : first.indexOf('\t') >= 0 ? '\t' : ',';
    String header = first + "\n";
    PushbackReader reader = new PushbackReader(in, header.length() + 1);
    reader.unread(header.toCharArray());
    return reader;
  }

  private List<String> header(CSVRecord row, int line) {
    Problems problems = new Problems();
    List<String> names = new ArrayList<>();
    for (int i = 0; i < row.size(); i++) {
      String name = row.get(i).strip();
      if (!FlatOrder.names().contains(name)) {
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

  private Row row(CSVRecord row, List<String> names, long line) {
    Node.Place place = new Node.Place(file, (int) line, 0);
    String job =
        names.contains("job") && row.size() == names.size() ? row.get(names.indexOf("job")) : "";
    if (row.size() != names.size()) {
      PlacedProblem problem =
          place.problem("", row.size() + " cells", names.size() + " cells as in the header");
      return new Row(line, job, Optional.empty(), List.of(problem));
    }
    Map<String, Node> flat = new LinkedHashMap<>();
    List<PlacedProblem> ambiguous = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      String cell = row.get(i).strip();
      Node.Place at = new Node.Place(file, (int) line, i + 1);
      if (decimalComma && WITH_POINT.matcher(cell).find()) {
        ambiguous.add(
            at.problem(
                names.get(i),
                Fields.quoted(cell) + " has a point, but the file declares a decimal comma",
                "a decimal comma: " + cell.replace('.', ',')));
      } else if (!cell.isEmpty()) {
        flat.put(names.get(i), new Node.Text(at, withPoint(cell)));
      }
    }
    if (!ambiguous.isEmpty()) {
      return new Row(line, job, Optional.empty(), ambiguous);
    }
    try {
      JointOrder order = reader.read(FlatOrder.toOrder(place, flat), false);
      return new Row(line, job, Optional.of(order), List.of());
    } catch (InputRefused e) {
      return new Row(line, job, Optional.empty(), e.problems());
    }
  }

  /** Under a declared decimal comma, numbers with the point that the readers expect. */
  private String withPoint(String cell) {
    return decimalComma && NUMBERS.matcher(cell).matches() ? cell.replace(',', '.') : cell;
  }
}
