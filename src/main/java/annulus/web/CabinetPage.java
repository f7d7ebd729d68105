package annulus.web;

import annulus.report.CoverPicture;
import annulus.report.CoverReport;
import annulus.report.StockCheckReport;
import annulus.report.StockPlanReport;
import annulus.stock.JobPlan;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Movement;
import annulus.stock.Reorder;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** The cabinet: lots with their dates, what they serve, and every movement. */
final class CabinetPage {
  private static final int SHOWN_MOVEMENTS = 20;

  private final Shelf shelf;
  private final Board board;
  private final String who;
  private final Map<String, String> typed;

  CabinetPage(Shelf shelf, Board board, String who) {
    this(shelf, board, who, Map.of());
  }

  private CabinetPage(Shelf shelf, Board board, String who, Map<String, String> typed) {
    this.shelf = shelf;
    this.board = board;
    this.who = who;
    this.typed = typed;
  }

  /**
   * The page again when something was refused, with all that was typed.
   *
   * @param typed values of the form by their fields
   * @param problems what is wrong
   */
  static String refused(
      Shelf shelf, Board board, String who, Map<String, String> typed, List<String> problems) {
    CabinetPage page = new CabinetPage(shelf, board, who, typed);
    Markup told = new Markup();
    problems.forEach(p -> told.element("p", p));
    told.open("p");
    String form = typed.containsKey("newLot") ? "#receive" : "#move";
    told.element("a", "What you typed stands below", "href", form).close();
    return page.page("Please look again", Layout.lookAgain(told), typed.getOrDefault("job", ""));
  }

  /**
   * @param recorded id of the movement that was recorded just now; empty: none
   * @param counted lot that was counted just now and has what is booked; empty: none
   * @param job reference that a use is for; empty: not said
   */
  String html(String recorded, String counted, String job) {
    Shelf.Now now = shelf.now();
    Markup told = new Markup();
    now.ledger().movement(recorded).ifPresent(m -> recorded(told, now.ledger(), m));
    now.cabinet().lot(counted).ifPresent(l -> counted(told, l));
    return page("Cabinet", told, job);
  }

  private String page(String title, Markup told, String job) {
    Shelf.Now now = shelf.now();
    Markup page = new Markup();
    page.element("h1", "Cabinet").part(told);
    List<LotCheck> checks = now.checks(shelf.soonDays());
    summary(page, checks);
    notes(page, now.notes());
    page.open("ul", "class", "lots");
    checks.stream().sorted(BY_STANDING).forEach(c -> lot(page, c));
    page.close();
    if (!checks.isEmpty()) {
      move(page, checks, job);
    }
    receive(page);
    plan(page, now);
    cover(page, now);
    movements(page, now);
    ledger(page);
    more(page);
    return Layout.page(title, Layout.Place.CABINET, who, page);
  }

  /** Said where it is seen at once, with the way back: a slip is noticed now or never. */
  private void recorded(Markup page, Ledger ledger, Movement movement) {
    page.open("div", "class", "card", "role", "status");
    page.element("p", "✓ Recorded: " + words(ledger, movement) + ".");
    page.element("p", ledger.left(movement.lot()) + " mL left of lot " + movement.lot() + ".");
    takeBack(page, ledger, movement, "recorded-");
    page.close();
  }

  private static void counted(Markup page, Lot lot) {
    page.open("div", "class", "card", "role", "status");
    page.element(
        "p",
        "✓ Counted: lot "
            + lot.lot()
            + " has "
            + lot.left()
            + " mL, as booked. Nothing to record.");
    page.close();
  }

  private void takeBack(Markup page, Ledger ledger, Movement movement, String idPrefix) {
    if (ledger.toTakeBack(movement.lot()).filter(movement::equals).isEmpty()) {
      return;
    }
    page.open("form", "method", "post", "action", "/cabinet/take-back");
    FormField.hidden(page, "movement", movement.id());
    Layout.who(page, who, idPrefix);
    page.open("button", "class", "plain", "type", "submit");
    page.element("span", "↶", "aria-hidden", "true").text("Take it back: it did not take place");
    page.close().close();
  }

  private static final java.util.Comparator<LotCheck> BY_STANDING =
      java.util.Comparator.<LotCheck, Integer>comparing(
              c ->
                  switch (c.standing()) {
                    case MUST_NOT -> 0;
                    case SOON -> 1;
                    case USABLE -> 2;
                    case EMPTY -> 3;
                  })
          .thenComparing(c -> c.lot().lot());

  private static void summary(Markup page, List<LotCheck> checks) {
    long usable = checks.stream().filter(LotCheck::usable).count();
    page.element(
        "p",
        checks.isEmpty()
            ? "Nothing is in the cabinet yet. Take in the first lot below."
            : usable + " of " + checks.size() + " lots may be used today.",
        "class",
        "summary");
  }

  private static void notes(Markup page, List<String> notes) {
    if (!notes.isEmpty()) {
      page.open("div", "class", "problem");
      notes.forEach(n -> page.element("p", n));
      page.close();
    }
  }

