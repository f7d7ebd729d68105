package annulus.exchange;

import annulus.advice.JointOrder;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * One row of a day's list.
 *
 * @param order the joint; empty when the row can't be used
 * @param promised what the customer was told, if anything
 * @param problems what is wrong with the row
 */
public record PromisedOrder(
    Optional<JointOrder> order, Optional<Instant> promised, List<PlacedProblem> problems) {
  private static final String PROMISED = "promised";

  /** The columns of such a list beside those of a joint. */
  public static final Set<String> COLUMNS = Set.of(PROMISED);

  public PromisedOrder {
    problems = List.copyOf(problems);
  }

  /**
   * A row as it was read with {@link #COLUMNS} beside it.
   *
   * @param file name of the list, for messages
   * @param zone the shop's zone, for times without one
   */
  public static PromisedOrder of(String file, BatchOrders.Row row, ZoneId zone) {
    if (row.order().isEmpty()) {
      return refused(row.problems());
    }
    String said = row.beside().getOrDefault(PROMISED, "");
    try {
      Optional<Instant> promised =
          said.isBlank()
              ? Optional.empty()
              : Optional.of(ClockWord.read(file, (int) row.line(), PROMISED, said, zone));
      return new PromisedOrder(row.order(), promised, List.of());
    } catch (InputRefused e) {
      return refused(e.problems());
    }
  }

  /** A row that can't be used. */
  public static PromisedOrder refused(List<PlacedProblem> problems) {
    return new PromisedOrder(Optional.empty(), Optional.empty(), problems);
  }
}
