package annulus.report;

import annulus.advice.FitExplanation;
import annulus.advice.FitExplanation.Judgement;
import annulus.advice.FitExplanation.Zone;
import annulus.fit.Gap;
import annulus.fit.iso286.Fit;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Note;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import java.util.Locale;

/** A designation in words: limits, clearances, kind of fit, and what measured sizes prove. */
public final class FitText {
  private final FitExplanation explanation;
  private final TextLines lines = new TextLines();

  private FitText(FitExplanation explanation) {
    this.explanation = explanation;
  }

  /** The whole explanation, lines ended by LF. */
  public static String of(FitExplanation explanation) {
    FitText text = new FitText(explanation);
    text.explanation.fit().ifPresent(text::kind);
    text.zones();
    text.explanation.fit().ifPresent(text::clearances);
    text.judgements();
    text.asMeasured();
    text.picture();
    text.sources();
    return text.lines.toString();
  }

  private void kind(Fit fit) {
    String words =
        switch (fit.kind()) {
          case CLEARANCE -> "CLEARANCE FIT  the shaft always goes in, or the limits just touch";
          case TRANSITION -> "TRANSITION FIT  may come out loose or tight: measure the pair";
          case INTERFERENCE ->
              "INTERFERENCE FIT  the shaft is always the larger: it must be pressed";
        };
    lines.line(words).blank();
  }

  private void zones() {
    for (Zone zone : explanation.zones()) {
      lines.hanging(
          "",
          String.format(
              Locale.ROOT,
              "%s %-10s  %s to %s mm   (%s to %s µm on the diameter, tolerance %s µm)",
              zone.side() == Side.BORE ? "hole " : "shaft",
              zone.written(),
              Numbers.fixed(zone.limits().smallestMm(), 4),
              Numbers.fixed(zone.limits().largestMm(), 4),
              Numbers.signed(zone.limits().lowerUm(), 1),
              Numbers.signed(zone.limits().upperUm(), 1),
              Numbers.fixed(zone.limits().toleranceUm(), 1)));
    }
  }

  private void clearances(Fit fit) {
    lines.blank();
    lines.line(clearance("largest", fit.greatestDiametralClearanceUm()));
    lines.line(clearance("smallest", fit.leastDiametralClearanceUm()));
    lines.line("  Below 0 is interference.");
  }

  private static String clearance(String which, double diametralUm) {
    return String.format(
        Locale.ROOT,
        "%-9s clearance %s µm diametral (across), %s µm radial (per side)",
        which,
        Numbers.signed(diametralUm, 1),
        Numbers.signed(diametralUm / 2, 2));
  }

  private void judgements() {
    for (Judgement judgement : explanation.judgements()) {
      double level = explanation.level();
      String name = judgement.zone().written();
      String verdict =
          switch (judgement.verdict()) {
            case INSIDE -> "INSIDE the limits of " + name;
            case OUTSIDE -> "OUTSIDE the limits of " + name;
            case NOT_DECIDED -> "NOT DECIDED for " + name + ", this instrument can't tell";
          };
      lines.blank();
      lines.hanging(
          "",
          (judgement.zone().side() == Side.BORE ? "bore " : "part ")
              + Numbers.fixed(judgement.measured().meanMm(), 4)
              + " mm at 20 °C, ± "
              + Figures.roundedUp(judgement.measured().budget().expandedUm(level), 1)
              + " µm at "
              + Figures.wanted(level)
              + ": "
              + verdict
              + "; inside with probability "
              + Figures.percent(judgement.inside(), level));
      lines.hanging("  ", "read with " + instrument(judgement.measured()));
    }
  }

  private static String instrument(MeasuredDiameter measured) {
    return measured.instrument().name()
        + (measured.has(Note.JAWS_READ_SMALL)
            ? "; flat jaws read a bore small: "
                + Figures.um(measured.correctionUm())
                + " is added across"
            : "");
  }

  /** The pair at hand, which is what a mechanic fits. */
  private void asMeasured() {
    if (explanation.judgements().size() == 2) {
      Gap gap =
          Gap.of(
              explanation.judgements().get(0).measured(),
              explanation.judgements().get(1).measured());
      double plusMinus = gap.budget().expandedUm(explanation.level());
      lines.blank();
      lines.hanging(
          "",
          "this pair as measured: clearance "
              + GapTexts.plusMinus(2 * gap.meanUm(), 2 * plusMinus)
              + " diametral (across), "
              + GapTexts.plusMinus(gap.meanUm(), plusMinus)
              + " radial (per side)");
    }
  }

  private void picture() {
    lines.blank();
    ToleranceZones.text(explanation).forEach(lines::line);
  }

  private void sources() {
    lines.blank();
    for (Zone zone : explanation.zones()) {
      lines.hanging(
          "  ",
          zone.written()
              + ": "
              + zone.basis().source()
              + ", confidence "
              + StageTexts.id(zone.basis().confidence()));
    }
  }
}
