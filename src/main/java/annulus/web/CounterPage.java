package annulus.web;

import annulus.report.HandBackNotes;
import annulus.stock.HeldBack;
import annulus.stock.HeldUses;
import annulus.store.Job;
import annulus.store.JobState;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Today's jobs on a clock. */
final class CounterPage {
  private final Board board;
  private final String who;
  private final ClockWords times;

  CounterPage(Board board, String who) {
    this.board = board;
    this.who = who;
    this.times = board.times();
  }

  String html() {
    Markup page = new Markup();
    page.open("div", "class", "headline").element("h1", "Counter");
    page.open("div", "class", "acts");
    page.element("a", "Find a job", "class", "button plain", "href", "/jobs");
    page.element("a", "New joint", "class", "button", "href", "/bench").close().close();
    if (!board.hoursKnown()) {
      page.element(
          "p",
          "The opening hours are not known: every time counts as open. Start the board with --shop"
              + " SHOP.json to promise open times only.",
          "class",
          "problem");
    }
    page.open("div", "id", "live", "data-events", "/events").part(live()).close();
    page.element("h2", "Not here any more?");
    FindPage.form(page, "");
    return Layout.page("Counter", Layout.Place.COUNTER, who, page);
  }

  /** The part that follows the clock; sent anew whenever it changes. */
  Markup live() {
    JobViews.Today today = board.today();
    Markup page = new Markup();
    summary(page, today);
    today.unjudged().forEach((job, problem) -> unjudged(page, job, problem));
    Map<Group, List<JobView>> groups = new EnumMap<>(Group.class);
    today.views().forEach(v -> groups.computeIfAbsent(group(v), g -> new ArrayList<>()).add(v));
    groups.forEach((group, views) -> group(page, group, views));
    return page;
  }

  /** What has to be looked at first stands first. */
  private enum Group {
    URGENT("Slipping or not safe: call the customer"),
    HELD("Got some of a lot that is held back: look at it"),
    TODAY("Today"),
    LATER("Later"),
    NO_PROMISE("No promise yet"),
    GONE("Collected");

    private final String words;

    Group(String words) {
      this.words = words;
    }
  }

  private Group group(JobView view) {
    if (view.urgent()) {
      return Group.URGENT;
    }
    if (!view.heldBack().isEmpty()) {
      return Group.HELD;
    }
    if (view.state().over()) {
      return Group.GONE;
    }
    return view.goBy()
        .map(t -> times.byToday(t, view.now()) ? Group.TODAY : Group.LATER)
        .orElse(Group.NO_PROMISE);
  }

  private void group(Markup page, Group group, List<JobView> views) {
    page.element("h2", group.words).open("ul", "class", "jobs");
    views.forEach(v -> page.open("li").part(card(v)).close());
    page.close();
  }

  private void summary(Markup page, JobViews.Today today) {
    List<JobView> views = today.views();
    long urgent = views.stream().filter(JobView::urgent).count();
    long call = views.stream().filter(JobView::goneTooEarly).count();
    long check = views.stream().filter(v -> v.state() == JobState.CURED_TO_CHECK).count();
    long open = views.stream().filter(v -> !v.state().collected()).count();
    page.open("p", "class", "summary");
    page.element("strong", times.past(today.now()), "class", "clock");
    page.text(" " + open + (open == 1 ? " job" : " jobs") + ", " + check + " to check, ");
    page.element("strong", urgent + " slipping or not safe");
    if (call > 0) {
      page.text(", ").element("strong", call + " collected and not safe: call");
    }
    page.text(".").close();
    if (views.isEmpty() && today.unjudged().isEmpty()) {
      page.element("p", "No jobs today. Enter the first one at the bench.", "class", "empty");
    }
  }

  /** A job that can't be judged, with what is wrong. */
  static void unjudged(Markup page, Job job, String problem) {
    page.open("div", "class", "problem").open("p");
    page.element("a", "Job " + job.content().reference(), "href", "/job/" + job.id());
    page.text(" can't be judged as things stand:").close();
    page.element("p", problem).close();
  }

  private Markup card(JobView view) {
    String id = "job-" + view.job().id();
    Markup card = new Markup();
    card.open("article", "class", look(view), "aria-labelledby", id);
    card.open("h3", "id", id);
    card.element(
        "a",
        view.job().content().reference(),
        "href",
        "/job/" + view.job().id(),
        "id",
        "open-" + view.job().id());
    card.element("span", view.job().content().title(), "class", "title").close();
    card.part(status(view, times));
    warnings(card, view, times);
    if (!view.state().over() || view.callDue()) {
      nextStep(card, view);
    }
    return card.close();
  }

  /** Classes of the style sheet: what somebody has to look at has the loud border. */
  static String look(JobView view) {
    boolean loud = view.urgent() || view.unsafe() || !view.heldBack().isEmpty();
    return "card " + StateWords.id(view.state()) + (loud ? " slips" : "");
  }

