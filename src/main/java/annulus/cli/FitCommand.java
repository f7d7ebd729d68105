package annulus.cli;

import annulus.advice.FitExplanation;
import annulus.advice.Knowledge;
import annulus.exchange.DataFiles;
import annulus.exchange.FitWords;
import annulus.exchange.FitWords.Measured;
import annulus.exchange.KnowledgeFiles;
import annulus.measure.Side;
import annulus.measure.Verdict;
import annulus.report.FitText;
import annulus.report.ToleranceZones;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** {@code fit}: what a tolerance designation allows, and whether measured sizes keep it. */
final class FitCommand {
  private static final Set<String> WITH_VALUE =
      Set.of(
          "--bore",
          "--part",
          "--instrument",
          "--materials",
          "--measured-at",
          "--picture",
          "--data");

  private final PrintStream out;
  private final PrintStream err;

  FitCommand(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, WITH_VALUE, Set.of());
    if (words.rest().isEmpty() || words.rest().size() > 2) {
      throw Words.refused(
          1, "fit", words.rest().size() + " designations", "fit \"35 H7\" \"35 k6\" (see help)");
    }
    DataFiles files = Tables.files(words);
    Knowledge knowledge = KnowledgeFiles.read(files);
    FitExplanation fit =
        new FitWords(knowledge, files).explain(words.rest(), measured(words, knowledge));
    out.print(FitText.of(fit));
    if (words.has("--picture")) {
      Path picture = OutputFile.of(words, "--picture", ".svg", List.of());
      OutputFile.write(picture, ToleranceZones.svg(fit));
      err.println("picture written to " + picture);
    }
    boolean kept = fit.judgements().stream().allMatch(j -> j.verdict() == Verdict.INSIDE);
    return kept ? ExitCode.ANSWER : ExitCode.ANSWER_IS_NO;
  }

  private static List<Measured> measured(Words words, Knowledge knowledge) {
    double celsius = knowledge.catalog().policy().value("default-temperature-c");
    if (words.has("--measured-at")) {
      celsius = FitWords.celsius("--measured-at", words.value("--measured-at").orElseThrow());
    }
    List<Measured> sizes = new ArrayList<>();
    for (Side side : Side.values()) {
      String option = side == Side.BORE ? "--bore" : "--part";
      if (words.has(option)) {
        sizes.add(
            new Measured(
                side,
                words.value(option).orElseThrow(),
                member(words, "--instrument", side, FitWords.INSTRUMENT),
                member(words, "--materials", side, FitWords.MATERIAL),
                celsius));
      }
    }
    return sizes;
  }

  private static String member(Words words, String option, Side side, String otherwise) {
    String[] two = words.value(option).orElse(otherwise).split(",", -1);
    return side == Side.PART && two.length > 1 ? two[1].strip() : two[0].strip();
  }
}
