package annulus.advice;

import annulus.catalog.NamedNumber;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Map;

/**
 * The policy of learning, by the ids of {@code data/learning.csv}.
 *
 * @param numbers the rows
 */
public record LearningRules(Map<String, NamedNumber> numbers) {
  private static final List<String> NEEDED =
      List.of(
          "least-joints-sooner",
          "least-days-sooner",
          "least-pulls-later-stages",
          "time-factor-least",
          "time-factor-believed",
          "spread-floor-ln",
          "joint-spread-ln",
          "joint-spread-more-ln",
          "temperature-plus-minus-c",
          "pull-spread-ln",
          "pull-spread-more-ln",
          "least-pulls-stronger",
          "strength-factor-most",
          "pull-fraction-least",
          "pull-slip-factor",
          "strength-prior-floor-ln");

  /**
   * @throws InvalidValue when a row is missing or out of range
   */
  public LearningRules {
    numbers = Map.copyOf(numbers);
    for (String id : NEEDED) {
      if (!numbers.containsKey(id)) {
        throw new InvalidValue(id, "is missing", "a row with this id");
      }
    }
    within(numbers, "least-joints-sooner", 3, 1000);
    within(numbers, "least-days-sooner", 1, 1000);
    within(numbers, "least-pulls-later-stages", 3, 1000);
    within(numbers, "least-pulls-stronger", 3, 1000);
    within(numbers, "time-factor-least", 0.3, 1);
    within(numbers, "time-factor-believed", 3, 20);
    within(numbers, "strength-factor-most", 1, 2);
    within(numbers, "spread-floor-ln", 0.05, 1);
    within(numbers, "joint-spread-ln", 0.05, 1);
    within(numbers, "joint-spread-more-ln", 0.05, 1);
    within(numbers, "pull-spread-ln", 0.05, 1);
    within(numbers, "pull-spread-more-ln", 0.05, 1);
    within(numbers, "temperature-plus-minus-c", 0, 10);
    within(numbers, "pull-fraction-least", 0.5, 1);
    within(numbers, "pull-slip-factor", 1, 4);
    within(numbers, "strength-prior-floor-ln", 0.01, 1);
  }

  private static void within(Map<String, NamedNumber> numbers, String id, double low, double high) {
    Check.within(id, numbers.get(id).value(), low, high, numbers.get(id).unit());
  }

  double value(String id) {
    return numbers.get(id).value();
  }
}
