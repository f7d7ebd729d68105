package annulus.cli;

import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.advice.StockNeeds;
import annulus.report.StockChoice;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import java.io.IOException;
import java.io.PrintStream;
import java.time.LocalDate;

/** What the stock sheet and the ledger named on the command line have for an order. */
final class StockAnswer {
  private StockAnswer() {}

  static StockChoice of(
      Words words, Advisor advisor, JointOrder order, Surround surround, PrintStream err)
      throws IOException {
    StockTables tables = StockTables.of(words);
    LocalDate today = LocalDate.ofInstant(surround.clock().instant(), order.zone());
    // where it is later, of here and there: a lot that came today is not one to come
    LocalDate latest = today.isAfter(surround.today()) ? today : surround.today();
    Cabinet sheet = tables.sheet(words.value("--stock").orElseThrow(), latest).cabinet();
    Cabinet cabinet = sheet.with(StockTables.ledger(words, err).orElse(Ledger.EMPTY));
    return new StockChoice(
        new StockNeeds(advisor, tables.policy()).prefer(order, today, cabinet), cabinet);
  }
}
