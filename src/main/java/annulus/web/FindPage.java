package annulus.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Jobs found by their reference or title, those that are off the board too. */
final class FindPage {
  private static final String LONGEST = "100";

  private final Board board;
  private final String who;

  FindPage(Board board, String who) {
    this.board = board;
    this.who = who;
  }

  /** The field and the button that lead here. */
  static void form(Markup page, String reference) {
    page.open("form", "method", "get", "action", "/jobs", "class", "row");
    new FormField(
            "reference",
            "Job reference or title, or a part of it",
            "text",
            reference,
            LONGEST,
            true)
        .on(page);
    page.open("button", "type", "submit");
    page.element("span", "→", "aria-hidden", "true").text("Find the job").close().close();
  }

  /**
   * @param asked what was asked for; empty: nothing yet
   */
  String html(Optional<String> asked) {
    Markup page = new Markup();
    page.element("h1", "Find a job");
    form(page, asked.orElse(""));
    asked.ifPresent(a -> found(page, board.named(a)));
    return Layout.page("Find a job", Layout.Place.COUNTER, who, page);
  }

  private void found(Markup page, JobViews.Today found) {
    int count = found.views().size() + found.unjudged().size();
    if (count == 0) {
      page.element("p", "No job has this in its reference or title.", "class", "empty");
      return;
    }
    page.element("h2", count == 1 ? "1 job" : count + " jobs, the newest first");
    found.unjudged().forEach((job, problem) -> CounterPage.unjudged(page, job, problem));
    page.open("ul", "class", "rows");
    found.views().forEach(v -> row(page, v));
    page.close();
    if (count == JobViews.MOST_FOUND) {
      page.element("p", "There may be more: type more of it.", "class", "hint");
    }
  }

  private void row(Markup page, JobView view) {
    page.open("li").open("a", "href", "/job/" + view.job().id(), "class", "button plain");
    page.element("span", StateWords.mark(view.state()) + " ", "aria-hidden", "true");
    page.text(view.job().content().reference() + " " + view.job().content().title());
    page.element(
        "span", ", " + standing(view) + ", changed " + board.times().past(view.job().changedAt()));
    page.close().close();
  }

  /** As its card on the counter says it, with what somebody has to look at. */
  private String standing(JobView view) {
    List<String> words = new ArrayList<>();
    words.add(CounterPage.stateWords(view, board.times()));
    if (view.unsafe() || view.goneTooEarly()) {
      words.add("not safe");
    }
    if (view.callDue()) {
      words.add("call the customer");
    }
    if (view.slips()) {
      words.add("slips");
    }
    if (!view.heldBack().isEmpty()) {
      words.add("got some of a lot that is held back");
    }
    return String.join("; ", words);
  }
}
