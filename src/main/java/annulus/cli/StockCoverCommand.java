package annulus.cli;

import annulus.advice.CoverSurvey;
import annulus.exchange.StockFiles;
import annulus.report.CoverPicture;
import annulus.report.CoverReport;
import annulus.report.HeldNotes;
import annulus.stock.Cabinet;
import annulus.stock.Cover;
import annulus.stock.CoverAxes;
import annulus.stock.Ledger;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** {@code stock cover}: which joints the cabinet serves, and what would close the holes. */
final class StockCoverCommand {
  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockCoverCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--picture", "--on", "--ledger", "--data"), Set.of());
    String file = StockTables.stockFile(words, "stock cover");
    LocalDate on = StockTables.day(words, "--on", surround);
    StockTables tables = StockTables.of(words);
    Cabinet sheet = tables.sheet(file, surround.today()).cabinet();
    Cabinet cabinet = sheet.with(StockTables.ledger(words, err).orElse(Ledger.EMPTY));
    Set<String> there = new TreeSet<>(cabinet.inDateClasses(on));
    there.addAll(cabinet.inDatePrimers(on));
    CoverAxes axes = StockFiles.cover(tables.files());
    Cover cover = new Cover(CoverSurvey.cells(tables.knowledge(), tables.policy(), axes), there);
    CoverReport report = new CoverReport(cover, axes);
    out.print(report.text());
    out.print(HeldNotes.leftOut(cabinet));
    Optional<String> picture = words.value("--picture");
    if (picture.isPresent()) {
      Path to = OutputFile.of(words, "--picture", ".svg", List.of(file));
      OutputFile.write(to, CoverPicture.svg(report));
      out.println("Picture written to " + picture.get());
    }
    return there.isEmpty() ? ExitCode.ANSWER_IS_NO : ExitCode.ANSWER;
  }
}
