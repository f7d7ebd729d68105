package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.StageTime;
import annulus.advice.Advice.Step;
import annulus.advice.JointOrder;
import annulus.catalog.Catalog;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * One joint as one A5 page to print: the decision, the one safe time, the gap, the stages, the
 * steps to tick, pictures and a line to sign. Black on white, no script, nothing fetched.
 */
public final class JobCard {
  private static final int TITLE_CHARACTERS = 70;
  private static final int REASON_CHARACTERS = 330;

  /** Frame, head and time of the box, mm. */
  private static final double BOX = 17;

  /** Characters of a row of stages that the time and what may be done share. */
  private static final int WORDS_AND_TIME = 70;

  private static final String STYLE =
      """
      @page { size: 148mm 210mm; margin: 0 }
      * { box-sizing: border-box; margin: 0; padding: 0 }
      html { background: #fff; color: #000 }
      body { width: 148mm; height: 209.5mm; padding: 5.5mm 8mm 5.5mm; display: flex;
        flex-direction: column; gap: 1mm; font: 7.4pt/1.2\s"""
          + PrintFont.FAMILIES
          + """
       }
      header { display: flex; justify-content: space-between; gap: 4mm; font-size: 10pt;
        font-weight: bold; overflow-wrap: anywhere }
      header .job { flex: none; max-width: 50mm }
      .decision { font-size: 12pt; line-height: 1.15; border-top: 0.6mm solid #000;
        padding-top: 1.2mm }
      .because p { margin-bottom: 0.5mm }
      .box { border: 0.8mm solid #000; padding: 1.2mm 3mm; text-align: center }
      .box h1 { font-size: 11pt; letter-spacing: 0.3mm }
      .box .when { font-size: 19pt; font-weight: bold; line-height: 1.15 }
      .box .note { font-weight: bold }
      .gap { font-size: 9pt }
      .gap b { white-space: nowrap }
      table { border-collapse: collapse; width: 100% }
      th, td { text-align: left; padding: 0.2mm 2mm 0.2mm 0; border-bottom: 0.15mm solid #999;
        vertical-align: top }
      td.sure { font-weight: bold; white-space: nowrap }
      td.typical { white-space: nowrap }
      .halves { display: flex; gap: 3mm }
      .halves .steps { flex: 1 }
      .halves .pictures { flex: none; width: 57mm }
      .pictures svg { width: 57mm; height: auto }
      h2 { font-size: 8.5pt; margin-bottom: 0.6mm }
      ol + h2 { margin-top: 1.5mm }
      ol { list-style: none }
      ol li { display: flex; gap: 1.6mm; margin-bottom: 0.6mm }
      ol .tick { flex: none; width: 3.4mm; height: 3.4mm; border: 0.3mm solid #000 }
      ul { list-style: none }
      ul li { padding-left: 2.6mm; text-indent: -2.6mm }
      svg { display: block; flex: none }
      .sign { margin-top: auto; display: flex; gap: 4mm; border-top: 0.3mm solid #000;
        padding-top: 4.5mm; font-size: 8pt }
      .sign span { flex: 1; border-bottom: 0.2mm solid #000 }
      footer { font-size: 6pt; color: #333 }
      """;

  /** The space between a number and its unit, which must not break. */
  private static final Pattern BEFORE_UNIT =
      Pattern.compile("(?<=\\d) (?=(%|µm|mm|mL|°C|K|N|N·m|min|h|d|s)([ .,;:)]|$))");

  private static final String CODE_STYLE =
      """
      .box { position: relative; min-height: 19.5mm; padding-right: 20mm }
      .box .code { position: absolute; right: 0.6mm; top: 0.6mm }
      """;

  private final Advice advice;
  private final String code;
  private final boolean closed;
  private final Catalog catalog;
  private final JointOrder order;
  private final ShopTime time;
  private final StringBuilder page = new StringBuilder();

  private JobCard(Advice advice, Catalog catalog, String code, boolean closed) {
    this.advice = advice;
    this.code = code;
    this.closed = closed;
    this.catalog = catalog;
    this.order = advice.order();
    this.time = new ShopTime(order.zone(), order.start());
  }

  /**
   * The whole page; write it as UTF-8.
   *
   * @param advice the answer
   * @param catalog the catalogue it was made with
   */
  public static String of(Advice advice, Catalog catalog) {
    return new JobCard(advice, catalog, "", true).html();
  }

