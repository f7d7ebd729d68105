package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** The numbers of the policy by name; each keeps its meaning and source. */
public record Policy(Map<String, NamedNumber> numbers) {
  public Policy {
    numbers = Collections.unmodifiableMap(new LinkedHashMap<>(numbers));
    within(numbers, "undisturbed-after-fixture-min", 0, 100_000);
    within(numbers, "cure-temperature-plus-minus-c", 0, 20);
    within(numbers, "bore-temperature-plus-minus-c", 0, 20);
    within(numbers, "wanted-confidence", 0.8, 0.999);
  }

  /** Numbers that would let a joint go early, or answer nothing, outside these limits. */
  private static void within(Map<String, NamedNumber> numbers, String id, double low, double high) {
    NamedNumber number = numbers.get(id);
    if (number != null) {
      Check.within(id, number.value(), low, high, number.unit());
    }
  }

  /**
   * The value of a number.
   *
   * @throws InvalidValue when the data lacks it
   */
  public double value(String id) {
    return number(id).value();
  }

  /**
   * A number with its unit, meaning and source.
   *
   * @throws InvalidValue when the data lacks it
   */
  public NamedNumber number(String id) {
    NamedNumber number = numbers.get(id);
    if (number == null) {
      throw new InvalidValue(id, "is missing from the policy data", "a row with this id");
    }
    return number;
  }
}
