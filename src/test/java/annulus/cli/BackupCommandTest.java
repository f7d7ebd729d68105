package annulus.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.store.Backup;
import annulus.store.Database;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupCommandTest {
  @TempDir Path folder;

  @Test
  void who_restores_where_nothing_was_is_not_told_of_a_database_before() {
    String url = "jdbc:sqlite:" + folder.resolve("board.db");
    Path copy = folder.resolve("copy.db");
    Database.open(url).close();
    Backup.take(url, copy);
    String fresh = "jdbc:sqlite:" + folder.resolve("fresh.db");
    String first = CommandLine.output("restore", copy.toString(), "--database", fresh);
    assertEquals("restored and checked from " + copy + "; there was no database before\n", first);
    String second = CommandLine.output("restore", copy.toString(), "--database", fresh);
    Path before = folder.resolve("fresh.db.before-restore-1");
    assertTrue(second.endsWith("; the database before: " + before + "\n"), second);
  }
}
