package annulus.stock;

import annulus.quantity.InvalidValue;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * All lots of a shop.
 *
 * @param lots in the order of the sheet; each lot number once
 * @param items what they can be, by id
 */
public record Cabinet(List<Lot> lots, Map<String, StockItem> items) {
  public Cabinet {
    lots = List.copyOf(lots);
    items = Collections.unmodifiableMap(new LinkedHashMap<>(items));
    Set<String> seen = new TreeSet<>();
    for (Lot lot : lots) {
      if (!items.containsKey(lot.item())) {
        throw new InvalidValue(
            "class", lot.item() + " is unknown", String.join(", ", items.keySet()));
      }
      if (!seen.add(lot.lot())) {
        throw new InvalidValue("lot", lot.lot() + " stands twice", "each lot once");
      }
    }
  }

  /** Judges every lot on a day. */
  public List<LotCheck> check(LocalDate on, long withinDays) {
    return lots.stream().map(l -> LotCheck.of(l, items.get(l.item()), on, withinDays)).toList();
  }

  /** The lots that may be used on a day, in the order of the sheet. */
  public List<Lot> usable(LocalDate on) {
    return check(on, 0).stream().filter(LotCheck::usable).map(LotCheck::lot).toList();
  }

  /** A lot by its number. */
  public Optional<Lot> lot(String number) {
    return lots.stream().filter(l -> l.lot().equals(number)).findFirst();
  }

  /**
   * The open lot to take instead of opening a sealed one: of the same item, in date, with enough
   * left.
   *
   * @param sealed what would be opened
   * @param amount what is to be drawn
   */
  public Optional<Lot> openInstead(Lot sealed, Millilitres amount, LocalDate day) {
    if (sealed.isOpenOn(day)) {
      return Optional.empty();
    }
    return usable(day).stream()
        .filter(l -> l.item().equals(sealed.item()) && l.isOpenOn(day))
        .filter(l -> l.left().compareTo(amount) >= 0)
        .findFirst();
  }

  /**
   * The lots to draw from on a day: open ones first, then the earliest use-by. One that holds the
   * whole draw goes before several that hold it together.
   *
   * @param item id of a class or primer
   * @param amount what is drawn
   * @return empty when all lots in date together hold less, or nothing is drawn
   */
  public List<LotCheck> toDraw(String item, Millilitres amount, LocalDate on) {
    List<LotCheck> inDate =
        check(on, 0).stream()
            .filter(c -> c.usable() && c.item().id().equals(item))
            .sorted(
                Comparator.comparing((LotCheck c) -> c.lot().isOpenOn(on) ? 0 : 1)
                    .thenComparing(c -> c.useBy().orElseThrow().date())
                    .thenComparing(c -> c.lot().lot()))
            .toList();
    Optional<LotCheck> alone =
        inDate.stream().filter(c -> c.lot().left().compareTo(amount) >= 0).findFirst();
    if (alone.isPresent() && amount.isPositive()) {
      return List.of(alone.get());
    }
    List<LotCheck> together = new ArrayList<>();
    Millilitres open = amount;
    for (LotCheck check : inDate) {
      if (open.isPositive()) {
        together.add(check);
        open = open.minus(check.lot().left());
      }
    }
    return open.isPositive() ? List.of() : together;
  }

  /**
   * Ids of the compound classes of which something may be used on a day.
   *
   * @param on the day
   * @return sorted ids
   */
  public Set<String> inDateClasses(LocalDate on) {
    return inDate(on, StockItem.Kind.COMPOUND).keySet();
  }

  /** Ids of the primers of which something may be used on a day, sorted. */
  public Set<String> inDatePrimers(LocalDate on) {
    return inDate(on, StockItem.Kind.PRIMER).keySet();
  }

  /** What may be used on a day, by id. */
  public Map<String, Millilitres> inDate(LocalDate on, StockItem.Kind kind) {
    Map<String, Millilitres> amounts = new TreeMap<>();
    for (Lot lot : usable(on)) {
      if (items.get(lot.item()).kind() == kind) {
        amounts.merge(lot.item(), lot.left(), Millilitres::plus);
      }
    }
    return amounts;
  }

  /**
   * The same lots with what the ledger says is left and holds back; a lot the ledger does not count
   * keeps the sheet's amount. What held it back by the sheet stands until the ledger has cleared
   * that very thing.
   */
  public Cabinet with(Ledger ledger) {
    Map<String, List<HeldBack>> held = ledger.heldBack();
    List<Lot> counted = new ArrayList<>();
    for (Lot lot : lots) {
      List<HeldBack> reasons = new ArrayList<>(held.getOrDefault(lot.lot(), List.of()));
      ledger.unheard(lot).stream().filter(HeldBack::isOfSheet).forEach(reasons::add);
      counted.add(counted(lot, ledger).heldBackFor(reasons));
    }
    return new Cabinet(counted, items);
  }

  private static Lot counted(Lot lot, Ledger ledger) {
    if (!ledger.knows(lot.lot())) {
      return lot;
    }
    Millilitres left = ledger.left(lot.lot());
    Lot booked = lot.withLeft(left.isPositive() ? left : Millilitres.NONE);
    return ledger.firstUse(lot.lot()).map(booked::openedOn).orElse(booked);
  }
}
