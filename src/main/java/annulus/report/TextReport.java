package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.ServiceGap;
import annulus.advice.Advice.StageTime;
import annulus.advice.Advice.Step;
import annulus.advice.Advice.StepKind;
import annulus.advice.JointOrder;
import annulus.catalog.Catalog;
import annulus.catalog.Stage;
import annulus.fit.Gap;
import annulus.quantity.Numbers;
import annulus.select.ClassVerdict;
import annulus.select.Finding;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** An answer as plain text of at most 100 columns: what, when and why first, then detail. */
public final class TextReport {
  private static final int LABEL = 22;
  private static final int RADIAL = 26;
  private static final int TIME = 38;

  private final Advice advice;
  private final Catalog catalog;
  private final JointOrder order;
  private final ShopTime time;
  private final TextLines lines = new TextLines();
  private final ForceTexts force;

  private TextReport(Advice advice, Catalog catalog) {
    this.advice = advice;
    this.catalog = catalog;
    this.order = advice.order();
    this.force = new ForceTexts(advice);
    this.time = new ShopTime(order.zone(), order.start());
  }

  /**
   * The whole report, lines ended by LF.
   *
   * @param advice the answer
   * @param catalog the catalogue it was made with
   * @param why whether every rule, figure and source is told as well
   */
  public static String of(Advice advice, Catalog catalog, boolean why) {
    TextReport report = new TextReport(advice, catalog);
    report.decision();
    report.handBack();
    report.gap();
    report.section("Press fit", report.force.press());
    report.stages();
    report.steps();
    report.cautions();
    report.classes();
    if (why) {
      new WhyText(advice, catalog, report.lines).write();
    }
    report.lines.blank().line("Data version " + advice.dataVersion());
    return report.lines.toString();
  }

  private void decision() {
    DecisionTexts words = DecisionTexts.of(advice);
    lines.line(words.line());
    for (Finding finding : words.decisive()) {
      lines.hanging("  Because: ", words.because(finding));
    }
    if (advice.decision().kind() == Kind.MEASURE_AGAIN) {
      new RemedyTexts(advice)
          .lines(new GapTexts(advice, catalog))
          .forEach(l -> lines.hanging("  ", l));
    }
    words.instead().forEach(l -> lines.hanging("  Instead: ", l));
    String job = order.title().isBlank() ? order.job() : order.job() + ": " + order.title();
    if (!job.isBlank()) {
      lines.hanging("  Job ", job);
    }
  }

  private void handBack() {
    lines.blank();
    lines.hanging(
        "Earliest safe hand-back: ",
        advice
            .handBack()
            .map(
                h ->
                    h.after().isZero()
                        ? time.full(h.at()) + ", when it is home"
                        : time.full(h.at()) + ", " + ShopTime.up(h.after()) + " after closing")
            .orElse("none can be promised"));
    lines.hanging("  ", new HandBackTexts(advice, catalog).why());
    new AnswerWords(advice, catalog).handBackNotes().forEach(n -> lines.hanging("  ", n));
  }

  private void gap() {
    Gap gap = advice.gap().gap();
    double level = advice.gap().level();
    GapTexts words = new GapTexts(advice, catalog);
    lines.heading(
        TextLines.cell("Gap", LABEL)
            + TextLines.cell("radial (per side)", RADIAL)
            + "diametral (across)");
    row("  mean at 20 °C", words.radial(), words.diametral());
    double extreme = gap.extremeBudget().expandedUm(level);
    range("  largest at 20 °C", gap.largestUm(), extreme);
    range("  smallest at 20 °C", gap.smallestUm(), extreme);
    single(
        "  at assembly, " + celsius(order.cure().history().celsiusAt(0)),
        advice.gap().atAssemblyUm());
    ServiceGap service = advice.gap().inService();
    single("  in use at " + celsius(order.service().low()), service.atLowUm());
    single("  in use at " + celsius(order.service().high()), service.atHighUm());
    lines.hanging("  Fit: ", words.fit().words() + ". Below 0 is interference.");
    lines.hanging(
        "  ",
        "± is the expanded uncertainty at "
            + Figures.wanted(level)
            + ". On the joint of "
            + Numbers.fixed(gap.nominalMm(), 3)
            + " mm.");
    if (advice.decision().kind() != Kind.MEASURE_AGAIN) {
      // there they stand on top, among what to do about the measurement
      words.remarks().forEach(r -> lines.hanging("  ", r));
    }
  }

