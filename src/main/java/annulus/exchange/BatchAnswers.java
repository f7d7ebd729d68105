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
import java.util.function.Function;
import java.util.function.Supplier;

/**
 * Answers the rows of a job list, whatever their number, in bounded memory. Blocks of rows are
 * read, answered and put into words by all cores, and given out in the order of the file.
 *
 * @param <T> what is made of an answer
 */
public final class BatchAnswers<T> {
  private static final int BLOCK = 1024;

  private final String file;
  private final Advisor advisor;
  private final Function<Answered, T> made;
  private final Consumer<T> consumer;

  /** With one core there is nobody to share the work with. */
  private final boolean alone = Runtime.getRuntime().availableProcessors() == 1;

  private final List<Supplier<Row>> block = new ArrayList<>(BLOCK);

  private BatchAnswers(
      String file, Advisor advisor, Function<Answered, T> made, Consumer<T> consumer) {
    this.file = file;
    this.advisor = advisor;
    this.made = made;
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
   * Answers all rows; every row read comes out once, in order. What was promised may stand in the
   * list as well: a shop keeps one list.
   *
   * @param made makes of an answer what is given out; may be called by several threads at once
   * @param consumer takes it, in the order of the file
   * @throws InputRefused when the header can't be used
   * @throws IOException when the file can't be read
   */
  public static <T> void read(
      String file,
      Reader in,
      OrderReader reader,
      Advisor advisor,
      Function<Answered, T> made,
      Consumer<T> consumer)
      throws IOException {
    BatchAnswers<T> answers = new BatchAnswers<>(file, advisor, made, consumer);
    BatchOrders.eachUnread(file, in, reader, PromisedOrder.COLUMNS, answers::add);
    answers.flush();
  }

  private void add(Supplier<Row> row) {
    if (alone) {
      consumer.accept(made.apply(answered(row.get())));
      return;
    }
    block.add(row);
    if (block.size() == BLOCK) {
      flush();
    }
  }

  private void flush() {
    block.parallelStream().map(row -> made.apply(answered(row.get()))).toList().forEach(consumer);
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
      PlacedProblem problem = PlacedProblem.of(file, (int) row.line(), e);
      return new Answered(row.line(), job, Optional.empty(), List.of(problem));
    }
  }
}
