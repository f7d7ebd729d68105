package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.GapFinding;
import annulus.advice.JointOrder;
import annulus.catalog.Catalog;
import annulus.fit.Gap;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Note;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/** The gap in words: radial and diametral always side by side, limits rounded outwards. */
final class GapTexts {
  private final GapFinding found;
  private final JointOrder order;
  private final Catalog catalog;

  GapTexts(Advice advice, Catalog catalog) {
    this.found = advice.gap();
    this.order = advice.order();
    this.catalog = catalog;
  }

  /** How the parts stand to each other; a doubt is never called interference. */
  Fit fit() {
    Gap gap = found.gap();
    double dry = catalog.policy().value("dry-press-from-um");
    if (gap.probabilityWithin(Double.NEGATIVE_INFINITY, dry) >= found.level()) {
      return Fit.INTERFERENCE;
    }
    double line = catalog.policy().value("line-to-line-um");
    if (gap.meanUm() > line) {
      return gap.lowerUm(found.level()) > 0 ? Fit.CLEAR : Fit.CLEAR_NOT_SURE;
    }
    return gap.meanUm() >= -line ? Fit.LINE_TO_LINE : Fit.TIGHT_NOT_SURE;
  }

  /** Kinds of fit in words. */
  enum Fit {
    CLEAR("clear: the part is smaller than the bore"),
    CLEAR_NOT_SURE("clear as measured, but line to line or tight is not ruled out"),
    LINE_TO_LINE("line to line: bore and part are the same size, near enough"),
    TIGHT_NOT_SURE("tight as measured, but interference is not proved"),
    INTERFERENCE("interference: the part is larger than the bore");

    private final String words;

    Fit(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }
  }

  /** Mean gap with its expanded uncertainty, in one line. */
  String line() {
    return "radial " + radial() + " (per side), diametral " + diametral() + " (across)";
  }

  String radial() {
    Gap gap = found.gap();
    return plusMinus(gap.meanUm(), gap.budget().expandedUm(found.level()));
  }

  String diametral() {
    Gap gap = found.gap();
    return plusMinus(2 * gap.meanUm(), 2 * gap.budget().expandedUm(found.level()));
  }

  /** Largest and smallest that the gap could be: {@code -3.1 to 42.0 µm}. */
  String couldBe(double factor) {
    Gap gap = found.gap();
    return Figures.roundedDown(factor * gap.lowerUm(found.level()), 1)
        + " to "
        + Figures.roundedUp(factor * gap.upperUm(found.level()), 1)
        + " µm";
  }

  /** What was added to the readings, and which of them to look at again. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    if (order.engagementMm()
        > catalog.policy().value("long-seat-ratio") * found.gap().nominalMm()) {
      remarks.add(
          "The seat is "
              + Figures.trimmed(order.engagementMm() / found.gap().nominalMm(), 1)
              + " times as long as it is wide: are the diameters inches? Then write the unit: 1.26 in.");
    }
    found.bore().ifPresent(b -> remarks(b, "bore", remarks));
    found.part().ifPresent(p -> remarks(p, "part", remarks));
    return remarks;
  }

  private static void remarks(MeasuredDiameter measured, String member, List<String> remarks) {
    if (measured.has(Note.READINGS_DISAGREE)) {
      remarks.add("Readings of one place of the " + member + " disagree: a slip? Read it again.");
    } else if (measured.has(Note.READINGS_SPREAD)) {
      remarks.add(
          "Readings of the "
              + member
              + " differ by "
              + Figures.um(measured.spreadUm())
              + " across: a slip, or worn? Read it again.");
    }
    if (measured.has(Note.JAWS_READ_SMALL)) {
      double um = measured.correctionUm();
      remarks.add(
          "Flat jaws read a bore small: "
              + Figures.um(um)
              + " is added across the "
              + member
              + ", "
              + Figures.um(um / 2)
              + " per side.");
    }
  }

  static String plusMinus(double value, double expanded) {
    return Numbers.fixed(value, 1) + " ± " + Figures.roundedUp(expanded, 1) + " µm";
  }
}
