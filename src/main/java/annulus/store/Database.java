package annulus.store;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.locks.ReentrantLock;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.CoreErrorCode;
import org.flywaydb.core.api.FlywayException;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.postgresql.ds.PGSimpleDataSource;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteDataSource;

/**
 * A database of the shop: a SQLite file, or PostgreSQL. One connection, one transaction at a time;
 * what a transaction wrote is on disk once it returns.
 */
public final class Database implements AutoCloseable {
  static final String SQLITE = "jdbc:sqlite:";
  static final String POSTGRESQL = "jdbc:postgresql:";
  private static final int BUSY_MILLISECONDS = 10_000;
  private static final String CANT_OPEN = "can't open the database: ";

  /** Other tables in it, or a history of its tables that is not the one of this program. */
  private static final Set<CoreErrorCode> FOREIGN =
      Set.of(
          CoreErrorCode.NON_EMPTY_SCHEMA_WITHOUT_SCHEMA_HISTORY_TABLE,
          CoreErrorCode.VALIDATE_ERROR,
          CoreErrorCode.APPLIED_VERSIONED_MIGRATION_NOT_RESOLVED,
          CoreErrorCode.APPLIED_REPEATABLE_MIGRATION_NOT_RESOLVED,
          CoreErrorCode.TYPE_MISMATCH,
          CoreErrorCode.CHECKSUM_MISMATCH,
          CoreErrorCode.DESCRIPTION_MISMATCH);

  private final DataSource source;
  private final Optional<FileLock> fileLock;
  private final ReentrantLock oneAtATime = new ReentrantLock();
  private Sql open;

  /** Something done in one transaction. */
  @FunctionalInterface
  interface Work<T> {
    T with(Sql sql) throws SQLException;
  }

  private Database(DataSource source, Optional<FileLock> fileLock) {
    this.source = source;
    this.fileLock = fileLock;
  }

  /**
   * Opens a database and brings its tables up to date.
   *
   * @param url {@code jdbc:sqlite:FILE} or {@code jdbc:postgresql://HOST/NAME?user=…}
   * @throws StoreFailed when it can't be opened, or another server has the file open
   */
  public static Database open(String url) {
    Optional<FileLock> lock =
        url.startsWith(SQLITE) ? Optional.of(lock(file(url))) : Optional.empty();
    Database database = new Database(source(url), lock);
    try {
      if (lock.isPresent() && Files.exists(file(url))) {
        database.requireWhole(url);
      }
      database.migrate(url);
    } catch (RuntimeException e) {
      database.close();
      throw e;
    }
    return database;
  }

  private static DataSource source(String url) {
    if (url.startsWith(SQLITE)) {
      SQLiteConfig config = new SQLiteConfig();
      config.setJournalMode(SQLiteConfig.JournalMode.WAL);
      config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
      config.setBusyTimeout(BUSY_MILLISECONDS);
      config.enforceForeignKeys(true);
      config.setTransactionMode(SQLiteConfig.TransactionMode.IMMEDIATE);
      SQLiteDataSource sqlite = new SQLiteDataSource(config);
      sqlite.setUrl(url);
      return sqlite;
    }
    if (url.startsWith(POSTGRESQL)) {
      PGSimpleDataSource postgres = new PGSimpleDataSource();
      postgres.setUrl(url);
      return postgres;
    }
    throw new StoreFailed(
        "--database: " + url + " can't be used; allowed: jdbc:sqlite:FILE or jdbc:postgresql://…",
        null);
  }

  static Path file(String url) {
    return Path.of(url.substring(SQLITE.length())).toAbsolutePath();
  }

