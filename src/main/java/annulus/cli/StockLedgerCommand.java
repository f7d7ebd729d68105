package annulus.cli;

import annulus.exchange.StockSheet;
import annulus.report.DeliveryNotes;
import annulus.report.HeldNotes;
import annulus.report.StockCheckReport;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.Movement;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** {@code stock import, recall, export}: what the ledger holds. */
final class StockLedgerCommand {
  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockLedgerCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  /** Takes over another till's ledger. */
  int merge(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--ledger", "--from"), Set.of());
    String to = StockTables.toWrite(words, "--ledger");
    String from = StockTables.thereAlready(words, "--from");
    List<Movement> others = StockTables.ledger(from, err).movements();
    List<String> cameTwice = DeliveryNotes.of(others, StockTables.ledger(to, err));
    LedgerFile.Merged merged = new LedgerFile(Path.of(to)).merge(others);
    boolean named = !merged.openedTwice().isEmpty() || !merged.otherItem().isEmpty();
    String rest = named ? " or are named below" : "";
    out.println(
        merged.isNew()
            + " new movements of "
            + others.size()
            + "; the others were there before"
            + rest);
    merged.openedTwice().forEach(m -> out.println(openedTwice(m)));
    cameTwice.forEach(out::println);
    Ledger after = StockTables.ledger(to, err);
    merged.otherItem().stream().map(m -> otherItem(m, after)).distinct().forEach(out::println);
    HeldNotes.of(others, after).forEach(out::println);
    after.left().entrySet().stream()
        .filter(e -> e.getValue().microlitres() < 0)
        .forEach(
            e -> out.println("lot " + e.getKey() + ": " + e.getValue() + " mL: count it again"));
    return ExitCode.ANSWER;
  }

  private static String otherItem(Movement m, Ledger here) {
    return "lot "
        + m.lot()
        + ": it is "
        + here.itemOf(m.lot()).orElse("")
        + " here and "
        + m.item()
        + " there; what came in there was left out, what was used is in the ledger for a recall;"
        + " give the other bottle a lot number of its own";
  }

  private static String openedTwice(Movement m) {
    return "lot "
        + m.lot()
        + ": its opening balance of "
        + m.amount()
        + " mL was left out, the ledger has one already; count it if you doubt it";
  }

  /** Which jobs got a lot, or which lots went into a job. */
  int recall(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--ledger", "--lot", "--job"), Set.of());
    if (words.has("--lot") == words.has("--job")) {
      throw Words.refused(0, "stock recall", "needs one of two", "--lot X or --job Y");
    }
    Ledger ledger = StockTables.ledger(StockTables.thereAlready(words, "--ledger"), err);
    boolean byLot = words.has("--lot");
    String wanted = byLot ? StockTables.needed(words, "--lot") : StockTables.needed(words, "--job");
    boolean found = tell(ledger, wanted, byLot, "");
    List<String> alike = byLot ? ledger.lotsLike(wanted) : ledger.jobsLike(wanted);
    for (String other : alike) {
      tell(ledger, other, byLot, "LOOK AT THIS TOO, it may be the same: ");
    }
    return found ? ExitCode.ANSWER : ExitCode.ANSWER_IS_NO;
  }

  private boolean tell(Ledger ledger, String wanted, boolean byLot, String before) {
    List<Movement> uses = ledger.uses(m -> byLot ? m.lot().equals(wanted) : m.job().equals(wanted));
    if (uses.isEmpty()) {
      String known = byLot && ledger.knows(wanted) ? ": nothing used yet" : " is not in the ledger";
      out.println(before + (byLot ? "lot " : "job ") + wanted + known);
      heldBack(ledger, wanted, byLot);
      return false;
    }
    Set<String> others = byLot ? ledger.jobsOf(wanted) : ledger.lotsOf(wanted);
    out.println(
        before
            + (byLot ? "lot " + wanted + " went into jobs: " : "job " + wanted + " got lots: ")
            + String.join(", ", others));
    heldBack(ledger, wanted, byLot);
    Map<String, List<HeldBack>> heldBack = byLot ? Map.of() : ledger.heldBack();
    for (Movement use : uses) {
      boolean held = heldBack.containsKey(use.lot());
      out.println("  " + line(use) + (held ? "; THAT LOT IS HELD BACK" : ""));
    }
    return true;
  }

  private void heldBack(Ledger ledger, String lot, boolean byLot) {
    if (byLot) {
      ledger.heldBack(lot).forEach(h -> out.println("  " + StockCheckReport.heldBack(lot, h)));
    }
  }

  private static String line(Movement m) {
    String job = m.job().isEmpty() ? "no job" : "job " + m.job();
    String item = m.item().isEmpty() ? "" : " (" + m.item() + ")";
    String why = m.reason().isEmpty() ? "" : "; " + m.reason();
    String witness = m.witness().isEmpty() ? "" : "; witness pair: " + m.witness();
    return m.day()
        + "  "
        + m.amount()
        + " mL of lot "
        + m.lot()
        + item
        + ", "
        + job
        + ", by "
        + m.who()
        + why
        + witness;
  }

  /** The sheet with what the ledger says is left. */
  int export(String[] args) throws IOException {
    Words words = new Words(args, Set.of("--ledger", "--out", "--data"), Set.of());
    String file = StockTables.stockFile(words, "stock export");
    String to = StockTables.needed(words, "--out");
    StockSheet sheet = StockTables.of(words).sheet(file, surround.today());
    Ledger ledger = StockTables.ledger(StockTables.thereAlready(words, "--ledger"), err);
    StockSheet now = sheet.with(sheet.cabinet().with(ledger));
    Path written = OutputFile.of(words, "--out", ".csv", List.of(file));
    String text = now.text();
    // refuses here what the next command would refuse, before the sheet is lost to it
    StockSheet.read(to, new StringReader(text), now.cabinet().items());
    OutputFile.write(written, text);
    out.println("written to " + to);
    StockTables.disagreements(now.cabinet(), ledger).forEach(n -> out.println("note: " + n));
    return ExitCode.ANSWER;
  }
}