  private static String celsius(double celsius) {
    return Figures.trimmed(celsius, 1) + " °C";
  }

  private void range(String label, double um, double expanded) {
    row(label, GapTexts.plusMinus(um, expanded), GapTexts.plusMinus(2 * um, 2 * expanded));
  }

  private void single(String label, double um) {
    row(label, Numbers.fixed(um, 1) + " µm", Numbers.fixed(2 * um, 1) + " µm");
  }

  private void row(String label, String radial, String diametral) {
    lines.line(TextLines.cell(label, LABEL) + TextLines.cell(radial, RADIAL) + diametral);
  }

  private void stages() {
    boolean counts = advice.decision().kind() == Kind.USE_COMPOUND && advice.cure().isPresent();
    if (!counts) {
      lines.heading(
          advice.decision().kind() == Kind.PRESS_DRY
              ? "Cure: nothing to cure, it is pressed dry."
              : "Cure: no times, because nothing is bonded as it stands.");
      return;
    }
    CureTimes cure = advice.cure().get();
    lines.heading(
        TextLines.cell("Cure", 14)
            + TextLines.cell("typical", TIME)
            + "at "
            + Figures.wanted(order.confidence()));
    StageTexts words = new StageTexts(advice);
    for (StageTime stage : cure.stages()) {
      lines.line(
          TextLines.cell("  " + StageTexts.name(stage.stage()), 14)
              + TextLines.cell(when(words.typical(stage)), TIME)
              + when(words.sure(stage)));
      lines.hanging("                ", words.mayBeDone(stage.stage()));
    }
    StageTime full = cure.at(Stage.FULL);
    if (!cure.slowPracticeFull().equals(full.sure())) {
      lines.hanging(
          "  ", "Full cure as the slowest practice has it: " + when(cure.slowPracticeFull()));
    }
    lines.hanging(
        "  ", "Working time to push home: " + ShopTime.down(cure.workingTime()) + workingTimeEnd());
    lines.hanging(
        "  ",
        "Counted from closing at "
            + time.full(order.start())
            + ", "
            + order.zone().getId()
            + ", cure place "
            + order.cure().describedAs()
            + ".");
    moved();
    section("Hold along the bore", force.hold());
    section("Undoing it later", new RemovalTexts(advice).lines());
  }

  private String workingTimeEnd() {
    boolean tooQuick = advice.step(StepKind.TOO_QUICK).isPresent();
    return tooQuick ? ": too quick for anybody, see the steps." : ", then leave it.";
  }

  private void moved() {
    order
        .movedAt()
        .ifPresent(
            at ->
                lines.hanging(
                    "  ",
                    "Moved at "
                        + time.full(at)
                        + ", before it may have grabbed: counted as part of pushing it home."));
  }

  private void section(String heading, List<String> texts) {
    if (!texts.isEmpty()) {
      lines.heading(heading);
      texts.forEach(t -> lines.hanging("  ", t));
    }
  }

  private String when(Optional<Duration> after) {
    return after.map(d -> ShopTime.up(d) + ", " + time.brief(time.after(d))).orElse("never");
  }

  private void steps() {
    lines.heading("Steps");
    StepTexts words = new StepTexts(time);
    int number = 1;
    for (Step step : advice.steps()) {
      String count = Integer.toString(number++);
      lines.hanging(" ".repeat(Math.max(0, 4 - count.length())) + count + ". ", words.text(step));
    }
    if (advice.steps().isEmpty()) {
      lines.line("  None: do as told above first.");
    }
  }

  private void cautions() {
    lines.heading("Cautions");
    new CautionList(catalog)
        .of(advice)
        .forEach(c -> lines.hanging(c.everyJoint() ? "  - " : "  ! ", c.text()));
  }

  private void classes() {
    lines.heading("Classes");
    for (ClassVerdict verdict : advice.table()) {
      String first =
          TextLines.cell("  " + ClassTexts.name(verdict.compound()), 25)
              + TextLines.cell(ClassTexts.standing(verdict), 14);
      lines.hanging(first, ClassTexts.reason(verdict, advice));
    }
    if (!order.assumptions().isEmpty()) {
      lines.blank();
    }
    for (JointOrder.Assumption assumed : order.assumptions()) {
      lines.hanging(
          "Assumed: ", assumed.field() + " = " + assumed.value() + " (" + assumed.why() + ")");
    }
  }
}
