package annulus.catalog;

import annulus.quantity.InvalidValue;
import java.util.Map;
import java.util.TreeMap;

/** The numbers of the policy by name; each keeps its meaning and source. */
public record Policy(Map<String, NamedNumber> numbers) {
  public Policy {
    numbers = Map.copyOf(new TreeMap<>(numbers));
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