  /** One server a file; the lock goes with the process, however it ends. */
  static FileLock lock(Path file) {
    Path lockFile = file.resolveSibling(file.getFileName() + ".lock");
    try {
      FileChannel channel =
          FileChannel.open(lockFile, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = channel.tryLock();
      if (lock == null) {
        channel.close();
        throw new StoreFailed(file + " is open in another server; stop that one first", null);
      }
      return lock;
    } catch (OverlappingFileLockException e) {
      throw new StoreFailed(file + " is open in this server already", e);
    } catch (NoSuchFileException e) {
      throw new StoreFailed("can't open " + file + ": its folder is not there", e);
    } catch (IOException e) {
      throw new StoreFailed("can't open " + file + ": " + e.getMessage(), e);
    }
  }

  private void migrate(String url) {
    String serial =
        url.startsWith(SQLITE)
            ? "INTEGER PRIMARY KEY AUTOINCREMENT"
            : "BIGINT GENERATED BY DEFAULT AS IDENTITY PRIMARY KEY";
    try {
      Flyway flyway =
          Flyway.configure(Database.class.getClassLoader())
              .dataSource(source)
              .locations("classpath:db/annulus")
              .javaMigrations(new CabinetSealing(), new JobTitles())
              .placeholders(Map.of("serial", serial))
              .ignoreMigrationPatterns(new String[0])
              .cleanDisabled(true)
              .load();
      requireKnown(flyway.info().applied());
      flyway.migrate();
    } catch (FlywayException e) {
      if (fileLock.isPresent() && isDamage(e)) {
        throw damaged(url, e.getMessage());
      }
      boolean foreign = e.getErrorCode() instanceof CoreErrorCode code && FOREIGN.contains(code);
      throw new StoreFailed(
          CANT_OPEN
              + (foreign ? "it is not of this program, or was changed" : firstLine(e.getMessage())),
          e);
    }
  }

  private static void requireKnown(MigrationInfo[] applied) {
    for (MigrationInfo done : applied) {
      if (done.getState().isFailed()) {
        throw new StoreFailed(
            CANT_OPEN
                + "an update of its tables broke off (to version "
                + done.getVersion()
                + "); put the last backup in its place",
            null);
      }
      if (done.getState() == MigrationState.FUTURE_SUCCESS) {
        throw new StoreFailed(
            CANT_OPEN
                + "a newer version of this program has written in it (tables of version "
                + done.getVersion()
                + "); start that one",
            null);
      }
    }
  }

  /** A damaged file is told at once, before anything more is written into it. */
  private void requireWhole(String url) {
    String problem;
    try (Connection open = source.getConnection();
        Statement statement = open.createStatement();
        ResultSet result = statement.executeQuery("PRAGMA quick_check(1)")) {
      problem = result.next() ? result.getString(1) : "no answer";
    } catch (SQLException e) {
      problem = firstLine(e.getMessage());
    }
    if (!problem.equals("ok")) {
      throw damaged(url, problem);
    }
  }

  /**
   * The check of the whole file looks at no value: what is wrong there shows when it is read. The
   * database itself complains in words of its own of all else, such as a full disk.
   */
  private static boolean isDamage(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      if (cause.getClass() == SQLException.class) {
        return true;
      }
    }
    return false;
  }

  private static StoreFailed damaged(String url, String problem) {
    return new StoreFailed(
        file(url)
            + " is damaged ("
            + firstLine(problem)
            + "); put the last backup in its place: restore BACKUP --database "
            + url,
        null);
  }

  private static String firstLine(String message) {
    return message == null ? "" : message.strip().lines().findFirst().orElse("");
  }

  /**
   * Runs something in one transaction; on a failure nothing of it stays. One within another is a
   * part of it: it neither ends what the outer began nor outlives it.
   */
  <T> T transaction(Work<T> work) {
    oneAtATime.lock();
    try {
      return oneAtATime.getHoldCount() > 1 ? work.with(open) : whole(work);
    } catch (SQLException e) {
      throw new StoreFailed("the database failed; nothing is acknowledged: " + e.getMessage(), e);
    } finally {
      oneAtATime.unlock();
    }
  }

  private <T> T whole(Work<T> work) throws SQLException {
    Sql sql = sql();
    try {
      T result = work.with(sql);
      sql.connection().commit();
      return result;
    } catch (Throwable e) { // an error too: what it left half done would go with the next commit
      rollBack(sql);
      throw e;
    }
  }

  private Sql sql() throws SQLException {
    if (open == null || !isStillThere()) {
      closeConnection();
      Connection connection = source.getConnection();
      connection.setAutoCommit(false);
      open = new Sql(connection);
    }
    return open;
  }

  /** A server may have gone since the last transaction; a file of our own can't have. */
  private boolean isStillThere() throws SQLException {
    return fileLock.isPresent() || open.connection().isValid(2);
  }

  /**
   * A statement that failed may be left half way: none of them is used again, nor is a connection
   * that can't be rolled back.
   */
  private void rollBack(Sql sql) {
    boolean done = false;
    try {
      sql.close();
      sql.connection().rollback();
      done = true;
    } catch (SQLException e) {
      // closing the connection drops what was written
    } finally {
      if (!done) {
        closeConnection();
      }
    }
  }

  private void closeConnection() {
    try {
      if (open != null) {
        open.connection().close();
      }
    } catch (SQLException e) {
      // it is of no use any more, whatever it says
    } finally {
      open = null;
    }
  }

  @Override
  public void close() {
    oneAtATime.lock();
    try {
      closeConnection();
      if (fileLock.isPresent()) {
        fileLock.get().acquiredBy().close();
      }
    } catch (IOException e) {
      throw new StoreFailed("can't close the lock file: " + e.getMessage(), e);
    } finally {
      oneAtATime.unlock();
    }
  }
}
