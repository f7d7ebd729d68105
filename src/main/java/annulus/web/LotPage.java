package annulus.web;

import annulus.report.StockCheckReport;
import annulus.stock.Ledger;
import annulus.stock.LotCheck;
import annulus.stock.Movement;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** One lot: whether it may be used, which jobs got it, its label to print. */
final class LotPage {
  private final LotCheck check;
  private final Ledger ledger;

  LotPage(LotCheck check, Ledger ledger) {
    this.check = check;
    this.ledger = ledger;
  }

  /** The page of a lot. */
  static String path(String lot) {
    return "/cabinet/lot?lot=" + coded(lot);
  }

  private static String coded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  String html(String who) {
    String lot = check.lot().lot();
    Markup page = new Markup();
    page.element("h1", "Lot " + lot + ": " + check.item().name());
    page.element("p", CabinetPage.standing(check) + ". " + CabinetPage.left(check) + ".");
    page.element("p", CabinetPage.useBy(check) + ".");
    if (!check.against().isEmpty()) {
      page.element("p", StockCheckReport.words(check), "class", "slip");
    }
    page.element("h2", "Which jobs got it");
    List<Movement> uses = ledger.uses(m -> m.lot().equals(lot));
    page.element("p", uses.isEmpty() ? "Nothing of it was used yet." : "", "class", "hint");
    page.open("ul", "class", "history");
    uses.forEach(
        m -> page.element("li", words(m) + (m.job().isEmpty() ? ", no job" : ", job " + m.job())));
    page.close();
    alike(page, ledger.lotsLike(lot));
    page.open("div", "class", "acts");
    page.element(
        "a", "Label to print", "class", "button", "href", "/cabinet/tag?lot=" + coded(lot));
    page.element("a", "Back to the cabinet", "class", "button plain", "href", "/cabinet").close();
    return Layout.page("Lot " + lot, Layout.Place.CABINET, who, page);
  }

  /** A recall of a lot looks at these too. */
  private static void alike(Markup page, List<String> lots) {
    if (lots.isEmpty()) {
      return;
    }
    page.element("h2", "Look at these too when it is recalled");
    page.element(
        "p", "Written alike, or a further container: it may be the same lot.", "class", "hint");
    page.open("ul");
    for (String lot : lots) {
      page.open("li").element("a", "Lot " + lot, "href", path(lot)).close();
    }
    page.close();
  }

  /** What the cabinet gave for a job, for the job's own page. */
  static Markup lotsOf(List<Movement> uses) {
    Markup part = new Markup();
    if (uses.isEmpty()) {
      return part;
    }
    part.element("h2", "Out of the cabinet").open("ul", "class", "history");
    for (Movement m : uses) {
      part.open("li").element("a", "lot " + m.lot(), "href", path(m.lot()));
      part.text(" " + words(m)).close();
    }
    return part.close();
  }

  private static String words(Movement m) {
    String why = m.reason().isEmpty() ? "" : "; " + m.reason();
    String witness = m.witness().isEmpty() ? "" : "; witness pair: " + m.witness();
    return m.day() + ", " + m.amount() + " mL, by " + m.who() + why + witness;
  }
}
