package annulus.web;

import annulus.exchange.ClockWord;
import annulus.exchange.InputRefused;
import annulus.exchange.PlacedProblem;
import annulus.quantity.InvalidValue;
import annulus.report.CalendarFile;
import annulus.report.JobCard;
import annulus.report.LotTag;
import annulus.report.SourceList;
import annulus.report.TagSheet;
import annulus.stock.Lot;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.SafetySheet;
import annulus.store.Draft;
import annulus.store.DraftStore;
import annulus.store.Job;
import annulus.store.JobState;
import annulus.store.Refused;
import annulus.store.Stale;
import annulus.store.Unknown;
import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The pages and what their forms do. */
final class Pages {
  /** What the page sends for a count; the movement is the difference to what is booked. */
  private static final String COUNTED = "COUNTED";

  private static final int YEAR_SECONDS = 365 * 24 * 3600;
  private static final int LONGEST_FIELD = 200;
  private static final int MOST_FIELDS = 240;

  private final Board board;
  private final Shelf shelf;
  private final Api api;
  private final DraftStore drafts;
  private final LiveFeed feed;
  private final Optional<String> address;

  Pages(
      Board board,
      Shelf shelf,
      Api api,
      DraftStore drafts,
      LiveFeed feed,
      Optional<String> address) {
    this.board = board;
    this.shelf = shelf;
    this.api = api;
    this.drafts = drafts;
    this.feed = feed;
    this.address = address;
  }

  void routes(Javalin app) {
    app.get("/", ctx -> ctx.redirect("/counter"));
    app.get("/counter", ctx -> ctx.html(new CounterPage(board, who(ctx)).html()));
    app.get("/bench", ctx -> ctx.html(new BenchPage(board, who(ctx)).start(drafts.all())));
    app.post("/bench/new", this::begin);
    app.get("/bench/{id}", ctx -> bench(ctx, draft(ctx), List.of()));
    app.post("/bench/{id}", this::act);
    app.post("/bench/{id}/save", this::save);
    app.get("/job/{id}", this::job);
    app.post("/job/{id}/state", this::state);
    app.post("/job/{id}/closed", this::closed);
    app.post("/job/{id}/moved", this::moved);
    app.post("/job/{id}/log", this::log);
    app.post("/job/{id}/promise", this::promise);
    app.post("/job/{id}/undo", this::undo);
    app.post("/job/{id}/edit", this::edit);
    app.get("/job/{id}/why", this::why);
    app.get("/job/{id}/card", this::card);
    app.get("/job/{id}/sources", this::sources);
    app.get("/bench/{id}/sources", this::draftSources);
    app.get("/job/{id}/tag", this::tag);
    app.get("/job/{id}/calendar.ics", this::calendar);
    app.get("/cabinet/lot", this::lot);
    app.get("/cabinet/tag", this::lotTag);
    app.get("/cabinet", ctx -> ctx.html(new CabinetPage(shelf, board, who(ctx)).html()));
    app.post("/cabinet/move", this::move);
    app.post("/cabinet/receive", this::receive);
    app.get("/who", this::askWho);
    app.post("/who", this::sayWho);
    app.sse("/events", client -> feed.add(client, show(client.ctx())));
  }

  /** What a screen that asks for events shows. */
  private LiveFeed.Show show(Context ctx) {
    String who = who(ctx);
    String id = ctx.queryParam("job");
    if (id == null) {
      return new LiveFeed.Show("counter " + who, () -> new CounterPage(board, who).live().html());
    }
    return new LiveFeed.Show(
        "job " + id,
        () -> {
          JobView view = board.view(board.job(id));
          return view.job().version() + "\n" + new JobPage(board, view, "").live().html();
        });
  }

  /** The name of whoever works at this screen; remembered in a cookie. */
  static String who(Context ctx) {
    String cookie = ctx.cookie("who");
    return cookie == null ? "" : URLDecoder.decode(cookie, StandardCharsets.UTF_8);
  }

  /** The name that a form brings, remembered for the next one. */
  private String doer(Context ctx) {
    String said = Optional.ofNullable(ctx.formParam("who")).orElse("").strip();
    String who = said.isEmpty() ? who(ctx) : said;
    remember(ctx, board.stamp(who).who());
    return who;
  }

