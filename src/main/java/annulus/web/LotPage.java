package annulus.web;

import annulus.report.StockCheckReport;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.LotCheck;
import annulus.stock.Movement;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.UUID;
import java.util.function.Predicate;

/** One lot: whether it may be used, which jobs got it, its label to print. */
final class LotPage {
  private final LotCheck check;
  private final Ledger ledger;
  private final Predicate<String> called;

  /**
   * @param called whether a job has this reference
   */
  LotPage(LotCheck check, Ledger ledger, Predicate<String> called) {
    this.check = check;
    this.ledger = ledger;
    this.called = called;
  }

  /** The page of a lot. */
  static String path(String lot) {
    return "/cabinet/lot?lot=" + coded(lot);
  }

  static String coded(String text) {
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
    List<Movement> uses = ledger.uses(m -> m.lot().equals(lot));
    heldBack(page, who, uses);
    page.element("h2", "Which jobs got it");
    page.element("p", uses.isEmpty() ? "Nothing of it was used yet." : "", "class", "hint");
    page.open("ul", "class", "history");
    uses.forEach(m -> use(page, m));
    page.close();
    alike(page, ledger.lotsLike(lot));
    page.open("div", "class", "acts");
    page.element(
        "a", "Label to print", "class", "button", "href", "/cabinet/tag?lot=" + coded(lot));
    page.element("a", "Back to the cabinet", "class", "button plain", "href", "/cabinet").close();
    return Layout.page("Lot " + lot, Layout.Place.CABINET, who, page);
  }

  /** With the way to the job, as a recall looks at each. */
  private void use(Markup page, Movement m) {
    page.open("li").text(words(m) + ", ");
    if (m.job().isEmpty()) {
      page.text("no job");
    } else if (called.test(m.job())) {
      page.element("a", "job " + m.job(), "href", "/jobs?reference=" + coded(m.job()));
    } else {
      page.text("job " + m.job() + ", not on this board");
    }
    page.close();
  }

  /** Each thing that holds it back with its own way out, and one way in. */
  private void heldBack(Markup page, String who, List<Movement> uses) {
    List<HeldBack> held = check.lot().heldBack();
    page.element("h2", "Held back", "id", "held");
    if (!held.isEmpty() && uses.stream().anyMatch(m -> !m.job().isEmpty())) {
      page.element(
          "p",
          "The jobs named below got some of it: look at each before it is handed back.",
          "class",
          "slip");
    }
    for (HeldBack one : held) {
      begin(page, "/cabinet/clear");
      FormField.hidden(page, "heldBack", one.id());
      page.element("p", "‖ " + one.words());
      end(page, who, "clear-" + one.id(), "Why it may be used again", "✓ Clear for use");
    }
    begin(page, "/cabinet/hold-back");
    FormField.hidden(page, "id", UUID.randomUUID().toString());
    if (held.isEmpty()) {
      page.element("p", "Recalled by its maker, seen frozen, seal broken, or in doubt:");
    }
    String again = held.isEmpty() ? "" : " for another reason too";
    end(page, who, "hold-back", "Why it must not be used", "‖ Hold it back" + again);
  }

  private void begin(Markup page, String action) {
    page.open("form", "method", "post", "action", action);
    FormField.hidden(page, "lot", check.lot().lot());
  }

  private static void end(Markup page, String who, String id, String why, String button) {
    page.open("p", "class", "field").element("label", why, "for", id + "-reason");
    page.single(
        "input",
        "id",
        id + "-reason",
        "name",
        "reason",
        "required",
        "",
        "maxlength",
        "200",
        "autocomplete",
        "off");
    page.close();
    Layout.who(page, who, id + "-");
    page.open("div", "class", "acts").element("button", button, "type", "submit").close().close();
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
    part.open("ul", "class", "history");
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