  /**
   * The whole page with a code that opens the job where it is kept.
   *
   * @param advice the answer
   * @param catalog the catalogue it was made with
   * @param code picture of the code as one SVG element 17 mm wide; empty for none
   * @param closed whether the joint is closed; while it is not, no clock time holds
   */
  public static String of(Advice advice, Catalog catalog, String code, boolean closed) {
    return new JobCard(advice, catalog, code, closed).html();
  }

  private String html() {
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<title>")
        .append(text("Job card " + order.job()))
        .append("</title>\n<style>\n")
        .append(STYLE)
        .append(code.isEmpty() ? "" : CODE_STYLE)
        .append("</style>\n</head>\n<body>\n");
    header();
    decision();
    handBack();
    element("p", "gap", "Gap <b>" + text(new GapTexts(advice, catalog).line()) + "</b>");
    new ForceTexts(advice).brief().forEach(l -> element("p", "", text(l)));
    stages();
    halves();
    sign();
    return page.append("</body>\n</html>\n").toString();
  }

  private static String text(String value) {
    String clean = TextLines.printable(value);
    return Html.text(BEFORE_UNIT.matcher(clean).replaceAll("\u00a0"));
  }

  private void element(String name, String cssClass, String html) {
    String attribute = cssClass.isEmpty() ? "" : " class=\"" + cssClass + "\"";
    page.append("<" + name + attribute + ">").append(html).append("</" + name + ">\n");
  }

  private void header() {
    page.append("<header>");
    element("span", "title", "<bdi>" + text(shortened(order.title(), TITLE_CHARACTERS)) + "</bdi>");
    element("span", "job", "Job <bdi>" + text(shortened(order.job(), 30)) + "</bdi>");
    page.append("</header>\n");
  }

  private static String shortened(String value, int most) {
    return TextLines.shortened(TextLines.printable(value), most);
  }

  private void decision() {
    DecisionTexts words = DecisionTexts.of(advice);
    element("p", "decision", "<b>" + text(words.command()) + "</b> " + text(words.what()));
    StringBuilder because = new StringBuilder();
    for (String line : reasons()) {
      because.append("<p>").append(text(line)).append("</p>");
    }
    element("div", "because", because.toString());
  }

  private List<String> reasons() {
    DecisionTexts words = DecisionTexts.of(advice);
    List<String> lines = new ArrayList<>();
    words.decisive().forEach(f -> lines.add(words.because(f)));
    if (advice.decision().kind() == Advice.Kind.MEASURE_AGAIN) {
      lines.addAll(new RemedyTexts(advice).lines(new GapTexts(advice, catalog)));
    }
    lines.addAll(words.instead());
    return lines.stream().map(l -> shortened(l, REASON_CHARACTERS)).toList();
  }

  /** Whether there is a time, and it counts from a closing that is still to come. */
  private boolean open() {
    return advice.handBack().isPresent() && !closed;
  }

  /** What the clock times of an open joint are worth. */
  private List<String> asIf() {
    String start = time.full(order.start());
    return open()
        ? List.of("Times below: as if closed at " + start + ". Print the card again once it is.")
        : List.of();
  }

  private void handBack() {
    HandBackTexts words = new HandBackTexts(advice, catalog);
    Optional<HandBack> handBack = advice.handBack();
    String head =
        open()
            ? "NOT CLOSED YET"
            : handBack.isPresent() ? "DO NOT HAND BACK BEFORE" : "DO NOT HAND BACK";
    String when =
        handBack
            .map(h -> open() ? ShopTime.up(h.after()) + " after closing" : time.full(h.at()))
            .orElse("no time can be promised");
    page.append("<div class=\"box\">\n");
    if (!code.isEmpty()) {
      element("div", "code", code);
    }
    element("h1", "", head);
    element("p", "when", text(when));
    asIf().forEach(l -> element("p", "note", text(l)));
    element("p", "", text(words.why()));
    new AnswerWords(advice, catalog).handBackNotes().forEach(n -> element("p", "note", text(n)));
    page.append("</div>\n");
  }

  private boolean bonds() {
    return advice.decision().kind() == Advice.Kind.USE_COMPOUND && advice.cure().isPresent();
  }

  private void stages() {
    if (!bonds()) {
      return;
    }
    CureTimes cure = advice.cure().orElseThrow();
    page.append("<table>\n<tr><th>stage</th><th>sure at ")
        .append(text(Figures.wanted(order.confidence())))
        .append("</th><th>typical</th><th>what may be done</th></tr>\n");
    StageTexts words = new StageTexts(advice);
    for (StageTime stage : cure.stages()) {
      page.append("<tr>");
      element("td", "", text(StageTexts.name(stage.stage())));
      element("td", "sure", text(when(words.sure(stage))));
      element("td", "typical", text(words.typical(stage).map(ShopTime::up).orElse("never")));
      element("td", "", text(words.mayBeDone(stage.stage())));
      page.append("</tr>\n");
    }
    page.append("</table>\n");
  }

