package annulus.web;

import annulus.store.Job;
import annulus.store.JobState;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.Optional;

/** The page of a job, and what its buttons do. */
final class JobPages {
  private final Board board;
  private final Shelf shelf;
  private final Doer doer;

  JobPages(Board board, Shelf shelf, Doer doer) {
    this.board = board;
    this.shelf = shelf;
    this.doer = doer;
  }

  void routes(Javalin app) {
    app.get("/job/{id}", this::job);
    app.post("/job/{id}/state", this::state);
    app.post("/job/{id}/closed", this::closed);
    app.post("/job/{id}/moved", this::moved);
    app.post("/job/{id}/log", this::log);
    app.post("/job/{id}/promise", this::promise);
    app.post("/job/{id}/called", this::called);
    app.post("/job/{id}/undo", this::undo);
    app.get("/job/{id}/why", this::why);
    app.get("/job/{id}/sources", this::sources);
  }

  private void job(Context ctx) {
    Job job = board.job(ctx.pathParam("id"));
    JobView view;
    try {
      view = board.view(job);
    } catch (RuntimeException e) { // what was done can be taken back, whatever it is
      ctx.status(503);
      ctx.html(new JobHistory(board, job, Doer.at(ctx)).unjudged(JobViews.problem(e)));
      return;
    }
    Optional<Instant> wanted = Form.time(board, "wanted", ctx.queryParam("wanted"));
    boolean ways = ctx.queryParam("ways") != null;
    Markup lots = new UsedPart(shelf, view, Doer.at(ctx)).markup();
    ctx.html(new JobPage(board, view, Doer.at(ctx)).html(wanted, ways, lots));
  }

  private void why(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    ctx.html(new JobPage(board, view, Doer.at(ctx)).why());
  }

  private void sources(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    String back = "/job/" + view.job().id();
    ctx.html(SourcesPage.html(view.answer(), board.knowledge(), back, Doer.at(ctx)));
  }

  private void state(Context ctx) {
    JobState to =
        JobJson.state(Optional.ofNullable(ctx.formParam("to")).orElse(""))
            .orElseThrow(() -> Api.refused("to", "is no state", "one of the buttons"));
    Job job = board.put(ctx.pathParam("id"), Form.version(ctx), to, doer.of(ctx));
    goOn(ctx, job);
  }

  /** Where it goes on from a change: to the job, or to the counter if it was made there. */
  static void goOn(Context ctx, Job job) {
    Form.go(ctx, "counter".equals(ctx.formParam("from")) ? "/counter" : "/job/" + job.id());
  }

  /** Empty for now: the form that asks for a time sends one. */
  private Optional<Instant> at(Context ctx, String label) {
    String said = ctx.formParam("at");
    if (said != null && said.isBlank()) {
      throw Api.refused(label, "is missing", "day and time, or the button for now");
    }
    return Form.time(board, "at", said);
  }

  private void closed(Context ctx) {
    Optional<Instant> at = at(ctx, "Closed at");
    Form.go(
        ctx, "/job/" + board.close(ctx.pathParam("id"), Form.version(ctx), at, doer.of(ctx)).id());
  }

  private void moved(Context ctx) {
    Optional<Instant> at = at(ctx, "Moved at");
    Form.go(
        ctx, "/job/" + board.moved(ctx.pathParam("id"), Form.version(ctx), at, doer.of(ctx)).id());
  }

  private void log(Context ctx) {
    Upload upload = Upload.of(ctx);
    Board.GivenLog given =
        new Board.GivenLog(
            upload.name(),
            upload.text(),
            Form.said(ctx, "dateOrder"),
            Form.said(ctx, "unit"),
            Form.said(ctx, "column"));
    Form.go(
        ctx,
        "/job/" + board.measure(ctx.pathParam("id"), Form.version(ctx), given, doer.of(ctx)).id());
  }

  private void promise(Context ctx) {
    Optional<Instant> when = Form.time(board, "promised", ctx.formParam("promised"));
    Form.go(
        ctx,
        "/job/" + board.promise(ctx.pathParam("id"), Form.version(ctx), when, doer.of(ctx)).id());
  }

  private void called(Context ctx) {
    goOn(ctx, board.called(ctx.pathParam("id"), Form.version(ctx), doer.of(ctx)));
  }

  private void undo(Context ctx) {
    Form.go(ctx, "/job/" + board.undo(ctx.pathParam("id"), Form.version(ctx), doer.of(ctx)).id());
  }

  /** What somebody wanted, for the page that tells that another was quicker. */
  static String tried(Context ctx) {
    if (ctx.formParam("to") != null) {
      return JobJson.state(ctx.formParam("to"))
          .map(s -> "Put it to: " + s.words() + ".")
          .orElse("");
    }
    if (ctx.formParam("promised") != null) {
      return "Promise it for " + ctx.formParam("promised") + ".";
    }
    if (ctx.path().endsWith("/log")) {
      return "Judge it by a temperature log.";
    }
    if (ctx.path().endsWith("/called")) {
      return "Say that the customer was called.";
    }
    if (ctx.path().endsWith("/moved")) {
      return "Say that the part was moved.";
    }
    boolean closing = ctx.path().endsWith("/closed");
    return closing ? "Close the joint." : "Take back the last change.";
  }
}
