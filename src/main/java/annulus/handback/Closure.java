package annulus.handback;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.LocalDate;

/**
 * Days on which the weekly hours do not hold.
 *
 * @param from first closed date
 * @param to last closed date, included; the same as {@code from} for one day
 * @param reason what the customer may read, such as "Stocktaking"
 */
public record Closure(LocalDate from, LocalDate to, String reason) {
  /**
   * @throws InvalidValue when a part lacks or the dates are not in order
   */
  public Closure {
    if (from == null || to == null) {
      throw new InvalidValue("closure", "a date is missing", "a first and a last date");
    }
    if (to.isBefore(from)) {
      throw new InvalidValue("to", to + " is before " + from, "the same date or a later one");
    }
    Check.text("reason", reason);
  }

  /** One closed day. */
  public static Closure on(LocalDate date, String reason) {
    return new Closure(date, date, reason);
  }

  boolean covers(LocalDate date) {
    return !date.isBefore(from) && !date.isAfter(to);
  }
}
