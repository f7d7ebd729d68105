package annulus.cli;

import annulus.advice.Advisor;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;

/** Loads the data tables for a command. */
final class Tables {
  private Tables() {}

  static DataFiles files(Words words) throws IOException {
    Optional<String> folder = words.value("--data");
    return folder.isPresent() ? DataFiles.withShop(Path.of(folder.get())) : DataFiles.bundled();
  }

  static Advisor advisor(Words words) throws IOException {
    DataFiles files = files(words);
    return new Advisor(KnowledgeFiles.read(files));
  }
}
