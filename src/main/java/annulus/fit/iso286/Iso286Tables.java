package annulus.fit.iso286;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The tables of ISO 286-1 as rows of data, and what follows from them. What the rows do not cover
 * is answered with an {@link InvalidValue} that says "not tabulated here", never with a guess.
 *
 * @param grades rows of Table 1
 * @param deviations rows of Tables 2 to 5
 */
public record Iso286Tables(List<GradeRow> grades, List<DeviationRow> deviations) {
  public Iso286Tables {
    grades = List.copyOf(grades);
    deviations = List.copyOf(deviations);
    TableChecks.noGradeTwice(grades);
    TableChecks.noDeviationTwice(deviations);
  }

  /**
   * Width of the tolerance zone.
   *
   * <p>Looked up, not computed: the formula of the standard does not reproduce its table.
   *
   * @param grade IT01 to IT18
   * @param nominalMm nominal diameter, mm
   * @return µm on the diameter
   *     <p>Valid for: above 0 to 500 mm, as far as the rows go.
   *     <p>Source: ISO 286-1:2010 Table 1.
   * @throws InvalidValue when not tabulated here
   */
  public double toleranceUm(ToleranceGrade grade, double nominalMm) {
    return gradeRow(grade, nominalMm).toleranceUm();
  }

  /**
   * Limits of size of a feature.
   *
   * <p>The fundamental deviation gives one limit, the grade the other. Holes A to H mirror the
   * shafts; K, M, N to IT8 and P to ZC to IT7 take {@code ES = -ei + (ITn - IT(n-1))} above 3 mm.
   *
   * @param nominalMm nominal diameter, mm
   * @param wanted letter and grade
   * @return limits, µm on the diameter
   *     <p>Valid for: above 0 to 500 mm, as far as the rows go.
   *     <p>Source: ISO 286-1:2010 Tables 1 to 5 and 4.3.
   * @throws InvalidValue when not tabulated here
   */
  public LimitsOfSize limits(double nominalMm, ToleranceClass wanted) {
    double width = toleranceUm(wanted.grade(), nominalMm);
    if (Letters.isSymmetric(wanted.letters())) {
      return new LimitsOfSize(nominalMm, -width / 2, width / 2);
    }
    double deviation = new Deviations(this).deviationUm(nominalMm, wanted);
    boolean isLower = isLowerLimit(wanted);
    return isLower
        ? new LimitsOfSize(nominalMm, deviation, deviation + width)
        : new LimitsOfSize(nominalMm, deviation - width, deviation);
  }

  /** Limits of hole and shaft of one nominal diameter (mm) as a fit. */
  public Fit fit(double nominalMm, ToleranceClass hole, ToleranceClass shaft) {
    Designation.OfFit named = new Designation.OfFit(nominalMm, hole, shaft);
    return new Fit(limits(nominalMm, named.hole()), limits(nominalMm, named.shaft()));
  }

  /** The sources the limits rest on and the lowest of their confidences. */
  public Provenance basis(double nominalMm, ToleranceClass wanted) {
    Set<String> sources = new LinkedHashSet<>();
    Provenance grade = gradeRow(wanted.grade(), nominalMm).provenance();
    sources.add(grade.source());
    Confidence lowest = grade.confidence();
    if (!Letters.isSymmetric(wanted.letters())) {
      Provenance row = new Deviations(this).row(nominalMm, wanted).provenance();
      sources.add(row.source());
      lowest = row.confidence().compareTo(lowest) > 0 ? row.confidence() : lowest;
    }
    return new Provenance(String.join("; ", sources), lowest);
  }

  GradeRow gradeRow(ToleranceGrade grade, double nominalMm) {
    Check.positive("nominal", nominalMm, "mm");
    Check.within("nominal", nominalMm, 0, SizeBand.LARGEST_MM, "mm");
    return grades.stream()
        .filter(r -> r.grade() == grade && r.band().contains(nominalMm))
        .findFirst()
        .orElseThrow(() -> notTabulated(grade.name(), nominalMm, gradesAt(nominalMm)));
  }

  Optional<DeviationRow> deviationRow(
      Member member, String letters, ToleranceGrade grade, double nominalMm) {
    return deviations.stream().filter(r -> r.covers(member, letters, grade, nominalMm)).findFirst();
  }

  static InvalidValue notTabulated(String what, double nominalMm, String allowed) {
    return new InvalidValue(
        "tolerance",
        what + " at " + Numbers.plain(nominalMm) + " mm is not tabulated here",
        allowed);
  }

  private static boolean isLowerLimit(ToleranceClass wanted) {
    boolean clearanceSide = Letters.onClearanceSide(wanted.letters());
    return (wanted.member() == Member.HOLE) == clearanceSide;
  }

  private String gradesAt(double nominalMm) {
    return grades.stream()
        .filter(r -> r.band().contains(nominalMm))
        .map(r -> r.grade().name())
        .reduce((a, b) -> a + " " + b)
        .orElse("no grade at this size");
  }
}
