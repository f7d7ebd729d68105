package annulus.cli;

import annulus.exchange.Nearest;
import annulus.report.StockCheckReport;
import annulus.stock.Cabinet;
import annulus.stock.EntryDays;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.Spelling;
import annulus.stock.StockItem;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
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
          "--counted",
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

  /** What tells of one movement; a whole sheet says it of each of its lots. */
  private static final List<String> OF_ONE_MOVEMENT =
      List.of(
          "--lot",
          "--ml",
          "--counted",
          "--class",
          "--job",
          "--reason",
          "--witness",
          "--movement",
          "--stock");

  private final Surround surround;
  private final PrintStream out;
  private final PrintStream err;

  StockMoveCommand(Surround surround, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.out = out;
    this.err = err;
  }

  int run(String[] args) throws IOException {
    Words words = StockTables.options(args, OPTIONS);
    Movement.Kind kind = Movement.Kind.valueOf(words.rest().get(0).toUpperCase(Locale.ROOT));
    String file = StockTables.toWrite(words, "--ledger");
    if (words.has("--from")) {
      requireAlone(words, kind);
      return opening(words, file);
    }
    Ledger before = StockTables.ledger(file, err);
    Optional<Cabinet> cabinet = StockTables.cabinet(words, before, surround);
    Millilitres said = said(words, kind);
    String lot = lot(words, kind, before, cabinet);
    boolean counted = words.has("--counted");
    Millilitres amount = counted ? said.minus(before.left(lot)) : said;
    if (counted && amount.equals(Millilitres.NONE)) {
      out.println("nothing to record: lot " + lot + " has " + before.left(lot) + " mL as booked");
      return ExitCode.ANSWER;
    }
    Movement movement =
        movement(words, kind, lot, amount, item(words, lot, before, cabinet), before);
    if (!before.has(movement.id())) {
      cabinet.flatMap(c -> c.lot(lot)).ifPresent(l -> l.requireRoom(movement, before.left(lot)));
    }
    if (kind == Movement.Kind.USE && !before.has(movement.id())) {
      Optional<Refusal> refusal = refusal(words, movement, before, cabinet);
      if (refusal.isPresent()) {
        out.println("NOT recorded: " + refusal.get().problem());
        out.println(refusal.get().cure());
        return ExitCode.ANSWER_IS_NO;
      }
    }
    LedgerFile.Outcome outcome = StockTables.recorded(file, movement);
    confirm(movement, outcome, StockTables.ledger(file, err));
    return ExitCode.ANSWER;
  }

  /**
   * Why a use is not recorded.
   *
   * @param problem what stands against it
   * @param cure what to do
   */
  private record Refusal(String problem, String cure) {}

  private Optional<Refusal> refusal(
      Words words, Movement use, Ledger before, Optional<Cabinet> cabinet) {
    Optional<HeldBack> held =
        StockTables.heldBack(use.lot(), cabinet, before).stream()
            .filter(h -> h.stops(use))
            .findFirst();
    if (held.isPresent()) {
      return Optional.of(
          new Refusal(
              StockCheckReport.heldBack(use.lot(), held.get()) + ".",
              "Take another lot. "
                  + (held.get().isOfSheet()
                      ? "To clear it empty held_back and held_back_on in the sheet. "
                      : "To clear it: stock clear --ledger LEDGER --lot LOT --who NAME --reason"
                          + " TEXT. ")
                  + StockCheckReport.USED_BEFORE));
    }
    boolean reason = words.has("--reason");
    Optional<LocalDate> came = EntryDays.came(use.lot(), cabinet, before);
    if (came.filter(use.day()::isBefore).isPresent() && !reason) {
      return Optional.of(
          new Refusal(
              "lot " + use.lot() + " came on " + came.get() + ", it can't be used on " + use.day(),
              "To record it all the same give --reason."));
    }
    Optional<String> against = against(use, cabinet);
    if (against.isPresent() && !(reason && words.has("--witness"))) {
      return Optional.of(
          new Refusal(
              against.get(),
              "To use it all the same give --reason and --witness: a pair glued and tested."));
    }
    return openOne(use, cabinet)
        .filter(o -> !reason)
        .map(o -> new Refusal(o, "To open it all the same give --reason."));
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

  /** The lot; only what comes in may have a number that nobody knows. */
  private String lot(Words words, Movement.Kind kind, Ledger ledger, Optional<Cabinet> cabinet) {
    String lot = StockTables.needed(words, "--lot").strip();
    Set<String> known = StockTables.knownLots(ledger, cabinet);
    int position = words.among(List.of("--lot")).get(0).position();
    boolean takes = kind == Movement.Kind.USE || kind == Movement.Kind.DISCARD;
    if (known.contains(lot) && takes && !ledger.knows(lot)) {
      throw Words.refused(
          position,
          "--lot",
          "\"" + lot + "\" is in the sheet, not yet in the ledger",
          StockTables.RECEIVE);
    }
    if (known.contains(lot)) {
      return lot;
    }
    if (kind != Movement.Kind.RECEIVE) {
      throw StockTables.unknownLot(words, lot, known);
    }
    Spelling.alike(lot, known)
        .forEach(l -> err.println("lot " + lot + " is new; there is a lot " + l + " already"));
    return lot;
  }

  /** The amount as typed: what moves, or for a correction also what was counted. */
  private static Millilitres said(Words words, Movement.Kind kind) {
    if (kind != Movement.Kind.CORRECT && words.has("--counted")) {
      throw Words.refused(0, "--counted", "is for stock correct", "--ml and an amount");
    }
    if (words.has("--counted") == words.has("--ml")) {
      String allowed = kind == Movement.Kind.CORRECT ? "--counted or --ml" : "--ml";
      throw Words.refused(
          0,
          kind == Movement.Kind.CORRECT ? "stock correct" : "--ml",
          words.has("--ml") ? "has two amounts" : "is missing",
          allowed + " and an amount");
    }
    return Millilitres.of(
        StockTables.number(words, "--counted", 0, 20_000)
            .or(() -> StockTables.number(words, "--ml", -20_000, 20_000))
            .orElseThrow());
  }

  private Movement movement(
      Words words, Movement.Kind kind, String lot, Millilitres amount, String item, Ledger before)
      throws IOException {
    if (kind == Movement.Kind.RECEIVE && item.isEmpty()) {
      throw Words.refused(
          0, "--class", "is missing: nobody says what is in lot " + lot, "--class and its id");
    }
    // a first delivery is named after its lot: another ledger that opens the lot tells of the same
    boolean first = kind == Movement.Kind.RECEIVE && !before.knows(lot);
    return new Movement(
        words
            .value("--movement")
            .orElseGet(() -> first ? "received-" + lot : UUID.randomUUID().toString()),
        surround.clock().instant(),
        StockTables.movedOn(words, surround),
        kind,
        StockTables.needed(words, "--who"),
        words.value("--job").orElse("").strip(),
        lot,
        item,
        amount,
        words.value("--reason").orElse(""),
        words.value("--witness").orElse(""));
  }

  private static String item(Words words, String lot, Ledger ledger, Optional<Cabinet> cabinet)
      throws IOException {
    Optional<String> said = words.value("--class");
    if (said.isPresent()) {
      Set<String> items = StockTables.of(words).items().keySet();
      if (!items.contains(said.get())) {
        throw words.refused(
            "--class", "\"" + said.get() + "\" is unknown", Nearest.allowed(said.get(), items));
      }
      cabinet.flatMap(c -> c.lot(lot)).ifPresent(l -> l.requireItem(said.get()));
      return said.get();
    }
    Optional<String> inSheet = cabinet.flatMap(c -> c.lot(lot)).map(Lot::item);
    return inSheet.or(() -> ledger.itemOf(lot)).orElse("");
  }

  /** Why a lot should not be used that day. */
  private Optional<String> against(Movement movement, Optional<Cabinet> cabinet) {
    if (cabinet.isEmpty()) {
      err.println("no --stock given: the use-by of lot " + movement.lot() + " is not checked");
      return Optional.empty();
    }
    Optional<Lot> lot = cabinet.get().lot(movement.lot());
    if (lot.isEmpty()) {
      return Optional.of("lot " + movement.lot() + " is not in the sheet, its use-by is unknown");
    }
    StockItem item = cabinet.get().items().get(lot.get().item());
    // what holds it back was looked at before: here it is about its dates and its storage
    Lot free = lot.get().heldBackFor(List.of());
    LotCheck check = LotCheck.of(free, item, movement.day(), 0);
    return check.against().isEmpty()
        ? Optional.empty()
        : Optional.of(StockCheckReport.words(check));
  }

  /** A sealed one is not opened while an open one of the class is in date and holds enough. */
  private static Optional<String> openOne(Movement movement, Optional<Cabinet> cabinet) {
    return cabinet
        .flatMap(c -> c.lot(movement.lot()))
        .flatMap(l -> cabinet.get().openInstead(l, movement.amount(), movement.day()))
        .map(l -> StockCheckReport.openInstead(movement.lot(), l));
  }

  /** A word that the whole sheet would swallow is refused: it would look as if it had counted. */
  private static void requireAlone(Words words, Movement.Kind kind) {
    if (kind != Movement.Kind.RECEIVE) {
      throw words.refused("--from", "is for stock receive", "--lot and --ml");
    }
    for (String single : OF_ONE_MOVEMENT) {
      if (words.has(single)) {
        throw words.refused(
            single,
            "does not go with --from, which takes in every lot of the sheet",
            "--who and --on beside --from, or " + single + " without it");
      }
    }
  }

  /** Opens the ledger with what a sheet says is left; doing it twice changes nothing. */
  private int opening(Words words, String file) throws IOException {
    String from = StockTables.needed(words, "--from");
    Cabinet sheet = StockTables.of(words).sheet(from, surround.today()).cabinet();
    Ledger before = StockTables.ledger(file, err);
    List<Movement> movements = new ArrayList<>();
    for (Lot lot : sheet.lots()) {
      if (!before.knows(lot.lot()) && lot.left().isPositive()) {
        movements.add(received(lot, words));
      }
      movements.addAll(heldBack(lot, words, before));
    }
    sheet.lots().forEach(l -> tellOther(l, before.itemOf(l.lot())));
    long held = movements.stream().filter(m -> m.kind() == Movement.Kind.HOLD_BACK).count();
    long count = new LedgerFile(Path.of(file)).merge(movements).isNew() - held;
    out.println("received " + count + " lots from the sheet; those in the ledger stay as they are");
    if (held > 0) {
      out.println("held back as the sheet says: " + held);
    }
    return ExitCode.ANSWER;
  }

  /** What the sheet holds back and the ledger has never heard of. */
  private List<Movement> heldBack(Lot lot, Words words, Ledger before) throws IOException {
    List<Movement> movements = new ArrayList<>();
    for (HeldBack held : before.unheard(lot)) {
      movements.add(
          held.ofSheet(lot, surround.clock().instant(), StockTables.needed(words, "--who")));
    }
    return movements;
  }

  private void tellOther(Lot lot, Optional<String> booked) {
    booked
        .filter(i -> !i.equals(lot.item()))
        .ifPresent(
            i ->
                err.println(
                    "lot "
                        + lot.lot()
                        + " is "
                        + i
                        + " in the ledger, and "
                        + lot.item()
                        + " in the sheet"));
  }

  private Movement received(Lot lot, Words words) throws IOException {
    return new Movement(
        "opening-" + lot.lot(),
        surround.clock().instant(),
        StockTables.movedOn(words, surround),
        Movement.Kind.RECEIVE,
        StockTables.needed(words, "--who"),
        "",
        lot.lot(),
        lot.item(),
        lot.left(),
        Movement.OPENING,
        "");
  }
}