  private void lot(Markup page, LotCheck check) {
    page.open("li")
        .open(
            "article",
            "class",
            "card " + check.standing().name().toLowerCase(java.util.Locale.ROOT));
    page.open("h2");
    page.element("a", "Lot " + check.lot().lot(), "href", LotPage.path(check.lot().lot())).close();
    page.element(
        "p",
        check.item().name()
            + (check.lot().label().isEmpty() ? "" : " (" + check.lot().label() + ")"));
    page.open("p", "class", "state").element("strong", standing(check)).close();
    page.element("p", left(check));
    page.element("p", useBy(check));
    if (check.standing() == LotCheck.Standing.MUST_NOT || check.lot().isHeldBack()) {
      page.element("p", StockCheckReport.words(check), "class", "slip");
    }
    if (check.against().contains(LotCheck.Objection.NO_DATE_KNOWN)) {
      page.element(
          "p",
          "Take it in again below with its printed expiry or the day it came; that adds no amount.",
          "class",
          "hint");
    }
    if (!check.lot().sheet().onFile()) {
      page.element("p", "No safety data sheet on file.", "class", "hint");
    }
    if (!check.lot().place().isEmpty()) {
      page.element("p", check.lot().place(), "class", "hint");
    }
    page.open("p");
    page.element(
        "a",
        check.lot().isHeldBack() ? "✓ Clear it" : "‖ Hold it back",
        "class",
        "button plain",
        "href",
        LotPage.path(check.lot().lot()) + "#held");
    page.close();
    page.close().close();
  }

  static String standing(LotCheck check) {
    return switch (check.standing()) {
      case MUST_NOT ->
          check.lot().isHeldBack() ? "‖ held back: must not be used" : "✕ must not be used";
      case SOON -> "! use soon";
      case USABLE -> "✓ may be used";
      case EMPTY -> "○ empty";
    };
  }

  static String left(LotCheck check) {
    return check.lot().left() + " mL of " + check.lot().container() + " left";
  }

  /** On a line of its own: a date that a narrow screen breaks in two is misread. */
  static String useBy(LotCheck check) {
    return check.useBy().map(u -> "Use by " + u.date()).orElse("Use-by unknown");
  }

  private void field(Markup page, String name, String label, String kind, boolean required) {
    new FormField(name, label, kind, typed(name), "100", required).on(page);
  }

  private String typed(String name) {
    return typed.getOrDefault(name, "");
  }

  private void move(Markup page, List<LotCheck> checks, String job) {
    page.element("h2", "Use, throw away or correct", "id", "move");
    page.open("form", "method", "post", "action", "/cabinet/move");
    // the enter key presses the first button of a form, and one that is off does nothing
    page.element("button", "", "type", "submit", "disabled", "", "hidden", "");
    FormField.hidden(page, "id", UUID.randomUUID().toString());
    page.open("div", "class", "two");
    Map<String, String> lots = new LinkedHashMap<>();
    lots.put("", "choose");
    checks.forEach(c -> lots.put(c.lot().lot(), choice(c)));
    FormField.choice(page, "lot", "Lot", lots, typed("lot"));
    field(page, "ml", "Amount, mL; to correct: all that is in it now", "decimal", true);
    job(page, job);
    field(page, "reason", "Why (to throw away, correct, or use all the same)", "text", false);
    field(page, "witness", "Witness pair, where a lot is used against its date", "text", false);
    page.close();
    Layout.who(page, who, "move-");
    page.open("div", "class", "acts");
    page.element("button", "Use", "name", "kind", "value", "USE", "class", "main");
    page.element("button", "Throw away", "name", "kind", "value", "DISCARD", "class", "plain");
    page.element(
        "button", "Counted: correct", "name", "kind", "value", "COUNTED", "class", "plain");
    page.close().close();
  }

  /**
   * A reference that is one letter off is not found by a recall: those of the board are offered.
   */
  private void job(Markup page, String job) {
    page.open("p", "class", "field").element("label", "For job", "for", "job");
    page.single(
        "input",
        "id",
        "job",
        "name",
        "job",
        "value",
        job,
        "list",
        "jobs",
        "maxlength",
        "100",
        "autocomplete",
        "off");
    page.open("datalist", "id", "jobs");
    board.references().forEach(r -> page.element("option", "", "value", r));
    page.close().close();
  }

  private static String choice(LotCheck check) {
    String lot = check.lot().lot() + ", " + check.item().name() + ", " + check.lot().left() + " mL";
    boolean never = check.standing() == LotCheck.Standing.MUST_NOT;
    return never ? lot + ", " + standing(check) : lot;
  }

