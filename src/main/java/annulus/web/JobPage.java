package annulus.web;

import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Told;
import annulus.handback.LatestStart;
import annulus.report.CurePicture;
import annulus.report.PromiseText;
import annulus.store.JobChange;
import annulus.store.JobState;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** One job: where it stands, what can be done with it, its paper and its history. */
final class JobPage {
  private final Board board;
  private final JobView view;
  private final String who;
  private final ClockWords times;
  private final String path;

  JobPage(Board board, JobView view, String who) {
    this.board = board;
    this.view = view;
    this.who = who;
    this.times = board.times();
    this.path = "/job/" + view.job().id();
  }

  /**
   * @param wanted the pickup that other ways are asked for; empty: not asked
   * @param lots what the cabinet gave for the job
   */
  String html(Optional<Instant> wanted, boolean ways, Markup lots) {
    Markup page = new Markup();
    String reference = view.job().content().reference();
    page.element("h1", "Job " + reference + " " + view.job().content().title());
    SameReference.on(page, board, view.job());
    page.open("div", "class", "job");
    page.open("section", "aria-label", "Now");
    page.open(
            "div",
            "id",
            "live",
            "data-events",
            "/events?job=" + view.job().id(),
            "data-version",
            version(view))
        .part(live())
        .close();
    acts(page);
    promise(page);
    page.part(lots);
    log(page);
    edit(page);
    paper(page);
    page.close().open("section", "aria-label", "Answer");
    page.part(answer()).close();
    page.close();
    if (!view.state().closed()) {
      ways(page, wanted, ways);
    }
    new BorePart(board).history(page, view.job().content().bore());
    new JobHistory(board, view.job(), who).on(page);
    return Layout.page("Job " + reference, Layout.Place.COUNTER, who, page);
  }

  /**
   * What a screen compares to know that its buttons are old: the version, and after a space what
   * the clock alone makes another.
   */
  static String version(JobView view) {
    return view.job().version()
        + " "
        + StateWords.id(view.state())
        + (view.slips() ? " slips" : "")
        + (view.unsafe() ? " unsafe" : "");
  }

  /** What follows the clock. */
  Markup live() {
    Markup part = new Markup();
    part.open("div", "class", CounterPage.look(view));
    part.part(CounterPage.status(view, times));
    CounterPage.warnings(part, view, times);
    view.job()
        .content()
        .closedAt()
        .ifPresent(c -> part.element("p", "Joint closed " + times.past(c) + ".", "class", "hint"));
    part.element(
        "p",
        "Changed " + times.past(view.job().changedAt()) + " by " + view.job().changedBy() + ".",
        "class",
        "hint");
    view.answer().shopFile().ifPresent(s -> part.element("p", s, "class", "hint"));
    String then = dataVersion(view.job().content().advice());
    String now = view.answer().told().advice().dataVersion();
    if (!then.equals(now)) {
      part.element(
          "p",
          "The data tables have changed since it was answered (" + then + ", now " + now + ").",
          "class",
          "hint");
    }
    return part.close();
  }

