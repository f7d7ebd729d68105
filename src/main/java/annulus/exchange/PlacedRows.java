package annulus.exchange;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Rows of a data file of ours (# comments, one header line), whose errors name file and line. */
final class PlacedRows {
  private static final CSVFormat FORMAT =
      CSVFormat.DEFAULT
          .builder()
          .setCommentMarker('#')
          .setHeader()
          .setSkipHeaderRecord(true)
          .setIgnoreEmptyLines(true)
          .setTrim(true)
          .get();

  private PlacedRows() {}

  /** Reads every row; the header must hold exactly the wanted columns. */
  static <T> List<T> read(String file, Reader reader, Set<String> columns, Function<Cells, T> row) {
    List<T> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(reader, FORMAT)) {
      requireColumns(file, parser, columns);
      for (CSVRecord cells : parser) {
        rows.add(placed(new Cells(file, parser.getCurrentLineNumber(), cells), row));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(file + ": " + e.getMessage(), e);
    }
    return rows;
  }

  private static void requireColumns(String file, CSVParser parser, Set<String> columns) {
    List<String> found = parser.getHeaderNames();
    if (!Set.copyOf(found).equals(columns)) {
      throw new InvalidValue(
          file + ":" + parser.getCurrentLineNumber() + ": header",
          "has columns " + String.join(", ", found),
          String.join(", ", columns.stream().sorted().toList()));
    }
  }

  private static <T> T placed(Cells cells, Function<Cells, T> row) {
    try {
      cells.requireComplete();
      return row.apply(cells);
    } catch (InvalidValue e) {
      throw new InvalidValue(cells.place() + ": " + e.field(), e.problem(), e.allowed());
    }
  }

  /** The cells of one row. */
  static final class Cells {
    private final String file;
    private final long line;
    private final CSVRecord cells;

    private Cells(String file, long line, CSVRecord cells) {
      this.file = file;
      this.line = line;
      this.cells = cells;
    }

    String text(String column) {
      return cells.get(column);
    }

    double number(String column) {
      String text = text(column);
      try {
        return Double.parseDouble(text);
      } catch (NumberFormatException e) {
        throw new InvalidValue(column, "\"" + text + "\" is not a number", "a number with point");
      }
    }

    /** A name of an enum constant, written in small letters with hyphens. */
    <E extends Enum<E>> E word(String column, Class<E> type) {
      List<String> known = new ArrayList<>();
      for (E constant : type.getEnumConstants()) {
        String word = word(constant);
        if (word.equals(text(column))) {
          return constant;
        }
        known.add(word);
      }
      throw new InvalidValue(
          column, "\"" + text(column) + "\" is unknown", String.join(", ", known));
    }

    /** Columns low, likely, high. */
    Estimate estimate() {
      return new Estimate(number("low"), number("likely"), number("high"));
    }

    /** Columns source, confidence. */
    Provenance provenance() {
      return new Provenance(text("source"), word("confidence", Confidence.class));
    }

    private static String word(Enum<?> constant) {
      return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private String place() {
      return file + ":" + line;
    }

    private void requireComplete() {
      if (!cells.isConsistent()) {
        throw new InvalidValue(
            "row", "has " + cells.size() + " cells", "as many cells as the header has names");
      }
    }
  }
}
