package annulus.cli;

import annulus.exchange.Nearest;
import annulus.report.LotTag;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** {@code stock tag}: a label for a container, from the shop's own text. */
final class StockTagCommand {
  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockTagCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--lot", "--out", "--on", "--ledger", "--data"), Set.of());
    String file = StockTables.stockFile(words, "stock tag");
    String lot = StockTables.needed(words, "--lot");
    LocalDate on = StockTables.day(words, "--on", surround);
    Cabinet sheet = StockTables.of(words).sheet(file, surround.today()).cabinet();
    Cabinet cabinet = sheet.with(StockTables.ledger(words, err).orElse(Ledger.EMPTY));
    LotCheck check =
        cabinet.check(on, 0).stream()
            .filter(c -> c.lot().lot().equals(lot))
            .findFirst()
            .orElseThrow(
                () ->
                    Words.refused(
                        0,
                        "--lot",
                        lot + " is not in " + file,
                        Nearest.allowed(lot, cabinet.lots().stream().map(Lot::lot).toList())));
    LotTag tag = new LotTag(check, on);
    Optional<String> page = words.value("--out");
    if (page.isPresent()) {
      Path to = OutputFile.of(words, "--out", ".html", List.of(file));
      OutputFile.write(to, tag.html());
    }
    out.print(tag.text());
    return check.usable() ? ExitCode.ANSWER : ExitCode.ANSWER_IS_NO;
  }
}
