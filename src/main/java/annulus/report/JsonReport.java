package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Limit;
import annulus.advice.Advice.StageTime;
import annulus.advice.Advice.Step;
import annulus.advice.HoldReport;
import annulus.advice.JointOrder;
import annulus.advice.PressReport;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Provenance;
import annulus.fit.PressAnswer;
import annulus.hold.HoldFactor;
import annulus.quantity.Estimate;
import annulus.select.ClassVerdict;
import annulus.select.Fact;
import annulus.select.Finding;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;

/** An answer as JSON, following {@code data/schema/advice.schema.json}, format 1. */
public final class JsonReport {
  private final Advice advice;
  private final Catalog catalog;
  private final JointOrder order;
  private final ShopTime time;
  private final JsonOut out;

  private JsonReport(Advice advice, Catalog catalog, JsonOut out) {
    this.advice = advice;
    this.catalog = catalog;
    this.order = advice.order();
    this.time = new ShopTime(order.zone(), order.start());
    this.out = out;
  }

  /**
   * The whole answer, two spaces, LF, one LF at the end.
   *
   * @param advice the answer
   * @param catalog the catalogue it was made with
   */
  public static String of(Advice advice, Catalog catalog) {
    return of(advice, catalog, Optional.empty());
  }

  /**
   * The whole answer with what the cabinet has for it.
   *
   * @param stock what the cabinet has; empty where none was asked, and then nothing stands for it
   */
  public static String of(Advice advice, Catalog catalog, Optional<StockChoice> stock) {
    return JsonOut.document(
        out -> {
          new JsonReport(advice, catalog, out).write();
          stock.ifPresent(s -> out.object("cabinet", () -> s.json(out)));
        });
  }

  private void write() {
    out.whole("format", 1).text("dataVersion", advice.dataVersion());
    out.text("job", order.job()).text("title", order.title());
    out.text("start", time.iso(order.start())).text("zone", order.zone().getId());
    out.probability("wantedConfidence", order.confidence());
    out.text("consequence", StageTexts.id(order.consequence()));
    out.object("decision", this::decision);
    out.object("handBack", advice.handBack(), this::handBack);
    out.text("handBackWhy", new HandBackTexts(advice, catalog).why());
    out.text("primerNotCounted", new HandBackNotes(advice).primer());
    new JsonGap(advice, catalog, out).write();
    out.object("cure", advice.cure(), this::cure);
    out.object("press", advice.press(), this::press);
    out.object("hold", advice.hold(), this::hold);
    StepTexts words = new StepTexts(time);
    out.list("steps", advice.steps(), s -> step(s, words));
    CautionList cautions = new CautionList(catalog);
    out.list("cautions", cautions.findings(advice), f -> caution(f, cautions));
    out.list(
        "standingCautions",
        cautions.standing(),
        c ->
            source(
                out.text("id", c.id())
                    .text("severity", StageTexts.id(cautions.severity(c.id())))
                    .text("text", c.text()),
                c.provenance()));
    out.list("classes", advice.table(), this::verdict);
    out.list(
        "assumptions",
        order.assumptions(),
        a -> out.text("field", a.field()).text("value", a.value()).text("why", a.why()));
    out.list("figures", advice.figures(), this::figure);
  }

  private void decision() {
    DecisionTexts words = DecisionTexts.of(advice);
    Advice.Decision decision = advice.decision();
    out.text("kind", StageTexts.id(decision.kind())).flag("yes", advice.isYes());
    out.text("text", words.line());
    out.text("class", decision.compound().map(CompoundClass::id));
    out.text("className", decision.compound().map(CompoundClass::name));
    out.object(
        "primer",
        decision.primer(),
        p ->
            out.text("id", p.primer().id())
                .text("name", p.primer().name())
                .flag("onBore", p.onBore())
                .flag("onPart", p.onPart())
                .flag("addedHere", p.addedHere()));
    out.probability("probability", decision.probability());
    out.list("because", words.decisive(), this::finding);
    out.texts("instead", words.instead());
  }

  private void caution(Finding finding, CautionList cautions) {
    out.text("severity", StageTexts.id(cautions.severity(finding.rule().id())));
    finding(finding);
  }

  private void finding(Finding finding) {
    out.text("rule", finding.rule().id());
    out.text("verdict", StageTexts.id(finding.rule().verdict()));
    out.text("class", Optional.of(finding.classId()).filter(c -> !c.isEmpty()));
    out.text("reason", RuleTexts.reason(finding));
    out.list("figures", finding.figures().entrySet().stream().toList(), this::fact);
    source(out, finding.rule().provenance());
  }

  private void fact(Map.Entry<Fact, Object> figure) {
    out.text("fact", figure.getKey().id());
    out.value("value", figure.getValue());
    out.text("unit", figure.getKey().unit()).text("meaning", figure.getKey().meaning());
  }

  static void source(JsonOut out, Provenance provenance) {
    out.text("source", provenance.source());
    out.text("confidence", StageTexts.id(provenance.confidence()));
  }

  private void handBack(HandBack handBack) {
    HandBackTexts words = new HandBackTexts(advice, catalog);
    out.text("at", time.iso(handBack.at()));
    out.whole("afterMinutes", ShopTime.minutesUp(handBack.after()));
    out.text("ruling", StageTexts.id(handBack.ruling()));
    out.list(
        "conditions",
        handBack.conditions(),
        c ->
            out.text("condition", StageTexts.id(c.condition()))
                .text("text", words.condition(c.condition()))
                .whole("afterMinutes", ShopTime.minutesUp(c.after()))
                .text("at", time.iso(time.after(c.after()))));
    limitedUse(out, advice, new HandBackNotes(advice).limitedUse(), time);
  }

