package annulus.handback;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * What one way of making the joint gives and costs.
 *
 * @param ready when it is ready; empty for never. Earlier is better
 * @param strength any one measure for all options compared, such as hold in N. More is better
 * @param removability any one measure for all options compared. More is better
 * @param workingTime time to get the part home. Longer is better
 * @param touchTime hands-on time. Shorter is better
 */
public record OptionTrade(
    Optional<Instant> ready,
    double strength,
    double removability,
    Duration workingTime,
    Duration touchTime) {
  /**
   * @throws InvalidValue when not finite or negative
   */
  public OptionTrade {
    Check.finite("strength", strength, "");
    Check.finite("removability", removability, "");
    requireNotNegative("workingTime", workingTime);
    requireNotNegative("touchTime", touchTime);
  }

  /**
   * The options that are no better in anything than some other one, and worse in at least one thing
   * (Pareto dominance). Options equal in all five do not count against each other, so something
   * always remains.
   *
   * @return places in the list, counted from 0, in order
   */
  public static Set<Integer> noBetterInAnything(List<OptionTrade> options) {
    Set<Integer> marked = new TreeSet<>();
    for (int i = 0; i < options.size(); i++) {
      OptionTrade option = options.get(i);
      if (options.stream().anyMatch(o -> o.atLeastAsGoodAs(option) && !option.atLeastAsGoodAs(o))) {
        marked.add(i);
      }
    }
    return marked;
  }

  private boolean atLeastAsGoodAs(OptionTrade other) {
    return readyOrNever().compareTo(other.readyOrNever()) <= 0
        && strength >= other.strength
        && removability >= other.removability
        && workingTime.compareTo(other.workingTime) >= 0
        && touchTime.compareTo(other.touchTime) <= 0;
  }

  private Instant readyOrNever() {
    return ready.orElse(Instant.MAX);
  }

  private static void requireNotNegative(String field, Duration value) {
    if (value.isNegative()) {
      throw new InvalidValue(field, value + " is negative", "0 or more");
    }
  }
}
