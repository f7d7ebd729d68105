package annulus.cli;

import annulus.advice.JointOrder;
import annulus.advice.PromiseDesk;
import annulus.advice.PromiseDesk.Told;
import annulus.exchange.BatchOrders;
import annulus.exchange.BatchOrders.Row;
import annulus.exchange.JudgedRow;
import annulus.exchange.OrderReader;
import annulus.exchange.PromisedOrder;
import annulus.exchange.ReadingText;
import annulus.exchange.SharedLog;
import annulus.report.JobListText;
import annulus.report.JobListText.Line;
import annulus.report.ReassessmentText;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.io.UncheckedIOException;
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
  private final Instant now;
  private final PrintStream out;
  private final PrintStream err;
  private final List<Row> block = new ArrayList<>(BLOCK);
  private final List<Line> lines = new ArrayList<>();
  private String file = "";
  private long refused;
  private Optional<SharedLog> beside = Optional.empty();

  JobListRun(PromiseDesk desk, OrderReader reader, Instant now, PrintStream out, PrintStream err) {
    this.desk = desk;
    this.reader = reader;
    this.now = now;
    this.text = new JobListText(desk.shop(), now);
    this.out = out;
    this.err = err;
  }

  int run(Path list, Optional<SharedLog> log) throws IOException {
    file = list.toString();
    beside = log;
    try (Reader in = InputFile.text(list)) {
      BatchOrders.read(file, in, reader, PromisedOrder.COLUMNS, this::add);
    }
    flush();
    out.print(text.text(lines));
    log.ifPresent(l -> out.print("\n" + ReassessmentText.ofList(howRead(l))));
    if (refused > 0) {
      err.println(refused + (refused == 1 ? " row" : " rows") + " can't be used, see above");
      return ExitCode.BAD_INPUT;
    }
    boolean no = lines.stream().anyMatch(l -> l.misses() || l.promise().isEmpty());
    return no ? ExitCode.ANSWER_IS_NO : ExitCode.ANSWER;
  }

  private String howRead(SharedLog log) {
    return ReadingText.of(log.reading(), desk.shop().hours().zone());
  }

  private void add(Row row) {
    block.add(row);
    if (block.size() == BLOCK) {
      flush();
    }
  }

  private void flush() {
    for (JudgedRow<Line> result : block.parallelStream().map(this::result).toList()) {
      result.problems().forEach(err::println);
      refused += result.result().isEmpty() ? 1 : 0;
      result.result().ifPresent(lines::add);
      long done = lines.size() + refused;
      if (done % PROGRESS == 0) {
        err.println(done + " jobs so far");
        err.flush();
      }
    }
    block.clear();
  }

  private JudgedRow<Line> result(Row row) {
    return JudgedRow.of(
        file,
        row,
        desk.shop().hours().zone(),
        (order, promised) -> text.line(told(order), promised));
  }

  private Told told(JointOrder order) {
    Told planned = desk.tell(order);
    if (!order.start().isBefore(now) || beside.filter(l -> l.reaches(order)).isEmpty()) {
      return planned;
    }
    try {
      return desk.reassess(order, beside.get().course(order)).later();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
