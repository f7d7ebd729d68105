package annulus.fit.iso286;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;

/**
 * One cell of ISO 286-1 Tables 2 to 5.
 *
 * @param member hole or shaft
 * @param letters tolerance letters, capital for holes
 * @param from finest grade the row holds for
 * @param to coarsest grade the row holds for
 * @param band nominal sizes it holds for
 * @param deviationUm µm on the diameter: shafts a to h the upper deviation es, shafts j to zc the
 *     lower deviation ei, holes (exceptions from the rules only) the upper deviation ES
 * @param provenance source of the row
 */
public record DeviationRow(
    Member member,
    String letters,
    ToleranceGrade from,
    ToleranceGrade to,
    SizeBand band,
    double deviationUm,
    Provenance provenance) {
  public DeviationRow {
    Letters.require(member, letters);
    Check.within("deviation_um", deviationUm, -5_000, 5_000, "µm");
    if (from.compareTo(to) > 0) {
      throw new InvalidValue("grade_from", from + " is coarser than " + to, "at most grade_to");
    }
  }

  boolean covers(Member wanted, String wantedLetters, ToleranceGrade grade, double nominalMm) {
    return member == wanted
        && letters.equals(wantedLetters)
        && grade.between(from, to)
        && band.contains(nominalMm);
  }

  boolean collides(DeviationRow other) {
    return member == other.member
        && letters.equals(other.letters)
        && from.compareTo(other.to) <= 0
        && other.from.compareTo(to) <= 0
        && band.overlaps(other.band);
  }
}
