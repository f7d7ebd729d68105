package annulus.web;

import annulus.advice.FitExplanation;
import annulus.exchange.FitWords;
import annulus.exchange.FitWords.Measured;
import annulus.exchange.InputRefused;
import annulus.exchange.LabelSheet;
import annulus.exchange.StockSheet;
import annulus.measure.Side;
import annulus.quantity.InvalidValue;
import annulus.stock.ShopClass;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Pages that need no job: fits, job lists, labels, learning and the ledger. */
final class ToolPages {
  private final Board board;
  private final Shelf shelf;
  private final ShopTools tools;

  ToolPages(Board board, Shelf shelf, ShopTools tools) {
    this.board = board;
    this.shelf = shelf;
    this.tools = tools;
  }

  void routes(Javalin app) {
    app.get("/tools/fit", this::fit);
    app.get("/tools/batch", ctx -> ctx.html(ListPage.batch(Doer.at(ctx), Optional.empty())));
    app.post("/tools/batch", this::batch);
    app.get("/tools/learn", ctx -> ctx.html(ListPage.learn(Doer.at(ctx), List.of())));
    app.post(
        "/tools/learn", ctx -> ctx.html(ListPage.learn(Doer.at(ctx), tools.learn(Upload.of(ctx)))));
    app.get("/tools/label", ctx -> label(ctx, Map.of()));
    app.post("/tools/label", ctx -> label(ctx, labelFields(ctx)));
    app.get("/cabinet/ledger", this::ledger);
    app.post("/cabinet/ledger", this::takeOver);
    app.get("/cabinet/sheet", this::sheet);
  }

  private void fit(Context ctx) {
    Map<String, String> said = new LinkedHashMap<>();
    FitPage.FIELDS.forEach(f -> said.put(f, Form.asked(ctx, f).strip()));
    FitPage page = new FitPage(board, Doer.at(ctx), said);
    if (said.values().stream().allMatch(String::isEmpty)) {
      ctx.html(page.html(Optional.empty(), List.of()));
      return;
    }
    try {
      ctx.html(page.html(Optional.of(explained(said)), List.of()));
    } catch (InputRefused e) {
      ctx.status(422);
      List<String> words = e.problems().stream().map(Form::words).toList();
      ctx.html(page.html(Optional.empty(), words.stream().map(ToolPages::named).toList()));
    } catch (InvalidValue e) {
      ctx.status(422);
      ctx.html(page.html(Optional.empty(), List.of(e.getMessage())));
    }
  }

  /** A word of the command line as the field is called here. */
  private static String named(String words) {
    return words.replaceFirst("^--", "").replaceFirst("^: ", "");
  }

  private FitExplanation explained(Map<String, String> said) {
    List<String> words = new ArrayList<>();
    for (String name : List.of("fit", "shaft")) {
      if (!said.get(name).isEmpty()) {
        words.add(said.get(name));
      }
    }
    String typed = said.get("measuredAt").replace(',', '.');
    double celsius = tools.defaultCelsius();
    if (typed.matches("[+-]?[0-9]{1,3}(\\.[0-9]+)?")) {
      celsius = Double.parseDouble(typed);
    } else if (!typed.isEmpty()) {
      throw Api.refused("measuredAt", "\"" + typed + "\" is no temperature", "°C, such as 21.5");
    }
    List<Measured> sizes = new ArrayList<>();
    for (Side side : Side.values()) {
      String name = side.name().toLowerCase(Locale.ROOT);
      if (!said.get(name).isEmpty()) {
        String instrument = said.get(name + "Instrument");
        String material = said.get(name + "Material");
        sizes.add(
            new Measured(
                side,
                said.get(name),
                instrument.isEmpty() ? FitWords.INSTRUMENT : instrument,
                material.isEmpty() ? FitWords.MATERIAL : material,
                celsius));
      }
    }
    return tools.fit(words, sizes);
  }

  private void batch(Context ctx) {
    if ("ready".equals(ctx.formParam("act"))) {
      ReadyList ready = tools.ready(Upload.of(ctx));
      ctx.html(ListPage.batch(Doer.at(ctx), Optional.of(ready)));
      return;
    }
    String results = tools.batch(Upload.of(ctx));
    ctx.contentType("text/csv; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"results.csv\"");
    ctx.result(results);
  }

  private static Map<String, String> labelFields(Context ctx) {
    Map<String, String> said = new LinkedHashMap<>();
    for (String column : LabelSheet.COLUMNS) {
      said.put(column, Form.said(ctx, column));
    }
    return said;
  }

  private void label(Context ctx, Map<String, String> said) {
    LabelPage page = new LabelPage(tools, Doer.at(ctx), said);
    if (said.isEmpty()) {
      ctx.html(page.html(Optional.empty(), List.of()));
      return;
    }
    try {
      ShopClass made = tools.label(said);
      List<String> kept = new ArrayList<>();
      if ("keep".equals(ctx.formParam("act"))) {
        kept.add("Written to " + tools.keep(made) + ". In force once the board is started anew.");
      }
      ctx.html(page.html(Optional.of(made), kept));
    } catch (InputRefused e) {
      ctx.status(422);
      ctx.html(page.html(Optional.empty(), e.problems().stream().map(Form::words).toList()));
    } catch (InvalidValue e) {
      ctx.status(422);
      ctx.html(page.html(Optional.empty(), List.of(e.getMessage())));
    }
  }

  private void ledger(Context ctx) {
    ctx.contentType("text/plain; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"board-ledger.txt\"");
    ctx.result(shelf.ledgerText());
  }

  private void sheet(Context ctx) {
    ctx.contentType("text/csv; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"cabinet.csv\"");
    ctx.result(StockSheet.of(shelf.now().cabinet()).text());
  }

  private void takeOver(Context ctx) {
    Shelf.TakenOver taken = shelf.takeOver(Upload.of(ctx));
    List<String> lines = new ArrayList<>();
    lines.add(
        taken.isNew()
            + " new movements of "
            + taken.movements()
            + "; the others were here before or were left out.");
    lines.addAll(taken.notes());
    ctx.html(Layout.done("Ledger taken over", lines, "/cabinet", Doer.at(ctx)));
  }
}
