package annulus.exchange;

import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;
import java.util.List;
import java.util.Optional;

/** Rows of the compound table. */
final class CompoundRows {
  private CompoundRows() {}

  static CompoundClass compound(Fields f, Problems problems) {
    return new CompoundClass(
        f.requiredText("id"),
        f.requiredText("name"),
        f.requiredText("summary"),
        f.requiredChoice("permanence", CompoundClass.Permanence.values()),
        f.requiredChoice("role", CompoundClass.Role.values()),
        Values.interval(f, problems, "gapUm", "µm radial"),
        f.requiredNumber("primedGapMaxUm", -50, 760, "µm radial"),
        Values.interval(f, problems, "viscosityMPas", "mPa·s"),
        Values.estimate(f, problems, "strengthMPa", "MPa"),
        f.requiredObject("cure").map(c -> cure(c, problems)).orElse(null),
        Values.interval(f, problems, "serviceC", "°C"),
        f.list("hotStrength", n -> hotPoint(n, problems)),
        Values.estimate(f, problems, "removalHeatC", "°C"),
        Values.interval(f, problems, "storageC", "°C"),
        Values.estimate(f, problems, "shelfMonths", "months"),
        Values.estimate(f, problems, "openMonths", "months"),
        Values.provenance(f));
  }

  private static CompoundClass.Cure cure(Fields c, Problems problems) {
    double referenceC = c.requiredNumber("referenceC", 0, 60, "°C");
    double referenceGap = c.requiredNumber("referenceGapUm", 1, 500, "µm radial");
    var exponent = Values.estimate(c, problems, "gapExponent", "");
    var activation = Values.estimate(c, problems, "activationKJ", "kJ/mol");
    double minimum = c.requiredNumber("minimumC", -20, 60, "°C");
    double caution = c.requiredNumber("cautionBelowC", -20, 60, "°C");
    double held = c.requiredNumber("heldAboveC", 0, 120, "°C");
    double spread = c.requiredNumber("spreadLn", 0, 2, "");
    List<CompoundClass.StagePoint> stages = c.list("stages", n -> stage(n, problems));
    double complete = c.requiredNumber("completeHours", 0, 2000, "h");
    double slow = c.requiredNumber("slowFullHours", 0, 2000, "h");
    var working = Values.estimate(c, problems, "workingMinutes", "min");
    c.done();
    return Values.build(
            c,
            problems,
            () ->
                new CompoundClass.Cure(
                    referenceC,
                    referenceGap,
                    exponent,
                    activation,
                    minimum,
                    caution,
                    held,
                    spread,
                    stages,
                    complete,
                    slow,
                    working))
        .orElse(null);
  }

  private static Optional<CompoundClass.StagePoint> stage(Node node, Problems problems) {
    return Fields.of(node, problems, "cure.stages")
        .flatMap(
            f -> {
              Optional<CompoundClass.StagePoint> point =
                  Values.build(
                      f,
                      problems,
                      () ->
                          new CompoundClass.StagePoint(
                              f.requiredChoice("stage", Stage.values()),
                              f.requiredNumber("fraction", 1e-6, 1, ""),
                              f.requiredNumber("hours", 1e-4, 2000, "h")));
              f.done();
              return point;
            });
  }

  private static Optional<CompoundClass.HotPoint> hotPoint(Node node, Problems problems) {
    return Fields.of(node, problems, "hotStrength")
        .flatMap(
            f -> {
              Optional<CompoundClass.HotPoint> point =
                  Values.build(
                      f,
                      problems,
                      () ->
                          new CompoundClass.HotPoint(
                              f.requiredNumber("celsius", -100, 400, "°C"),
                              Values.estimate(f, problems, "fraction", "")));
              f.done();
              return point;
            });
  }
}
