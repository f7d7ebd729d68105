package annulus.cli;

import annulus.advice.Advisor;
import annulus.exchange.BatchAnswers;
import annulus.exchange.BatchAnswers.Answered;
import annulus.exchange.OrderReader;
import annulus.exchange.SpreadsheetCells;
import annulus.report.BatchTable;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;

/** {@code advise --batch}: a job list answered into a table, its problems said on stderr. */
final class BatchRun {
  private BatchRun() {}

  /** How many rows were answered and refused. */
  record Count(long answered, long refused) {}

  static Count run(
      String file, Reader in, Appendable out, Advisor advisor, OrderReader reader, PrintStream err)
      throws IOException {
    BatchTable table = new BatchTable(out, SpreadsheetCells::safe);
    BatchAnswers.read(file, in, reader, advisor, row -> write(table, row, err));
    table.flush();
    return new Count(table.answered(), table.refused());
  }

  private static void write(BatchTable table, Answered row, PrintStream err) {
    if (row.advice().isPresent()) {
      table.answered(row.line(), row.advice().get());
    } else {
      row.problems().forEach(err::println);
      table.refused(row.line(), row.job(), row.problems().get(0).toString());
    }
  }
}
