package annulus.cli;

import annulus.quantity.InvalidValue;
import annulus.report.StockCheckReport;
import annulus.stock.Cabinet;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.Movement;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;

/** {@code stock hold-back, clear}: a lot that must not be used until somebody clears it. */
final class StockHeldCommand {
  private static final Set<String> OPTIONS =
      Set.of("--ledger", "--lot", "--who", "--reason", "--on", "--movement", "--stock", "--data");

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockHeldCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int holdBack(String[] args) throws IOException {
    Words words = words(args);
    String file = StockTables.toWrite(words, "--ledger");
    Ledger before = StockTables.ledger(file, err);
    Optional<Cabinet> cabinet = cabinet(words, before);
    String lot = StockTables.needed(words, "--lot").strip();
    Set<String> known = StockTables.knownLots(before, cabinet);
    if (!known.contains(lot)) {
      throw StockTables.unknownLot(words, lot, known);
    }
    Movement movement =
        Movement.holdBack(
            words.value("--movement").orElseGet(() -> UUID.randomUUID().toString()),
            now(),
            StockTables.movedOn(words, surround),
            StockTables.needed(words, "--who"),
            lot,
            item(lot, before, cabinet),
            StockTables.needed(words, "--reason"));
    record(file, movement);
    Ledger after = StockTables.ledger(file, err);
    if (after.heldBack(lot).stream().noneMatch(h -> h.id().equals(movement.id()))) {
      out.println("NOT held back by it: that was cleared. Hold it back with another --movement.");
      return ExitCode.ANSWER_IS_NO;
    }
    after.heldBack(lot).forEach(h -> out.println(StockCheckReport.heldBack(lot, h)));
    jobs(after, lot, file);
    after.lotsLike(lot).forEach(l -> out.println(alike(l, after)));
    return ExitCode.ANSWER;
  }

  int clear(String[] args) throws IOException {
    Words words = words(args);
    String file = StockTables.thereAlready(words, "--ledger");
    Ledger before = StockTables.ledger(file, err);
    Optional<Cabinet> cabinet = cabinet(words, before);
    String lot = StockTables.needed(words, "--lot").strip();
    LocalDate day = StockTables.movedOn(words, surround);
    Movement movement =
        Movement.clear(
            toClear(words, lot, before),
            now(),
            day,
            StockTables.needed(words, "--who"),
            lot,
            item(lot, before, cabinet),
            StockTables.needed(words, "--reason"));
    record(file, movement);
    Ledger after = StockTables.ledger(file, err);
    List<HeldBack> still = StockTables.heldBack(lot, cabinet.map(c -> c.with(after)), after);
    out.println(
        still.isEmpty()
            ? "lot " + lot + " is held back no more; its dates and its storage still count"
            : "STILL HELD BACK: "
                + still.stream()
                    .map(h -> StockCheckReport.heldBack(lot, h))
                    .collect(Collectors.joining("; ")));
    return ExitCode.ANSWER;
  }

  private static Words words(String[] args) {
    return StockTables.options(args, OPTIONS);
  }

  private Instant now() {
    return surround.clock().instant();
  }

  private Optional<Cabinet> cabinet(Words words, Ledger ledger) throws IOException {
    return StockTables.cabinet(words, ledger, surround);
  }

  private static String item(String lot, Ledger ledger, Optional<Cabinet> cabinet) {
    return ledger.itemOf(lot).or(() -> cabinet.flatMap(c -> c.lot(lot)).map(Lot::item)).orElse("");
  }

  /** A slip in the lot, or several things of which nobody says which, at the word that says it. */
  private static HeldBack toClear(Words words, String lot, Ledger ledger) {
    try {
      return ledger.toClear(lot, words.value("--movement"));
    } catch (InvalidValue e) {
      throw words.refused("--" + e.field(), e.problem(), e.allowed());
    }
  }

  private void record(String file, Movement movement) throws IOException {
    LedgerFile.Outcome outcome = StockTables.recorded(file, movement);
    boolean isNew = outcome == LedgerFile.Outcome.RECORDED;
    out.println((isNew ? "recorded " : "was recorded before ") + movement.id());
  }

  /** Their hand-back rests on what is in doubt now. */
  private void jobs(Ledger ledger, String lot, String file) {
    Set<String> jobs = ledger.jobsOf(lot);
    out.println(
        jobs.isEmpty()
            ? "no job got any of it by this ledger"
            : "jobs that got it, look at each before it is handed back: "
                + String.join(", ", jobs));
    out.println("each use of it: stock recall --ledger " + file + " --lot " + lot);
  }

  private static String alike(String lot, Ledger ledger) {
    return "LOOK AT THIS TOO, it may be the same: lot "
        + lot
        + (ledger.heldBack(lot).isEmpty() ? ", NOT held back" : ", held back");
  }
}