  private void receive(Markup page) {
    page.open("details", "id", "receive", "open", typed.containsKey("newLot") ? "" : null);
    page.element("summary", "Take in a new lot");
    page.open("form", "method", "post", "action", "/cabinet/receive").open("div", "class", "two");
    field(page, "newLot", "Lot number as printed", "text", true);
    Map<String, String> items = new LinkedHashMap<>();
    shelf.items().forEach((id, item) -> items.put(id, item.name()));
    FormField.choice(page, "item", "What it is", items, typed("item"));
    field(page, "container", "Size of the container, mL", "decimal", true);
    field(page, "left", "Left in it, mL, if it is not full", "decimal", false);
    field(page, "expires", "Printed expiry", "date", false);
    field(page, "opened", "Opened on, if it is open", "date", false);
    field(page, "came", "Came on, if not today", "date", false);
    field(page, "place", "Where it stands", "text", false);
    page.close();
    boolean onFile = typed("sheet").equals("on");
    FormField.tick(page, null, "sheet", "on", "Safety data sheet is on file", onFile);
    Layout.who(page, who, "receive-");
    page.element("button", "Take in", "type", "submit");
    page.close().close();
  }

  private void cover(Markup page, Shelf.Now now) {
    CoverReport cover = shelf.cover(now);
    page.element("h2", "Which joints the cabinet serves");
    page.open("figure", "class", "wide", "tabindex", "0").picture(CoverPicture.svg(cover)).close();
    page.open("ul");
    cover.holeWords().forEach(w -> page.element("li", w));
    page.close();
  }

  private void plan(Markup page, Shelf.Now now) {
    StockPlanReport plan = shelf.plan(now, board.today().open());
    page.element("h2", "What the open jobs need").open("ul");
    for (JobPlan job : plan.plans()) {
      String name = job.need().job().isEmpty() ? "a job" : job.need().job();
      line(page, name + ", " + job.need().day(), plan.words(job));
    }
    page.close();
    if (plan.plans().isEmpty()) {
      page.element("p", "No job is open.", "class", "hint");
    }
    page.element("h2", "What to order").open("ul");
    for (Reorder order : plan.orders()) {
      line(page, shelf.items().get(order.item()).name(), StockPlanReport.words(order));
    }
    page.close();
  }

  private static void line(Markup page, String name, List<String> words) {
    page.open("li").element("strong", name).text(": " + String.join(" ", words)).close();
  }

  private static void ledger(Markup page) {
    page.element("h2", "This cabinet and a ledger file");
    page.element(
        "p",
        "The movements above rule on this board. A ledger file of the command line is a count of its"
            + " own: take it over here, or write these movements into it, and both are the same"
            + " again. A movement counts once, however often it is taken over.");
    page.open("div", "class", "acts");
    page.element("a", "Download as a ledger file", "class", "button", "href", "/cabinet/ledger");
    page.element("a", "Download the lots as a sheet", "class", "button", "href", "/cabinet/sheet");
    page.close();
    page.element(
        "p",
        "Write it into another ledger with stock import --ledger LEDGER --from board-ledger.txt.",
        "class",
        "hint");
    page.open("details").element("summary", "Take over a ledger file");
    page.open(
        "form", "method", "post", "action", "/cabinet/ledger", "enctype", "multipart/form-data");
    Upload.field(page, "ledger", "Ledger file");
    page.element("button", "Take it over", "type", "submit").close().close();
  }

  private static void more(Markup page) {
    page.element("h2", "More").open("div", "class", "acts");
    page.element("a", "A lot's own label", "class", "button plain", "href", "/tools/label");
    page.element("a", "What the shop saw", "class", "button plain", "href", "/tools/learn");
    page.close();
  }

  private void movements(Markup page, Shelf.Now now) {
    List<Movement> all = new ArrayList<>(now.ledger().movements());
    Collections.reverse(all);
    Ledger ledger = now.ledger();
    page.element("h2", "Movements, the latest first").open("ul", "class", "history");
    for (Movement m : all.subList(0, Math.min(SHOWN_MOVEMENTS, all.size()))) {
      String back = ledger.isTakenBack(m) ? " (taken back later)" : "";
      page.element("li", board.times().past(m.at()) + ", " + words(ledger, m) + back);
    }
    page.close();
    all.stream()
        .filter(m -> m.kind().moves() && m.takesBack().isEmpty() && !ledger.isTakenBack(m))
        .findFirst()
        .filter(m -> ledger.toTakeBack(m.lot()).isPresent())
        .ifPresent(
            m -> {
              page.element("p", "The last one that stands: " + words(ledger, m) + ".");
              takeBack(page, ledger, m, "last-");
            });
  }

  private static String words(Ledger ledger, Movement m) {
    String job = m.job().isEmpty() ? "" : " for job " + m.job();
    String why = m.reason().isEmpty() ? "" : " (" + m.reason() + ")";
    String what =
        m.takesBack().flatMap(ledger::movement).map(t -> "took back: " + what(t)).orElse(what(m));
    return m.who() + ": " + what + job + why;
  }

  private static String what(Movement m) {
    return switch (m.kind()) {
      case HOLD_BACK -> "held back lot " + m.lot();
      case CLEAR -> "cleared lot " + m.lot();
      default ->
          m.kind().name().toLowerCase(java.util.Locale.ROOT)
              + " "
              + m.amount()
              + " mL, lot "
              + m.lot();
    };
  }
}
