package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
  private static final Stamp MIRA = new Stamp("Mira", Instant.parse("2027-03-11T09:00:00Z"));

  @TempDir Path folder;

  private static void enter(Database database, String reference) {
    new JobStore(database).enter(JobContent.booked(reference, "", "", "{}", "{}"), MIRA);
  }

  private static long count(String url) {
    try (Database database = Database.open(url)) {
      return new JobStore(database).onTheBoard(Instant.EPOCH).size();
    }
  }

  @Test
  void a_backup_taken_while_the_database_is_open_can_be_put_back() {
    String url = "jdbc:sqlite:" + folder.resolve("board.db");
    Path copy = folder.resolve("copy.db");
    try (Database database = Database.open(url)) {
      enter(database, "HL-1");
      Backup.take(url, copy);
      enter(database, "HL-2");
      assertThrows(StoreFailed.class, () -> Backup.restore(copy, url), "a server runs");
    }
    assertEquals(2, count(url));
    Path kept = Backup.restore(copy, url).orElseThrow();
    assertEquals(1, count(url));
    assertEquals(2, count("jdbc:sqlite:" + kept));
  }

  @Test
  void a_damaged_backup_is_refused_and_the_database_stays() throws Exception {
    String url = "jdbc:sqlite:" + folder.resolve("board.db");
    try (Database database = Database.open(url)) {
      enter(database, "HL-1");
    }
    Path bad = folder.resolve("bad.db");
    Files.writeString(bad, "this is no database at all, whatever it is called");
    StoreFailed failed = assertThrows(StoreFailed.class, () -> Backup.restore(bad, url));
    assertEquals(bad + " is no backup: it is not a database", failed.getMessage());
    assertEquals(1, count(url));
  }

  @Test
  void a_folder_that_is_not_there_is_told() {
    Path nowhere = folder.resolve("nowhere").resolve("board.db");
    StoreFailed failed =
        assertThrows(StoreFailed.class, () -> Database.open("jdbc:sqlite:" + nowhere).close());
    assertEquals("can't open " + nowhere + ": its folder is not there", failed.getMessage());
  }

  @Test
  void a_backup_never_writes_over_a_file() throws Exception {
    String url = "jdbc:sqlite:" + folder.resolve("board.db");
    try (Database database = Database.open(url)) {
      enter(database, "HL-1");
    }
    Path there = Files.writeString(folder.resolve("there.db"), "mine");
    assertThrows(StoreFailed.class, () -> Backup.take(url, there));
    assertEquals("mine", Files.readString(there));
    assertFalse(Files.exists(folder.resolve("there.db.part")));
  }

  @Test
  void for_postgresql_it_is_told_what_to_use() {
    StoreFailed told =
        assertThrows(
            StoreFailed.class,
            () -> Backup.take("jdbc:postgresql://127.0.0.1/x", folder.resolve("x")));
    assertTrue(told.getMessage().contains("pg_dump"), told.getMessage());
  }

  @Test
  void a_file_is_open_in_one_server_only() {
    String url = "jdbc:sqlite:" + folder.resolve("board.db");
    try (Database database = Database.open(url)) {
      enter(database, "HL-1");
      assertThrows(StoreFailed.class, () -> Database.open(url));
    }
  }

  @Test
  void a_log_that_a_job_names_and_that_is_not_there_is_told_before_there_is_a_backup() {
    String url = "jdbc:sqlite:" + folder.resolve("board.db");
    Path copy = folder.resolve("copy.db");
    try (Database database = Database.open(url)) {
      enter(database, "HL-1");
      JobStore store = new JobStore(database);
      Job job = store.onTheBoard(Instant.EPOCH).get(0);
      TemperatureLog log = new TemperatureLog("log-1", "l.csv", "t", "", "", "", MIRA.at());
      JobStore.Change named =
          j -> new JobStore.Edit(JobChange.Kind.LOG, "read", j.content().measured("log-1", "{}"));
      store.measure(job.id(), 1, log, named, MIRA);
      Backup.take(url, folder.resolve("good.db"));
      database.transaction(sql -> sql.update("DELETE FROM temperature_log"));
      StoreFailed failed = assertThrows(StoreFailed.class, () -> Backup.take(url, copy));
      assertTrue(failed.getMessage().contains("job HL-1"), failed.getMessage());
      assertTrue(failed.getMessage().contains("take back"), failed.getMessage());
      assertFalse(Files.exists(copy));
      store.undo(job.id(), 2, MIRA);
      Backup.take(url, copy);
    }
  }
}
