package annulus.cli;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.exchange.CommandWords;
import annulus.exchange.DataFiles;
import annulus.exchange.OrderReader;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
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
        new OrderReader(advisor.knowledge(), surround.clock().instant(), surround.zone());
    JointOrder order = order(words, reader);
    Advice advice = advisor.advise(order);
    out.print(annulus.report.TextReport.of(advice, advisor.catalog(), words.has("--why")));
    err.flush();
    return advice.decision().kind().isYes() ? ExitCode.ANSWER : ExitCode.ANSWER_IS_NO;
  }

  private static Words words(String[] args) {
    Set<String> withValue = new HashSet<>(List.of("--card", "--batch", "--out", "--data"));
    withValue.addAll(CommandWords.single());
    withValue.addAll(CommandWords.pairs());
    Set<String> flags = new HashSet<>(FLAGS);
    flags.addAll(CommandWords.flags());
    return new Words(args, withValue, flags);
  }

  private static JointOrder order(Words words, OrderReader reader) throws IOException {
    List<String> names = new ArrayList<>(CommandWords.single());
    names.addAll(CommandWords.pairs());
    names.addAll(CommandWords.flags());
    if (words.rest().isEmpty()) {
      return CommandWords.order(reader, words.among(names));
    }
    Path file = Path.of(words.rest().get(0));
    try (Reader in = DataFiles.utf8(Files.newInputStream(file))) {
      return reader.json(file.toString(), in);
    }
  }
}
