package annulus.stock;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What may be done with a lot on a day.
 *
 * @param lot the lot
 * @param item what it is
 * @param useBy its last day; empty when unknown
 * @param standing the outcome
 * @param against why it must not be used
 */
public record LotCheck(
    Lot lot, StockItem item, Optional<UseBy> useBy, Standing standing, List<Objection> against) {
  public LotCheck {
    against = List.copyOf(against);
  }

  /** Outcome for a lot. */
  public enum Standing {
    USABLE,
    /** Usable, but not for long. */
    SOON,
    EMPTY,
    MUST_NOT
  }

  /** Why a lot must not be used. */
  public enum Objection {
    /** Somebody said that it must not be used until it is cleared. */
    HELD_BACK,
    PAST_PRINTED_EXPIRY,
    OPENED_TOO_LONG,
    PAST_SHELF_LIFE,
    NO_DATE_KNOWN,
    STORED_TOO_HOT,
    STORED_TOO_COLD,
    /** Received or opened on a day that is still to come. */
    DATE_TO_COME
  }

  /**
   * Judges a lot.
   *
   * @param on the day
   * @param withinDays a use-by this near is called out
   */
  public static LotCheck of(Lot lot, StockItem item, LocalDate on, long withinDays) {
    Optional<UseBy> useBy = UseBy.of(lot, item);
    List<Objection> against = new ArrayList<>();
    addIf(against, lot.isHeldBack(), Objection.HELD_BACK);
    if (useBy.isEmpty()) {
      against.add(Objection.NO_DATE_KNOWN);
    }
    useBy.filter(u -> u.date().isBefore(on)).ifPresent(u -> against.add(past(u)));
    lot.storedHighC()
        .ifPresent(c -> addIf(against, c > item.storageC().high(), Objection.STORED_TOO_HOT));
    lot.storedLowC()
        .ifPresent(c -> addIf(against, c < item.storageC().low(), Objection.STORED_TOO_COLD));
    boolean toCome =
        lot.received().filter(d -> d.isAfter(on)).isPresent()
            || lot.opened().filter(d -> d.isAfter(on)).isPresent();
    addIf(against, toCome, Objection.DATE_TO_COME);
    return new LotCheck(lot, item, useBy, standing(lot, useBy, against, on, withinDays), against);
  }

  private static void addIf(List<Objection> against, boolean condition, Objection objection) {
    if (condition) {
      against.add(objection);
    }
  }

  private static Objection past(UseBy useBy) {
    return switch (useBy.rule()) {
      case PRINTED_EXPIRY -> Objection.PAST_PRINTED_EXPIRY;
      case AFTER_OPENING -> Objection.OPENED_TOO_LONG;
      case SHELF_LIFE -> Objection.PAST_SHELF_LIFE;
    };
  }

  private static Standing standing(
      Lot lot, Optional<UseBy> useBy, List<Objection> against, LocalDate on, long withinDays) {
    if (!lot.left().isPositive()) {
      return Standing.EMPTY;
    }
    if (!against.isEmpty()) {
      return Standing.MUST_NOT;
    }
    long days = ChronoUnit.DAYS.between(on, useBy.orElseThrow().date());
    return days <= withinDays ? Standing.SOON : Standing.USABLE;
  }

  /** Whether it may be used. */
  public boolean usable() {
    return standing == Standing.USABLE || standing == Standing.SOON;
  }
}
