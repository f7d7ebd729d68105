package annulus.cli;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.advice.StockNeeds;
import annulus.report.StockChoiceText;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import java.io.IOException;
import java.io.PrintStream;
import java.time.LocalDate;

/**
 * The answer to an order with what the cabinet has.
 *
 * @param advice with a class in stock where one does, else with the best of all
 * @param words which lot, and what it costs against the best class
 */
record StockAnswer(Advice advice, String words) {

  static StockAnswer of(
      Words words, Advisor advisor, JointOrder order, Surround surround, PrintStream err)
      throws IOException {
    StockTables tables = StockTables.of(words);
    LocalDate today = LocalDate.ofInstant(surround.clock().instant(), order.zone());
    // where it is later, of here and there: a lot that came today is not one to come
    LocalDate latest = today.isAfter(surround.today()) ? today : surround.today();
    Cabinet sheet = tables.sheet(words.value("--stock").orElseThrow(), latest).cabinet();
    Cabinet cabinet = sheet.with(StockTables.ledger(words, err).orElse(Ledger.EMPTY));
    StockNeeds.Preferred preferred =
        new StockNeeds(advisor, tables.policy()).prefer(order, today, cabinet);
    Advice advice = preferred.cabinetWillDo() ? preferred.inStock() : preferred.best();
    return new StockAnswer(advice, StockChoiceText.of(preferred, cabinet));
  }
}
