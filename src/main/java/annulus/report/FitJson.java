package annulus.report;

import annulus.advice.FitExplanation;
import annulus.advice.FitExplanation.Judgement;
import annulus.advice.FitExplanation.Zone;
import annulus.fit.iso286.Fit;
import annulus.measure.Side;

/** A designation as JSON, format 1: limits, clearances and what measured sizes prove. */
public final class FitJson {
  private FitJson() {}

  /** The whole document, two spaces, LF, one LF at the end. */
  public static String of(FitExplanation explanation) {
    return JsonOut.document(out -> write(out, explanation));
  }

  private static void write(JsonOut out, FitExplanation explanation) {
    out.whole("format", 1);
    out.list("zones", explanation.zones(), z -> zone(out, z));
    out.object("fit", explanation.fit(), f -> fit(out, f));
    out.probability("level", explanation.level());
    out.list("judgements", explanation.judgements(), j -> judgement(out, j, explanation.level()));
    out.text("text", FitText.of(explanation));
  }

  private static void zone(JsonOut out, Zone zone) {
    out.text("written", zone.written()).text("side", side(zone.side()));
    out.diameter("nominalMm", zone.limits().nominalMm());
    out.number("lowerDiametralUm", zone.limits().lowerUm());
    out.number("upperDiametralUm", zone.limits().upperUm());
    out.diameter("smallestMm", zone.limits().smallestMm());
    out.diameter("largestMm", zone.limits().largestMm());
    out.text("source", zone.basis().source());
    out.text("confidence", StageTexts.id(zone.basis().confidence()));
  }

  private static String side(Side side) {
    return side == Side.BORE ? "hole" : "shaft";
  }

  private static void fit(JsonOut out, Fit fit) {
    out.text("kind", StageTexts.id(fit.kind()));
    out.radial("greatestGap", fit.greatestRadialGapUm());
    out.radial("leastGap", fit.leastRadialGapUm());
  }

  private static void judgement(JsonOut out, Judgement j, double level) {
    out.text("zone", j.zone().written());
    out.diameter("meanMm", j.measured().meanMm());
    out.number("plusMinusDiametralUm", j.measured().budget().expandedUm(level));
    out.probability("inside", j.inside());
    out.text("verdict", StageTexts.id(j.verdict()));
  }
}
