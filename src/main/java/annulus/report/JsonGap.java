package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.GapFinding;
import annulus.catalog.Catalog;
import annulus.fit.Gap;
import annulus.measure.Budget;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Remedy;
import annulus.quantity.Interval;
import java.util.Optional;
import java.util.OptionalDouble;

/** The gap's part of the JSON: every length names its unit and says radial or diametral. */
final class JsonGap {
  private final Advice advice;
  private final GapTexts words;
  private final GapFinding found;
  private final JsonOut out;

  JsonGap(Advice advice, Catalog catalog, JsonOut out) {
    this.advice = advice;
    this.words = new GapTexts(advice, catalog);
    this.found = advice.gap();
    this.out = out;
  }

  void write() {
    out.object("gap", this::gap);
    out.object("remedy", found.remedy(), this::remedy);
  }

  private void gap() {
    Gap gap = found.gap();
    double level = found.level();
    out.text("fit", StageTexts.id(words.fit())).text("fitText", words.fit().words());
    out.text("text", words.line());
    out.texts("remarks", words.remarks());
    out.diameter("nominalDiameterMm", gap.nominalMm()).probability("level", level);
    out.radial("mean", gap.meanUm());
    out.radial("meanPlusMinus", gap.budget().expandedUm(level));
    out.radial("largest", gap.largestUm()).radial("smallest", gap.smallestUm());
    out.radial("extremePlusMinus", gap.extremeBudget().expandedUm(level));
    out.radial("upperLimit", gap.upperUm(level)).radial("lowerLimit", gap.lowerUm(level));
    out.number("oneSidedFaceToFaceUm", gap.oneSidedUm(level));
    out.number("assemblyC", advice.order().cure().history().celsiusAt(0));
    out.radial("atAssembly", found.atAssemblyUm());
    out.number("serviceLowC", advice.order().service().low());
    out.radial("atServiceLow", found.inService().atLowUm());
    out.number("serviceHighC", advice.order().service().high());
    out.radial("atServiceHigh", found.inService().atHighUm());
    out.radial("serviceGrowth", found.inService().growthUm());
    out.object("bore", found.bore(), this::diameter);
    out.object("part", found.part(), this::diameter);
    budget("meanBudgetRadial", gap.budget());
    budget("extremeBudgetRadial", gap.extremeBudget());
  }

  private void diameter(MeasuredDiameter measured) {
    out.text("instrument", measured.instrument().id());
    out.text("instrumentName", measured.instrument().name());
    out.list(
        "readings",
        measured.readings(),
        r ->
            out.diameter("diameterMm", r.mm())
                .number("depthMm", r.depthMm())
                .number("angleDeg", r.angleDeg()));
    out.diameter("meanDiameterMm", measured.meanMm());
    out.diameter("largestDiameterMm", measured.largestMm());
    out.diameter("smallestDiameterMm", measured.smallestMm());
    out.number("spreadDiametralUm", measured.spreadUm());
    out.number("ovalityDiametralUm", measured.ovalityUm());
    out.number("taperDiametralUm", measured.taperUm());
    out.number("jawCorrectionDiametralUm", measured.correctionUm());
    out.number("temperatureCorrectionDiametralUm", measured.temperatureCorrectionUm());
    out.number("plusMinusDiametralUm", measured.budget().expandedUm(found.level()));
    out.texts("notes", measured.notes().stream().map(NoteTexts::text).toList());
    budget("budgetDiametral", measured.budget());
    JsonReport.source(out, measured.span().provenance());
  }

  private void budget(String name, Budget budget) {
    out.object(
        name,
        () -> {
          out.list(
              "components",
              budget.components(),
              c ->
                  out.text("id", c.id())
                      .text("name", c.name())
                      .number("standardUm", c.standardUm())
                      .number("degreesOfFreedom", c.degreesOfFreedom())
                      .text("shape", StageTexts.id(c.shape()))
                      .probability("shareOfVariance", budget.share(c.id()))
                      .text("why", c.why()));
          out.number("combinedUm", budget.combinedUm());
          out.number("effectiveDegreesOfFreedom", budget.effectiveDegreesOfFreedom());
          out.number("coverageFactor", budget.coverageFactor(found.level()));
          out.number("expandedUm", budget.expandedUm(found.level()));
        });
  }

  private void remedy(Remedy remedy) {
    out.text("state", StageTexts.id(remedy.state()));
    out.texts("text", new RemedyTexts(advice).lines(words));
    out.probability("probabilityNow", remedy.probabilityNow());
    range("bestRange", remedy.bestRange());
    out.radial("edgeDistance", remedy.edgeDistanceUm());
    out.list(
        "pairs",
        remedy.pairs(),
        p -> {
          out.text("bore", p.bore().id()).text("boreName", p.bore().name());
          out.text("part", p.part().id()).text("partName", p.part().name());
          range("range", Optional.of(p.range()));
          out.probability("probability", p.probability());
        });
    out.probability("mostReachable", remedy.mostReachable());
    Remedy.MoreReadings more = remedy.moreReadings();
    out.object(
        "moreReadings",
        () -> {
          out.text("outcome", StageTexts.id(more.outcome()));
          out.number(
              "perMember",
              more.perMember().isPresent()
                  ? OptionalDouble.of(more.perMember().getAsInt())
                  : OptionalDouble.empty());
          out.probability("probability", more.probability());
        });
  }

  private void range(String name, Optional<Interval> range) {
    out.object(name, range, r -> out.radial("low", r.low()).radial("high", r.high()));
  }
}
