package annulus.exchange;

import annulus.advice.JointOrder;
import annulus.exchange.BatchOrders.Row;
import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.function.BiFunction;

/**
 * One row of a day's list, judged.
 *
 * @param result what was made of it; empty when the row can't be used
 * @param problems what is wrong with it
 * @param <T> what is made of a row
 */
public record JudgedRow<T>(Optional<T> result, List<PlacedProblem> problems) {
  public JudgedRow {
    problems = List.copyOf(problems);
  }

  /**
   * Judges a row that was read with {@link PromisedOrder#COLUMNS} beside it.
   *
   * @param file name of the list, for messages
   * @param zone the shop's zone, for times without one
   * @param judge makes the result of an order and what was promised for it
   */
  public static <T> JudgedRow<T> of(
      String file, Row row, ZoneId zone, BiFunction<JointOrder, Optional<Instant>, T> judge) {
    PromisedOrder read = PromisedOrder.of(file, row, zone);
    if (read.order().isEmpty()) {
      return new JudgedRow<>(Optional.empty(), read.problems());
    }
    try {
      T result = judge.apply(read.order().get(), read.promised());
      return new JudgedRow<>(Optional.of(result), List.of());
    } catch (InvalidValue e) {
      PlacedProblem problem = PlacedProblem.of(file, (int) row.line(), e);
      return new JudgedRow<>(Optional.empty(), List.of(problem));
    } catch (InputRefused e) {
      return new JudgedRow<>(
          Optional.empty(), e.problems().stream().map(p -> inRow(file, row, p)).toList());
    }
  }

  /** A problem of another file, such as a log, told where the row stands. */
  private static PlacedProblem inRow(String file, Row row, PlacedProblem p) {
    String line = p.line() > 0 ? ":" + p.line() : "";
    return new PlacedProblem(
        file, (int) row.line(), 0, p.field(), p.file() + line + ": " + p.problem(), p.allowed());
  }
}
