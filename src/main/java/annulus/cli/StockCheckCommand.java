package annulus.cli;

import annulus.report.StockCheckReport;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import java.io.IOException;
import java.io.PrintStream;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** {@code stock check}: what may be used today, what soon not, what must not and why. */
final class StockCheckCommand {
  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockCheckCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words =
        new Words(args, Set.of("--on", "--within", "--ledger", "--data"), Set.of("--json"));
    String file = StockTables.stockFile(words, "stock check");
    LocalDate on = StockTables.day(words, "--on", surround);
    StockTables tables = StockTables.of(words);
    double soon = tables.policy().value("soon-days");
    long within = Math.round(StockTables.number(words, "--within", 0, 3650).orElse(soon));
    Cabinet sheet = tables.sheet(file, surround.today()).cabinet();
    Optional<Ledger> ledger = StockTables.ledger(words, err);
    List<String> notes = ledger.map(l -> StockTables.disagreements(sheet, l)).orElse(List.of());
    Cabinet cabinet = ledger.map(sheet::with).orElse(sheet);
    StockCheckReport report = new StockCheckReport(on, within, cabinet.check(on, within), notes);
    out.print(words.has("--json") ? report.json() : report.text());
    return report.isNo() ? ExitCode.ANSWER_IS_NO : ExitCode.ANSWER;
  }
}