  /** It stands near the beginning: the rest is not read. */
  private static String dataVersion(String advice) {
    try (JsonParser parser = Orders.JSON.createParser(advice)) {
      parser.nextToken();
      while (parser.nextToken() == JsonToken.FIELD_NAME) {
        boolean found = parser.currentName().equals("dataVersion");
        parser.nextToken();
        if (found) {
          return parser.getText();
        }
        parser.skipChildren();
      }
      return "";
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Markup answer() {
    Markup part = new Markup();
    part.element("h2", "Answer");
    Optional<Instant> promise = view.promise();
    String kept = view.slips() ? ", which can't be kept" : "";
    AnswerPart words =
        new AnswerPart(
            view.answer(),
            board.knowledge().catalog(),
            times,
            inches(),
            promise.map(p -> times.full(p) + (view.promised().isPresent() ? kept : "")),
            path);
    part.part(words.markup());
    new BorePart(board).warning(part, view.job().content().bore(), view.answer());
    Told told = view.answer().told();
    CurePicture.of(told, promise, times.zone(), Optional.of(view.now()))
        .ifPresent(
            svg -> part.open("figure", "class", "clock", "tabindex", "0").picture(svg).close());
    return part.part(words.moreByLinks());
  }

  /** Every reason and figure of the answer, on a page of its own. */
  String why() {
    Markup page = new Markup();
    String reference = view.job().content().reference();
    page.element("h1", "Why: job " + reference + " " + view.job().content().title());
    page.open("p").element("a", "Back to the job", "class", "button plain", "href", path).close();
    page.part(AnswerPart.why(view.answer(), board.knowledge().catalog()));
    return Layout.page("Why: job " + reference, Layout.Place.COUNTER, who, page);
  }

  /** Whoever measured in inch reads the gap in inch as well. */
  private boolean inches() {
    return view.job().content().order().contains(" in\"");
  }

  private void begin(Markup page, String action) {
    JobHistory.begin(page, view.job(), who, action);
  }

  private void acts(Markup page) {
    if (view.toldTooEarly()) {
      begin(page, "/called");
      page.open("button", "class", "main", "type", "submit");
      StateWords.label(page, view.state(), JobState.CUSTOMER_CALLED);
      page.close().close();
    }
    close(page);
    if (view.next().stream().anyMatch(this::isForward)) {
      states(page);
      moved(page);
    } else {
      moved(page);
      states(page);
    }
  }

  /** The two ways are two forms: a time left in a folded field must not go along with "now". */
  private void close(Markup page) {
    if (!view.state().mayClose() || !view.answer().isYes()) {
      return;
    }
    begin(page, "/closed");
    page.element("button", "Joint closed now", "class", "main", "type", "submit").close();
    page.open("details").element("summary", "It was closed earlier");
    JobHistory.begin(page, view.job(), who, "/closed", "closed-at-");
    page.open("p", "class", "field").element("label", "Closed at", "for", "at");
    page.single("input", "type", "datetime-local", "id", "at", "name", "at", "required", "");
    page.close().element("button", "Closed at this time", "type", "submit").close().close();
  }

  private boolean isForward(JobState to) {
    return to.compareTo(view.state()) > 0;
  }

  private void states(Markup page) {
    if (view.next().isEmpty()) {
      return;
    }
    begin(page, "/state");
    page.open("div", "class", "acts");
    for (JobState to : view.next()) {
      String look = isForward(to) ? "main" : "plain";
      page.open("button", "name", "to", "value", StateWords.id(to), "class", look);
      StateWords.label(page, view.state(), to);
      page.close();
    }
    page.close().close();
  }

  /** Whenever the joint is closed: that it was twisted on Saturday may be learnt on Tuesday. */
  private void moved(Markup page) {
    if (!view.state().closed() || view.ready().isEmpty()) {
      return;
    }
    if (!view.state().collected()) {
      begin(page, "/moved");
      page.open("button", "class", "plain", "type", "submit");
      page.element("span", "↻", "aria-hidden", "true").text("It was moved just now");
      page.close().close();
    }
    page.open("details").element("summary", "It was moved earlier");
    JobHistory.begin(page, view.job(), who, "/moved", "moved-at-");
    page.open("p", "class", "field").element("label", "Moved at", "for", "movedAt");
    page.single("input", "type", "datetime-local", "id", "movedAt", "name", "at", "required", "");
    page.close().open("button", "type", "submit");
    page.element("span", "↻", "aria-hidden", "true").text("Moved at this time");
    page.close().close().close();
  }

  private void promise(Markup page) {
    boolean over = view.state().collected() || view.promisable().isEmpty();
    if (over) {
      return;
    }
    page.element("h2", "What the customer is told");
    view.promised()
        .filter(p -> !view.slips() && !view.unsafe())
        .ifPresent(
            p ->
                page.element(
                    "p", PromiseText.customer(p, times.zone(), view.answer().told().advice())));
    begin(page, "/promise");
    page.open("p", "class", "field").element("label", "Promised time", "for", "promised");
    page.single(
        "input",
        "type",
        "datetime-local",
        "id",
        "promised",
        "name",
        "promised",
        "required",
        "",
        "value",
        times.field(view.promisable().get()));
    page.close();
    boolean again = view.promised().isPresent();
    page.element("button", again ? "Promise anew" : "Promise this time", "type", "submit");
    page.close();
  }

  private void log(Markup page) {
    if (!view.state().closed()) {
      return;
    }
    page.element("h2", "Temperature log");
    view.answer().measured().ifPresent(m -> measured(page, m));
    page.open("details").element("summary", "Judge it by a temperature log");
    page.open("form", "method", "post", "action", path + "/log", "enctype", "multipart/form-data");
    FormField.hidden(page, "version", "" + view.job().version());
    Upload.field(page, "log", "CSV file of the logger, at most 4 MB");
    FormField.choice(page, "dateOrder", "Order of day and month", Choices.dateOrders(), "");
    FormField.choice(page, "unit", "Temperatures in", Choices.loggerUnits(), "");
    page.open("p", "class", "field");
    page.element("label", "Header of the column, if there are several", "for", "column");
    page.single("input", "id", "column", "name", "column", "maxlength", "100").close();
    Layout.who(page, who, "log-");
    page.element("button", "Judge by this log", "type", "submit").close().close();
  }

  private void measured(Markup page, Answer.Measured measured) {
    page.element(
        "p",
        "All times here follow the log "
            + measured.log().name()
            + " until "
            + times.past(measured.log().readAt())
            + ", and the plan after that.");
    page.open("dl", "class", "log");
    for (String line : measured.text().replaceAll("\n +", " ").split("\n", -1)) {
      String[] two = line.split(" +", 2);
      if (two.length == 2) {
        page.element("dt", two[0]).element("dd", two[1]);
      }
    }
    page.close();
  }

  private void edit(Markup page) {
    if (view.state().collected()) {
      return;
    }
    List<String> unshown = board.unshownAtTheBench(view.job().content());
    if (unshown.isEmpty()) {
      begin(page, "/edit");
      page.element("button", "Change the order", "class", "plain", "type", "submit").close();
    } else {
      page.element("p", BenchPage.cantShow(unshown), "class", "hint");
    }
  }

  private void paper(Markup page) {
    page.element("h2", "Paper and calendar").open("div", "class", "acts");
    page.element("a", "Job card, A5", "class", "button plain", "href", path + "/card");
    if (view.notBefore().isPresent()) {
      page.element("a", "Tag, A6", "class", "button plain", "href", path + "/tag");
    }
    if (view.notBefore().isPresent() && !view.slips()) {
      page.element("a", "Calendar file", "class", "button plain", "href", path + "/calendar.ics");
    }
    page.close();
  }

  private void ways(Markup page, Optional<Instant> wanted, boolean asked) {
    page.element("h2", "Other ways", "id", "ways");
    page.open("form", "method", "get", "action", path + "#ways", "class", "row");
    page.open("p", "class", "field").element("label", "Customer wants it by", "for", "wanted");
    page.single(
        "input",
        "type",
        "datetime-local",
        "id",
        "wanted",
        "name",
        "wanted",
        "value",
        wanted.map(times::field).orElse(""));
    page.close();
    page.element("button", "What if?", "name", "ways", "value", "1").close();
    if (asked) {
      wanted
          .flatMap(w -> PromiseText.noPickup(w, view.now(), board.shop().hours()))
          .ifPresent(p -> page.element("p", p, "class", "problem"));
      table(page, board.desk().options(view.answer().order(), view.now(), wanted), wanted);
    }
  }

  private void table(Markup page, List<Option> options, Optional<Instant> wanted) {
    if (options.isEmpty()) {
      page.element("p", "There is no other way: no class is usable.");
      return;
    }
    List<String> heads = new ArrayList<>(List.of("class", "primer", "place", "promise"));
    heads.add(wanted.isPresent() ? "begin at the latest" : "safe from");
    heads.addAll(List.of("strength left, MPa", "comes apart"));
    page.open("div", "class", "scroll", "tabindex", "0", "role", "region", "aria-label", "Ways");
    page.open("table").open("thead").open("tr");
    heads.forEach(h -> page.element("th", h, "scope", "col"));
    page.close().close().open("tbody");
    options.stream().filter(o -> !o.noBetter()).forEach(o -> row(page, o, wanted));
    page.close().close().close();
    page.element(
        "p", "Ways that are no better in anything than another one are left out.", "class", "hint");
  }

  private void row(Markup page, Option o, Optional<Instant> wanted) {
    page.open("tr").element("td", o.compound().name());
    page.element("td", o.primer().map(p -> p.name()).orElse("none"));
    page.element("td", o.place().map(p -> p.name()).orElse("as entered"));
    String promise = o.told().promise().map(p -> times.full(p.promise())).orElse("none");
    boolean meets = wanted.isPresent() && o.told().meets(wanted.get());
    page.element("td", promise + (meets ? " ✓" : ""));
    page.element(
        "td",
        wanted.isPresent()
            ? o.latest().map(this::latest).orElse("")
            : times.fullOr(o.told().ready(), "never"));
    page.element("td", annulus.quantity.Numbers.fixed(o.strengthMPa(), 1));
    page.element("td", o.releasable() ? "by hand tools" : "with heat").close();
  }

  private String latest(LatestStart latest) {
    return latest instanceof LatestStart.Found found ? times.full(found.start()) : "too late";
  }

  /** What the second of two editors is told: both versions, and what was typed is not lost. */
  static String conflict(Board board, JobView current, String tried, String who) {
    Markup page = new Markup();
    boolean own = current.job().changedBy().equals(who);
    String title = own ? "You changed it in the meantime" : "Somebody else was quicker";
    page.element("h1", title);
    page.open("div", "class", "problem", "role", "alert");
    page.element(
        "p",
        (own ? "You" : current.job().changedBy())
            + " changed job "
            + current.job().content().reference()
            + " at "
            + board.times().past(current.job().changedAt())
            + (own
                ? ". That was written; what you sent just now was not."
                : ". Nothing of yours was written."));
    page.close();
    page.element("h2", "You wanted").element("p", tried);
    page.element("h2", "The job as it is now").part(new JobPage(board, current, who).live());
    List<JobChange> changes = board.changes(current.job().id());
    JobChange last = changes.get(changes.size() - 1);
    page.element("p", "Last change, by " + last.who() + ": " + last.words() + ".");
    page.open("p");
    page.element(
        "a", "Look at the job and decide", "class", "button", "href", "/job/" + current.job().id());
    page.close();
    return Layout.page(title, Layout.Place.COUNTER, who, page);
  }
}
