package annulus.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/**
 * Jobs and their changes. Every change names the version it was made on; when somebody else was
 * quicker, nothing is written and {@link Stale} carries what there is now.
 */
public final class JobStore {
  private static final String NOT_OVER = states(s -> !s.over());

  static final String ON_THE_BOARD =
      "SELECT id, version FROM (SELECT id, version, created_at FROM job"
          + " WHERE state IN "
          + NOT_OVER
          + " UNION ALL SELECT id, version, created_at FROM job"
          + " WHERE state IN "
          + states(JobState::over)
          + " AND changed_at >= ?) today"
          + " ORDER BY created_at, id";

  static final String SAME_REFERENCE =
      "SELECT id, version FROM job WHERE state IN "
          + NOT_OVER
          + " AND LOWER(reference) = LOWER(?) ORDER BY created_at, id";

  static final String BY_NAME =
      "SELECT id, version FROM job WHERE LOWER(reference) LIKE LOWER(?) ESCAPE '!'"
          + " OR LOWER(title) LIKE LOWER(?) ESCAPE '!' ORDER BY created_at DESC, id LIMIT ?";

  static final String CALLED = "SELECT 1 FROM job WHERE LOWER(reference) = LOWER(?) LIMIT 1";

  private final Database database;
  private final KnownJobs known = new KnownJobs();

  private static String states(Predicate<JobState> which) {
    return Arrays.stream(JobState.values())
        .filter(which)
        .map(s -> "'" + s.name() + "'")
        .collect(Collectors.joining(", ", "(", ")"));
  }

  /**
   * @param database where they lie
   */
  public JobStore(Database database) {
    this.database = database;
  }

  /**
   * A change to make.
   *
   * @param kind what sort
   * @param words what is done, in words
   * @param content the content after it
   */
  public record Edit(JobChange.Kind kind, String words, JobContent content) {}

  /** What an edit makes of the job as it is. */
  @FunctionalInterface
  public interface Change {
    /**
     * @throws Refused when the job as it is does not allow it
     */
    Edit to(Job current);
  }

  /** Enters a job. */
  public Job enter(JobContent content, Stamp stamp) {
    String id = UUID.randomUUID().toString().substring(0, 13);
    Job job = new Job(id, 1, content, stamp.at(), stamp.at(), stamp.who());
    return database.transaction(
        sql -> {
          String text = text(sql, content);
          sql.update(
              "INSERT INTO job (id, version, reference, title, state, content, created_at,"
                  + " changed_at, changed_by) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)",
              id,
              1L,
              content.reference(),
              content.title(),
              content.state().name(),
              text,
              job.createdAt().toString(),
              job.changedAt().toString(),
              job.changedBy());
          Edit edit = new Edit(JobChange.Kind.ENTERED, "entered", content);
          record(sql, job, Optional.empty(), edit, text, OptionalLong.empty());
          return job;
        });
  }

  /**
   * Changes a job.
   *
   * @param id which
   * @param seen the version that the change was made on
   * @param change what to make of it
   * @param fit the bore as it is now, where a part was fitted in it
   * @throws Stale when the job has another version by now
   * @throws Unknown when there is no such job
   */
  public Job change(String id, long seen, Change change, Optional<BoreFit> fit, Stamp stamp) {
    return database.transaction(
        sql -> {
          Entered entered = changed(sql, id, seen, change, stamp);
          if (fit.isPresent()) {
            fitted(sql, entered.entry(), id, fit.get());
          }
          return entered.job();
        });
  }

  /**
   * Judges a job by a temperature log, which is kept with it.
   *
   * @param change what to make of the job; its content names the log
   * @throws Stale when the job has another version by now
   * @throws Unknown when there is no such job
   */
  public Job measure(String id, long seen, TemperatureLog log, Change change, Stamp stamp) {
    return database.transaction(
        sql -> {
          Job changed = changed(sql, id, seen, change, stamp).job();
          sql.update(
              "INSERT INTO temperature_log (id, job, name, text, date_order, unit,"
                  + " temperature_column, read_at) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
              log.id(),
              id,
              log.name(),
              Seal.onLog(log),
              log.dateOrder(),
              log.unit(),
              log.column(),
              log.readAt().toString());
          return changed;
        });
  }

