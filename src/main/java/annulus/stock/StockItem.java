package annulus.stock;

import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.catalog.Provenance;
import annulus.quantity.Interval;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What can stand in the cabinet, with the lives that its use-by is reckoned with: the shorter end
 * of what is known.
 *
 * @param id id of the class or primer
 * @param name what a mechanic calls it
 * @param kind compound or primer
 * @param storageC storage temperature, °C
 * @param shelfMonths unopened life, months
 * @param openMonths life once opened, months
 * @param provenance where these come from
 */
public record StockItem(
    String id,
    String name,
    Kind kind,
    Interval storageC,
    double shelfMonths,
    double openMonths,
    Provenance provenance) {

  /** What it is. */
  public enum Kind {
    COMPOUND,
    PRIMER
  }

  static StockItem of(CompoundClass compound) {
    return new StockItem(
        compound.id(),
        compound.name(),
        Kind.COMPOUND,
        compound.storageC(),
        compound.shelfMonths().low(),
        compound.openMonths().low(),
        compound.provenance());
  }

  static StockItem of(Primer primer, Policy policy) {
    return new StockItem(
        primer.id(),
        primer.name(),
        Kind.PRIMER,
        new Interval(policy.value("primer-storage-low-c"), policy.value("primer-storage-high-c")),
        policy.value("primer-shelf-months"),
        policy.value("primer-open-months"),
        policy.number("primer-open-months").provenance());
  }

  /**
   * Everything the catalogue knows, compounds first.
   *
   * @param catalog classes and primers
   * @param policy the numbers of the stock
   */
  public static Map<String, StockItem> all(Catalog catalog, Policy policy) {
    Map<String, StockItem> items = new LinkedHashMap<>();
    catalog.compounds().values().forEach(c -> items.put(c.id(), of(c)));
    catalog.primers().values().forEach(p -> items.put(p.id(), of(p, policy)));
    return items;
  }
}
