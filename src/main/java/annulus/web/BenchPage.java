package annulus.web;

import annulus.exchange.PlacedProblem;
import annulus.report.PromiseText;
import annulus.store.Draft;
import annulus.store.Job;
import annulus.store.JobState;
import java.util.List;
import java.util.Optional;

/** The bench: drafts at hand, and one joint entered reading by reading. */
final class BenchPage {
  /** Field of a draft that is an order being changed: which job, and the version that was seen. */
  static final String JOB = "ofJob";

  static final String JOB_VERSION = "ofVersion";

  private final Board board;
  private final String who;

  BenchPage(Board board, String who) {
    this.board = board;
    this.who = who;
  }

  /** Where to begin: a new joint, drafts, and jobs to be worked on. */
  String start(List<Draft> drafts) {
    Markup page = new Markup();
    page.element("h1", "Bench");
    page.open("form", "method", "post", "action", "/bench/new");
    page.element("button", "Measure a new joint", "class", "main", "type", "submit").close();
    if (!drafts.isEmpty()) {
      page.element("h2", "Begun and not a job yet").open("ul", "class", "rows");
      drafts.forEach(d -> draft(page, d));
      page.close();
    }
    List<JobView> open = board.today().views().stream().filter(v -> !v.state().closed()).toList();
    if (!open.isEmpty()) {
      page.element("h2", "Jobs to work on").open("ul", "class", "rows");
      for (JobView view : open) {
        page.open("li").open("a", "href", "/job/" + view.job().id(), "class", "button plain");
        page.text(view.job().content().reference() + " " + view.job().content().title());
        page.element("span", ", " + view.state().words()).close().close();
      }
      page.close();
    }
    page.element("h2", "More").open("div", "class", "acts");
    page.element("a", "Fit designation", "class", "button plain", "href", "/tools/fit");
    page.element("a", "Many joints at once", "class", "button plain", "href", "/tools/batch");
    page.close();
    return Layout.page("Bench", Layout.Place.BENCH, who, page);
  }

  private void draft(Markup page, Draft draft) {
    page.open("li").open("a", "href", "/bench/" + draft.id(), "class", "button plain");
    String name =
        draft.field("reference").isBlank() ? "no reference yet" : draft.field("reference");
    page.text(name + " " + draft.field("title"));
    page.element("span", ", " + board.times().past(draft.changedAt())).close().close();
  }

  /** One draft with its answer as far as there is one. */
  String joint(Draft draft, List<String> messages) {
    Markup told = new Markup();
    if (!messages.isEmpty()) {
      told.open("div", "class", "problem", "role", "alert");
      messages.forEach(m -> told.element("p", m));
      told.close();
    }
    return joint("Bench", draft, told);
  }

  /** One draft that was refused, with what is wrong: each problem leads to its field. */
  String refused(Draft draft, List<PlacedProblem> problems) {
    Markup list = problems(new Markup().open("ul"), problems).close();
    return joint("Please look again", draft, Layout.lookAgain(list));
  }

  private static Markup problems(Markup list, List<PlacedProblem> problems) {
    for (PlacedProblem p : problems) {
      String words = p.problem() + (p.allowed().isEmpty() ? "" : "; allowed: " + p.allowed());
      list.open("li");
      list.element(
          "a", BenchLabels.ofOrder(p.field()), "href", "#" + BenchLabels.fieldOf(p.field()));
      list.text(": " + words).close();
    }
    return list;
  }

  private String joint(String title, Draft draft, Markup told) {
    Markup page = new Markup();
    page.element("h1", "Bench: one joint").part(told);
    lostUnlessKept(page, draft);
    page.open("div", "class", "joint");
    new BenchForm(board, who, DecimalCommas.read(draft)).on(page);
    page.open(
        "section",
        "id",
        "preview",
        "class",
        "preview",
        "aria-label",
        "Answer",
        "aria-live",
        "polite");
    page.part(preview(draft)).close();
    page.close();
    return Layout.page(title, Layout.Place.BENCH, who, page);
  }

  /** Where the job's order came to hold what this form can't show, that is said before it goes. */
  private void lostUnlessKept(Markup page, Draft draft) {
    if (draft.field(JOB).isEmpty()) {
      return;
    }
    List<String> unshown = board.unshownAtTheBench(board.job(draft.field(JOB)).content());
    if (!unshown.isEmpty()) {
      page.open("div", "class", "problem", "role", "alert");
      page.element("p", "\"Change the job\" takes out of its order what this form can't show:");
      page.open("ul");
      unshown.forEach(u -> page.element("li", u));
      page.close().close();
    }
  }

  /** Why an order can't be changed with the form. */
  static String cantShow(List<String> unshown) {
    return "This order can't be changed at the bench, as its form can't show all of it: "
        + String.join("; ", unshown)
        + ". Send the whole order anew, as JSON.";
  }

  /** The answer to what is typed so far, or what is still needed. */
  Markup preview(Draft draft) {
    Markup part = new Markup();
    List<Job> others = SameReference.others(board, draft);
    if (SameReference.asks(draft, others)) {
      part.element("p", SameReference.words(others), "class", "problem");
    }
    List<String> commas = DecimalCommas.told(draft);
    if (!commas.isEmpty()) {
      part.element("p", "Comma read as point: " + String.join(", ", commas) + ".", "class", "hint");
    }
    BenchOrder order = new BenchOrder(draft);
    boolean twiceShown = !BenchForm.startHours(board, draft).isEmpty();
    if (twiceShown && order.start().equals(draft.field("start").strip())) {
      String twice = "The clock shows that hour twice: press \"Show the answer\", then choose one.";
      part.element("p", twice, "class", "problem");
    }
    List<BenchOrder.Missing> missing = order.missing();
    if (!missing.isEmpty()) {
      part.element("h2", "Still needed").open("ul");
      for (BenchOrder.Missing m : missing) {
        part.open("li").element("a", m.words(), "href", "#" + m.field()).close();
      }
      return part.close();
    }
    Optional<Answer> answer = answer(order, part);
    answer.ifPresent(a -> shown(a, order, draft, part));
    return part;
  }

  private void shown(Answer answer, BenchOrder order, Draft draft, Markup part) {
    part.element("h2", "Answer");
    AnswerPart words =
        new AnswerPart(
            answer,
            board.knowledge().catalog(),
            board.times(),
            order.inches(),
            PromiseText.from(board.now(), answer.told(), board.shop())
                .map(p -> board.times().full(p.promise())),
            "/bench/" + draft.id());
    part.part(words.markup());
    new BorePart(board).warning(part, draft.field("bore"), answer);
    part.part(words.more());
  }

  private Optional<Answer> answer(BenchOrder order, Markup part) {
    try {
      return Optional.of(board.judge(order.json()));
    } catch (annulus.exchange.InputRefused e) {
      part.element("h2", "Please look again");
      problems(part.open("ul", "class", "problem"), e.problems()).close();
    } catch (annulus.quantity.InvalidValue e) {
      part.element("h2", "Please look again").element("p", e.getMessage(), "class", "problem");
    }
    return Optional.empty();
  }

  /** The state that an act puts a new job in. */
  static Optional<JobState> stateOf(String act) {
    return switch (act) {
      case "start" -> Optional.of(JobState.IN_WORK);
      case "book" -> Optional.of(JobState.BOOKED);
      default -> Optional.empty();
    };
  }
}
