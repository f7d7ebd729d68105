package annulus.cli;

import annulus.exchange.DataFiles;
import annulus.exchange.InputRefused;
import annulus.exchange.PlacedProblem;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A file that a command reads. */
final class InputFile {
  private InputFile() {}

  /**
   * The file of a name. A folder is refused here: it can be opened, and reading it fails without
   * its name.
   *
   * @throws InputRefused when it is a folder
   */
  static Path of(String name) {
    Path file = Path.of(name);
    if (Files.isDirectory(file)) {
      throw new InputRefused(
          List.of(new PlacedProblem(name, 0, 0, "", "is a folder", "the name of a file")));
    }
    return file;
  }

  /**
   * Its text, strictly UTF-8.
   *
   * @throws IOException when it can't be opened
   */
  static Reader text(Path file) throws IOException {
    return DataFiles.utf8(Files.newInputStream(file));
  }
}
