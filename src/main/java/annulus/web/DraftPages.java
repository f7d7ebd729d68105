package annulus.web;

import annulus.exchange.ClockWord;
import annulus.exchange.InputRefused;
import annulus.quantity.InvalidValue;
import annulus.store.Draft;
import annulus.store.DraftStore;
import annulus.store.Job;
import annulus.store.JobContent;
import annulus.store.JobState;
import annulus.store.Refused;
import annulus.store.Stale;
import annulus.store.Unknown;
import io.javalin.Javalin;
import io.javalin.http.Context;
import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The bench: joints that are being measured, kept as they are typed, until they become a job. */
final class DraftPages {
  private final Board board;
  private final DraftStore drafts;
  private final Doer doer;

  DraftPages(Board board, DraftStore drafts, Doer doer) {
    this.board = board;
    this.drafts = drafts;
    this.doer = doer;
  }

  void routes(Javalin app) {
    app.get("/bench", ctx -> ctx.html(new BenchPage(board, Doer.at(ctx)).start(drafts.all())));
    app.post("/bench/new", this::begin);
    app.get("/bench/{id}", ctx -> bench(ctx, draft(ctx), List.of()));
    app.post("/bench/{id}", this::act);
    app.post("/bench/{id}/save", this::save);
    app.post("/job/{id}/edit", this::edit);
    app.get("/bench/{id}/sources", this::sources);
  }

  private void begin(Context ctx) {
    Draft draft = drafts.begin(Map.of(), board.now(), Doer.at(ctx));
    Form.go(ctx, "/bench/" + draft.id());
  }

  private Draft draft(Context ctx) {
    return drafts
        .draft(ctx.pathParam("id"))
        .orElseThrow(() -> new Unknown("This draft has become a job or was thrown away."));
  }

  private void bench(Context ctx, Draft draft, List<String> messages) {
    ctx.html(new BenchPage(board, Doer.at(ctx)).joint(draft, messages));
  }

  /** Saves as it is typed; the answer so far comes back. */
  private void save(Context ctx) {
    Draft before = draft(ctx);
    Optional<Draft> saved =
        drafts.save(before.id(), Form.version(ctx), Form.fields(ctx), board.now(), Doer.at(ctx));
    if (saved.isEmpty()) {
      ctx.status(409);
      ctx.header("X-Version", Long.toString(before.version()));
      ctx.result("Somebody else is writing in this draft.");
      return;
    }
    ctx.header("X-Version", Long.toString(saved.get().version()));
    ctx.html(new BenchPage(board, Doer.at(ctx)).preview(saved.get()).html());
  }

  private void act(Context ctx) {
    Draft before = draft(ctx);
    Map<String, String> typed = Form.fields(ctx);
    Optional<Draft> saved =
        drafts.save(before.id(), Form.version(ctx), typed, board.now(), Doer.at(ctx));
    if (saved.isEmpty()) {
      ctx.status(409);
      Draft mine =
          new Draft(before.id(), before.version(), typed, before.changedAt(), before.changedBy());
      bench(ctx, mine, BothVersions.ofDraft(before, typed));
      return;
    }
    String act = Optional.ofNullable(ctx.formParam("act")).orElse("keep");
    if (act.equals("drop")) {
      drafts.remove(before.id());
      Form.go(ctx, "/bench");
      return;
    }
    Optional<JobState> state = BenchPage.stateOf(act);
    if (act.equals("change")) {
      change(ctx, saved.get());
    } else if (state.isEmpty()) {
      Form.go(ctx, "/bench/" + before.id() + (act.equals("show") ? "#preview" : ""));
    } else {
      enter(ctx, saved.get(), state.get());
    }
  }

  /**
   * The order of a job opened at the bench as a draft; the job stays as it is until it is saved.
   *
   * @throws Refused when the order holds what the form can't show
   */
  private void edit(Context ctx) {
    Job job = board.job(ctx.pathParam("id"));
    List<String> unshown = board.unshownAtTheBench(job.content());
    if (!unshown.isEmpty()) {
      throw new Refused(BenchPage.cantShow(unshown));
    }
    JobContent asOfNow = board.asOfNow(job.content());
    Map<String, String> fields = new BenchFields(asOfNow, board.times()).byName();
    fields.put(BenchPage.JOB, job.id());
    fields.put(BenchPage.JOB_VERSION, Long.toString(job.version()));
    Form.go(ctx, "/bench/" + drafts.begin(fields, board.now(), doer.of(ctx)).id());
  }

