package annulus.cli;

import annulus.advice.Advisor;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import java.io.IOException;
import java.nio.file.Path;

/** Loads the data tables for a command. */
final class Tables {
  private Tables() {}

  static DataFiles files(Words words) throws IOException {
    return DataFiles.of(words.value("--data").map(Path::of));
  }

  static Advisor advisor(Words words) throws IOException {
    DataFiles files = files(words);
    return new Advisor(KnowledgeFiles.read(files));
  }
}
