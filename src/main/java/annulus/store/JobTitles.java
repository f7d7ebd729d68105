package annulus.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.flywaydb.core.api.migration.Context;

/** Gives jobs a column of their title, so that a job is found by what it is called, too. */
final class JobTitles extends OwnMigration {
  JobTitles() {
    super("10", "titles of jobs");
  }

  @Override
  public void migrate(Context context) throws SQLException {
    Connection connection = context.getConnection();
    try (Statement statement = connection.createStatement()) {
      statement.execute("ALTER TABLE job ADD COLUMN title TEXT NOT NULL DEFAULT ''");
      statement.execute("DROP INDEX job_by_reference");
      statement.execute(
          "CREATE INDEX job_by_name ON job (reference, title, created_at, id, version)");
    }
    try (Sql sql = new Sql(connection)) {
      for (String id : sql.rows(r -> r.getString(1), "SELECT id FROM job")) {
        Optional<String> content =
            sql.row(r -> r.getString(1), "SELECT content FROM job WHERE id = ?", id);
        sql.update("UPDATE job SET title = ? WHERE id = ?", title(content.orElse("")), id);
      }
    }
  }

  /** A damaged job is told when it is read; it must not keep the board from starting. */
  private static String title(String content) {
    try {
      return ContentJson.content(content).title();
    } catch (StoreFailed e) {
      return "";
    }
  }
}
