package annulus.web;

import annulus.advice.FitExplanation;
import annulus.advice.FitExplanation.Judgement;
import annulus.measure.Side;
import annulus.measure.Verdict;
import annulus.report.FitText;
import annulus.report.ToleranceZones;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** What a fit designation allows, and whether measured sizes keep it. */
final class FitPage {
  static final List<String> FIELDS =
      List.of(
          "fit",
          "shaft",
          "bore",
          "boreInstrument",
          "boreMaterial",
          "part",
          "partInstrument",
          "partMaterial",
          "measuredAt");

  private final String who;
  private final Map<String, String> said;
  private final Choices choices;

  FitPage(Board board, String who, Map<String, String> said) {
    this.who = who;
    this.said = said;
    this.choices = new Choices(board.knowledge(), board.shop());
  }

  String html(Optional<FitExplanation> explained, List<String> problems) {
    Markup page = new Markup();
    page.element("h1", "Fit designation");
    if (!problems.isEmpty()) {
      page.open("div", "class", "problem", "role", "alert");
      problems.forEach(p -> page.element("p", p));
      page.close();
    }
    page.open("div", "class", "joint").open("div");
    form(page);
    page.close();
    page.open("section", "class", "preview", "aria-label", "Answer");
    explained.ifPresentOrElse(
        e -> answer(page, e),
        () ->
            page.element(
                "p",
                "Type a designation: a hole such as 35 H7, a fit such as 35 H7/k6,"
                    + " or a rolling bearing's outside such as bearing outside 62."));
    page.close().close();
    explained.ifPresent(
        e -> page.element("pre", FitText.of(e), "tabindex", "0", "aria-label", "Explanation"));
    return Layout.page("Fit designation", Layout.Place.BENCH, who, page);
  }

  private static void answer(Markup page, FitExplanation explained) {
    for (Judgement judgement : explained.judgements()) {
      boolean inside = judgement.verdict() == Verdict.INSIDE;
      page.open("p", "class", inside ? "decision yes" : "decision no");
      page.element("span", mark(judgement.verdict()), "class", "mark", "aria-hidden", "true");
      page.element("strong", words(judgement)).close();
    }
    page.open("figure").picture(ToleranceZones.svg(explained)).close();
  }

  private static String mark(Verdict verdict) {
    return switch (verdict) {
      case INSIDE -> "✓";
      case OUTSIDE -> "✕";
      case NOT_DECIDED -> "?";
    };
  }

  private static String words(Judgement judgement) {
    String side = judgement.zone().side() == Side.BORE ? "Bore" : "Part";
    String zone = judgement.zone().written();
    return switch (judgement.verdict()) {
      case INSIDE -> side + " keeps " + zone;
      case OUTSIDE -> side + " is outside " + zone;
      case NOT_DECIDED -> side + ": this instrument can't tell whether it keeps " + zone;
    };
  }

  private void form(Markup page) {
    page.open("form", "method", "get", "action", "/tools/fit").open("div", "class", "two");
    text(page, "fit", "Hole, or the whole fit, such as 35 H7/k6", false);
    text(page, "shaft", "Shaft, if it stands apart, such as 35 k6", false);
    page.close();
    for (Side side : Side.values()) {
      String name = side.name().toLowerCase(Locale.ROOT);
      page.open("fieldset");
      page.element("legend", side == Side.BORE ? "Bore as measured" : "Part as measured");
      text(page, name, "Readings in mm, apart by spaces", true);
      page.open("div", "class", "two");
      choice(page, name + "Instrument", "Read with", choices.instruments(side));
      choice(page, name + "Material", "Material", choices.materials("not said: plain steel"));
      page.close().close();
    }
    text(page, "measuredAt", "Parts when measured, °C (20, if empty)", true);
    page.element("button", "What does it allow?", "class", "main", "type", "submit");
    page.close();
  }

  private void text(Markup page, String name, String label, boolean number) {
    String kind = number ? FormField.DECIMAL : "text";
    new FormField(name, label, kind, said.getOrDefault(name, ""), "200", false).on(page);
  }

  private void choice(Markup page, String name, String label, Map<String, String> all) {
    FormField.choice(page, name, label, all, said.getOrDefault(name, ""));
  }
}
