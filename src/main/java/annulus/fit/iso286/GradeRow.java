package annulus.fit.iso286;

import annulus.catalog.Provenance;
import annulus.quantity.Check;

/**
 * One cell of ISO 286-1 Table 1.
 *
 * @param grade the grade
 * @param band nominal sizes it holds for
 * @param toleranceUm width of the zone on the diameter, µm
 * @param provenance source of the row
 */
public record GradeRow(
    ToleranceGrade grade, SizeBand band, double toleranceUm, Provenance provenance) {
  public GradeRow {
    Check.within("tolerance_um", toleranceUm, 0.1, 10_000, "µm");
  }

  boolean collides(GradeRow other) {
    return grade == other.grade && band.overlaps(other.band);
  }
}
