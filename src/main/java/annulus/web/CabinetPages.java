package annulus.web;

import annulus.exchange.InputRefused;
import annulus.exchange.PlacedProblem;
import annulus.quantity.InvalidValue;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.SafetySheet;
import annulus.store.Refused;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/** The cabinet and its lots, and what their forms do. */
final class CabinetPages {
  /** What the page sends for a count; the movement is the difference to what is booked. */
  private static final String COUNTED = "COUNTED";

  /** What a field of a lot or a movement is called on the page. */
  private static final Map<String, String> LABELS =
      Map.ofEntries(
          Map.entry("who", "Your name or initials"),
          Map.entry("lot", "Lot"),
          Map.entry("newLot", "Lot number as printed"),
          Map.entry("item", "What it is"),
          Map.entry("class", "What it is"),
          Map.entry("container", "Size of the container"),
          Map.entry("container_ml", "Size of the container"),
          Map.entry("left", "Left in it"),
          Map.entry("left_ml", "Left in it"),
          Map.entry("ml", "Amount"),
          Map.entry("amount", "Amount"),
          Map.entry("expires", "Printed expiry"),
          Map.entry("opened", "Opened on"),
          Map.entry("received", "Came on"),
          Map.entry("reason", "Why"),
          Map.entry("job", "For job"));

  private final Board board;
  private final Shelf shelf;
  private final Api api;
  private final Doer doer;

  CabinetPages(Board board, Shelf shelf, Api api, Doer doer) {
    this.board = board;
    this.shelf = shelf;
    this.api = api;
    this.doer = doer;
  }

  void routes(Javalin app) {
    app.get("/cabinet/lot", this::lot);
    app.get("/cabinet", this::cabinet);
    app.post("/cabinet/move", ctx -> kept(ctx, this::move));
    app.post("/cabinet/take-back", this::takeBack);
    app.post("/cabinet/receive", ctx -> kept(ctx, this::receive));
    app.post("/cabinet/hold-back", this::holdBack);
    app.post("/cabinet/clear", this::clear);
  }

  private void cabinet(Context ctx) {
    CabinetPage page = new CabinetPage(shelf, board, Doer.at(ctx));
    ctx.html(
        page.html(Form.asked(ctx, "recorded"), Form.asked(ctx, "counted"), Form.asked(ctx, "job")));
  }

  /** What is refused comes back with all that was typed. */
  private void kept(Context ctx, Consumer<Context> act) {
    try {
      act.accept(ctx);
    } catch (InputRefused | InvalidValue e) {
      again(ctx, Form.problems(e).stream().map(CabinetPages::labelled).toList());
    } catch (Refused e) {
      again(ctx, List.of(e.getMessage()));
    }
  }

  private void again(Context ctx, List<String> problems) {
    ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
    ctx.html(CabinetPage.refused(shelf, board, Doer.at(ctx), Form.fields(ctx), problems));
  }

  /** A problem by the label of its field. */
  private static String labelled(PlacedProblem p) {
    String label = LABELS.getOrDefault(p.field(), p.field());
    return Form.words(new PlacedProblem("", 0, 0, label, p.problem(), p.allowed()));
  }

  private void takeBack(Context ctx) {
    recorded(ctx, shelf.takeBack(Form.need(ctx, "movement"), doer.of(ctx), ""));
  }

  private static void recorded(Context ctx, String movement) {
    Form.go(ctx, "/cabinet?recorded=" + LotPage.coded(movement));
  }

  private void lot(Context ctx) {
    Shelf.Now now = shelf.now();
    LotCheck check = shelf.check(now, Form.asked(ctx, "lot"));
    ctx.html(new LotPage(check, now.ledger(), board::isCalled).html(Doer.at(ctx)));
  }

  private void holdBack(Context ctx) {
    String lot = Form.need(ctx, "lot");
    shelf.holdBack(Form.need(ctx, "id"), lot, doer.of(ctx), Form.need(ctx, "reason"));
    Form.go(ctx, LotPage.path(lot));
  }

