package annulus.web;

import annulus.exchange.LabelSheet;
import annulus.report.LabelReport;
import annulus.stock.ShopClass;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What the label of a lot says, made a class of the shop. */
final class LabelPage {
  private static final Set<String> WORDS = Set.of("class", "name", "like", "gap_basis", "surface");

  private final ShopTools tools;
  private final String who;
  private final Map<String, String> said;

  LabelPage(ShopTools tools, String who, Map<String, String> said) {
    this.tools = tools;
    this.who = who;
    this.said = said;
  }

  /**
   * @param lines what is wrong, or where the class was written
   */
  String html(Optional<ShopClass> made, List<String> lines) {
    Markup page = new Markup();
    page.element("h1", "A lot's own label");
    if (!lines.isEmpty()) {
      String kind = made.isPresent() ? "status" : "alert";
      page.open("div", "class", made.isPresent() ? "summary" : "problem", "role", kind);
      lines.forEach(l -> page.element("p", l));
      page.close();
    }
    page.element(
        "p", "What the label does not say comes from the class it is most like.", "class", "hint");
    page.open("form", "method", "post", "action", "/tools/label").open("div", "class", "two");
    LabelSheet.COLUMNS.forEach(c -> field(page, c));
    page.close().open("div", "class", "acts");
    page.element("button", "Show the class", "name", "act", "value", "show", "class", "main");
    if (tools.keeps()) {
      page.element("button", "Keep it", "name", "act", "value", "keep", "class", "plain");
    }
    page.close().close();
    made.ifPresent(m -> shown(page, m));
    return Layout.page("Label of a lot", Layout.Place.CABINET, who, page);
  }

  private void shown(Markup page, ShopClass made) {
    LabelReport report = new LabelReport(made);
    page.element("h2", "The class it makes");
    page.element("pre", report.text(), "tabindex", "0", "aria-label", "The class it makes");
    page.open("figure").picture(report.svg()).close();
    page.element(
        "p",
        tools.keeps()
            ? "Kept, it is in force once the board is started anew."
            : "Nothing is written: the board was started without --data. stock label --data FOLDER"
                + " writes it; start the board anew with --data FOLDER.",
        "class",
        "hint");
  }

  private void field(Markup page, String column) {
    switch (column) {
      case "gap_basis" -> choice(page, column, List.of("radial", "diametral"));
      case "surface" -> choice(page, column, List.of("active", "slow"));
      case "like" ->
          choice(page, column, List.copyOf(tools.knowledge().catalog().compounds().keySet()));
      default -> {
        String kind = WORDS.contains(column) ? "text" : FormField.DECIMAL;
        new FormField(column, LabelSheet.question(column), kind, typed(column), "100", false)
            .on(page);
      }
    }
  }

  private String typed(String column) {
    return said.getOrDefault(column, "");
  }

  /** Nothing is chosen beforehand: radial or diametral is the classic trap. */
  private void choice(Markup page, String column, List<String> all) {
    Map<String, String> choices = new LinkedHashMap<>();
    choices.put("", "choose");
    all.forEach(one -> choices.put(one, one));
    FormField.choice(page, column, LabelSheet.question(column), choices, typed(column));
  }
}
