package annulus.cli;

import annulus.report.StockCheckReport;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** {@code stock receive, use, discard, correct}: one movement into the ledger. */
final class StockMoveCommand {
  private static final Set<String> OPTIONS =
      Set.of(
          "--ledger",
          "--lot",
          "--ml",
          "--who",
          "--job",
          "--class",
          "--reason",
          "--witness",
          "--movement",
          "--on",
          "--stock",
          "--from",
          "--data");

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockMoveCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = new Words(args, OPTIONS, Set.of());
    Movement.Kind kind = Movement.Kind.valueOf(words.rest().get(0).toUpperCase(Locale.ROOT));
    if (words.rest().size() > 1) {
      throw Words.refused(3, words.rest().get(1), "is one word too many", "options (see help)");
    }
    String file = StockTables.needed(words, "--ledger");
    if (kind == Movement.Kind.RECEIVE && words.has("--from")) {
      return opening(words, file);
    }
    Ledger before = StockTables.ledger(file, err);
    Optional<Cabinet> cabinet = cabinet(words, before);
    Movement movement = movement(words, kind, before, cabinet);
    if (kind == Movement.Kind.USE && !before.has(movement.id())) {
      Optional<String> against = against(movement, cabinet);
      boolean overridden = words.has("--reason") && words.has("--witness");
      if (against.isPresent() && !overridden) {
        out.println("NOT recorded: " + against.get());
        out.println("To use it all the same give --reason and --witness: a pair glued and tested.");
        return ExitCode.ANSWER_IS_NO;
      }
    }
    LedgerFile.Outcome outcome = new LedgerFile(Path.of(file)).append(movement);
    confirm(movement, outcome, StockTables.ledger(file, err));
    return ExitCode.ANSWER;
  }

  private void confirm(Movement movement, LedgerFile.Outcome outcome, Ledger after) {
    String word = outcome == LedgerFile.Outcome.RECORDED ? "recorded " : "was recorded before ";
    String kind = movement.kind().name().toLowerCase(Locale.ROOT);
    String job = movement.job().isEmpty() ? "" : " for job " + movement.job();
    String left = after.left(movement.lot()) + " mL";
    out.println(
        word
            + movement.id()
            + ": "
            + kind
            + " "
            + movement.amount()
            + " mL, lot "
            + movement.lot()
            + job
            + "; left "
            + left);
  }

  private Optional<Cabinet> cabinet(Words words, Ledger ledger) throws IOException {
    Optional<String> sheet = words.value("--stock");
    if (sheet.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(StockTables.of(words).sheet(sheet.get()).cabinet().with(ledger));
  }

  private Movement movement(
      Words words, Movement.Kind kind, Ledger ledger, Optional<Cabinet> cabinet) {
    String lot = StockTables.needed(words, "--lot");
    double ml =
        StockTables.number(words, "--ml", -20_000, 20_000)
            .orElseThrow(() -> Words.refused(0, "--ml", "is missing", "--ml and an amount"));
    Instant now = surround.clock().instant();
    return new Movement(
        words.value("--movement").orElseGet(() -> UUID.randomUUID().toString()),
        now,
        StockTables.day(words, "--on", surround),
        kind,
        StockTables.needed(words, "--who"),
        words.value("--job").orElse(""),
        lot,
        item(words, lot, ledger, cabinet),
        Millilitres.of(ml),
        words.value("--reason").orElse(""),
        words.value("--witness").orElse(""));
  }

  private static String item(Words words, String lot, Ledger ledger, Optional<Cabinet> cabinet) {
    Optional<String> inSheet = cabinet.flatMap(c -> find(c, lot)).map(Lot::item);
    return words.value("--class").or(() -> inSheet).or(() -> ledger.itemOf(lot)).orElse("");
  }

  private static Optional<Lot> find(Cabinet cabinet, String lot) {
    return cabinet.lots().stream().filter(l -> l.lot().equals(lot)).findFirst();
  }

  /** Why a lot should not be used that day. */
  private Optional<String> against(Movement movement, Optional<Cabinet> cabinet) {
    if (cabinet.isEmpty()) {
      err.println("no --stock given: the use-by of lot " + movement.lot() + " is not checked");
      return Optional.empty();
    }
    Optional<Lot> lot = find(cabinet.get(), movement.lot());
    if (lot.isEmpty()) {
      return Optional.of("lot " + movement.lot() + " is not in the sheet, its use-by is unknown");
    }
    LocalDate day = movement.day();
    LotCheck check = LotCheck.of(lot.get(), cabinet.get().items().get(lot.get().item()), day, 0);
    if (!check.against().isEmpty()) {
      return Optional.of(StockCheckReport.words(check));
    }
    boolean sealed = !lot.get().isOpenOn(day);
    return sealed ? openOne(cabinet.get(), lot.get(), day) : Optional.empty();
  }

  /** A sealed one is not opened while an open one of the class is in date. */
  private static Optional<String> openOne(Cabinet cabinet, Lot sealed, LocalDate day) {
    return cabinet.usable(day).stream()
        .filter(l -> l.item().equals(sealed.item()) && l.isOpenOn(day))
        .findFirst()
        .map(
            l ->
                "lot "
                    + sealed.lot()
                    + " is sealed, and lot "
                    + l.lot()
                    + " of the same class is open and in date with "
                    + l.left()
                    + " mL");
  }

  /** Opens the ledger with what a sheet says is left; doing it twice changes nothing. */
  private int opening(Words words, String file) throws IOException {
    Cabinet sheet = StockTables.of(words).sheet(StockTables.needed(words, "--from")).cabinet();
    Ledger before = StockTables.ledger(file, err);
    List<Movement> movements = new ArrayList<>();
    for (Lot lot : sheet.lots()) {
      if (!before.knows(lot.lot()) && lot.left().isPositive()) {
        movements.add(received(lot, words));
      }
    }
    int count = new LedgerFile(Path.of(file)).merge(movements);
    out.println("received " + count + " lots from the sheet; those in the ledger stay as they are");
    return ExitCode.ANSWER;
  }

  private Movement received(Lot lot, Words words) {
    return new Movement(
        "opening-" + lot.lot(),
        surround.clock().instant(),
        StockTables.day(words, "--on", surround),
        Movement.Kind.RECEIVE,
        StockTables.needed(words, "--who"),
        "",
        lot.lot(),
        lot.item(),
        lot.left(),
        "opening balance from the sheet",
        "");
  }
}
