package annulus.advice;

import annulus.advice.JointOrder.CurePlace;
import annulus.handback.ClockClimate;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;

/**
 * A place of the shop where joints cure.
 *
 * @param name what the shop calls it
 * @param climate its temperature on the shop's clock
 * @param plusMinusC doubt in it, half-width, °C
 * @param touch hands-on time from taking the job up until the joint is closed and in place
 * @param warm whether parts must first heat up in it
 * @param fan whether its air is moved
 * @param unsaidC temperature that parts come in with where an order does not say it, °C; nobody
 *     knows in which of the shop's places they lay before
 * @param describedAs how the plan is printed; no two places of a shop alike
 */
public record ShopPlace(
    String name,
    ClockClimate climate,
    double plusMinusC,
    Duration touch,
    boolean warm,
    boolean fan,
    double unsaidC,
    String describedAs) {
  /**
   * @throws InvalidValue when out of range
   */
  public ShopPlace {
    Check.text("place", name);
    Check.text("describedAs", describedAs);
    Check.within("plusMinusC", plusMinusC, 0, 20, "°C");
    Check.within("unsaidC", unsaidC, -60, 120, "°C");
    if (touch.isNegative()) {
      throw new InvalidValue("touch", touch + " is negative", "0 or more");
    }
  }

  /** The same place with another temperature of parts that do not say theirs, °C. */
  public ShopPlace withUnsaid(double celsius) {
    return new ShopPlace(name, climate, plusMinusC, touch, warm, fan, celsius, describedAs);
  }

  JointHeat.Entry entry() {
    return new JointHeat.Entry(warm, fan, unsaidC);
  }

  /** The place from an instant on, without regard to the part. */
  public CurePlace from(Instant start) {
    return new CurePlace(climate.from(start), plusMinusC, describedAs);
  }
}