  private void change(Context ctx, Draft draft) {
    String id = draft.field(BenchPage.JOB);
    long seen = Long.parseLong(draft.field(BenchPage.JOB_VERSION));
    try {
      requireKept(board.job(id), seen, draft);
      board.reorder(
          id,
          seen,
          draft.field("title").strip(),
          draft.field("bore").strip(),
          new BenchOrder(draft).json(),
          doer.of(ctx));
      drafts.remove(draft.id());
      Form.go(ctx, "/job/" + id);
    } catch (Stale e) {
      ctx.status(409);
      Map<String, String> again = new LinkedHashMap<>(draft.fields());
      again.put(BenchPage.JOB_VERSION, Long.toString(e.current().version()));
      Draft kept =
          drafts.save(draft.id(), draft.version(), again, board.now(), Doer.at(ctx)).orElse(draft);
      bench(ctx, kept, BothVersions.ofJob(e.current(), draft, board.times()));
    } catch (InputRefused | InvalidValue e) {
      refused(ctx, draft, e);
    }
  }

  /** What a change of the order does not touch is refused, not passed over. */
  private void requireKept(Job job, long seen, Draft draft) {
    if (job.version() != seen) {
      return; // both versions are shown first
    }
    String reference = draft.field("reference").strip();
    if (!reference.isEmpty() && !reference.equals(job.content().reference())) {
      throw Api.refused(
          BenchLabels.of("reference"),
          "\"" + reference + "\" is another one; a job keeps its reference",
          job.content().reference());
    }
    Optional<Instant> closed = job.content().closedAt();
    String start = new BenchOrder(draft).start();
    if (closed.isPresent() && !start.isEmpty() && !sameMinute(start, closed.get())) {
      String at = board.times().past(closed.get());
      throw Api.refused(
          BenchLabels.of("start"),
          "the joint was closed " + at + ", and a change of the order leaves that",
          "take back the closing on the page of the job, and close it at the right time");
    }
  }

  private boolean sameMinute(String typed, Instant closed) {
    String field = BenchLabels.of("start");
    Instant start = ClockWord.read("form", 0, field, typed, board.times().zone());
    return Duration.between(start, closed).abs().compareTo(Duration.ofMinutes(1)) < 0;
  }

  private void enter(Context ctx, Draft draft, JobState state) {
    BenchOrder order = new BenchOrder(draft);
    List<Job> others = SameReference.others(board, draft);
    if (SameReference.asks(draft, others)) {
      ctx.status(422);
      String what = "Give it another reference, or tick that it is another joint. ";
      bench(ctx, draft, List.of(what + SameReference.words(others)));
      return;
    }
    try {
      String who = doer.of(ctx);
      String reference = draft.field("reference").strip();
      Job job =
          board.enter(
              reference,
              draft.field("title").strip(),
              draft.field("bore").strip(),
              order.json(),
              who);
      if (state != JobState.BOOKED) {
        job = board.put(job.id(), job.version(), state, who);
      }
      drafts.remove(draft.id());
      Form.go(ctx, "/job/" + job.id());
    } catch (InputRefused | InvalidValue e) {
      refused(ctx, draft, e);
    }
  }

  /** The bench again, with what is wrong. */
  private void refused(Context ctx, Draft draft, RuntimeException e) {
    ctx.status(422);
    ctx.html(new BenchPage(board, Doer.at(ctx)).refused(draft, Form.problems(e)));
  }

  private void sources(Context ctx) {
    Draft draft = draft(ctx);
    Answer answer = board.judge(new BenchOrder(draft).json());
    ctx.html(SourcesPage.html(answer, board.knowledge(), "/bench/" + draft.id(), Doer.at(ctx)));
  }
}
