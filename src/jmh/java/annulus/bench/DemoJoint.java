package annulus.bench;

import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.OrderReader;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;

/** The demo orders and the shipped tables. */
final class DemoJoint {
  static final Instant NOW = Instant.parse("2027-03-11T08:00:00Z");

  private DemoJoint() {}

  static Knowledge knowledge() throws IOException {
    return KnowledgeFiles.read(DataFiles.bundled());
  }

  /** A demo order by the beginning of its file name. */
  static JointOrder order(Knowledge knowledge, String start) throws IOException {
    OrderReader reader = new OrderReader(knowledge, NOW, ZoneId.of("Europe/Dublin"));
    Path file;
    try (var files = Files.list(Path.of("demo-data/orders"))) {
      file =
          files
              .filter(f -> f.getFileName().toString().startsWith(start))
              .findFirst()
              .orElseThrow(() -> new IOException("no demo order " + start));
    }
    try (Reader in = Files.newBufferedReader(file)) {
      return reader.json(file.toString(), in);
    }
  }
}