  private static void remember(Context ctx, String who) {
    String value = URLEncoder.encode(who, StandardCharsets.UTF_8);
    ctx.cookie(
        new Cookie("who", value, "/", YEAR_SECONDS, false, 0, true, null, null, SameSite.STRICT));
  }

  private void askWho(Context ctx) {
    Markup page = new Markup();
    page.element("h1", "Who is working here?");
    page.open("form", "method", "post", "action", "/who");
    page.open("p", "class", "field").element("label", "Your name or initials", "for", "who");
    page.single(
        "input", "id", "who", "name", "who", "required", "", "maxlength", "40", "value", who(ctx));
    page.close();
    page.element("button", "That's me", "class", "main", "type", "submit").close();
    page.element("p", "Every change is kept with this name and the time.", "class", "hint");
    ctx.html(Layout.page("Who is working here?", Layout.Place.NONE, who(ctx), page));
  }

  private void sayWho(Context ctx) {
    doer(ctx);
    ctx.redirect("/counter", io.javalin.http.HttpStatus.SEE_OTHER);
  }

  private static void go(Context ctx, String path) {
    ctx.redirect(path, io.javalin.http.HttpStatus.SEE_OTHER);
  }

  private void begin(Context ctx) {
    Draft draft = drafts.begin(Map.of(), board.now(), who(ctx));
    go(ctx, "/bench/" + draft.id());
  }

  private Draft draft(Context ctx) {
    return drafts
        .draft(ctx.pathParam("id"))
        .orElseThrow(() -> new Unknown("This draft has become a job or was thrown away."));
  }

  private void bench(Context ctx, Draft draft, List<String> messages) {
    ctx.html(new BenchPage(board, who(ctx)).joint(draft, messages));
  }

  private static Map<String, String> fields(Context ctx) {
    Map<String, String> fields = new LinkedHashMap<>();
    ctx.formParamMap()
        .forEach(
            (name, values) -> {
              boolean own = !List.of("version", "act", "who").contains(name);
              String value = values.isEmpty() ? "" : values.get(0);
              if (own && !value.isBlank() && fields.size() < MOST_FIELDS) {
                boolean fits = value.length() <= LONGEST_FIELD && name.length() < 40;
                fields.put(name, fits ? value : value.substring(0, LONGEST_FIELD));
              }
            });
    return fields;
  }

  private static long version(Context ctx) {
    String version = Optional.ofNullable(ctx.formParam("version")).orElse("");
    if (!version.matches("[0-9]{1,15}")) {
      throw Api.refused("version", "is missing", "the version that was seen");
    }
    return Long.parseLong(version);
  }

  /** Saves as it is typed; the answer so far comes back. */
  private void save(Context ctx) {
    Draft before = draft(ctx);
    Optional<Draft> saved =
        drafts.save(before.id(), version(ctx), fields(ctx), board.now(), who(ctx));
    if (saved.isEmpty()) {
      ctx.status(409);
      ctx.header("X-Version", Long.toString(before.version()));
      ctx.result("Somebody else is writing in this draft.");
      return;
    }
    ctx.header("X-Version", Long.toString(saved.get().version()));
    ctx.html(new BenchPage(board, who(ctx)).preview(saved.get()).html());
  }

  private void act(Context ctx) {
    Draft before = draft(ctx);
    Map<String, String> typed = fields(ctx);
    Optional<Draft> saved = drafts.save(before.id(), version(ctx), typed, board.now(), who(ctx));
    if (saved.isEmpty()) {
      ctx.status(409);
      Draft mine =
          new Draft(before.id(), before.version(), typed, before.changedAt(), before.changedBy());
      bench(ctx, mine, bothVersions(before, typed));
      return;
    }
    String act = Optional.ofNullable(ctx.formParam("act")).orElse("show");
    if (act.equals("drop")) {
      drafts.remove(before.id());
      go(ctx, "/bench");
      return;
    }
    Optional<JobState> state = BenchPage.stateOf(act);
    if (act.equals("change")) {
      change(ctx, saved.get());
    } else if (state.isEmpty()) {
      bench(ctx, saved.get(), List.of());
    } else {
      enter(ctx, saved.get(), state.get());
    }
  }

