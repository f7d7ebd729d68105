package annulus.web;

import annulus.advice.PromiseDesk;
import annulus.exchange.BatchOrders;
import annulus.exchange.JudgedRow;
import annulus.exchange.OrderReader;
import annulus.exchange.PlacedProblem;
import annulus.exchange.PromisedOrder;
import annulus.report.JobListText;
import annulus.report.JobListText.Line;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * A day's list judged: when each job is ready, and which promise can't be kept.
 *
 * @param text the list as the command line prints it
 * @param lines every job, those that miss their promise first
 * @param problems of the rows that can't be used
 */
record ReadyList(String text, List<Line> lines, List<PlacedProblem> problems) {
  ReadyList {
    lines = List.copyOf(lines);
    problems = List.copyOf(problems);
  }

  static ReadyList of(Upload list, PromiseDesk desk, OrderReader reader, Instant now) {
    JobListText words = new JobListText(desk.shop(), now);
    List<Line> lines = new ArrayList<>();
    List<PlacedProblem> problems = new ArrayList<>();
    try {
      BatchOrders.read(
          list.name(),
          new StringReader(list.text()),
          reader,
          PromisedOrder.COLUMNS,
          row -> {
            JudgedRow<Line> job =
                JudgedRow.of(
                    list.name(),
                    row,
                    desk.shop().hours().zone(),
                    (order, promised) -> words.line(desk.tell(order), promised));
            job.result().ifPresent(lines::add);
            problems.addAll(job.problems());
          });
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new ReadyList(words.text(lines), JobListText.inOrder(lines), problems);
  }
}
