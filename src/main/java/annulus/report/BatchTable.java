package annulus.report;

import annulus.advice.Advice;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The results of a job list as CSV: a row for every row read, refused ones too, so that nothing is
 * lost.
 */
public final class BatchTable {
  private final Appendable out;
  private final UnaryOperator<List<String>> safe;
  private long answered;
  private long refused;

  /**
   * Begins the table with its header.
   *
   * @param out where it is written
   * @param safe makes cells safe for spreadsheets
   * @throws IOException when it can't be written
   */
  public BatchTable(Appendable out, UnaryOperator<List<String>> safe) throws IOException {
    this.out = out;
    this.safe = safe;
    List<String> header = new ArrayList<>(List.of("line"));
    header.addAll(BatchColumns.header());
    out.append(CsvLine.of(header));
  }

  /**
   * A row of the table, made but not written.
   *
   * @param isAnswered whether it was answered; else it was refused
   * @param text the line
   */
  public record Row(boolean isAnswered, String text) {}

  /** A row that was answered; may be made by any thread. */
  public Row answered(long line, Advice advice) {
    return new Row(true, text(line, BatchColumns.row(advice)));
  }

  /** A row that was refused; may be made by any thread. */
  public Row refused(long line, String job, String problem) {
    List<String> header = BatchColumns.header();
    List<String> cells = new ArrayList<>(Collections.nCopies(header.size(), ""));
    cells.set(header.indexOf("job"), job);
    cells.set(header.indexOf("decision"), "refused");
    cells.set(header.indexOf("reason"), problem);
    return new Row(false, text(line, cells));
  }

  private String text(long line, List<String> cells) {
    List<String> row = new ArrayList<>(cells.size() + 1);
    row.add(Long.toString(line));
    row.addAll(cells);
    return CsvLine.of(safe.apply(row));
  }

  /** Writes a row. */
  public void write(Row row) {
    answered += row.isAnswered() ? 1 : 0;
    refused += row.isAnswered() ? 0 : 1;
    try {
      out.append(row.text());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How many rows were answered. */
  public long answered() {
    return answered;
  }

  /** How many rows were refused. */
  public long refused() {
    return refused;
  }
}
