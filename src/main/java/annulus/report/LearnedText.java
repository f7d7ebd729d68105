package annulus.report;

import annulus.advice.Learned;
import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;
import annulus.quantity.Estimate;
import annulus.quantity.Numbers;
import java.util.List;

/** What was learned of each class, before and after. */
public final class LearnedText {
  private LearnedText() {}

  /** One block per class. */
  public static String of(List<Learned> learned) {
    TextLines lines = new TextLines();
    learned.forEach(l -> block(lines, l));
    return lines.toString();
  }

  private static void block(TextLines lines, Learned l) {
    lines.heading(
        l.shipped().id()
            + ": "
            + l.joints()
            + " joints watched, "
            + l.pulls()
            + " pull tests counted, "
            + l.first()
            + " to "
            + l.last());
    lines.line("                     shipped        seen           used here");
    row(
        lines,
        "time factor",
        "1",
        Numbers.fixed(l.time().factor(0.5), 2) + " (" + range(l) + ")",
        Numbers.fixed(l.timeFactor(), 2));
    row(
        lines,
        "spread of ln(time)",
        Numbers.fixed(l.shipped().cure().spreadLn(), 2),
        l.joints() == 0 ? "" : Numbers.fixed(l.time().nextSigmaLn(), 2),
        Numbers.fixed(l.learned().cure().spreadLn(), 2));
    for (Stage stage : Stage.values()) {
      row(
          lines,
          StageTexts.name(stage) + ", h",
          Numbers.fixed(l.shipped().cure().at(stage).hours(), 2),
          "",
          Numbers.fixed(l.learned().cure().at(stage).hours(), 2));
    }
    row(
        lines,
        "strength, MPa",
        estimate(l.shipped()),
        l.pulls() == 0
            ? ""
            : Numbers.fixed(l.shipped().strengthMPa().likely() * Math.exp(l.strengthLn()), 1),
        estimate(l.learned()));
    l.held().forEach(h -> lines.hanging("  policy: ", h));
    l.lookAt().forEach(j -> lines.hanging("  look at: ", j));
    l.notCounted().forEach(n -> lines.hanging("  not counted: ", n));
  }

  private static String range(Learned l) {
    return Numbers.fixed(l.time().factor(0.05), 2) + "-" + Numbers.fixed(l.time().factor(0.95), 2);
  }

  private static String estimate(CompoundClass c) {
    Estimate s = c.strengthMPa();
    return Numbers.fixed(s.low(), 1)
        + "-"
        + Numbers.fixed(s.likely(), 1)
        + "-"
        + Numbers.fixed(s.high(), 1);
  }

  private static void row(TextLines lines, String what, String before, String seen, String after) {
    lines.line(
        "  "
            + TextLines.cell(what, 19)
            + TextLines.cell(before, 15)
            + TextLines.cell(seen, 18)
            + after);
  }
}
