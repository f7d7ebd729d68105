package annulus.exchange;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/** Rows of a handbook table, read one by one into records. */
final class PlacedRows {
  private static final double FAR = 1e9;

  private PlacedRows() {}

  /**
   * Reads every row; the header must hold exactly the wanted columns.
   *
   * @param key columns by which a shop's row takes the place of the program's
   * @throws InputRefused with every problem of every row
   */
  static <T> List<T> read(
      List<LaidRows.Text> layers, List<String> columns, List<String> key, Function<Cells, T> row) {
    Problems problems = new Problems();
    List<T> rows = new ArrayList<>();
    try {
      for (Node.Obj cells : LaidRows.read(layers, columns, key)) {
        Fields fields = new Fields(cells, problems, "");
        Values.build(fields, problems, () -> row.apply(new Cells(fields))).ifPresent(rows::add);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(LaidRows.fileOf(layers) + ": " + e.getMessage(), e);
    }
    problems.throwIfAny();
    return rows;
  }

  /**
   * Builds what the rows of a file make together.
   *
   * @throws InputRefused when they do not fit together; no single line is to blame
   */
  static <T> T together(String file, Supplier<T> build) {
    try {
      return build.get();
    } catch (InvalidValue e) {
      throw new InputRefused(List.of(PlacedProblem.of(file, 0, e)));
    }
  }

  /** The cells of one row; what is wrong with one is noted, and the row is then dropped. */
  static final class Cells {
    private final Fields fields;

    private Cells(Fields fields) {
      this.fields = fields;
    }

    String text(String column) {
      return fields.requiredText(column);
    }

    /** NaN, with the problem noted, when there is none. */
    double number(String column) {
      return fields.requiredNumber(column, -FAR, FAR, "");
    }

    /** A name of an enum constant, written in small letters with hyphens. */
    <E extends Enum<E>> E word(String column, Class<E> type) {
      return fields.requiredChoice(column, type.getEnumConstants());
    }

    /** Columns low, likely, high. */
    Estimate estimate() {
      return new Estimate(number("low"), number("likely"), number("high"));
    }

    /** Columns source, confidence. */
    Provenance provenance() {
      return new Provenance(text("source"), word("confidence", Confidence.class));
    }
  }
}