  private void clear(Context ctx) {
    String lot = Form.need(ctx, "lot");
    Optional<String> held = Optional.of(Form.need(ctx, "heldBack"));
    shelf.clear(lot, held, doer.of(ctx), Form.need(ctx, "reason"));
    Form.go(ctx, LotPage.path(lot));
  }

  private void move(Context ctx) {
    String kind = Form.need(ctx, "kind");
    Millilitres amount = Form.amount(ctx, "ml", "Amount", true);
    boolean counted = kind.equals(COUNTED);
    String lot = Form.need(ctx, "lot");
    Optional<Millilitres> moved = counted ? shelf.change(lot, amount) : Optional.of(amount);
    if (moved.isEmpty()) {
      Form.go(ctx, "/cabinet?counted=" + LotPage.coded(lot));
      return;
    }
    Movement movement =
        api.movement(
            Form.need(ctx, "id"),
            counted ? Movement.Kind.CORRECT : Api.kind(kind),
            doer.of(ctx),
            lot,
            moved.get().value(),
            Form.said(ctx, "job"),
            Form.said(ctx, "reason"),
            Form.said(ctx, "witness"));
    String meant = Form.said(ctx, JobOfUse.MEANT);
    if (movement.kind() == Movement.Kind.USE && new JobOfUse(board).asks(movement, meant)) {
      ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
      ctx.html(new JobOfUse(board).html(movement, Doer.at(ctx)));
      return;
    }
    shelf.move(movement);
    String job = Form.said(ctx, UsedPart.FROM);
    if (job.isEmpty()) {
      recorded(ctx, movement.id());
    } else {
      Form.go(ctx, "/job/" + board.job(job).id() + "#used");
    }
  }

  /** When a lot came: as said, else today; one that is open came by the day it was opened. */
  private Optional<LocalDate> came(String lot, Optional<LocalDate> said, Optional<LocalDate> open) {
    if (said.isPresent() || shelf.now().cabinet().lot(lot).isPresent()) {
      return said;
    }
    LocalDate today = board.now().atZone(board.times().zone()).toLocalDate();
    return Optional.of(open.filter(o -> o.isBefore(today)).orElse(today));
  }

  /** A day that has been, as the form says it. */
  private Optional<LocalDate> past(String label, String text) {
    Optional<LocalDate> day = Form.day(label, text);
    day.ifPresent(d -> shelf.requireBeen(label, d));
    return day;
  }

  private void receive(Context ctx) {
    Millilitres size = Form.amount(ctx, "container", "Size", false);
    String number = Form.need(ctx, "newLot");
    Optional<LocalDate> opened = past("Opened on", Form.said(ctx, "opened"));
    boolean partly = !Form.said(ctx, "left").isEmpty();
    if (opened.isPresent() && !partly) {
      throw Api.refused(
          "Left in it", "is missing for an open container", "millilitres, as near as you can see");
    }
    Lot lot =
        new Lot(
            number,
            Form.need(ctx, "item"),
            "",
            size,
            partly ? Form.amount(ctx, "left", "Left in it", false) : size,
            came(number, past("Came on", Form.said(ctx, "came")), opened),
            opened,
            Form.day("Printed expiry", Form.said(ctx, "expires")),
            Form.said(ctx, "place"),
            Form.said(ctx, "sheet").equals("on") ? SafetySheet.UNDATED : SafetySheet.NONE,
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            List.of());
    boolean dated = shelf.here(number).filter(Lot::isDateless).isPresent();
    Optional<String> differs = shelf.differences(lot);
    if (!shelf.receive(lot, doer.of(ctx), "")) {
      throw Api.refused(
          "Lot", number + " is in the cabinet already", number + "-2 for a second container");
    }
    if (differs.isPresent() && !dated) {
      List<String> lines =
          List.of(
              differs.get(),
              "No amount was added. A second container is a lot of its own: " + number + "-2.");
      ctx.html(Layout.done("The lot was here", lines, "/cabinet", Doer.at(ctx)));
      return;
    }
    Form.go(ctx, "/cabinet");
  }
}
