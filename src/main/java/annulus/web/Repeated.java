package annulus.web;

import annulus.store.Job;
import annulus.store.JobChange;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/**
 * The same form sent twice by the same person, as by a double tap: the first did what was wanted,
 * so that nobody was quicker and nothing is lost.
 */
final class Repeated {
  private final Board board;
  private final Context form;

  /**
   * @param form what was sent to a job that had another version already
   */
  Repeated(Board board, Context form) {
    this.board = board;
    this.form = form;
  }

  /** Whether the last change of the job is what the form asks for, on what it had seen. */
  boolean of(Job current) {
    String said = Form.said(form, "who");
    String who = said.isEmpty() ? Doer.at(form) : said;
    boolean own = current.changedBy().equals(who.strip());
    if (!own || current.version() != Form.version(form) + 1) {
      return false;
    }
    List<JobChange> changes = board.changes(current.id());
    return same(current, changes.get(changes.size() - 1));
  }

  private boolean same(Job current, JobChange last) {
    String path = form.path();
    return switch (path.substring(path.lastIndexOf('/') + 1)) {
      case "state" ->
          last.kind() == JobChange.Kind.STATE
              && StateWords.id(current.content().state()).equals(form.formParam("to"));
      case "closed" ->
          last.kind() == JobChange.Kind.CLOSED
              && current
                  .content()
                  .closedAt()
                  .filter(c -> minute(c).equals(minuteAsked()))
                  .isPresent();
      case "moved" ->
          last.kind() == JobChange.Kind.ORDER
              && last.words().startsWith(Board.movedAt(board.times(), minuteAsked()));
      case "promise" ->
          last.kind() == JobChange.Kind.PROMISE
              && current.content().promised().equals(time("promised"));
      case "called" -> last.words().equals(Board.CALLED);
      case "undo" -> last.kind() == JobChange.Kind.UNDO;
      default -> false;
    };
  }

  /** Whoever closes a joint "now" from an old page means another minute than the one written. */
  private Instant minuteAsked() {
    return minute(time("at").orElse(board.now()));
  }

  private Optional<Instant> time(String name) {
    return Form.time(board, name, form.formParam(name));
  }

  private static Instant minute(Instant instant) {
    return instant.truncatedTo(ChronoUnit.MINUTES);
  }
}
