package annulus.catalog;

import annulus.quantity.Check;

/**
 * One number of the policy with its meaning and source.
 *
 * @param id stable name
 * @param value in {@code unit}
 * @param unit as printed, may be empty
 * @param meaning one sentence
 * @param provenance source of this row
 */
public record NamedNumber(
    String id, double value, String unit, String meaning, Provenance provenance) {
  public NamedNumber {
    Check.text("id", id);
    Check.finite(id, value, unit);
    Check.text("meaning", meaning);
  }
}