  private String when(Optional<Duration> after) {
    return after.map(d -> time.brief(time.after(d)) + " (" + ShopTime.up(d) + ")").orElse("never");
  }

  private void halves() {
    page.append("<div class=\"halves\">\n<div class=\"steps\">\n<h2>Steps</h2>\n<ol>\n");
    StepTexts words = new StepTexts(time);
    for (Step step : advice.steps()) {
      page.append("<li><span class=\"tick\"></span><span>")
          .append(text(words.text(step)))
          .append("</span></li>\n");
    }
    if (advice.steps().isEmpty()) {
      page.append("<li>None: do as told above first.</li>\n");
    }
    page.append("</ol>\n");
    cautions();
    page.append("</div>\n<div class=\"pictures\">\n")
        .append(GapSection.of(advice, catalog))
        .append(GapDistribution.of(advice));
    CureChart.of(advice).ifPresent(page::append);
    page.append("</div>\n</div>\n");
  }

  /** Those with words for the card always; of the others the gravest, as many as there is room. */
  private void cautions() {
    CardRoom room = room();
    List<String> shown = new ArrayList<>();
    List<String> inTurn = new ArrayList<>();
    for (CautionList.Caution caution : new CautionList(catalog).of(advice)) {
      boolean first = caution.id().isEmpty();
      if (first || caution.card().isPresent()) {
        shown.add(caution.card().orElse(caution.text()));
      } else {
        inTurn.add(caution.text());
      }
    }
    shown.forEach(room::caution);
    int told = 0;
    while (told < inTurn.size()
        && room.holds(inTurn.get(told), told + 1 < inTurn.size() ? more(99) : "")) {
      room.caution(inTurn.get(told));
      shown.add(inTurn.get(told++));
    }
    page.append("<h2>Take care</h2>\n<ul>\n");
    shown.forEach(c -> element("li", "", "! " + text(c)));
    if (told < inTurn.size()) {
      element("li", "", "<b>" + text(more(inTurn.size() - told)) + "</b>");
    }
    page.append("</ul>\n");
  }

  private static String more(int count) {
    return "+ " + count + " more in the full report: read them before you start.";
  }

  /** What the rest of the page leaves for the cautions. */
  private CardRoom room() {
    DecisionTexts decision = DecisionTexts.of(advice);
    AnswerWords answer = new AnswerWords(advice, catalog);
    CardRoom room = new CardRoom();
    int title = CardRoom.lines(shortened(order.title(), TITLE_CHARACTERS), 42);
    room.take(4.3 * Math.max(title, CardRoom.lines("Job " + order.job(), 14)));
    room.wide(List.of(decision.command() + " " + decision.what()), 58, 4.9);
    room.plain(reasons());
    room.take(BOX);
    List<String> inBox = new ArrayList<>(asIf());
    inBox.add(answer.handBackWhy());
    inBox.addAll(answer.handBackNotes());
    room.wide(inBox, code.isEmpty() ? 95 : 78, CardRoom.LINE);
    room.wide(List.of("Gap " + answer.gap()), 85, 3.9);
    room.plain(new ForceTexts(advice).brief());
    if (bonds()) {
      room.take(CardRoom.LINE + 0.8);
      StageTexts words = new StageTexts(advice);
      for (StageTime stage : advice.cure().orElseThrow().stages()) {
        int when = when(words.sure(stage)).length();
        room.wide(List.of(words.mayBeDone(stage.stage())), WORDS_AND_TIME - when, CardRoom.LINE);
        room.take(0.8);
      }
    }
    StepTexts steps = new StepTexts(time);
    advice.steps().forEach(s -> room.step(steps.text(s)));
    return room;
  }

  private void sign() {
    page.append(
        "<div class=\"sign\"><span>Fixed at (date, time):</span><span>by:</span>"
            + "<span>Checked by:</span></div>\n");
    String counted =
        "Counted from closing at "
            + time.full(order.start())
            + ", "
            + order.cure().describedAs()
            + ". Closed later? Every time moves. ";
    element("footer", "", text((bonds() ? counted : "") + "Data version " + advice.dataVersion()));
  }
}
