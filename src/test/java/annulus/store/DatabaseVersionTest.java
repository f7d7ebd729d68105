package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A database that this version of the program did not make is told, and nothing is written. */
class DatabaseVersionTest {
  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static void run(String url, String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection(url);
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  private static String told(String url) {
    return assertThrows(StoreFailed.class, () -> Database.open(url).close()).getMessage();
  }

  private static String made(String name, Path folder) {
    String url = Databases.fresh(name, folder);
    Database.open(url).close();
    return url;
  }

  private static String row(int version, boolean good) {
    return "INSERT INTO flyway_schema_history (installed_rank, version, description, type, script,"
        + " checksum, installed_by, execution_time, success) VALUES ("
        + (100 + version)
        + ", '"
        + version
        + "', 'later', 'SQL', 'V"
        + version
        + "__later.sql', 7, 'x', 1, "
        + (good ? "true" : "false")
        + ")";
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_database_of_a_newer_program_is_not_opened(String name) throws SQLException {
    String url = made(name, folder);
    run(url, row(99, true));
    String told = told(url);
    assertTrue(told.contains("a newer version of this program"), told);
    run(url, "DELETE FROM flyway_schema_history WHERE version = '99'");
    try (Database database = Database.open(url)) {
      assertEquals(List.of(), new JobStore(database).onTheBoard(Instant.EPOCH));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void an_update_that_broke_off_is_told(String name) throws SQLException {
    String url = made(name, folder);
    run(url, row(99, false));
    String told = told(url);
    assertTrue(told.contains("broke off") && told.contains("last backup"), told);
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_database_of_something_else_is_told_and_left_alone(String name) throws Exception {
    String url = Databases.fresh(name, folder);
    run(url, "CREATE TABLE apples (weight INTEGER)");
    String told = told(url);
    assertTrue(told.contains("not of this program"), told);
    run(url, "INSERT INTO apples VALUES (1)");
    String other = made(name, Files.createDirectory(folder.resolve("other")));
    run(other, "UPDATE flyway_schema_history SET checksum = 7 WHERE version = '1'");
    assertTrue(told(other).contains("not of this program"), told(other));
  }
}
