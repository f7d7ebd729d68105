package annulus.exchange;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import annulus.exchange.BatchOrders.Row;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.io.Reader;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ForkJoinPool;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Answers the rows of a job list, whatever their number, in bounded memory. The rows are read,
 * answered and put into words by all cores, and given out in the order of the file.
 *
 * @param <T> what is made of an answer
 */
public final class BatchAnswers<T> {
  private final String file;
  private final Function<JointOrder, Advice> advisor;
  private final Function<Answered, T> made;

  private BatchAnswers(
      String file, Function<JointOrder, Advice> advisor, Function<Answered, T> made) {
    this.file = file;
    this.advisor = advisor;
    this.made = made;
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
   * Answers all rows; every row read comes out once, in order. What was promised may stand in the
   * list as well: a shop keeps one list.
   *
   * @param advisor answers one order; may be called by several threads at once
   * @param made makes of an answer what is given out; may be called by several threads at once
   * @param consumer takes it, in the order of the file
   * @throws InputRefused when the header can't be used
   * @throws IOException when the file can't be read
   */
  public static <T> void read(
      String file,
      Reader in,
      OrderReader reader,
      Function<JointOrder, Advice> advisor,
      Function<Answered, T> made,
      Consumer<T> consumer)
      throws IOException {
    BatchAnswers<T> answers = new BatchAnswers<>(file, advisor, made);
    int cores = Runtime.getRuntime().availableProcessors();
    if (cores == 1) { // there is nobody to share the work with
      BatchOrders.eachUnread(
          file, in, reader, PromisedOrder.COLUMNS, row -> consumer.accept(answers.made(row)));
      return;
    }
    InOrder<Supplier<Row>, T> rows =
        new InOrder<>(answers::made, consumer, ForkJoinPool.commonPool(), cores);
    BatchOrders.eachUnread(file, in, reader, PromisedOrder.COLUMNS, rows::add);
    rows.finish();
  }

  private T made(Supplier<Row> row) {
    return made.apply(answered(row.get()));
  }

  private Answered answered(Row row) {
    String job = Optional.ofNullable(row.job()).orElse("");
    if (row.order().isEmpty()) {
      return new Answered(row.line(), job, Optional.empty(), row.problems());
    }
    try {
      Advice advice = advisor.apply(row.order().get());
      return new Answered(row.line(), job, Optional.of(advice), List.of());
    } catch (InvalidValue e) {
      PlacedProblem problem = PlacedProblem.of(file, (int) row.line(), e);
      return new Answered(row.line(), job, Optional.empty(), List.of(problem));
    }
  }
}
