package annulus.cli;

import annulus.quantity.InvalidValue;
import annulus.stock.Ledger;
import annulus.stock.Movement;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.util.Locale;
import java.util.Set;

/** {@code stock take-back}: a movement that was recorded and did not take place. */
final class StockTakeBackCommand {
  private static final Set<String> OPTIONS = Set.of("--ledger", "--movement", "--who", "--reason");

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockTakeBackCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = StockTables.options(args, OPTIONS);
    String file = StockTables.thereAlready(words, "--ledger");
    Ledger before = StockTables.ledger(file, err);
    Movement taken = taken(words, before);
    Movement back =
        Movement.takeBack(
            taken,
            surround.clock().instant(),
            surround.today(),
            StockTables.needed(words, "--who"),
            words.value("--reason").orElse(""));
    LedgerFile.Outcome outcome = StockTables.recorded(file, back);
    Ledger after = StockTables.ledger(file, err);
    out.println(
        (outcome == LedgerFile.Outcome.RECORDED ? "recorded " : "was recorded before ")
            + back.id()
            + ": took back: "
            + taken.kind().name().toLowerCase(Locale.ROOT)
            + " "
            + taken.amount()
            + " mL, lot "
            + taken.lot()
            + "; left "
            + after.left(taken.lot())
            + " mL");
    return ExitCode.ANSWER;
  }

  private static Movement taken(Words words, Ledger ledger) {
    String id = StockTables.needed(words, "--movement");
    try {
      return ledger.takenOrToTakeBack(id);
    } catch (InvalidValue e) {
      throw words.refused("--" + e.field(), e.problem(), e.allowed());
    }
  }
}