  /** Both versions, field by field; what was typed here stays in the form. */
  private static List<String> bothVersions(Draft theirs, Map<String, String> mine) {
    List<String> lines = new ArrayList<>();
    lines.add(
        "Somebody else"
            + (theirs.changedBy().isEmpty() ? "" : " (" + theirs.changedBy() + ")")
            + " has changed this draft. Yours is below and not saved yet; save again to keep it.");
    java.util.Set<String> names = new java.util.TreeSet<>(mine.keySet());
    names.addAll(theirs.fields().keySet());
    for (String name : names) {
      String own = mine.getOrDefault(name, "");
      if (!own.equals(theirs.field(name))) {
        lines.add(
            BenchLabels.of(name)
                + ": yours \""
                + own
                + "\", theirs \""
                + theirs.field(name)
                + "\"");
      }
    }
    return lines;
  }

  /**
   * The order of a job opened at the bench as a draft; the job stays as it is until it is saved.
   */
  private void edit(Context ctx) {
    Job job = board.job(ctx.pathParam("id"));
    Map<String, String> fields = new LinkedHashMap<>(BenchOrder.fields(job.content()));
    fields.put(BenchPage.JOB, job.id());
    fields.put(BenchPage.JOB_VERSION, Long.toString(job.version()));
    go(ctx, "/bench/" + drafts.begin(fields, board.now(), doer(ctx)).id());
  }

  private void change(Context ctx, Draft draft) {
    String id = draft.field(BenchPage.JOB);
    long seen = Long.parseLong(draft.field(BenchPage.JOB_VERSION));
    try {
      board.reorder(
          id,
          seen,
          draft.field("title").strip(),
          draft.field("bore").strip(),
          new BenchOrder(draft).json(),
          doer(ctx));
      drafts.remove(draft.id());
      go(ctx, "/job/" + id);
    } catch (Stale e) {
      ctx.status(409);
      Map<String, String> again = new LinkedHashMap<>(draft.fields());
      again.put(BenchPage.JOB_VERSION, Long.toString(e.current().version()));
      Draft kept =
          drafts.save(draft.id(), draft.version(), again, board.now(), who(ctx)).orElse(draft);
      bench(ctx, kept, orders(e.current(), draft));
    } catch (InputRefused e) {
      ctx.status(422);
      bench(ctx, draft, e.problems().stream().map(Pages::words).toList());
    } catch (InvalidValue e) {
      ctx.status(422);
      bench(ctx, draft, List.of(e.getMessage()));
    }
  }

  /** What the job is now beside what was typed here, field by field. */
  private static List<String> orders(Job current, Draft mine) {
    List<String> lines = new ArrayList<>();
    lines.add(
        current.changedBy()
            + " has changed this job ("
            + current.content().state().words()
            + "). Yours is below and kept; \"Change the job\" again puts it in force.");
    Map<String, String> theirs = BenchOrder.fields(current.content());
    for (Map.Entry<String, String> field : mine.fields().entrySet()) {
      boolean own = !field.getKey().startsWith("of");
      String other = theirs.getOrDefault(field.getKey(), "");
      if (own && !field.getValue().equals(other)) {
        lines.add(
            BenchLabels.of(field.getKey())
                + ": yours \""
                + field.getValue()
                + "\", theirs \""
                + other
                + "\"");
      }
    }
    return lines;
  }

  private void enter(Context ctx, Draft draft, JobState state) {
    BenchOrder order = new BenchOrder(draft);
    try {
      String who = doer(ctx);
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
      go(ctx, "/job/" + job.id());
    } catch (InputRefused e) {
      ctx.status(422);
      bench(ctx, draft, e.problems().stream().map(Pages::words).toList());
    } catch (InvalidValue e) {
      ctx.status(422);
      bench(ctx, draft, List.of(e.getMessage()));
    }
  }

  static String words(PlacedProblem p) {
    return p.field()
        + ": "
        + p.problem()
        + (p.allowed().isEmpty() ? "" : "; allowed: " + p.allowed());
  }

