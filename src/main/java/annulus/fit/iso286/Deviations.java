package annulus.fit.iso286;

import annulus.quantity.InvalidValue;
import java.util.Optional;

/** Fundamental deviations: the rows, and the rules by which holes follow from shafts. */
final class Deviations {
  /** Up to here the step between grades is nought: ISO 286-1 Tables 2 and 3. */
  private static final double NO_STEP_TO_MM = 3;

  private final Iso286Tables tables;

  Deviations(Iso286Tables tables) {
    this.tables = tables;
  }

  /** The limit nearer to the nominal size, µm on the diameter. */
  double deviationUm(double nominalMm, ToleranceClass wanted) {
    DeviationRow row = row(nominalMm, wanted);
    if (row.member() == wanted.member()) {
      return row.deviationUm();
    }
    return takesStep(wanted) ? -row.deviationUm() + stepUm(nominalMm, wanted) : -row.deviationUm();
  }

  /** The row the deviation stands in or follows from. */
  DeviationRow row(double nominalMm, ToleranceClass wanted) {
    Optional<DeviationRow> own =
        tables.deviationRow(wanted.member(), wanted.letters(), wanted.grade(), nominalMm);
    if (own.isPresent()) {
      return own.get();
    }
    if (wanted.member() == Member.SHAFT || !followsFromShaft(wanted)) {
      throw notTabulated(nominalMm, wanted);
    }
    ToleranceGrade shaftGrade = wanted.letters().equals("K") ? ToleranceGrade.IT6 : wanted.grade();
    return tables
        .deviationRow(Member.SHAFT, Letters.shaftOf(wanted.letters()), shaftGrade, nominalMm)
        .orElseThrow(() -> notTabulated(nominalMm, wanted));
  }

  private static boolean followsFromShaft(ToleranceClass hole) {
    ToleranceGrade grade = hole.grade();
    return switch (hole.letters()) {
      case "J" -> false;
      case "K", "N" -> grade.between(ToleranceGrade.IT3, ToleranceGrade.IT8);
      default ->
          Letters.onClearanceSide(hole.letters()) || grade.compareTo(ToleranceGrade.IT3) >= 0;
    };
  }

  private static boolean takesStep(ToleranceClass hole) {
    if (Letters.onClearanceSide(hole.letters())) {
      return false;
    }
    ToleranceGrade last = Letters.fromP(hole.letters()) ? ToleranceGrade.IT7 : ToleranceGrade.IT8;
    return hole.grade().compareTo(last) <= 0;
  }

  private double stepUm(double nominalMm, ToleranceClass hole) {
    if (nominalMm <= NO_STEP_TO_MM) {
      return 0;
    }
    ToleranceGrade finer = hole.grade().finer().orElseThrow();
    return Microns.clean(
        tables.toleranceUm(hole.grade(), nominalMm) - tables.toleranceUm(finer, nominalMm));
  }

  private static InvalidValue notTabulated(double nominalMm, ToleranceClass wanted) {
    return Iso286Tables.notTabulated(
        wanted.toString(),
        nominalMm,
        "a letter, grade and size with a row in the tables of deviations");
  }
}
