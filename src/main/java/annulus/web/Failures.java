package annulus.web;

import annulus.exchange.InputRefused;
import annulus.exchange.PlacedProblem;
import annulus.quantity.InvalidValue;
import annulus.store.Refused;
import annulus.store.Stale;
import annulus.store.StoreFailed;
import annulus.store.Unknown;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import java.util.List;
import java.util.Optional;

/** What is answered when something can't be done: JSON to machines, a page to people. */
final class Failures {
  private final Board board;

  Failures(Board board) {
    this.board = board;
  }

  void handle(Javalin app) {
    app.exception(InputRefused.class, (e, ctx) -> refused(ctx, e.problems()));
    app.exception(
        InvalidValue.class, (e, ctx) -> refused(ctx, List.of(PlacedProblem.of("", 0, e))));
    app.exception(Refused.class, (e, ctx) -> told(ctx, 422, "That can't be done", e.getMessage()));
    app.exception(Unknown.class, (e, ctx) -> told(ctx, 404, "Not here", e.getMessage()));
    app.exception(TwoHours.class, Failures::whichHour);
    app.exception(Stale.class, (e, ctx) -> stale(ctx, e));
    app.exception(
        StoreFailed.class, (e, ctx) -> told(ctx, 503, "The database failed", e.getMessage()));
    app.exception(
        HttpResponseException.class,
        (e, ctx) -> told(ctx, e.getStatus(), "That can't be done", words(e)));
    app.exception(
        Exception.class,
        (e, ctx) ->
            told(ctx, 500, "The board made a mistake of its own", "Nothing was written: " + e));
    app.error(404, ctx -> unanswered(ctx, "There is no such page."));
    app.error(405, ctx -> unanswered(ctx, "That can't be done with this page."));
  }

  private static String words(HttpResponseException e) {
    return e.getStatus() == 413 ? "That is too large for the board." : e.getMessage();
  }

  /** A problem as JSON. */
  static ObjectNode problem(String problem, List<PlacedProblem> fields) {
    ObjectNode node = Orders.JSON.createObjectNode();
    node.put("problem", problem);
    ArrayNode list = node.putArray("fields");
    for (PlacedProblem p : fields) {
      list.addObject()
          .put("field", p.field())
          .put("problem", p.problem())
          .put("allowed", p.allowed())
          .put("line", p.line())
          .put("column", p.column());
    }
    return node;
  }

  private static boolean machine(Context ctx) {
    return ctx.path().startsWith("/api/");
  }

  private static void json(Context ctx, ObjectNode node) {
    ctx.contentType("application/json");
    ctx.result(node.toString());
  }

  private void refused(Context ctx, List<PlacedProblem> problems) {
    ctx.status(422);
    if (machine(ctx)) {
      json(ctx, problem("the input can't be used", problems));
    } else {
      page(ctx, "Please look again", problems.stream().map(Form::words).toList());
    }
  }

  private void told(Context ctx, int status, String title, String words) {
    ctx.status(status);
    if (machine(ctx)) {
      json(ctx, problem(words, List.of()));
    } else {
      page(ctx, title, List.of(words));
    }
  }

  private void stale(Context ctx, Stale e) {
    if (!machine(ctx) && new Repeated(board, ctx).of(e.current())) {
      JobPages.goOn(ctx, e.current());
      return;
    }
    ctx.status(409);
    JobView current = board.view(e.current());
    if (machine(ctx)) {
      ObjectNode node = problem(e.getMessage() + " in the meantime", List.of());
      node.set("current", JobJson.brief(board, current));
      json(ctx, node);
    } else {
      ctx.html(JobPage.conflict(board, current, JobPages.tried(ctx), Doer.at(ctx)));
    }
  }

  private static void whichHour(TwoHours e, Context ctx) {
    boolean post = ctx.method() == HandlerType.POST;
    var sent = post ? ctx.formParamMap() : ctx.queryParamMap();
    ctx.status(422);
    ctx.html(e.page(ctx.path(), post, sent, Doer.at(ctx)));
  }

  private void unanswered(Context ctx, String words) {
    boolean empty = Optional.ofNullable(ctx.result()).orElse("").length() < 40;
    if (empty) {
      told(ctx, ctx.statusCode(), "Not here", words);
    }
  }

  private static void page(Context ctx, String title, List<String> lines) {
    String referer = Optional.ofNullable(ctx.header("Referer")).orElse("");
    String own = "://" + ctx.host();
    int at = referer.indexOf(own);
    String back = at < 0 ? "/counter" : referer.substring(at + own.length());
    ctx.html(Layout.problem(title, lines, back.startsWith("/") ? back : "/counter", Doer.at(ctx)));
  }
}
