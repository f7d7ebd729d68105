package annulus.cli;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.exchange.CommandWords;
import annulus.exchange.OrderReader;
import annulus.report.JobCard;
import annulus.report.JsonReport;
import annulus.report.StockChoice;
import annulus.report.TextReport;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** {@code advise}: one joint, or many. */
final class AdviseCommand {
  private static final Set<String> FLAGS = Set.of("--why", "--json");

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  AdviseCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = words(args);
    Advisor advisor = Tables.advisor(words);
    OrderReader reader =
        new OrderReader(advisor.knowledge(), surround.clock().instant(), surround.zoneWhenAsked());
    if (words.has("--batch") || words.has("--out")) {
      return batch(words, advisor, reader);
    }
    if (words.has("--ledger") && !words.has("--stock")) {
      throw Words.refused(0, "--ledger", "stands without --stock", "--stock STOCK.csv beside it");
    }
    JointOrder order = order(words, reader);
    Optional<StockChoice> stocked =
        words.has("--stock")
            ? Optional.of(StockAnswer.of(words, advisor, order, surround, err))
            : Optional.empty();
    Advice advice = stocked.map(StockChoice::advice).orElseGet(() -> advisor.advise(order));
    if (words.has("--card")) {
      Path card = OutputFile.of(words, "--card", ".html", words.rest());
      OutputFile.write(card, JobCard.of(advice, advisor.catalog()));
      err.println("card written to " + card);
    }
    if (words.has("--json")) {
      out.print(JsonReport.of(advice, advisor.catalog(), stocked));
    } else {
      out.print(TextReport.of(advice, advisor.catalog(), words.has("--why")));
      stocked.ifPresent(s -> out.print("\n" + s.text()));
    }
    return advice.isYes() ? ExitCode.ANSWER : ExitCode.ANSWER_IS_NO;
  }

  private static List<String> orderWords() {
    List<String> names = new ArrayList<>(CommandWords.single());
    names.addAll(CommandWords.pairs());
    names.addAll(CommandWords.flags());
    return names;
  }

  private static Words words(String[] args) {
    Set<String> withValue =
        new HashSet<>(List.of("--card", "--batch", "--out", "--data", "--stock", "--ledger"));
    withValue.addAll(CommandWords.single());
    withValue.addAll(CommandWords.pairs());
    Set<String> flags = new HashSet<>(FLAGS);
    flags.addAll(CommandWords.flags());
    return new Words(args, withValue, flags);
  }

  private static JointOrder order(Words words, OrderReader reader) throws IOException {
    List<CommandWords.Word> said = words.among(orderWords());
    if (words.rest().isEmpty()) {
      if (said.isEmpty()) {
        throw Words.refused(1, "advise", "no order given", "ORDER.json or --bore … (see help)");
      }
      return CommandWords.order(reader, said);
    }
    if (words.rest().size() > 1 || !said.isEmpty()) {
      String extra = said.isEmpty() ? words.rest().get(1) : said.get(0).option();
      throw Words.refused(
          0, extra, "stands beside " + words.rest().get(0), "one order file, or words alone");
    }
    Path file = InputFile.of(words.rest().get(0));
    try (Reader in = InputFile.text(file)) {
      return reader.json(file.toString(), in);
    }
  }

  private static void onlyBatch(Words words) {
    for (String needed : List.of("--batch", "--out")) {
      if (!words.has(needed)) {
        throw Words.refused(0, needed, "is missing", "--batch JOBS.csv and --out RESULTS.csv");
      }
    }
    List<String> single = new ArrayList<>(orderWords());
    single.addAll(List.of("--card", "--why", "--json", "--stock", "--ledger"));
    List<String> extra = new ArrayList<>(words.rest());
    words.among(single).forEach(w -> extra.add(w.option()));
    if (!extra.isEmpty()) {
      throw Words.refused(0, extra.get(0), "stands beside --batch", "--out and --data only");
    }
  }

  private int batch(Words words, Advisor advisor, OrderReader reader) throws IOException {
    onlyBatch(words);
    Path jobs = InputFile.of(words.value("--batch").orElseThrow());
    Path results = OutputFile.of(words, "--out", ".csv", List.of(jobs.toString()));
    BatchRun.Count[] count = new BatchRun.Count[1];
    try (Reader in = new InputStreamReader(Files.newInputStream(jobs), StandardCharsets.UTF_8)) {
      OutputFile.write(
          results, to -> count[0] = BatchRun.run(jobs.toString(), in, to, advisor, reader, err));
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    out.println(
        count[0].answered()
            + " answered, "
            + count[0].refused()
            + " refused; written to "
            + results);
    return count[0].refused() == 0 ? ExitCode.ANSWER : ExitCode.BAD_INPUT;
  }
}
