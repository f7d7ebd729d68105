package annulus.cli;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.exchange.BatchOrders;
import annulus.exchange.BatchOrders.Row;
import annulus.exchange.OrderReader;
import annulus.exchange.PlacedProblem;
import annulus.exchange.SpreadsheetCells;
import annulus.quantity.InvalidValue;
import annulus.report.BatchColumns;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Answers the rows of a job list one after the other, whatever their number, in bounded memory. The
 * result has a row for every row read, refused ones too, so that nothing is lost.
 */
final class BatchRun {
  private static final int BLOCK = 256;

  private final String file;
  private final Advisor advisor;
  private final CSVPrinter out;
  private final PrintStream err;
  private final List<Row> block = new ArrayList<>(BLOCK);
  private long answered;
  private long refused;

  private BatchRun(String file, Advisor advisor, CSVPrinter out, PrintStream err) {
    this.file = file;
    this.advisor = advisor;
    this.out = out;
    this.err = err;
  }

  /** How many rows were answered and refused. */
  record Count(long answered, long refused) {}

  private record Result(List<String> cells, List<PlacedProblem> problems) {}

  static Count run(
      String file, Reader in, Appendable out, Advisor advisor, OrderReader reader, PrintStream err)
      throws IOException {
    CSVFormat format = CSVFormat.DEFAULT.builder().setRecordSeparator("\n").get();
    CSVPrinter printer = new CSVPrinter(out, format);
    List<String> header = new ArrayList<>(List.of("line"));
    header.addAll(BatchColumns.header());
    printer.printRecord(header);
    BatchRun run = new BatchRun(file, advisor, printer, err);
    BatchOrders.read(file, in, reader, run::add);
    run.flush();
    printer.flush();
    return new Count(run.answered, run.refused);
  }

  private void add(Row row) {
    block.add(row);
    if (block.size() == BLOCK) {
      flush();
    }
  }

  /** A block is worked on by all cores and written in the order it was read. */
  private void flush() {
    List<Result> results = block.parallelStream().map(this::result).toList();
    for (int i = 0; i < results.size(); i++) {
      write(block.get(i), results.get(i));
    }
    block.clear();
  }

  private Result result(Row row) {
    if (row.order().isEmpty()) {
      return new Result(List.of(), row.problems());
    }
    try {
      Advice advice = advisor.advise(row.order().get());
      return new Result(BatchColumns.row(advice), List.of());
    } catch (InvalidValue e) {
      PlacedProblem problem =
          new PlacedProblem(file, (int) row.line(), 0, e.field(), e.problem(), e.allowed());
      return new Result(List.of(), List.of(problem));
    }
  }

  private void write(Row row, Result result) {
    List<String> cells = new ArrayList<>();
    cells.add(Long.toString(row.line()));
    if (result.problems().isEmpty()) {
      answered++;
      cells.addAll(result.cells());
    } else {
      refused++;
      result.problems().forEach(err::println);
      cells.addAll(refusedCells(row, result.problems().get(0)));
    }
    try {
      out.printRecord(SpreadsheetCells.safe(cells));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> refusedCells(Row row, PlacedProblem problem) {
    List<String> header = BatchColumns.header();
    List<String> cells = new ArrayList<>(Collections.nCopies(header.size(), ""));
    cells.set(header.indexOf("job"), Optional.ofNullable(row.job()).orElse(""));
    cells.set(header.indexOf("decision"), "refused");
    cells.set(header.indexOf("reason"), problem.toString());
    return cells;
  }
}
