package annulus.catalog;

import annulus.quantity.Estimate;

/**
 * How readily a face starts anaerobic cure.
 *
 * @param level the face's level
 * @param rate cure rate of a joint with two such faces, relative to two active faces; more than 0,
 *     at most 10. For {@link Level#INERT} it is the face's share beside a face that is not inert
 * @param provenance source of this row
 */
public record Activity(Level level, Estimate rate, Provenance provenance) {
  public Activity {
    rate.checkedWithin("rate", 1e-3, 10, "");
  }

  /** From quick to none. */
  public enum Level {
    ACTIVE,
    SLOW,
    INERT
  }
}