  /** A changed job with the entry of its history. */
  private record Entered(Job job, long entry) {}

  private static Entered changed(Sql sql, String id, long seen, Change change, Stamp stamp)
      throws SQLException {
    Job current = current(sql, id, seen);
    Edit edit = change.to(current);
    String text = text(sql, edit.content());
    Job changed = write(sql, current, edit.content(), text, stamp);
    Optional<JobContent> before = Optional.of(current.content());
    return new Entered(changed, record(sql, changed, before, edit, text, OptionalLong.empty()));
  }

  /** A temperature log by its identity. */
  public Optional<TemperatureLog> log(String id) {
    return database.transaction(
        sql ->
            sql.row(
                r ->
                    Seal.offLog(
                        new TemperatureLog(
                            r.getString(1),
                            r.getString(2),
                            r.getString(3),
                            r.getString(4),
                            r.getString(5),
                            r.getString(6),
                            Instant.parse(r.getString(7)))),
                "SELECT id, name, text, date_order, unit, temperature_column, read_at"
                    + " FROM temperature_log WHERE id = ?",
                id));
  }

  /**
   * Takes back the last change that has not been taken back yet, by an entry of its own.
   *
   * @throws Refused when only the first entry is left
   * @throws Stale when the job has another version by now
   */
  public Job undo(String id, long seen, Stamp stamp) {
    return database.transaction(
        sql -> {
          Job current = current(sql, id, seen);
          JobChange last =
              undoable(changes(sql, id))
                  .orElseThrow(() -> new Refused("There is nothing left to take back."));
          JobContent before = before(sql, last).inForceAgain(current.content());
          Edit edit = new Edit(JobChange.Kind.UNDO, "took back: " + last.words(), before);
          String text = text(sql, before);
          Job changed = write(sql, current, before, text, stamp);
          OptionalLong undoes = OptionalLong.of(last.id());
          record(sql, changed, Optional.of(current.content()), edit, text, undoes);
          return changed;
        });
  }

  private static JobContent before(Sql sql, JobChange change) throws SQLException {
    JobContent stored =
        sql.row(
                r -> ContentJson.content(r.getString(1)),
                "SELECT before_content FROM job_change WHERE id = ?",
                change.id())
            .orElseThrow();
    return Answers.whole(sql, stored);
  }

  /** A content as it is written, into the job and its history alike. */
  private static String text(Sql sql, JobContent content) throws SQLException {
    return ContentJson.text(Answers.putAside(sql, content));
  }

  /** The change that an undo would take back. */
  public static Optional<JobChange> undoable(List<JobChange> changes) {
    Set<Long> undone = JobChange.undone(changes);
    JobChange found = null;
    for (JobChange change : changes) {
      boolean open = change.undoes().isEmpty() && !change.first();
      found = open && !undone.contains(change.id()) ? change : found;
    }
    return Optional.ofNullable(found);
  }

  private static Job current(Sql sql, String id, long seen) throws SQLException {
    Job current =
        KnownJobs.read(sql, id).orElseThrow(() -> new Unknown("There is no job " + id + "."));
    if (current.version() != seen) {
      throw new Stale(current);
    }
    return current;
  }

  /** Another server may have been quicker since the row was read: the version guards the write. */
  private static Job write(Sql sql, Job current, JobContent content, String text, Stamp stamp)
      throws SQLException {
    int written =
        sql.update(
            "UPDATE job SET version = ?, reference = ?, title = ?, state = ?, content = ?,"
                + " changed_at = ?, changed_by = ? WHERE id = ? AND version = ?",
            current.version() + 1,
            content.reference(),
            content.title(),
            content.state().name(),
            text,
            stamp.at().toString(),
            stamp.who(),
            current.id(),
            current.version());
    if (written == 0) {
      throw new Stale(KnownJobs.read(sql, current.id()).orElse(current));
    }
    return new Job(
        current.id(), current.version() + 1, content, current.createdAt(), stamp.at(), stamp.who());
  }

