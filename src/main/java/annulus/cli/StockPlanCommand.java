package annulus.cli;

import annulus.advice.Advisor;
import annulus.advice.StockNeeds;
import annulus.exchange.BatchOrders;
import annulus.exchange.OrderReader;
import annulus.exchange.PromisedOrder;
import annulus.quantity.InvalidValue;
import annulus.report.HeldNotes;
import annulus.report.StockPlanReport;
import annulus.stock.Allocation;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import annulus.stock.Need;
import annulus.stock.Reorder;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** {@code stock plan}: which lot goes to which job, what is short, what to order. */
final class StockPlanCommand {
  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockPlanCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--jobs", "--on", "--ledger", "--data"), Set.of());
    String file = StockTables.stockFile(words, "stock plan");
    String jobs = StockTables.needed(words, "--jobs");
    LocalDate on = StockTables.day(words, "--on", surround);
    StockTables tables = StockTables.of(words);
    Cabinet sheet = tables.sheet(file, surround.today()).cabinet();
    Ledger ledger = StockTables.ledger(words, err).orElse(Ledger.EMPTY);
    Cabinet cabinet = sheet.with(ledger);
    List<String> refused = new ArrayList<>();
    List<Need> needs = needs(jobs, tables, cabinet, on, refused);
    Allocation.Result result = Allocation.of(cabinet, on, needs);
    List<Reorder> orders =
        Reorder.list(result.after(), result.plans(), ledger, on, tables.policy());
    StockPlanReport report =
        new StockPlanReport(on, surround.zone(), result.plans(), orders, refused);
    out.print(report.text());
    out.print(HeldNotes.leftOut(cabinet));
    return report.isNo() ? ExitCode.ANSWER_IS_NO : ExitCode.ANSWER;
  }

  private List<Need> needs(
      String jobs, StockTables tables, Cabinet cabinet, LocalDate on, List<String> refused)
      throws IOException {
    Advisor advisor = new Advisor(tables.knowledge());
    StockNeeds asked = new StockNeeds(advisor, tables.policy());
    OrderReader orders =
        new OrderReader(tables.knowledge(), surround.clock().instant(), surround.zone());
    List<Need> needs = new ArrayList<>();
    try (Reader in = InputFile.text(InputFile.of(jobs))) {
      BatchOrders.read(
          jobs,
          in,
          orders,
          PromisedOrder.COLUMNS,
          row -> {
            row.problems().forEach(p -> refused.add(p.toString()));
            try {
              row.order().ifPresent(o -> needs.add(asked.of(o, row.line(), on, cabinet)));
            } catch (InvalidValue e) {
              refused.add(jobs + ":" + row.line() + ": " + e.getMessage());
            }
          });
    }
    return needs;
  }
}