  private void job(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    Optional<Instant> wanted = time("wanted", ctx.queryParam("wanted"));
    boolean ways = ctx.queryParam("ways") != null;
    Markup lots = LotPage.lotsOf(shelf.usesFor(view.job().content().reference()));
    ctx.html(new JobPage(board, view, who(ctx)).html(wanted, ways, lots));
  }

  private void why(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    ctx.html(new JobPage(board, view, who(ctx)).why());
  }

  private Optional<Instant> time(String name, String text) {
    return text == null || text.isBlank()
        ? Optional.empty()
        : Optional.of(ClockWord.read("form", 0, name, text, board.times().zone()));
  }

  private void state(Context ctx) {
    JobState to =
        JobJson.state(Optional.ofNullable(ctx.formParam("to")).orElse(""))
            .orElseThrow(() -> Api.refused("to", "is no state", "one of the buttons"));
    Job job = board.put(ctx.pathParam("id"), version(ctx), to, doer(ctx));
    go(ctx, "counter".equals(ctx.formParam("from")) ? "/counter" : "/job/" + job.id());
  }

  private void closed(Context ctx) {
    Optional<Instant> at = time("at", ctx.formParam("at"));
    go(ctx, "/job/" + board.close(ctx.pathParam("id"), version(ctx), at, doer(ctx)).id());
  }

  private void moved(Context ctx) {
    Optional<Instant> at = time("at", ctx.formParam("at"));
    go(ctx, "/job/" + board.moved(ctx.pathParam("id"), version(ctx), at, doer(ctx)).id());
  }

  private void log(Context ctx) {
    Upload upload = Upload.of(ctx);
    Board.GivenLog given =
        new Board.GivenLog(
            upload.name(),
            upload.text(),
            said(ctx, "dateOrder"),
            said(ctx, "unit"),
            said(ctx, "column"));
    go(ctx, "/job/" + board.measure(ctx.pathParam("id"), version(ctx), given, doer(ctx)).id());
  }

  private void promise(Context ctx) {
    Optional<Instant> when = time("promised", ctx.formParam("promised"));
    go(ctx, "/job/" + board.promise(ctx.pathParam("id"), version(ctx), when, doer(ctx)).id());
  }

  private void undo(Context ctx) {
    go(ctx, "/job/" + board.undo(ctx.pathParam("id"), version(ctx), doer(ctx)).id());
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
    if (ctx.path().endsWith("/moved")) {
      return "Say that the part was moved.";
    }
    boolean closing = ctx.path().endsWith("/closed");
    return closing ? "Close the joint." : "Take back the last change.";
  }

