package annulus.store;

import java.nio.file.Path;
import java.util.List;

/** The databases that the store is tested on. */
public final class Databases {
  private Databases() {}

  /** Their names. */
  public static List<String> names() {
    return List.of("sqlite", "postgresql");
  }

  /** The URL of a new, empty one. */
  public static String fresh(String name, Path folder) {
    return name.equals("sqlite")
        ? "jdbc:sqlite:" + folder.resolve("board.db")
        : PostgresServer.newDatabase();
  }
}
