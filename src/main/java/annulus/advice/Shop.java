package annulus.advice;

import annulus.handback.OpeningHours;
import annulus.handback.PromiseRule;
import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the promise needs to know of a shop.
 *
 * @param name for print; may be empty
 * @param hours when it is open
 * @param rule how ready becomes what the customer is told
 * @param touch hands-on time where the place has none of its own
 * @param places where joints cure, by name in order
 */
public record Shop(
    String name, OpeningHours hours, PromiseRule rule, Duration touch, List<ShopPlace> places) {
  /**
   * @throws InvalidValue when two places are alike by name or description
   */
  public Shop {
    places = List.copyOf(places);
    Set<String> seen = new HashSet<>();
    for (ShopPlace place : places) {
      if (!seen.add(place.name()) || !seen.add("\n" + place.describedAs())) {
        throw new InvalidValue("places", place.name() + " stands twice", "each place once");
      }
    }
  }

  /** The same shop with this place alone. */
  public Shop with(ShopPlace place) {
    return new Shop(name, hours, rule, touch, List.of(place));
  }

  /** The place of a name. */
  public Optional<ShopPlace> place(String called) {
    return places.stream().filter(p -> p.name().equals(called)).findFirst();
  }

  /** The place that an order's cure was made from, told by its description. */
  public Optional<ShopPlace> placeOf(JointOrder order) {
    String said = order.cure().describedAs();
    return places.stream().filter(p -> p.describedAs().equals(said)).findFirst();
  }
}