  /** State, the one time, and what it is doing now; the same on every screen. */
  static Markup status(JobView view, ClockWords times) {
    Markup part = new Markup();
    part.open("p", "class", "state");
    part.element("span", StateWords.mark(view.state()), "class", "mark", "aria-hidden", "true");
    part.element("strong", stateWords(view, times)).close();
    Optional<Instant> time = view.large();
    if (time.isPresent()) {
      part.open("p", "class", "time");
      part.element("span", what(view, time, times), "class", "what");
      part.element("span", times.day(time.get(), view.now()), "class", "day");
      part.element("span", times.hour(time.get()), "class", "hour").close();
      limitedUse(view, time.get(), times).ifPresent(l -> part.element("p", l, "class", "limited"));
    } else if (view.goBy().isEmpty()) {
      part.element("p", "No time can be promised: " + decision(view), "class", "none");
      return part;
    }
    part.element("p", StateWords.now(view) + left(view), "class", "now");
    return part;
  }

  /** What whoever takes it is told; nothing more once it is gone. */
  private static Optional<String> limitedUse(JobView view, Instant taken, ClockWords times) {
    return view.state().over()
        ? Optional.empty()
        : new HandBackNotes(view.answer().told().advice()).limitedUse(taken, times.zone());
  }

  private static String what(JobView view, Optional<Instant> time, ClockWords times) {
    if (view.unsafe()) {
      return "not safe before";
    }
    if (view.promised().isEmpty()) {
      return "can promise";
    }
    return view.promised().equals(time)
        ? "promised"
        : "promised " + times.full(view.promised().get()) + " can't be kept, but";
  }

  /** Where it stands, in the words of its card. */
  static String stateWords(JobView view, ClockWords times) {
    if (view.state() != JobState.CURING) {
      return view.state().words();
    }
    return view.ready()
        .map(r -> "curing until " + times.full(r))
        .orElse("closed, but never safe: " + decision(view));
  }

  private static String decision(JobView view) {
    return view.answer().decision();
  }

  private static String left(JobView view) {
    boolean counts = view.state() == JobState.CURING && view.left().isPresent();
    return counts ? "; " + ClockWords.length(view.left().get()) + " left" : "";
  }

  /** What somebody has to look at in a job. */
  static void warnings(Markup part, JobView view, ClockWords times) {
    unsafe(part, view, times);
    heldBack(part, view);
    if (view.slips()) {
      part.open("p", "class", "slip").element("strong", "! Slips. ");
      part.text(new SlipReason(times).of(view)).close();
    }
  }

  /** The loudest words on the board: it may be in use already. */
  private static void unsafe(Markup part, JobView view, ClockWords times) {
    String known = view.ready().map(r -> "not safe before " + times.full(r)).orElse("never safe");
    if (view.toldTooEarly()) {
      part.open("p", "class", "slip").element("strong", "! Call the customer. ");
      String closed = view.state().closed() ? "it is " + known : "its joint is open again";
      part.text("The customer was told that it is ready, and " + closed + ".").close();
    }
    if (!view.unsafe() && !view.goneTooEarly()) {
      return;
    }
    part.open("p", "class", "slip").element("strong", "! Not safe. ");
    part.text(
        view.unsafe()
            ? "By what is known now it is " + known + whatToDo(view)
            : "It was collected before it was safe ("
                + times.full(view.ready().orElseThrow())
                + "): call the customer.");
    part.close();
  }

  private static String whatToDo(JobView view) {
    if (view.goneTooEarly()) {
      return ", and it has been collected: call the customer.";
    }
    return view.state().collected()
        ? ". It has been collected, and the customer was called."
        : ": keep it here.";
  }

  /** Somebody must look before it goes, or whether it must come back. */
  private static void heldBack(Markup part, JobView view) {
    for (HeldUses.Use use : view.heldBack()) {
      boolean same = use.job().equals(view.job().content().reference());
      boolean gone = view.state().collected();
      for (HeldBack why : use.heldBack()) {
        part.open("p", "class", "slip").element("strong", "! Lot held back. ");
        part.text(
            (same
                    ? "It got some of lot "
                    : "Job " + use.job() + ", which may be this one, got some of lot ")
                + use.lot()
                + ", which has been "
                + why.words()
                + ". "
                + (gone
                    ? "It has been collected: somebody must decide whether to call the customer."
                    : "Somebody must look at the hand-back before it goes."));
        part.close();
      }
    }
  }

  private void nextStep(Markup card, JobView view) {
    card.open("div", "class", "acts");
    JobState next = view.next().isEmpty() ? null : view.next().get(0);
    boolean forward = next != null && next.compareTo(view.state()) > 0;
    if (view.toldTooEarly() && !who.isEmpty()) {
      button(card, view, "/called", "called-", JobState.CUSTOMER_CALLED);
    }
    if (forward && !who.isEmpty()) {
      button(card, view, "/state", "next-", next);
    }
    card.element(
        "a",
        "Open",
        "class",
        "button plain",
        "href",
        "/job/" + view.job().id(),
        "id",
        "more-" + view.job().id(),
        "aria-describedby",
        "job-" + view.job().id());
    card.close();
  }

  private void button(Markup card, JobView view, String action, String id, JobState to) {
    String job = view.job().id();
    card.open("form", "method", "post", "action", "/job/" + job + action);
    Layout.who(card, who, id + job);
    FormField.hidden(card, "version", "" + view.job().version());
    FormField.hidden(card, "from", "counter");
    boolean state = action.equals("/state");
    card.open(
        "button",
        "name",
        state ? "to" : null,
        "value",
        state ? StateWords.id(to) : null,
        "id",
        id + job,
        "aria-describedby",
        "job-" + job);
    StateWords.label(card, view.state(), to);
    card.close().close();
  }
}
