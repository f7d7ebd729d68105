package annulus.web;

import annulus.store.Job;
import annulus.store.JobChange;
import annulus.store.JobStore;
import java.util.List;
import java.util.Set;

/** What was done with a job, and the way to take the last of it back: needs no answer to it. */
final class JobHistory {
  private final Board board;
  private final Job job;
  private final String who;

  JobHistory(Board board, Job job, String who) {
    this.board = board;
    this.job = job;
    this.who = who;
  }

  /** A form that does something with a job as it was seen. */
  static void begin(Markup page, Job job, String who, String action) {
    begin(page, job, who, action, action.substring(1) + "-");
  }

  /**
   * The same where a page has two forms that do it.
   *
   * @param idPrefix what the ids of its fields begin with
   */
  static void begin(Markup page, Job job, String who, String action, String idPrefix) {
    page.open("form", "method", "post", "action", "/job/" + job.id() + action);
    FormField.hidden(page, "version", "" + job.version());
    Layout.who(page, who, idPrefix);
  }

  void on(Markup page) {
    List<JobChange> changes = board.changes(job.id());
    Set<Long> undone = JobChange.undone(changes);
    page.element("h2", "What was done").open("ol", "class", "history");
    for (JobChange change : changes) {
      page.open("li");
      page.text(board.times().past(change.at()) + ", " + change.who() + ": " + change.words());
      page.text(undone.contains(change.id()) ? " (taken back later)" : "").close();
    }
    page.close();
    JobStore.undoable(changes)
        .ifPresent(
            c -> {
              begin(page, job, who, "/undo");
              String inShort = c.words().split(": ", 2)[0];
              page.element("button", "Take back: " + inShort, "class", "plain", "type", "submit");
              page.close();
            });
  }

  /**
   * The page of a job that can't be judged.
   *
   * @param problem what is wrong
   */
  String unjudged(String problem) {
    Markup page = new Markup();
    String reference = job.content().reference();
    page.element("h1", "Job " + reference + " " + job.content().title());
    page.open("div", "class", "problem", "role", "alert");
    page.element("p", "This job can't be judged as things stand; leave the joint alone.");
    page.element("p", problem).close();
    on(page);
    return Layout.page("Job " + reference, Layout.Place.COUNTER, who, page);
  }
}
