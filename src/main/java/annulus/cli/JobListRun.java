package annulus.cli;

import annulus.advice.PromiseDesk;
import annulus.exchange.BatchOrders;
import annulus.exchange.BatchOrders.Row;
import annulus.exchange.DataFiles;
import annulus.exchange.OrderReader;
import annulus.exchange.PlacedProblem;
import annulus.exchange.PromisedOrder;
import annulus.quantity.InvalidValue;
import annulus.report.JobListText;
import annulus.report.JobListText.Line;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A day's list, read row by row; only a short line of each job is kept for the order. */
final class JobListRun {
  private static final int BLOCK = 64;
  private static final int PROGRESS = 512;

  private final PromiseDesk desk;
  private final OrderReader reader;
  private final JobListText text;
  private final PrintStream out;
  private final PrintStream err;
  private final List<Row> block = new ArrayList<>(BLOCK);
  private final List<Line> lines = new ArrayList<>();
  private String file = "";
  private long refused;

  JobListRun(PromiseDesk desk, OrderReader reader, Instant now, PrintStream out, PrintStream err) {
    this.desk = desk;
    this.reader = reader;
    this.text = new JobListText(desk.shop(), now);
    this.out = out;
    this.err = err;
  }

  private record Result(Optional<Line> line, List<PlacedProblem> problems) {}

  int run(Path list) throws IOException {
    file = list.toString();
    try (Reader in = DataFiles.utf8(Files.newInputStream(list))) {
      BatchOrders.read(file, in, reader, PromisedOrder.COLUMNS, this::add);
    }
    flush();
    out.print(text.text(lines));
    if (refused > 0) {
      err.println(refused + (refused == 1 ? " row" : " rows") + " can't be used, see above");
      return ExitCode.BAD_INPUT;
    }
    boolean no = lines.stream().anyMatch(l -> l.misses() || l.promise().isEmpty());
    return no ? ExitCode.ANSWER_IS_NO : ExitCode.ANSWER;
  }

  private void add(Row row) {
    block.add(row);
    if (block.size() == BLOCK) {
      flush();
    }
  }

  private void flush() {
    for (Result result : block.parallelStream().map(this::result).toList()) {
      result.problems().forEach(err::println);
      refused += result.line().isEmpty() ? 1 : 0;
      result.line().ifPresent(lines::add);
      long done = lines.size() + refused;
      if (done % PROGRESS == 0) {
        err.println(done + " jobs so far");
        err.flush();
      }
    }
    block.clear();
  }

  private Result result(Row row) {
    PromisedOrder read = PromisedOrder.of(file, row, desk.shop().hours().zone());
    if (read.order().isEmpty()) {
      return new Result(Optional.empty(), read.problems());
    }
    try {
      return new Result(
          Optional.of(text.line(desk.tell(read.order().get()), read.promised())), List.of());
    } catch (InvalidValue e) {
      PlacedProblem problem = PlacedProblem.of(file, (int) row.line(), e);
      return new Result(Optional.empty(), List.of(problem));
    }
  }
}
