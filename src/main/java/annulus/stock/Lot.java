package annulus.stock;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * One container in the cabinet.
 *
 * @param lot the lot number as printed, always text
 * @param item id of the compound class or primer
 * @param label what the shop calls it; never leaves the shop's own file
 * @param container size of the container
 * @param left what is left in it
 * @param received when it came
 * @param opened when it was opened; empty: sealed
 * @param expires last day printed on it
 * @param place where it stands
 * @param sheet safety data sheet
 * @param storedLowC coldest that its storage log shows, °C
 * @param storedHighC warmest that its storage log shows, °C
 * @param heldBack why it must not be used until somebody clears it; empty: it is not held back
 */
public record Lot(
    String lot,
    String item,
    String label,
    Millilitres container,
    Millilitres left,
    Optional<LocalDate> received,
    Optional<LocalDate> opened,
    Optional<LocalDate> expires,
    String place,
    SafetySheet sheet,
    OptionalDouble storedLowC,
    OptionalDouble storedHighC,
    List<HeldBack> heldBack) {
  /** The smallest container there is. */
  public static final Millilitres LEAST_CONTAINER = Millilitres.of(0.1);

  /** The largest container there is. */
  public static final Millilitres LARGEST_CONTAINER = Millilitres.of(20_000);

  public Lot {
    heldBack = List.copyOf(heldBack);
    Check.text("lot", lot);
    Check.text("class", item);
    Check.within(
        "container_ml",
        container.value(),
        LEAST_CONTAINER.value(),
        LARGEST_CONTAINER.value(),
        "mL");
    if (left.microlitres() < 0) {
      throw new InvalidValue("left_ml", left + " mL is below zero", "0 mL or more");
    }
    if (left.compareTo(container) > 0) {
      throw new InvalidValue(
          "left_ml", left + " mL is more than the container holds", "at most " + container + " mL");
    }
    inOrder("opened", opened, "received", received);
    inOrder("expires", expires, "received", received);
    storedLowC.ifPresent(c -> Check.within("stored_low_c", c, -60, 80, "°C"));
    storedHighC.ifPresent(c -> Check.within("stored_high_c", c, -60, 80, "°C"));
    if (storedLowC.isPresent()
        && storedHighC.isPresent()
        && storedLowC.getAsDouble() > storedHighC.getAsDouble()) {
      throw new InvalidValue("stored_low_c", "is above stored_high_c", "the lower of the two");
    }
  }

  private static void inOrder(
      String field, Optional<LocalDate> date, String other, Optional<LocalDate> earlier) {
    if (date.isPresent() && earlier.isPresent() && date.get().isBefore(earlier.get())) {
      throw new InvalidValue(
          field, date.get() + " is before " + other + " " + earlier.get(), "that day or later");
    }
  }

  /** Whether it has been opened by a date. */
  public boolean isOpenOn(LocalDate date) {
    return opened.isPresent() && !opened.get().isAfter(date);
  }

  /** Whether neither its arrival nor its printed date is known, so that it must not be used. */
  public boolean isDateless() {
    return received.isEmpty() && expires.isEmpty();
  }

  /**
   * The same container as two sources tell of it: each date is the earlier one, the storage the
   * worse. A lot whose dates nobody knew gets the rest of what is now said, too. What holds it back
   * is of this one: the other's is a movement of its own.
   *
   * @throws InvalidValue when the other is of another class or the dates contradict each other
   */
  public Lot stricter(Lot again) {
    requireItem(again.item());
    boolean fits = isDateless() && left.compareTo(again.container()) <= 0;
    return new Lot(
        lot,
        item,
        isDateless() && label.isEmpty() ? again.label() : label,
        fits ? again.container() : container,
        left,
        earlier(received, again.received()),
        earlier(opened, again.opened()),
        earlier(expires, again.expires()),
        isDateless() ? again.place() : place,
        isDateless() ? again.sheet() : sheet,
        of(storedLowC, again.storedLowC()).min(),
        of(storedHighC, again.storedHighC()).max(),
        heldBack);
  }

  private static Optional<LocalDate> earlier(Optional<LocalDate> a, Optional<LocalDate> b) {
    return Stream.concat(a.stream(), b.stream()).min(LocalDate::compareTo);
  }

  private static DoubleStream of(OptionalDouble a, OptionalDouble b) {
    return DoubleStream.concat(a.stream(), b.stream());
  }

  /**
   * Refuses another class than the lot's own.
   *
   * @param other id of the class or primer that is said to be in it; empty if nobody says
   * @throws InvalidValue with both
   */
  public void requireItem(String other) {
    if (!other.isEmpty() && !other.equals(item)) {
      throw Ledger.otherItem(lot, item, other);
    }
  }

  /**
   * The same lot with another amount left; one that no container holds counts as the largest full,
   * so that a slip in one lot keeps no other from being judged.
   */
  public Lot withLeft(Millilitres booked) {
    Millilitres amount = booked.atMost(LARGEST_CONTAINER);
    Millilitres size = amount.compareTo(container) > 0 ? amount : container;
    return with(size, amount, received, opened, heldBack);
  }

  /**
   * Refuses what puts more into the container than it holds: mostly what was counted, typed where
   * the change belongs, or a second container under the number of the first.
   *
   * @param booked what is left by the ledger
   * @throws InvalidValue with what would then be in it
   */
  public void requireRoom(Movement movement, Millilitres booked) {
    long then = booked.microlitres() + movement.change().microlitres();
    if (movement.change().isPositive() && then > container.microlitres()) {
      boolean came = movement.kind() == Movement.Kind.RECEIVE;
      throw new InvalidValue(
          "ml",
          "lot "
              + lot
              + " would then have "
              + Numbers.plain(then / 1000.0)
              + " mL in a container of "
              + container
              + " mL",
          came
              ? "what fits; a second container is a lot of its own, such as " + lot + "-2"
              : "the change, below 0 where less was found than the "
                  + booked
                  + " mL booked; or what was counted, as a count");
    }
  }

  /** Whether it must not be used until somebody clears it. */
  public boolean isHeldBack() {
    return !heldBack.isEmpty();
  }

  /** The same lot, held back for these reasons and no others. */
  public Lot heldBackFor(List<HeldBack> reasons) {
    return with(container, left, received, opened, reasons);
  }

  /** The same lot, opened on a day; an earlier opening stays, and by then it had come. */
  public Lot openedOn(LocalDate day) {
    if (opened.filter(o -> !o.isAfter(day)).isPresent()) {
      return this;
    }
    Optional<LocalDate> came = received.map(r -> r.isAfter(day) ? day : r);
    return with(container, left, came, Optional.of(day), heldBack);
  }

  private Lot with(
      Millilitres size,
      Millilitres amount,
      Optional<LocalDate> came,
      Optional<LocalDate> openedOn,
      List<HeldBack> reasons) {
    return new Lot(
        lot,
        item,
        label,
        size,
        amount,
        came,
        openedOn,
        expires,
        place,
        sheet,
        storedLowC,
        storedHighC,
        reasons);
  }
}
