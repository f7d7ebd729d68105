package annulus.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Optional;

/** Copies of a SQLite database: taken while the server runs, put back while it does not. */
public final class Backup {
  private Backup() {}

  /**
   * Copies the database as it is at one moment, whether a server has it open or not. The copy is
   * complete and checked before it gets its name.
   *
   * @param url the database
   * @param to a file that does not exist yet
   * @throws StoreFailed when it is no SQLite file or can't be copied
   */
  public static void take(String url, Path to) {
    Path from = sqlite(url);
    if (!Files.exists(from)) {
      throw new StoreFailed(from + ": no such database", null);
    }
    if (Files.exists(to)) {
      throw new StoreFailed(to + " exists already; a backup never writes over a file", null);
    }
    Path part = to.resolveSibling(to.getFileName() + ".part");
    try {
      Files.deleteIfExists(part);
      try (Connection connection = DriverManager.getConnection(url);
          Statement statement = connection.createStatement()) {
        statement.execute("PRAGMA busy_timeout = 10000");
        statement.execute("VACUUM INTO '" + part.toString().replace("'", "''") + "'");
      }
      check(part);
      requireNamed(part);
      sync(part);
      Files.move(part, to, StandardCopyOption.ATOMIC_MOVE);
    } catch (SQLException | IOException e) {
      throw new StoreFailed("can't back up " + from + ": " + e.getMessage(), e);
    }
  }

  /**
   * Puts a backup in the place of the database; the old database is kept beside it.
   *
   * @param from a backup
   * @param url the database; no server may have it open
   * @return where the old database was put; empty when there was none
   * @throws StoreFailed when the backup is damaged or a server runs
   */
  public static Optional<Path> restore(Path from, String url) {
    Path to = sqlite(url);
    if (!Files.exists(from)) {
      throw new StoreFailed(from + ": no such backup", null);
    }
    FileLock lock = Database.lock(to);
    try (FileChannel held = (FileChannel) lock.acquiredBy()) {
      check(from);
      Path part = to.resolveSibling(to.getFileName() + ".part");
      Files.copy(from, part, StandardCopyOption.REPLACE_EXISTING);
      check(part);
      sync(part);
      Optional<Path> kept = keepOld(to);
      Files.move(part, to, StandardCopyOption.ATOMIC_MOVE);
      return kept.filter(k -> held.isOpen());
    } catch (SQLException | IOException e) {
      if (String.valueOf(e.getMessage()).contains("SQLITE_NOTADB")) {
        throw new StoreFailed(from + " is no backup: it is not a database", e);
      }
      throw new StoreFailed("can't restore " + from + ": " + e.getMessage(), e);
    }
  }

  /** The old file, with its log written into it first, gets a name that is free. */
  private static Optional<Path> keepOld(Path to) throws IOException {
    if (!Files.exists(to)) {
      return Optional.empty();
    }
    Path old = to;
    for (int i = 1; Files.exists(old); i++) {
      old = to.resolveSibling(to.getFileName() + ".before-restore-" + i);
    }
    boolean whole = logWrittenInto(to);
    for (String beside : List.of("-wal", "-shm")) {
      Path part = to.resolveSibling(to.getFileName() + beside);
      if (whole) {
        Files.deleteIfExists(part);
      } else if (Files.exists(part)) {
        Files.move(part, old.resolveSibling(old.getFileName() + beside));
      }
    }
    Files.move(to, old, StandardCopyOption.ATOMIC_MOVE);
    return Optional.of(old);
  }

  /** False for a damaged database: it is put aside as it is, its log beside it. */
  private static boolean logWrittenInto(Path database) {
    try (Connection connection = DriverManager.getConnection(Database.SQLITE + database);
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA wal_checkpoint(TRUNCATE)");
      return true;
    } catch (SQLException e) {
      return false;
    }
  }

  private static Path sqlite(String url) {
    if (!url.startsWith(Database.SQLITE)) {
      throw new StoreFailed(
          "backup and restore are for SQLite files; on PostgreSQL use pg_dump and pg_restore, or"
              + " the continuous archiving of the server",
          null);
    }
    return Database.file(url);
  }

  private static Connection readOnly(Path file) throws SQLException {
    return DriverManager.getConnection(
        Database.SQLITE + "file:" + file.toAbsolutePath() + "?mode=ro");
  }

  /**
   * Each temperature log and answer that a job names has to be there. A backup without one is not
   * made, as it would pass for whole; one made before this was looked at is still put back.
   */
  private static void requireNamed(Path file) throws SQLException {
    try (Connection connection = readOnly(file);
        Statement statement = connection.createStatement()) {
      if (!has(statement, "SELECT 1 FROM pragma_table_info('temperature_log')")) {
        return;
      }
      requireNamed(statement, "$.log", "SELECT id FROM temperature_log", "temperature log");
      if (has(statement, "SELECT 1 FROM pragma_table_info('answer')")) {
        requireNamed(statement, "$.advice", "SELECT id FROM answer", "answer");
      }
    }
  }

  /** What stands for a name is either among the ids or, as an answer may be, a JSON object. */
  private static void requireNamed(Statement statement, String member, String ids, String what)
      throws SQLException {
    String named = "json_extract(content, '" + member + "')";
    try (ResultSet job =
        statement.executeQuery(
            "SELECT reference, id FROM job WHERE "
                + named
                + " NOT LIKE '{%' AND "
                + named
                + " NOT IN ("
                + ids
                + ")")) {
      if (job.next()) {
        throw new SQLException(
            "the "
                + what
                + " of job "
                + job.getString(1)
                + " is not there; take back what was done on its page (/job/"
                + job.getString(2)
                + "), or put the last backup in its place");
      }
    }
  }

  private static void check(Path file) throws SQLException {
    try (Connection connection = readOnly(file);
        Statement statement = connection.createStatement()) {
      try (ResultSet result = statement.executeQuery("PRAGMA integrity_check")) {
        if (!result.next() || !result.getString(1).equals("ok")) {
          throw new SQLException(file + " is damaged");
        }
      }
      try (ResultSet result = statement.executeQuery("SELECT COUNT(*) FROM job")) {
        if (!result.next()) {
          throw new SQLException(file + " is no database of this program");
        }
      }
      // a backup of an older version has none; they are made when it is opened
      if (has(statement, "SELECT 1 FROM pragma_table_info('lot') WHERE name = 'seal'")) {
        try (Sql sql = new Sql(connection)) {
          CabinetStore.requireWhole(sql);
        }
      }
    }
  }

  private static boolean has(Statement statement, String query) throws SQLException {
    try (ResultSet row = statement.executeQuery(query)) {
      return row.next();
    }
  }

  private static void sync(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.force(true);
    }
  }
}
