package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Statements that are prepared once and used again. */
class StatementsTest {
  private static final String PUT = "INSERT INTO draft VALUES (?, 1, '{}', 'then', 'Mira')";
  private static final String ALL = "SELECT id FROM draft ORDER BY id";

  @TempDir Path folder;

  static List<String> databases() {
    return Databases.names();
  }

  private static List<String> all(Database database) {
    return database.transaction(sql -> sql.rows(r -> r.getString(1), ALL));
  }

  @ParameterizedTest
  @MethodSource("databases")
  void they_are_as_good_after_one_of_them_failed(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      database.transaction(sql -> sql.update(PUT, "a"));
      assertThrows(
          StoreFailed.class,
          () -> database.transaction(sql -> sql.update(PUT, "b") + sql.update(PUT, "a")));
      assertEquals(List.of("a"), all(database));
      database.transaction(sql -> sql.update(PUT, "b"));
      assertEquals(List.of("a", "b"), all(database));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void a_look_that_breaks_off_leaves_none_half_read(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      database.transaction(sql -> sql.update(PUT, "a") + sql.update(PUT, "b"));
      IllegalStateException broken = new IllegalStateException("broken off");
      assertThrows(
          IllegalStateException.class,
          () ->
              database.transaction(
                  sql ->
                      sql.rows(
                          r -> {
                            throw broken;
                          },
                          ALL)));
      database.transaction(sql -> sql.update(PUT, "c"));
      assertEquals(List.of("a", "b", "c"), all(database));
    }
  }

  @ParameterizedTest
  @MethodSource("databases")
  void what_is_done_within_a_transaction_goes_with_it(String name) {
    try (Database database = Database.open(Databases.fresh(name, folder))) {
      assertThrows(
          Refused.class,
          () ->
              database.transaction(
                  sql -> {
                    sql.update(PUT, "a");
                    database.transaction(within -> within.update(PUT, "b"));
                    throw new Refused("not this");
                  }));
      assertEquals(List.of(), all(database));
    }
  }

  /** Else every row of the board costs a walk through a job's long content. */
  @Test
  void the_board_and_the_uses_of_a_job_are_found_by_their_indexes() {
    try (Database database = Database.open(Databases.fresh("sqlite", folder))) {
      assertTrue(
          plan(database, JobStore.ON_THE_BOARD).stream().noneMatch(l -> l.contains("SCAN job")));
      assertEquals(
          2,
          plan(database, JobStore.ON_THE_BOARD).stream()
              .filter(l -> l.contains("SEARCH job USING COVERING INDEX"))
              .count());
      assertTrue(
          plan(database, JobStore.SAME_REFERENCE).stream()
              .anyMatch(l -> l.contains("SEARCH job USING INDEX job_of_the_board")));
      assertTrue(
          plan(database, JobStore.BY_NAME.replace("LIMIT ?", "LIMIT 50")).stream()
              .anyMatch(l -> l.contains("SCAN job USING COVERING INDEX job_by_name")));
      assertTrue(
          plan(database, CabinetStore.USES_FOR).stream()
              .anyMatch(l -> l.contains("SEARCH movement USING INDEX movement_by_job")));
      assertTrue(
          plan(database, CabinetStore.USES_OF).stream()
              .anyMatch(l -> l.contains("SEARCH movement USING INDEX movement_by_lot")));
      List<String> holding =
          database.transaction(
              sql -> sql.rows(r -> r.getString(4), "EXPLAIN QUERY PLAN " + CabinetStore.HOLDING));
      assertTrue(
          holding.stream().anyMatch(l -> l.contains("INDEX movement_that_holds_back")),
          holding.toString());
    }
  }

  private static List<String> plan(Database database, String question) {
    return database.transaction(
        sql -> sql.rows(r -> r.getString(4), "EXPLAIN QUERY PLAN " + question, "2027-03-11"));
  }
}
