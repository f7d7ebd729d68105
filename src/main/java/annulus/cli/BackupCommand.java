package annulus.cli;

import annulus.store.Backup;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Set;

/** {@code backup} and {@code restore} of the board's database. */
final class BackupCommand {
  private final PrintStream out;

  BackupCommand(PrintStream out) {
    this.out = out;
  }

  int run(String[] args) {
    Words words = new Words(args, Set.of("--database"), Set.of());
    if (words.rest().size() != 1) {
      throw Words.refused(1, args[0], "needs one file", args[0] + " FILE (see help)");
    }
    String url = words.value("--database").orElse("jdbc:sqlite:annulus.db");
    Path file = InputFile.of(words.rest().get(0));
    if (args[0].equals("backup")) {
      Backup.take(url, file);
      out.println("backed up and checked: " + file);
    } else {
      String before =
          Backup.restore(file, url)
              .map(kept -> "the database before: " + kept)
              .orElse("there was no database before");
      out.println("restored and checked from " + file + "; " + before);
    }
    return ExitCode.ANSWER;
  }
}
