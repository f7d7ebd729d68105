package annulus.hold;

import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;

/**
 * One factor on the shear strength of a bond.
 *
 * @param kind what it stands for
 * @param value 0 to 1
 */
public record HoldFactor(Kind kind, Estimate value) {

  /** What a factor stands for. */
  public enum Kind {
    /** Share of the full strength reached at the time asked. */
    STRENGTH_FRACTION,
    /** Share left at service temperature. */
    HOT_STRENGTH,
    /** Radial gap away from the best one. */
    GAP,
    /** The weaker of the two faces. */
    SURFACE,
    /** Roughness of the faces. */
    FINISH,
    /** What a primer costs. */
    PRIMER,
    /** Long joints share the load unevenly. */
    ENGAGEMENT,
    /** A load that repeats, turns round or knocks. */
    DYNAMIC
  }

  public HoldFactor {
    if (kind == null) {
      throw new InvalidValue("kind", "is missing", "what the factor stands for");
    }
    value.checkedWithin("factor", 0, 1, "");
  }
}
