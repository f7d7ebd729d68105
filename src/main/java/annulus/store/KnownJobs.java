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
  static final String COLUMNS = "id, version, content, created_at, changed_at, changed_by";
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
      Optional<Job> job =
          known.isPresent()
              ? known
              : sql.row(
                  KnownJobs::row, "SELECT " + COLUMNS + " FROM job WHERE id = ?", wanted.id());
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

  static Job row(ResultSet row) throws SQLException {
    return new Job(
        row.getString(1),
        row.getLong(2),
        ContentJson.content(row.getString(3)),
        Instant.parse(row.getString(4)),
        Instant.parse(row.getString(5)),
        row.getString(6));
  }
}
