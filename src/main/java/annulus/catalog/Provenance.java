package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;

/**
 * Where a row of data comes from.
 *
 * @param source named standard with edition and table, handbook, {@code common practice, no
 *     source}, {@code from memory}, {@code computed}, {@code shop} or {@code shop label}
 * @param confidence how far it may be trusted
 */
public record Provenance(String source, Confidence confidence) {
  public Provenance {
    Check.text("source", source);
    if (confidence == null) {
      throw new InvalidValue("confidence", "is missing", "high, medium or low");
    }
  }
}
