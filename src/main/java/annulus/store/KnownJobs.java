package annulus.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Jobs as they were read last. The database is asked each time which version is in force; only the
 * content of a version that was read already is not read and taken apart again. A version never
 * changes once it is written.
 */
final class KnownJobs {
  private static final String JOB =
      "SELECT id, version, content, created_at, changed_at, changed_by FROM job WHERE id = ?";

  private static final int MOST = 500;

  private final Map<String, Job> read =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Job> eldest) {
          return size() > MOST;
        }
      };

  /** Which job, and in which version. */
  private record Version(String id, long version) {}

  /** The job with this identity, if any. */
  Optional<Job> job(Sql sql, String id) throws SQLException {
    return jobs(sql, "SELECT id, version FROM job WHERE id = ?", id).stream().findFirst();
  }

  /** The jobs of a query for identities and versions, in its order. */
  List<Job> jobs(Sql sql, String versions, Object... arguments) throws SQLException {
    List<Job> jobs = new ArrayList<>();
    for (Version wanted :
        sql.rows(r -> new Version(r.getString(1), r.getLong(2)), versions, arguments)) {
      Optional<Job> known = known(wanted);
      Optional<Job> job = known.isPresent() ? known : read(sql, wanted.id());
      job.ifPresent(jobs::add);
      if (known.isEmpty()) {
        job.ifPresent(this::keep);
      }
    }
    return List.copyOf(jobs);
  }

  private synchronized Optional<Job> known(Version wanted) {
    Job job = read.get(wanted.id());
    return Optional.ofNullable(job).filter(j -> j.version() == wanted.version());
  }

  private synchronized void keep(Job job) {
    read.put(job.id(), job);
  }

  /** A job as the database has it now. */
  static Optional<Job> read(Sql sql, String id) throws SQLException {
    Optional<Job> stored = sql.row(KnownJobs::row, JOB, id);
    return stored.isEmpty()
        ? stored
        : Optional.of(stored.get().with(Answers.whole(sql, stored.get().content())));
  }

  private static Job row(ResultSet row) throws SQLException {
    return new Job(
        row.getString(1),
        row.getLong(2),
        ContentJson.content(row.getString(3)),
        Instant.parse(row.getString(4)),
        Instant.parse(row.getString(5)),
        row.getString(6));
  }
}
