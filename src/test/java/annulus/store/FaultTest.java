package annulus.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import annulus.stock.Ledger;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Machines fail: full disk, damaged page, folder that can't be written, clock that jumps. Killed
 * during a write and two writers at once stand in {@link LedgerKillTest}.
 */
class FaultTest {
  private static final Instant NINE = Instant.parse("2027-03-11T09:00:00Z");

  @TempDir Path folder;

  private String url() {
    return "jdbc:sqlite:" + folder.resolve("board.db");
  }

  private static Job enter(Database database, String reference, Instant at) {
    return new JobStore(database)
        .enter(
            JobContent.booked(reference, "a cup", "", "{\"n\":\"" + "x".repeat(400) + "\"}", "{}"),
            new Stamp("Mira", at));
  }

  private void filled(int jobs) {
    try (Database database = Database.open(url())) {
      for (int i = 0; i < jobs; i++) {
        enter(database, "J-" + i, NINE);
      }
    }
  }

  /** All rows of all tables as text. */
  private static List<String> rows(Path file) throws SQLException {
    List<String> rows = new ArrayList<>();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement tables = connection.createStatement();
        ResultSet names =
            tables.executeQuery(
                "SELECT name FROM sqlite_master WHERE type='table' ORDER BY name")) {
      while (names.next()) {
        try (Statement statement = connection.createStatement();
            ResultSet table = statement.executeQuery("SELECT * FROM " + names.getString(1))) {
          while (table.next()) {
            StringBuilder row = new StringBuilder(names.getString(1));
            for (int i = 1; i <= table.getMetaData().getColumnCount(); i++) {
              row.append('|').append(table.getString(i));
            }
            rows.add(row.toString());
          }
        }
      }
    }
    return rows;
  }

  @Test
  void a_restored_backup_equals_what_was_backed_up() throws Exception {
    filled(60);
    Path board = folder.resolve("board.db");
    List<String> before = rows(board);
    Path copy = folder.resolve("copy.db");
    Backup.take(url(), copy);
    filled(3);
    Backup.restore(copy, url());
    assertTrue(before.size() > 120, before.size() + " rows");
    assertEquals(before, rows(board));
  }

  /** Page by page from the first, which holds the header, to one deep in the tables. */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 2, 5, 9, 14})
  void a_damaged_page_is_told_and_one_command_puts_the_backup_back(int page) throws Exception {
    filled(120);
    Path board = folder.resolve("board.db");
    List<String> before = rows(board);
    Path copy = folder.resolve("copy.db");
    Backup.take(url(), copy);
    byte[] bytes = Files.readAllBytes(board);
    byte[] noise = new byte[4096];
    new Random(20261125L + page).nextBytes(noise);
    System.arraycopy(noise, 0, bytes, 4096 * page, noise.length);
    Files.write(board, bytes);
    StoreFailed told = assertThrows(StoreFailed.class, () -> Database.open(url()).close());
    assertTrue(told.getMessage().contains("is damaged"), told.getMessage());
    assertTrue(told.getMessage().contains("restore BACKUP --database"), told.getMessage());
    Path second = folder.resolve("second.db");
    // Damage in an index alone leaves the tables whole: such a copy may be made, but no other.
    try {
      Backup.take(url(), second);
      assertEquals(before, rows(second));
    } catch (StoreFailed e) {
      assertFalse(Files.exists(second), "no copy of damage");
    }
    Path kept = Backup.restore(copy, url()).orElseThrow();
    assertEquals(before, rows(board));
    assertEquals(bytes.length, Files.size(kept), "the damaged file is put aside");
  }

  /** One letter of a row turned into another, as no database notices. */
  @Test
  void a_letter_turned_in_a_job_is_told_and_never_read_as_another_order() throws Exception {
    filled(1);
    int told = 0;
    try (Database database = Database.open(url())) {
      JobStore store = new JobStore(database);
      String id = store.onTheBoard(Instant.EPOCH).get(0).id();
      String good = content(database, id);
      for (int at = 0; at < good.length(); at += 7) {
        char turned = (char) (good.charAt(at) ^ 1);
        String bad = good.substring(0, at) + turned + good.substring(at + 1);
        if ("\"\\".indexOf(turned) < 0 && turned >= ' ') {
          setContent(database, id, bad);
          try {
            assertEquals(ContentJson.content(good), readAnew(database, id), "at " + at);
          } catch (StoreFailed e) {
            assertTrue(e.getMessage().contains("is damaged"), e.getMessage());
            told++;
          }
        }
      }
      setContent(database, id, good);
      assertEquals(ContentJson.content(good), readAnew(database, id));
      // a job kept before there were seals
      setContent(database, id, good.replaceFirst(",\"seal\":\"[0-9a-f]{8}\"}$", "}"));
      assertEquals(ContentJson.content(good), readAnew(database, id));
    }
    assertTrue(told > 50, told + " told");
    System.out.println("faults: " + told + " letters turned in a job, all told");
  }

  /**
   * As a server reads it that has not read it before: nothing of it is kept from an earlier read.
   */
  private static JobContent readAnew(Database database, String id) {
    return new JobStore(database).job(id).orElseThrow().content();
  }

  private static String content(Database database, String id) {
    return database.transaction(
        sql ->
            sql.row(r -> r.getString(1), "SELECT content FROM job WHERE id = ?", id).orElseThrow());
  }

  private static void setContent(Database database, String id, String content) {
    database.transaction(sql -> sql.update("UPDATE job SET content = ? WHERE id = ?", content, id));
  }

  /**
   * Every page in turn is lost to zeros, and a bit of every page is turned. Zeros are told or do no
   * harm. A turned bit within a word of a row may be a word again: what is told is counted.
   */
  @Test
  void no_page_is_lost_without_a_word() throws Exception {
    filled(40);
    Path board = folder.resolve("board.db");
    List<String> before = rows(board);
    byte[] good = Files.readAllBytes(board);
    int told = 0;
    int turned = 0;
    int silent = 0;
    Random random = new Random(20261126);
    int pages = good.length / 4096;
    for (int page = 0; page < pages; page++) {
      byte[] zeros = good.clone();
      java.util.Arrays.fill(zeros, 4096 * page, 4096 * (page + 1), (byte) 0);
      boolean seen = isTold(board, zeros);
      assertTrue(seen || before.equals(rows(board)), "page " + page + " was lost in silence");
      told += seen ? 1 : 0;
      byte[] bit = good.clone();
      bit[4096 * page + random.nextInt(4096)] ^= (byte) (1 << random.nextInt(8));
      boolean heard = isTold(board, bit);
      turned += heard ? 1 : 0;
      silent += heard || harmless(before, board) ? 0 : 1;
    }
    System.out.println(
        "faults: "
            + pages
            + " pages zeroed one by one, "
            + told
            + " told, none lost in silence; one bit turned in each, "
            + turned
            + " told, "
            + silent
            + " changed a row of a job in silence");
    assertTrue(told > pages / 2, told + " of " + pages);
  }

  /** Whether the rows are what they were, or reading the jobs says that they are damaged. */
  private boolean harmless(List<String> before, Path board) throws SQLException {
    if (before.equals(rows(board))) {
      return true;
    }
    try (Database database = Database.open(url())) {
      JobStore store = new JobStore(database);
      store.onTheBoard(Instant.EPOCH).forEach(j -> store.changes(j.id()));
      return false;
    } catch (StoreFailed e) {
      assertTrue(e.getMessage().contains("is damaged"), e.getMessage());
      return true;
    }
  }

  private boolean isTold(Path board, byte[] bytes) throws IOException {
    for (String beside : List.of("-wal", "-shm")) {
      Files.deleteIfExists(board.resolveSibling(board.getFileName() + beside));
    }
    Files.write(board, bytes);
    try {
      Database.open(url()).close();
      return false;
    } catch (StoreFailed e) {
      assertTrue(e.getMessage().contains("restore BACKUP --database"), e.getMessage());
      return true;
    }
  }

  /** A disk of its own that is really full, where this machine lets one be made. */
  @Test
  void on_a_disk_that_is_really_full_what_was_acknowledged_stays() throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(done("mount", "-t", "tmpfs", "-o", "size=600k", "none", disk.toString()));
    try {
      String url = "jdbc:sqlite:" + disk.resolve("board.db");
      int entered = 0;
      try (Database database = Database.open(url)) {
        StoreFailed full = null;
        while (full == null && entered < 5000) {
          try {
            enter(database, "J-" + entered, NINE);
            entered++;
          } catch (StoreFailed e) {
            full = e;
          }
        }
        assertTrue(full != null && full.getMessage().contains("nothing is acknowledged"));
        assertEquals(entered, new JobStore(database).onTheBoard(Instant.EPOCH).size());
      }
      Path copy = disk.resolve("copy.db");
      assertThrows(StoreFailed.class, () -> Backup.take(url, copy));
      assertFalse(Files.exists(copy), "no half copy under the name of a backup");
      Path ledger = disk.resolve("ledger");
      int moved = 0;
      try {
        new LedgerFile(ledger).append(LedgerChild.receive(1000));
        for (moved = 1; moved < 100_000; moved++) {
          new LedgerFile(ledger).append(LedgerChild.use("m" + moved));
        }
      } catch (IOException e) {
        assertTrue(Files.exists(disk));
      }
      if (Files.exists(ledger)) {
        assertEquals(moved, new LedgerFile(ledger).read().ledger().movements().size());
      }
      assertTrue(done("mount", "-o", "remount,size=4m", disk.toString()));
      try (Database database = Database.open(url)) {
        enter(database, "room again", NINE);
        assertEquals(entered + 1, new JobStore(database).onTheBoard(Instant.EPOCH).size());
      }
      System.out.println("faults: full disk after " + entered + " jobs, none lost");
    } finally {
      done("umount", disk.toString());
    }
  }

  private static boolean done(String... command) throws InterruptedException {
    try {
      return new ProcessBuilder(command).redirectErrorStream(true).start().waitFor() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void a_full_database_acknowledges_nothing_and_loses_nothing() throws Exception {
    filled(20);
    try (Database database = Database.open(url())) {
      pages(database, "PRAGMA max_page_count = 1");
      int entered = 0;
      StoreFailed full = null;
      while (full == null && entered < 1000) {
        try {
          enter(database, "late-" + entered, NINE);
          entered++;
        } catch (StoreFailed e) {
          full = e;
        }
      }
      assertTrue(full != null && full.getMessage().contains("nothing is acknowledged"));
      assertTrue(full.getMessage().contains("full"), full.getMessage());
      assertEquals(20 + entered, new JobStore(database).onTheBoard(Instant.EPOCH).size());
      pages(database, "PRAGMA max_page_count = 100000");
      enter(database, "room again", NINE);
      assertEquals(21 + entered, new JobStore(database).onTheBoard(Instant.EPOCH).size());
    }
  }

  /** The same for what the command line writes: a whole file or none, and never in silence. */
  @Test
  void a_card_on_a_full_disk_is_told_and_the_one_before_it_stays() throws Exception {
    Path full = Path.of("/dev/full");
    assumeTrue(Files.exists(full), "needs a device that is always full");
    assertEquals(3, main(full, "advise", "demo-data/orders/01-good-fit.json"));
    assertTrue(Files.readString(folder.resolve("err")).contains("could not be written in full"));
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeTrue(done("mount", "-t", "tmpfs", "-o", "size=16k", "none", disk.toString()));
    try {
      Path card = Files.writeString(disk.resolve("card.html"), "the old card");
      Path list = disk.resolve("results.csv");
      Files.write(disk.resolve("fill"), new byte[8000]);
      String order = "demo-data/orders/01-good-fit.json";
      assertEquals(2, main(folder.resolve("out"), "advise", order, "--card", card.toString()));
      assertTrue(Files.readString(folder.resolve("err")).contains("No space left"));
      assertEquals("the old card", Files.readString(card));
      Files.write(disk.resolve("fill2"), new byte[4000]);
      String jobs = "demo-data/jobs.csv";
      main(folder.resolve("out"), "advise", "--batch", jobs, "--out", list.toString());
      assertFalse(Files.exists(list), "no half list");
    } finally {
      done("umount", disk.toString());
    }
  }

  private int main(Path out, String... words) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                "annulus.cli.Main"));
    command.addAll(List.of(words));
    return new ProcessBuilder(command)
        .redirectOutput(out.toFile())
        .redirectError(folder.resolve("err").toFile())
        .start()
        .waitFor();
  }

  private static void pages(Database database, String pragma) {
    database.transaction(
        sql -> {
          try (Statement statement = sql.connection().createStatement()) {
            return statement.execute(pragma);
          }
        });
  }

  /** The limit cuts a line off in the middle, as a disk that runs full does. */
  @ParameterizedTest
  @ValueSource(ints = {4, 7, 16})
  void a_ledger_on_a_full_disk_keeps_all_it_confirmed(int kilobytes) throws Exception {
    Path bash = Path.of("/bin/bash");
    assumeTrue(Files.isExecutable(bash), "needs a shell that can limit file sizes");
    Path file = folder.resolve("ledger");
    new LedgerFile(file).append(LedgerChild.receive(1000));
    Path said = folder.resolve("said");
    Process child =
        new ProcessBuilder(
                bash.toString(),
                "-c",
                "ulimit -f " + kilobytes + "; exec \"$0\" \"$@\"",
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:-UsePerfData",
                "-cp",
                System.getProperty("java.class.path"),
                LedgerChild.class.getName(),
                file.toString(),
                "full",
                "1000")
            .redirectError(folder.resolve("err").toFile())
            .redirectOutput(said.toFile())
            .start();
    assertTrue(child.waitFor() != 0, "it must have failed");
    assertTrue(Files.readString(folder.resolve("err")).contains("IOException"));
    List<String> confirmed = Files.readAllLines(said, StandardCharsets.UTF_8);
    Ledger ledger = new LedgerFile(file).read().ledger();
    assertTrue(confirmed.size() > 5, confirmed.size() + " confirmed");
    confirmed.forEach(id -> assertTrue(ledger.has(id), id));
    new LedgerFile(file).append(LedgerChild.use("room-again"));
    assertTrue(new LedgerFile(file).read().ledger().has("room-again"));
  }

  /** Nobody, not even root, may make a file there. */
  @Test
  void a_folder_that_cannot_be_written_is_told() {
    Path readOnly = Path.of("/proc");
    assumeTrue(Files.isDirectory(readOnly), "needs a folder nobody can write");
    StoreFailed database =
        assertThrows(StoreFailed.class, () -> Database.open("jdbc:sqlite:/proc/board.db").close());
    assertTrue(database.getMessage().contains("/proc/board.db"), database.getMessage());
    assertThrows(
        IOException.class,
        () -> new LedgerFile(readOnly.resolve("ledger")).append(LedgerChild.receive(1)));
  }

  /** The clock may be put back an hour, or a day, between two changes. */
  @Test
  void a_clock_that_jumps_back_does_not_disorder_the_history() {
    try (Database database = Database.open(url())) {
      JobStore store = new JobStore(database);
      Job job = enter(database, "J-1", NINE);
      Instant[] times = {
        NINE.plus(Duration.ofMinutes(10)), NINE.minus(Duration.ofDays(1)), NINE.plusSeconds(1)
      };
      int done = 0;
      for (Instant at : times) {
        String words = "change " + ++done;
        job =
            store.change(
                job.id(),
                job.version(),
                now -> {
                  JobContent was = now.content();
                  return new JobStore.Edit(
                      JobChange.Kind.ORDER,
                      words,
                      was.with(words, was.bore(), was.order(), was.advice()));
                },
                Optional.empty(),
                new Stamp("Mira", at));
      }
      List<JobChange> changes = store.changes(job.id());
      assertEquals(4, changes.size());
      assertEquals("change 3", store.job(job.id()).orElseThrow().content().title());
    }
  }
}
