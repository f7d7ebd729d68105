package annulus.report;

import annulus.advice.Advice;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * The results of a job list as CSV: a row for every row read, refused ones too, so that nothing is
 * lost.
 */
public final class BatchTable {
  private final CSVPrinter out;
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
    this.out = new CSVPrinter(out, CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get());
    this.safe = safe;
    List<String> header = new ArrayList<>(List.of("line"));
    header.addAll(BatchColumns.header());
    this.out.printRecord(header);
  }

  /** A row that was answered. */
  public void answered(long line, Advice advice) {
    answered++;
    write(line, BatchColumns.row(advice));
  }

  /** A row that was refused. */
  public void refused(long line, String job, String problem) {
    refused++;
    List<String> header = BatchColumns.header();
    List<String> cells = new ArrayList<>(Collections.nCopies(header.size(), ""));
    cells.set(header.indexOf("job"), job);
    cells.set(header.indexOf("decision"), "refused");
    cells.set(header.indexOf("reason"), problem);
    write(line, cells);
  }

  private void write(long line, List<String> cells) {
    List<String> row = new ArrayList<>(List.of(Long.toString(line)));
    row.addAll(cells);
    try {
      out.printRecord(safe.apply(row));
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

  /** Writes what is held back. */
  public void flush() throws IOException {
    out.flush();
  }
}
