package annulus.web;

import annulus.exchange.Nearest;
import annulus.stock.Movement;
import java.util.Optional;

/**
 * Asks once about the job of a use that no job is called. It may be right, as not every job is on
 * the board; if it is a slip, a recall of the lot would miss the job.
 */
final class JobOfUse {
  /** The reference that somebody has said is meant as it is typed. */
  static final String MEANT = "meant";

  private final Board board;

  JobOfUse(Board board) {
    this.board = board;
  }

  /** Whether somebody has to say first that this is the job. */
  boolean asks(Movement use, String meant) {
    return !use.job().isEmpty() && !use.job().equals(meant) && !board.isCalled(use.job());
  }

  /** What an answer says of a job that is not on the board; empty when it is, or none is named. */
  Optional<String> warning(Movement use) {
    return asks(use, "")
        ? Optional.of(unknown(use.job()) + " " + near(use.job()))
        : Optional.empty();
  }

  private static String unknown(String job) {
    return "No job on this board is called " + job + ".";
  }

  private String near(String job) {
    return mistyped(job)
        .map(n -> "Is " + n + " meant? A recall of the lot would miss it.")
        .orElse("A recall of the lot finds it under this reference only.");
  }

  private Optional<String> mistyped(String job) {
    return Nearest.mistyped(job, board.references());
  }

  /** The question, with the use as it was sent. */
  String html(Movement use, String who) {
    Markup page = new Markup();
    page.element("h1", "Which job?");
    page.open("div", "class", "problem", "role", "alert");
    page.element("p", unknown(use.job()) + " Nothing was recorded yet.");
    page.element("p", near(use.job())).close();
    page.element("p", "Used: " + use.amount() + " mL of lot " + use.lot() + ".");
    page.open("form", "method", "post", "action", "/cabinet/move");
    FormField.hidden(page, "id", use.id());
    FormField.hidden(page, "kind", use.kind().name());
    FormField.hidden(page, "lot", use.lot());
    FormField.hidden(page, "ml", use.amount().toString());
    FormField.hidden(page, "reason", use.reason());
    FormField.hidden(page, "witness", use.witness());
    FormField.hidden(page, "who", use.who());
    FormField.hidden(page, MEANT, use.job());
    page.open("div", "class", "acts");
    mistyped(use.job()).ifPresent(n -> button(page, n, "Used for job " + n));
    button(page, use.job(), "Used for job " + use.job() + ", which is not on the board");
    page.element("a", "Back to the cabinet", "class", "button plain", "href", "/cabinet");
    page.close().close();
    return Layout.page("Which job?", Layout.Place.CABINET, who, page);
  }

  private static void button(Markup page, String job, String words) {
    page.element("button", words, "name", "job", "value", job, "type", "submit");
  }
}
