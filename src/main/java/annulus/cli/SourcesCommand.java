package annulus.cli;

import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.exchange.OrderReader;
import annulus.report.SourceList;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Path;
import java.util.Set;

/** {@code sources}: every number behind an answer, with its source and confidence. */
final class SourcesCommand {
  private final Surround surround;
  private final PrintStream out;

  SourcesCommand(Surround surround, PrintStream out) {
    this.surround = surround;
    this.out = out;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--data"), Set.of());
    if (words.rest().size() != 1) {
      throw Words.refused(1, "sources", "needs one order", "sources ORDER.json (see help)");
    }
    Advisor advisor = Tables.advisor(words);
    Path file = InputFile.of(words.rest().get(0));
    try (Reader in = InputFile.text(file)) {
      JointOrder order =
          new OrderReader(advisor.knowledge(), surround.clock().instant(), surround.zoneWhenAsked())
              .json(file.toString(), in);
      out.print(SourceList.text(advisor.advise(order), advisor.knowledge()));
    }
    return ExitCode.ANSWER;
  }
}
