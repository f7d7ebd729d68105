package annulus.web;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A board of its own for each test, in a folder of its own. */
abstract class OneBoard {
  @TempDir Path folder;
  RunningBoard board;

  @BeforeEach
  void start() {
    board = RunningBoard.on("jdbc:sqlite:" + folder.resolve("board.db"));
  }

  @AfterEach
  void stop() {
    board.close();
  }
}
