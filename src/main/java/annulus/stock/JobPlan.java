package annulus.stock;

import java.util.List;
import java.util.Optional;

/**
 * Where a job's compound and primer come from.
 *
 * @param need what it wants
 * @param used the option the lots were assigned for; empty when short or nothing is needed
 * @param takes from which lots, in order
 * @param missing what the best option lacks
 */
public record JobPlan(
    Need need, Optional<Need.Option> used, List<Take> takes, List<Missing> missing) {
  public JobPlan {
    takes = List.copyOf(takes);
    missing = List.copyOf(missing);
  }

  /**
   * One draw.
   *
   * @param lot from which lot
   * @param item what it is
   * @param amount how much
   * @param opens whether this draw opens the container
   */
  public record Take(String lot, String item, Millilitres amount, boolean opens) {}

  /**
   * What is not there.
   *
   * @param item what
   * @param amount how much is lacking
   */
  public record Missing(String item, Millilitres amount) {}

  /** Whether another than the best option had to be used. */
  public boolean secondBest() {
    return used.isPresent() && !used.get().equals(need.options().get(0));
  }

  public boolean isShort() {
    return !missing.isEmpty();
  }
}
