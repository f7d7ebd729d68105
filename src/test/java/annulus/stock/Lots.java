package annulus.stock;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Interval;
import java.time.Instant;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Invented lots for tests. */
public final class Lots {
  /** A day like any other. */
  public static final LocalDate DAY = LocalDate.of(2026, 11, 25);

  private static final Instant AT = Instant.parse("2026-01-01T00:00:00Z");

  private Lots() {}

  /** Compound {@code a}, compound {@code b}, primer {@code p}: 8 to 21 °C, 12 months, 6 opened. */
  public static Map<String, StockItem> items() {
    Map<String, StockItem> items = new LinkedHashMap<>();
    for (String id : new String[] {"a", "b", "p"}) {
      StockItem.Kind kind = id.equals("p") ? StockItem.Kind.PRIMER : StockItem.Kind.COMPOUND;
      items.put(
          id,
          new StockItem(
              id,
              "item " + id,
              kind,
              new Interval(8, 21),
              12,
              6,
              new Provenance("test", Confidence.LOW)));
    }
    return items;
  }

  /** A sealed lot with a printed date. */
  public static Lot sealed(String lot, String item, double left, LocalDate expires) {
    return lot(lot, item, left, null, null, expires);
  }

  /** Any lot; null dates are absent. */
  public static Lot lot(
      String lot,
      String item,
      double left,
      LocalDate received,
      LocalDate opened,
      LocalDate expires) {
    return new Lot(
        lot,
        item,
        "",
        Millilitres.of(Math.max(1, left)),
        Millilitres.of(left),
        Optional.ofNullable(received),
        Optional.ofNullable(opened),
        Optional.ofNullable(expires),
        "",
        SafetySheet.NONE,
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        List.of());
  }

  /** Holds a lot of item {@code a} back. */
  public static Movement holdBack(String id, String lot, LocalDate day, String reason) {
    return Movement.holdBack(id, AT, day, "Ines", lot, "a", reason);
  }

  /** Clears what was held back by a movement of {@link #holdBack}. */
  public static Movement clear(Movement held, LocalDate day) {
    HeldBack what = new HeldBack(held.id(), held.day(), held.who(), held.reason());
    return Movement.clear(what, AT, day, "Orla", held.lot(), held.item(), "looked at, sound");
  }

  /** A movement of a lot of item {@code a}. */
  public static Movement move(
      String id, Movement.Kind kind, String lot, double ml, LocalDate day, String job) {
    return new Movement(id, AT, day, kind, "Orla", job, lot, "a", Millilitres.of(ml), "reason", "");
  }
}
