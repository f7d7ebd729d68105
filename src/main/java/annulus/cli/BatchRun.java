package annulus.cli;

import annulus.advice.Advisor;
import annulus.exchange.BatchAnswers;
import annulus.exchange.BatchAnswers.Answered;
import annulus.exchange.OrderReader;
import annulus.exchange.PlacedProblem;
import annulus.exchange.SpreadsheetCells;
import annulus.report.BatchTable;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.util.List;

/** {@code advise --batch}: a job list answered into a table, its problems said on stderr. */
final class BatchRun {
  private BatchRun() {}

  /** How many rows were answered and refused. */
  record Count(long answered, long refused) {}

  static Count run(
      String file, Reader in, Appendable out, Advisor advisor, OrderReader reader, PrintStream err)
      throws IOException {
    BatchTable table = new BatchTable(out, SpreadsheetCells::safe);
    BatchAnswers.read(
        file,
        in,
        reader,
        advisor::advise,
        row -> line(table, row),
        line -> write(table, line, err));
    return new Count(table.answered(), table.refused());
  }

  private record Line(BatchTable.Row row, List<PlacedProblem> problems) {}

  private static Line line(BatchTable table, Answered row) {
    if (row.advice().isPresent()) {
      return new Line(table.answered(row.line(), row.advice().get()), List.of());
    }
    String first = row.problems().get(0).toString();
    return new Line(table.refused(row.line(), row.job(), first), row.problems());
  }

  private static void write(BatchTable table, Line line, PrintStream err) {
    line.problems().forEach(err::println);
    table.write(line.row());
  }
}
