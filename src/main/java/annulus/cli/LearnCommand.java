package annulus.cli;

import annulus.advice.BenchLearning;
import annulus.advice.Learned;
import annulus.advice.LearningRules;
import annulus.advice.Observation;
import annulus.catalog.Catalog;
import annulus.exchange.CatalogFiles;
import annulus.exchange.DataFiles;
import annulus.exchange.LearningFile;
import annulus.report.LearnedPicture;
import annulus.report.LearnedText;
import annulus.report.OverlayJson;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** {@code learn}: what the shop saw of its own joints, as tables laid over the program's. */
final class LearnCommand {
  private final PrintStream out;

  LearnCommand(PrintStream out) {
    this.out = out;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--out", "--data"), Set.of());
    if (words.rest().size() != 1) {
      throw Words.refused(1, "learn", "needs one file", "OBSERVATIONS.csv");
    }
    DataFiles files = Tables.files(words);
    Catalog catalog = CatalogFiles.read(files);
    LearningFile.refuseLearned("--data", catalog);
    Path file = InputFile.of(words.rest().get(0));
    LearningRules rules = LearningFile.rules(files);
    List<Observation> seen;
    try (Reader in = InputFile.text(file)) {
      seen = LearningFile.observations(file.toString(), in, catalog, rules);
    }
    List<Learned> learned = new BenchLearning(catalog, rules).learn(seen);
    out.print(LearnedText.of(learned));
    Optional<Path> folder = words.value("--out").map(Path::of);
    if (folder.isPresent()) {
      write(folder.get(), learned);
    } else {
      out.println("\nNothing written; --out DIR writes tables for --data DIR.");
    }
    return ExitCode.ANSWER;
  }

  private void write(Path folder, List<Learned> learned) throws IOException {
    Files.createDirectories(folder);
    Path table = folder.resolve("compounds.json");
    if (Files.exists(table) && !Files.readString(table).contains(OverlayJson.TITLE)) {
      throw Words.refused(
          0,
          "--out",
          table + " is there already and was not learned; its classes would be lost",
          "a new folder");
    }
    OutputFile.write(table, OverlayJson.of(learned));
    for (Learned one : learned) {
      OutputFile.write(
          folder.resolve("learned-" + one.shipped().id() + ".svg"), LearnedPicture.of(one));
    }
    out.println(
        "\nWritten to "
            + folder
            + ": compounds.json with "
            + learned.size()
            + (learned.size() == 1 ? " class" : " classes")
            + " and a picture of each. Use it with --data "
            + folder
            + ".");
  }
}
