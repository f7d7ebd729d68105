package annulus.web;

import annulus.advice.Advice;
import annulus.catalog.Catalog;
import annulus.quantity.Numbers;
import annulus.quantity.Units;
import annulus.report.AnswerWords;
import annulus.report.CureChart;
import annulus.report.GapDistribution;
import annulus.report.GapSection;
import annulus.report.TextReport;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** An answer on a page: what, when, why, the gap picture; then the rest on request. */
final class AnswerPart {
  private final Answer answer;
  private final Catalog catalog;
  private final ClockWords times;
  private final boolean inches;
  private final String path;
  private final Optional<String> promise;
  private final AnswerWords words;

  /**
   * @param promise what the customer was told or can be told, in words; empty: nothing
   * @param path of the page that the answer stands on
   */
  AnswerPart(
      Answer answer,
      Catalog catalog,
      ClockWords times,
      boolean inches,
      Optional<String> promise,
      String path) {
    this.answer = answer;
    this.promise = promise;
    this.catalog = catalog;
    this.times = times;
    this.inches = inches;
    this.path = path;
    this.words = new AnswerWords(answer.told().advice(), catalog);
  }

  Markup markup() {
    Markup part = new Markup();
    decision(part);
    handBack(part);
    gap(part);
    return part;
  }

  /** Steps, cautions and every reason at once, for a joint that is still being typed. */
  Markup more() {
    Markup part = steps();
    part.open("details").element("summary", "The whole answer with every reason");
    part.part(why(answer, catalog)).close().open("p");
    return link(part, "Every number with its source", "/sources").close();
  }

  /** Steps and cautions; reasons and sources stand on pages of their own. */
  Markup moreByLinks() {
    Markup part = steps();
    part.open("p");
    link(part, "The whole answer with every reason", "/why");
    return link(part, "Every number with its source", "/sources").close();
  }

  private Markup link(Markup part, String words, String below) {
    return part.element("a", words, "href", path + below, "class", "button plain");
  }

  /** The whole answer with every reason, as {@code advise --why} prints it. */
  static Markup why(Answer answer, Catalog catalog) {
    return new Markup()
        .element(
            "pre",
            TextReport.of(answer.told().advice(), catalog, true),
            "tabindex",
            "0",
            "aria-label",
            "The whole answer");
  }

  private Markup steps() {
    Markup part = new Markup();
    List<String> steps = words.steps();
    if (!steps.isEmpty()) {
      part.element("h2", "Steps");
      list(part, "ol", steps);
    }
    part.element("h2", "Take care");
    list(part, "ul", words.cautions());
    CureChart.of(answer.told().advice()).ifPresent(svg -> part.open("figure").picture(svg).close());
    return part;
  }

  private void decision(Markup part) {
    boolean yes = answer.isYes();
    part.open("p", "class", yes ? "decision yes" : "decision no");
    part.element("span", yes ? "✓" : "✕", "class", "mark", "aria-hidden", "true");
    part.element("strong", words.decision()).close();
    if (!yes) {
      part.open("ul", "class", "because");
      items(part, words.because());
      items(part, words.instead());
      items(part, words.remedy());
      part.close();
    }
  }

  private void handBack(Markup part) {
    part.open("p", "class", "handback");
    if (answer.told().ready().isPresent()) {
      part.text("Not safe before ");
      part.element("strong", times.full(answer.told().ready().get()));
      part.text(". ");
      promise.ifPresent(p -> part.text("Promise: " + p + ". "));
    } else {
      part.element("strong", "No hand-back time can be given. ");
    }
    part.text(words.handBackWhy()).close();
    words.handBackNotes().forEach(n -> part.element("p", n, "class", "limited"));
    Duration working =
        answer.told().advice().cure().map(Advice.CureTimes::workingTime).orElse(Duration.ZERO);
    if (answer.isYes() && !working.isZero()) {
      part.element("p", "Push it home within " + down(working) + ", in one go.");
    }
  }

  /** Never longer than it is. */
  private static String down(Duration time) {
    return time.toMinutes() < 2 ? time.toSeconds() + " s" : time.toMinutes() + " min";
  }

  private void gap(Markup part) {
    Advice advice = answer.told().advice();
    part.open("p", "class", "gap").text("Gap ");
    part.element("strong", words.gap());
    if (inches) {
      double um = advice.gap().gap().meanUm();
      part.text(
          " = radial "
              + Numbers.fixed(Units.inchFromMm(um / 1000), 5)
              + " in, diametral "
              + Numbers.fixed(Units.inchFromMm(2 * um / 1000), 5)
              + " in");
    }
    part.close();
    if (advice.decision().kind() != Advice.Kind.MEASURE_AGAIN) {
      words.gapRemarks().forEach(r -> part.element("p", r));
    }
    part.open("div", "class", "pictures");
    part.open("figure").picture(GapDistribution.of(advice)).close();
    part.open("figure").picture(GapSection.of(advice, catalog)).close();
    part.close();
  }

  private static void list(Markup part, String tag, List<String> items) {
    part.open(tag);
    items(part, items);
    part.close();
  }

  private static void items(Markup part, List<String> items) {
    items.forEach(i -> part.element("li", i));
  }
}
