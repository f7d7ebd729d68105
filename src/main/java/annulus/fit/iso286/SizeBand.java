package annulus.fit.iso286;

import annulus.quantity.Check;

/**
 * A range of nominal sizes.
 *
 * @param overMm lower end, mm, excluded
 * @param upToMm upper end, mm, included
 */
public record SizeBand(double overMm, double upToMm) {
  /** Largest nominal size of the tables here, mm. */
  public static final double LARGEST_MM = 500;

  public SizeBand {
    Check.within("over_mm", overMm, 0, LARGEST_MM, "mm");
    Check.within("up_to_mm", upToMm, Math.nextUp(overMm), LARGEST_MM, "mm");
  }

  public boolean contains(double nominalMm) {
    return nominalMm > overMm && nominalMm <= upToMm;
  }

  boolean overlaps(SizeBand other) {
    return overMm < other.upToMm && other.overMm < upToMm;
  }
}
