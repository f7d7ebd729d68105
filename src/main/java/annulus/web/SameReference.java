package annulus.web;

import annulus.store.Draft;
import annulus.store.Job;
import java.util.List;
import java.util.stream.Collectors;

/** Warns of jobs on the board that are called the same: two tags that can't be told apart. */
final class SameReference {
  /** Field of the bench: the reference that is meant to be there twice. */
  static final String TWICE = "twice";

  private SameReference() {}

  /** The others of a draft that is to become a job; none where an order is being changed. */
  static List<Job> others(Board board, Draft draft) {
    String reference = draft.field("reference").strip();
    boolean entered = !draft.field(BenchPage.JOB).isEmpty();
    return entered || reference.isEmpty() ? List.of() : board.sameReference(reference, "");
  }

  /** Whether there are others and nobody has said yet that it is meant so. */
  static boolean asks(Draft draft, List<Job> others) {
    return !others.isEmpty()
        && !draft.field(TWICE).equalsIgnoreCase(draft.field("reference").strip());
  }

  /** The others in words. */
  static String words(List<Job> others) {
    return others.stream()
            .map(j -> j.content().reference() + said(j))
            .collect(Collectors.joining(", and ", "On the board already: ", ". "))
        + "With the same reference two tags can't be told apart.";
  }

  private static String said(Job job) {
    String title = job.content().title();
    return (title.isBlank() ? "" : " " + title) + " (" + job.content().state().words() + ")";
  }

  /** A tick to say that it is another joint with the same reference. */
  static void tick(Markup page, Draft draft, List<Job> others) {
    if (others.isEmpty()) {
      return;
    }
    FormField.tick(
        page,
        TWICE,
        TWICE,
        draft.field("reference").strip(),
        "It is another joint with the same reference",
        !asks(draft, others));
  }

  /** On the page of a job: the others, and what can't be told apart. */
  static void on(Markup page, Board board, Job job) {
    List<Job> others = board.sameReference(job.content().reference(), job.id());
    if (others.isEmpty()) {
      return;
    }
    page.open("div", "class", "problem").open("p").text("Called the same and on the board: ");
    for (Job other : others) {
      page.element("a", other.content().reference() + said(other), "href", "/job/" + other.id());
      page.text(". ");
    }
    page.close();
    page.element("p", "What the cabinet gave is kept by reference: it may be for either.").close();
  }
}
