package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.quantity.Numbers;
import annulus.report.SourceList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Every number behind an answer, with its source and how far it is trusted. */
final class SourcesPage {
  private SourcesPage() {}

  static String html(Answer answer, Knowledge knowledge, String back, String who) {
    JointOrder order = answer.order();
    Markup page = new Markup();
    page.element("h1", "Every number with its source");
    page.element(
        "p",
        "What you entered counts as you entered it. What you did not say was assumed; all else is a"
            + " row of the tables, and a row that nobody printed says so.");
    if (!order.assumptions().isEmpty()) {
      page.element("h2", "Assumed").open("ul");
      order
          .assumptions()
          .forEach(a -> page.element("li", a.field() + " " + a.value() + ": " + a.why()));
      page.close();
    }
    page.element("h2", "From the tables");
    page.open("div", "class", "scroll", "tabindex", "0", "role", "region", "aria-label", "Numbers");
    page.open("table").open("thead").open("tr");
    List.of("row", "source", "trust", "numbers")
        .forEach(h -> page.element("th", h, "scope", "col"));
    page.close().close().open("tbody");
    SourceList.of(answer.told().advice(), knowledge).forEach(r -> row(page, r));
    page.close().close().close();
    page.open("p").element("a", "Back", "class", "button", "href", back).close();
    return Layout.page("Numbers and sources", Layout.Place.NONE, who, page);
  }

  private static void row(Markup page, SourceList.Entry row) {
    String numbers =
        row.numbers().entrySet().stream()
            .map(e -> e.getKey() + " " + Numbers.plain(e.getValue()))
            .collect(Collectors.joining(", "));
    page.open("tr").element("td", row.what());
    page.element("td", row.provenance().source());
    page.element("td", row.provenance().confidence().name().toLowerCase(Locale.ROOT));
    page.element("td", numbers).close();
  }
}