  private static long record(
      Sql sql, Job job, Optional<JobContent> before, Edit edit, String text, OptionalLong undoes)
      throws SQLException {
    sql.update(
        "INSERT INTO job_change (job, version, at, who, kind, words, before_content,"
            + " after_content, undoes, state) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        job.id(),
        job.version(),
        job.changedAt().toString(),
        job.changedBy(),
        edit.kind().name(),
        edit.words(),
        before.isPresent() ? text(sql, before.get()) : null,
        text,
        undoes.isPresent() ? (Object) undoes.getAsLong() : null,
        edit.content().state().name());
    return sql.row(
            r -> r.getLong(1),
            "SELECT id FROM job_change WHERE job = ? AND version = ?",
            job.id(),
            job.version())
        .orElseThrow();
  }

  private static void fitted(Sql sql, long entry, String job, BoreFit fit) throws SQLException {
    sql.update(
        "INSERT INTO bore_fit (change_id, bore, job, at, mean_mm, plus_minus_um)"
            + " VALUES (?, ?, ?, ?, ?, ?)",
        entry,
        fit.bore(),
        job,
        fit.at().toString(),
        fit.meanMm(),
        fit.plusMinusUm());
  }

  private static JobChange change(ResultSet row) throws SQLException {
    long undoes = row.getLong(9);
    return new JobChange(
        row.getLong(1),
        row.getString(2),
        row.getLong(3),
        Instant.parse(row.getString(4)),
        row.getString(5),
        JobChange.Kind.valueOf(row.getString(6)),
        row.getString(7),
        row.getInt(8) == 1,
        undoes == 0 ? OptionalLong.empty() : OptionalLong.of(undoes),
        Optional.ofNullable(row.getString(10)).map(JobState::valueOf));
  }

  /** A job by its identity. */
  public Optional<Job> job(String id) {
    return database.transaction(sql -> known.job(sql, id));
  }

  /** Jobs that are not over, and those over since a time; each part by its index. */
  public List<Job> onTheBoard(Instant overSince) {
    return database.transaction(sql -> known.jobs(sql, ON_THE_BOARD, overSince.toString()));
  }

  /**
   * Jobs whose reference or title holds a text, capital letters or not; the newest first.
   *
   * @param part some of the reference or the title
   * @param most how many at most
   */
  public List<Job> named(String part, int most) {
    String like = "%" + part.replaceAll("[!%_]", "!$0") + "%";
    return database.transaction(sql -> known.jobs(sql, BY_NAME, like, like, most));
  }

  /** Jobs that are not over and are called the same, capital letters or not. */
  public List<Job> notOver(String reference) {
    return database.transaction(sql -> known.jobs(sql, SAME_REFERENCE, reference));
  }

  /** Whether a job was ever called so, capital letters or not. */
  public boolean isCalled(String reference) {
    return database.transaction(sql -> sql.row(r -> r.getInt(1), CALLED, reference).isPresent());
  }

  /** All changes of a job, oldest first. */
  public List<JobChange> changes(String id) {
    return database.transaction(sql -> changes(sql, id));
  }

  private static List<JobChange> changes(Sql sql, String id) throws SQLException {
    return sql.rows(
        JobStore::change,
        "SELECT id, job, version, at, who, kind, words,"
            + " CASE WHEN before_content IS NULL THEN 1 ELSE 0 END, undoes, state"
            + " FROM job_change WHERE job = ? ORDER BY id",
        id);
  }

  /** Fits of a bore, oldest first, without those that were taken back. */
  public List<BoreFit> fits(String bore) {
    return database.transaction(
        sql ->
            sql.rows(
                r ->
                    new BoreFit(
                        r.getString(1),
                        r.getString(2),
                        Instant.parse(r.getString(3)),
                        r.getDouble(4),
                        r.getDouble(5)),
                "SELECT f.bore, j.reference, f.at, f.mean_mm, f.plus_minus_um FROM bore_fit f"
                    + " JOIN job j ON j.id = f.job WHERE f.bore = ? AND NOT EXISTS"
                    + " (SELECT 1 FROM job_change u WHERE u.undoes = f.change_id)"
                    + " ORDER BY f.at, f.change_id",
                bore));
  }

  /** Names of bores with a history, sorted. */
  public List<String> bores() {
    return database.transaction(
        sql -> sql.rows(r -> r.getString(1), "SELECT DISTINCT bore FROM bore_fit ORDER BY bore"));
  }
}
