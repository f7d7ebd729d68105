package annulus.exchange;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.exchange.BatchOrders.Row;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Answers the rows of a job list one after the other, whatever their number, in bounded memory. */
public final class BatchAnswers {
  private static final int BLOCK = 256;

  private final String file;
  private final Advisor advisor;
  private final Consumer<Answered> consumer;
  private final List<Row> block = new ArrayList<>(BLOCK);

  private BatchAnswers(String file, Advisor advisor, Consumer<Answered> consumer) {
    this.file = file;
    this.advisor = advisor;
    this.consumer = consumer;
  }

  /**
   * One row answered or refused.
   *
   * @param line its line in the file
   * @param job its job reference, empty if it has none
   * @param advice the answer; empty when refused
   * @param problems what is wrong with it
   */
  public record Answered(
      long line, String job, Optional<Advice> advice, List<PlacedProblem> problems) {
    public Answered {
      problems = List.copyOf(problems);
    }
  }

  /**
   * Answers all rows; every row read comes out once, in order.
   *
   * @throws InputRefused when the header can't be used
   * @throws IOException when the file can't be read
   */
  public static void read(
      String file, Reader in, OrderReader reader, Advisor advisor, Consumer<Answered> consumer)
      throws IOException {
    BatchAnswers answers = new BatchAnswers(file, advisor, consumer);
    BatchOrders.read(file, in, reader, answers::add);
    answers.flush();
  }

  private void add(Row row) {
    block.add(row);
    if (block.size() == BLOCK) {
      flush();
    }
  }

  /** A block is worked on by all cores and given out in the order it was read. */
  private void flush() {
    block.parallelStream().map(this::answered).toList().forEach(consumer);
    block.clear();
  }

  private Answered answered(Row row) {
    String job = Optional.ofNullable(row.job()).orElse("");
    if (row.order().isEmpty()) {
      return new Answered(row.line(), job, Optional.empty(), row.problems());
    }
    try {
      Advice advice = advisor.advise(row.order().get());
      return new Answered(row.line(), job, Optional.of(advice), List.of());
    } catch (InvalidValue e) {
      PlacedProblem problem =
          new PlacedProblem(file, (int) row.line(), 0, e.field(), e.problem(), e.allowed());
      return new Answered(row.line(), job, Optional.empty(), List.of(problem));
    }
  }
}
