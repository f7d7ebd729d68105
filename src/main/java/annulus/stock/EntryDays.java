package annulus.stock;

import annulus.catalog.Policy;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.time.LocalDate;
import java.util.Optional;

/** Which days somebody may enter for what took place: a slip in the year must not pass. */
public final class EntryDays {
  private EntryDays() {}

  /**
   * Refuses a movement's day after today, or so long past that it is last year's number.
   *
   * @param field name for the message
   * @param stock the numbers of the stock
   * @throws InvalidValue with the days allowed
   */
  public static void requireMoved(String field, LocalDate day, LocalDate today, Policy stock) {
    require(field, day, today, stock.value("movement-back-days"));
  }

  /**
   * Refuses a day after today, or so long past that nobody has such a lot, for its arrival or its
   * opening.
   *
   * @param field name for the message
   * @param stock the numbers of the stock
   * @throws InvalidValue with the days allowed
   */
  public static void requireOfLot(String field, LocalDate day, LocalDate today, Policy stock) {
    require(field, day, today, stock.value("lot-back-days"));
  }

  /**
   * Refuses days to come of a lot as a sheet tells it. Days long past may stand there: what is out
   * of date is told as such.
   *
   * @throws InvalidValue with the day and today
   */
  public static void requireBeen(Lot lot, LocalDate today) {
    lot.received().ifPresent(d -> requireBeen("received", d, today));
    lot.opened().ifPresent(d -> requireBeen("opened", d, today));
    lot.heldBack().forEach(h -> requireBeen("held_back_on", h.day(), today));
  }

  private static void requireBeen(String field, LocalDate day, LocalDate today) {
    if (day.isAfter(today)) {
      throw new InvalidValue(field, day + " is still to come", "a day up to today, " + today);
    }
  }

  private static void require(String field, LocalDate day, LocalDate today, double backDays) {
    LocalDate first = today.minusDays((long) backDays);
    String allowed = first + " to today, " + today;
    if (day.isAfter(today)) {
      throw new InvalidValue(field, day + " is still to come", allowed);
    }
    if (day.isBefore(first)) {
      throw new InvalidValue(
          field, day + " is more than " + Numbers.plain(backDays) + " days ago", allowed);
    }
  }

  /** When a lot came, as the sheet says or else the first movement that brought some of it. */
  public static Optional<LocalDate> came(String lot, Optional<Cabinet> cabinet, Ledger ledger) {
    return cabinet
        .flatMap(c -> c.lot(lot))
        .flatMap(Lot::received)
        .or(
            () ->
                ledger.movements().stream()
                    .filter(m -> m.lot().equals(lot) && m.kind() == Movement.Kind.RECEIVE)
                    .map(Movement::day)
                    .min(LocalDate::compareTo));
  }
}
