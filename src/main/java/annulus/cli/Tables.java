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

  static DataFiles files(Words words) {
    Optional<String> folder = words.value("--data");
    return folder.map(f -> DataFiles.withShop(Path.of(f))).orElseGet(DataFiles::bundled);
  }

  static Advisor advisor(Words words) throws IOException {
    DataFiles files = files(words);
    return new Advisor(KnowledgeFiles.read(files));
  }
}