  /** Until when the use is limited and what must not be done; null where there is no limit. */
  static void limitedUse(JsonOut out, Advice advice, Optional<String> text, ShopTime time) {
    out.object(
        "limitedUse",
        text,
        words -> {
          out.text("until", advice.limited().flatMap(Limit::until).map(time::iso));
          out.text("notAllowed", advice.limitedUse().notAllowed()).text("text", words);
          source(out, advice.limitedUse().provenance());
        });
  }

  private void cure(CureTimes cure) {
    boolean counts = advice.decision().kind() == Advice.Kind.USE_COMPOUND;
    out.flag("counts", counts);
    out.text("place", order.cure().describedAs());
    StageTexts words = new StageTexts(advice);
    out.list("stages", cure.stages(), s -> stage(s, words));
    after("slowPracticeFull", cure.slowPracticeFull());
    out.number("workingTimeMinutes", Math.floor(cure.workingTime().toSeconds() / 6.0) / 10);
    out.list(
        "curve",
        cure.curve(),
        p ->
            out.number("afterMinutes", p.after().toSeconds() / 60.0)
                .probability("typicalFraction", p.typical())
                .probability("sureFraction", p.sure()));
  }

  private void stage(StageTime stage, StageTexts words) {
    out.text("stage", StageTexts.id(stage.stage()));
    after("typical", stage.typical());
    after("sure", stage.sure());
    after("from", words.sure(stage));
    out.text("mayBeDone", words.mayBeDone(stage.stage()));
  }

  /** Minutes since the start, rounded up, and the clock time; both null for never. */
  private void after(String name, Optional<Duration> after) {
    out.whole(name + "Minutes", after.map(ShopTime::minutesUp));
    out.text(name + "At", after.map(d -> time.iso(time.after(d))));
  }

  private void hold(HoldReport hold) {
    out.flag("computable", hold.computable());
    estimate("bondColdAxialN", hold.bondCold());
    estimate("bondHotAxialN", hold.bondHot());
    estimate("torqueHotNm", hold.torqueHot());
    out.object("atHandBackHotAxialN", hold.atHandBack(), this::three);
    out.number("wantedAxialN", hold.wantedN());
    out.number("fractionWanted", hold.fractionWanted());
    out.object("safetyHot", hold.safety(), this::three);
    out.list("factors", hold.factors(), this::factor);
    estimate("breakLooseAxialN", hold.breakLoose());
    estimate("breakLooseTorqueNm", hold.breakLooseTorque());
    out.texts("undoing", new RemovalTexts(advice).lines());
  }

  private void factor(HoldFactor factor) {
    out.text("factor", StageTexts.id(factor.kind()));
    three(factor.value());
  }

  private void press(PressReport press) {
    out.text("standing", StageTexts.id(press.standing()));
    out.radial("loosest", press.loosestRadialUm());
    out.number("looseAtC", press.looseAtC());
    out.number("tooTightAtC", press.tooTightAtC());
    Optional<PressAnswer.Pressed> pressed =
        press
            .answer()
            .filter(PressAnswer.Pressed.class::isInstance)
            .map(PressAnswer.Pressed.class::cast);
    out.object("pressureMPa", pressed.map(PressAnswer.Pressed::pressureMPa), this::three);
    out.object("pressInN", pressed.map(PressAnswer.Pressed::pressInForceN), this::three);
    out.object("frictionHoldAxialN", pressed.map(PressAnswer.Pressed::holdN), this::three);
    out.object("leastFrictionHoldAxialN", press.leastHold(), this::three);
    out.text("load", press.load().map(StageTexts::id));
    out.texts("lines", new ForceTexts(advice).press());
  }

  private void three(Estimate estimate) {
    out.number("low", estimate.low())
        .number("likely", estimate.likely())
        .number("high", estimate.high());
  }

  private void estimate(String name, Estimate estimate) {
    out.object(
        name,
        () ->
            out.number("low", estimate.low())
                .number("likely", estimate.likely())
                .number("high", estimate.high()));
  }

  private void step(Step step, StepTexts words) {
    out.text("step", StageTexts.id(step.kind())).text("text", words.text(step));
    boolean runsOut = step.kind() == Advice.StepKind.PRESS_STRAIGHT;
    out.number(
        "minutes",
        step.time()
            .map(d -> runsOut ? Math.floor(d.toSeconds() / 6.0) / 10 : ShopTime.minutesUp(d))
            .map(java.util.OptionalDouble::of)
            .orElse(java.util.OptionalDouble.empty()));
    out.text("until", step.at().map(time::iso));
  }

  private void verdict(ClassVerdict verdict) {
    CompoundClass compound = verdict.compound();
    out.text("class", compound.id()).text("name", compound.name());
    out.text("standing", StageTexts.id(verdict.standing()));
    out.text("reason", ClassTexts.reason(verdict, advice));
    out.probability("covers", verdict.covers());
    out.radial("gapLow", compound.gapUm().low()).radial("gapHigh", compound.gapUm().high());
    out.radial("primedGapHigh", compound.primedGapMaxUm());
    out.list("findings", verdict.findings(), this::finding);
    source(out, compound.provenance());
  }

  private void figure(Advice.Figure figure) {
    out.text("id", figure.id()).significant("value", figure.value());
    out.text("unit", figure.unit()).text("meaning", figure.meaning());
    source(out, figure.provenance());
  }
}