  private void card(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    String at = address.orElse(ctx.scheme() + "://" + ctx.host()) + "/job/" + view.job().id();
    String card =
        JobCard.of(
            view.answer().told().advice(), board.knowledge().catalog(), CodePicture.of(at, 17));
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
                notBefore,
                board.times().zone(),
                List.of("Leave the joint alone.", "No load, no use until then."))
            .html());
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
                entry(CalendarFile.Kind.CHECK, job, promised.minus(check), check, moves),
                entry(CalendarFile.Kind.READY, job, promised, Duration.ZERO, moves)));
    ctx.contentType("text/calendar; charset=utf-8");
    ctx.header("Content-Disposition", "attachment; filename=\"job-" + job.id() + ".ics\"");
    ctx.result(file.text());
  }

  private static CalendarFile.Entry entry(
      CalendarFile.Kind kind, Job job, Instant at, Duration length, int moves) {
    return new CalendarFile.Entry(
        kind,
        job.id(),
        job.content().reference(),
        at,
        length,
        Math.max(0, moves),
        CalendarFile.Status.CONFIRMED,
        "");
  }

  private void move(Context ctx) {
    String kind = need(ctx, "kind");
    Millilitres amount = amount(ctx, "ml", "Amount", true);
    Optional<Millilitres> moved =
        kind.equals(COUNTED) ? shelf.change(need(ctx, "lot"), amount) : Optional.of(amount);
    moved.ifPresent(
        m ->
            shelf.move(
                api.movement(
                    need(ctx, "id"),
                    kind.equals(COUNTED) ? Movement.Kind.CORRECT : Api.kind(kind),
                    doer(ctx),
                    need(ctx, "lot"),
                    m.value(),
                    said(ctx, "job"),
                    said(ctx, "reason"),
                    said(ctx, "witness"))));
    go(ctx, "/cabinet");
  }

  private static Millilitres amount(Context ctx, String name, String label, boolean signed) {
    String ml = need(ctx, name).replace(',', '.');
    if (!ml.matches((signed ? "[+-]?" : "") + "[0-9]{1,6}(\\.[0-9]{1,3})?")) {
      throw Api.refused(label, "\"" + ml + "\" is no amount", "millilitres such as 0.35");
    }
    return Millilitres.of(Double.parseDouble(ml));
  }

  private void sources(Context ctx) {
    JobView view = board.view(board.job(ctx.pathParam("id")));
    sources(ctx, view.answer(), "/job/" + view.job().id());
  }

  private void draftSources(Context ctx) {
    Draft draft = draft(ctx);
    sources(ctx, board.judge(new BenchOrder(draft).json()), "/bench/" + draft.id());
  }

  private void sources(Context ctx, Answer answer, String back) {
    var rows = SourceList.of(answer.told().advice(), board.knowledge());
    ctx.html(SourcesPage.html(answer.order(), rows, back, who(ctx)));
  }

  private void lot(Context ctx) {
    Shelf.Now now = shelf.now();
    ctx.html(new LotPage(shelf.check(now, asked(ctx, "lot")), now.ledger()).html(who(ctx)));
  }

  private void lotTag(Context ctx) {
    Shelf.Now now = shelf.now();
    withOwnStyle(ctx, new LotTag(shelf.check(now, asked(ctx, "lot")), now.day()).html());
  }

  private static String asked(Context ctx, String name) {
    return Optional.ofNullable(ctx.queryParam(name)).orElse("");
  }

  /** When a lot came: as said, else today; one that is open came by the day it was opened. */
  private Optional<LocalDate> came(String lot, Optional<LocalDate> said, Optional<LocalDate> open) {
    if (said.isPresent() || shelf.now().cabinet().lot(lot).isPresent()) {
      return said;
    }
    LocalDate today = board.now().atZone(board.times().zone()).toLocalDate();
    return Optional.of(open.filter(o -> o.isBefore(today)).orElse(today));
  }

  private void receive(Context ctx) {
    Millilitres size = amount(ctx, "container", "Size", false);
    String number = need(ctx, "newLot");
    Optional<LocalDate> opened = day("Opened on", said(ctx, "opened"));
    boolean partly = !said(ctx, "left").isEmpty();
    if (opened.isPresent() && !partly) {
      throw Api.refused(
          "Left in it", "is missing for an open container", "millilitres, as near as you can see");
    }
    Lot lot =
        new Lot(
            number,
            need(ctx, "item"),
            "",
            size,
            partly ? amount(ctx, "left", "Left in it", false) : size,
            came(number, day("Came on", said(ctx, "came")), opened),
            opened,
            day("Printed expiry", said(ctx, "expires")),
            said(ctx, "place"),
            said(ctx, "sheet").equals("on") ? SafetySheet.UNDATED : SafetySheet.NONE,
            OptionalDouble.empty(),
            OptionalDouble.empty());
    if (!shelf.receive(lot, doer(ctx), "")) {
      throw Api.refused(
          "Lot", number + " is in the cabinet already", number + "-2 for a second container");
    }
    go(ctx, "/cabinet");
  }

  private static Optional<LocalDate> day(String label, String text) {
    try {
      return text.isBlank() ? Optional.empty() : Optional.of(LocalDate.parse(text));
    } catch (DateTimeParseException e) {
      throw Api.refused(label, "\"" + text + "\" is no day", "such as 2027-06-30");
    }
  }

  private static String said(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("").strip();
  }

  private static String need(Context ctx, String name) {
    String said = said(ctx, name);
    if (said.isEmpty()) {
      throw Api.refused(name, "is missing", "fill it in");
    }
    return said;
  }
}
