package annulus.web;

import annulus.report.CalendarFile;
import annulus.report.HandBackNotes;
import annulus.report.JobCard;
import annulus.report.LotTag;
import annulus.report.TagSheet;
import annulus.store.Job;
import annulus.store.Refused;
import annulus.store.Unknown;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** What leaves the board on paper or as a file: card, tag, calendar entry, label of a lot. */
final class PrintPages {
  private final Board board;
  private final Shelf shelf;
  private final Optional<String> address;

  PrintPages(Board board, Shelf shelf, Optional<String> address) {
    this.board = board;
    this.shelf = shelf;
    this.address = address;
  }

  void routes(Javalin app) {
    app.get("/job/{id}/card", this::card);
    app.get("/job/{id}/tag", this::tag);
    app.get("/job/{id}/calendar.ics", this::calendar);
    app.get("/cabinet/tag", this::lotTag);
  }

  private void card(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    String at = address.orElse(ctx.scheme() + "://" + ctx.host()) + "/job/" + view.job().id();
    String card =
        JobCard.of(
            view.answer().told().advice(),
            board.knowledge().catalog(),
            CodePicture.of(at, 17),
            view.job().content().closedAt().isPresent());
    withOwnStyle(ctx, card);
  }

  private void tag(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    promised(view);
    Instant notBefore =
        view.notBefore()
            .orElseThrow(
                () ->
                    new Refused(
                        "There is no tag: no time is safe for this joint. Take an earlier tag off"
                            + " the part."));
    withOwnStyle(
        ctx,
        new TagSheet(
                view.job().content().reference(),
                view.job().content().title(),
                notBefore,
                board.times().zone(),
                List.of("Leave the joint alone.", "No load, no use until then."),
                limitedUse(view, notBefore))
            .html());
  }

  private Optional<String> limitedUse(JobView view, Instant taken) {
    return new HandBackNotes(view.answer().told().advice()).limitedUse(taken, board.times().zone());
  }

  private static Instant promised(JobView view) {
    return view.promised().orElseThrow(() -> new Unknown("Nothing is promised for this job yet."));
  }

  /** A page to print carries its style inside; the policy names exactly this style. */
  private static void withOwnStyle(Context ctx, String page) {
    String style = page.substring(page.indexOf("<style>") + 7, page.indexOf("</style>"));
    ctx.header("Content-Security-Policy", Guard.policyWithStyle(style));
    ctx.html(page);
  }

  private void calendar(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    Job job = view.job();
    Instant promised = promised(view);
    if (view.slips() || view.notBefore().isEmpty()) {
      throw new Refused(
          "There is no calendar file: what was promised, "
              + board.times().full(promised)
              + ", can't be kept. Promise anew first.");
    }
    Duration check = board.shop().rule().handOverCheck();
    int moves = job.content().promiseMoves() - 1;
    CalendarFile file =
        CalendarFile.of(
            job.changedAt(),
            List.of(
                entry(CalendarFile.Kind.CHECK, job, promised.minus(check), check, moves, ""),
                entry(
                    CalendarFile.Kind.READY,
                    job,
                    promised,
                    Duration.ZERO,
                    moves,
                    limitedUse(view, promised).orElse(""))));
    ctx.contentType("text/calendar; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"job-" + job.id() + ".ics\"");
    ctx.result(file.text());
  }

  private static CalendarFile.Entry entry(
      CalendarFile.Kind kind, Job job, Instant at, Duration length, int moves, String note) {
    return new CalendarFile.Entry(
        kind,
        job.id(),
        job.content().reference(),
        at,
        length,
        Math.max(0, moves),
        CalendarFile.Status.CONFIRMED,
        note);
  }

  private void lotTag(Context ctx) {
    Shelf.Now now = shelf.now();
    withOwnStyle(ctx, new LotTag(shelf.check(now, Form.asked(ctx, "lot")), now.day()).html());
  }
}
