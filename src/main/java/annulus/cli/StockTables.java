package annulus.cli;

import annulus.advice.Knowledge;
import annulus.catalog.Policy;
import annulus.exchange.DataFiles;
import annulus.exchange.InputRefused;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.Nearest;
import annulus.exchange.StockFiles;
import annulus.exchange.StockSheet;
import annulus.quantity.InvalidValue;
import annulus.report.CountNotes;
import annulus.stock.Cabinet;
import annulus.stock.EntryDays;
import annulus.stock.HeldBack;
import annulus.stock.Ledger;
import annulus.stock.Lot;
import annulus.stock.Movement;
import annulus.stock.StockItem;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * The tables, sheets and ledgers that stock commands share.
 *
 * @param files where the tables come from
 * @param knowledge all that answers are judged by
 * @param policy the numbers of the stock
 * @param items what lots can be
 */
record StockTables(
    DataFiles files, Knowledge knowledge, Policy policy, Map<String, StockItem> items) {

  static final String RECEIVE =
      "first stock receive --ledger LEDGER --from SHEET, which opens it with what the sheet says";

  static StockTables of(Words words) throws IOException {
    DataFiles files = Tables.files(words);
    Knowledge knowledge = KnowledgeFiles.read(files);
    Policy policy = StockFiles.policy(files);
    return new StockTables(files, knowledge, policy, StockItem.all(knowledge.catalog(), policy));
  }

  /**
   * A shop's sheet.
   *
   * @param today no lot can have come, been opened or held back later
   */
  StockSheet sheet(String file, LocalDate today) throws IOException {
    try (Reader in = InputFile.text(InputFile.of(file))) {
      return StockSheet.read(file, in, items).requireBeen(today);
    }
  }

  /** The cabinet of {@code --stock} as a ledger counts it. */
  static Optional<Cabinet> cabinet(Words words, Ledger ledger, Surround surround)
      throws IOException {
    Optional<String> sheet = words.value("--stock");
    return sheet.isEmpty()
        ? Optional.empty()
        : Optional.of(of(words).sheet(sheet.get(), surround.today()).cabinet().with(ledger));
  }

  /** What holds a lot back, by the cabinet as the ledger counts it, else by the ledger. */
  static List<HeldBack> heldBack(String lot, Optional<Cabinet> cabinet, Ledger ledger) {
    return cabinet
        .flatMap(c -> c.lot(lot))
        .map(Lot::heldBack)
        .orElseGet(() -> ledger.heldBack(lot));
  }

  /** The words of a sub-command that takes options alone. */
  static Words options(String[] args, Set<String> options) {
    Words words = new Words(args, options, Set.of());
    if (words.rest().size() > 1) {
      throw Words.refused(3, words.rest().get(1), "is one word too many", "options (see help)");
    }
    return words;
  }

  /** The file named after the sub-command. */
  static String stockFile(Words words, String what) {
    if (words.rest().size() != 2) {
      throw Words.refused(
          2, "stock " + words.rest().get(0), "needs one file", what + " STOCK.csv (see help)");
    }
    return words.rest().get(1);
  }

  /** The ledger of {@code --ledger}, to read only; a line cut off is said on stderr. */
  static Optional<Ledger> ledger(Words words, PrintStream err) throws IOException {
    return words.has("--ledger")
        ? Optional.of(ledger(thereAlready(words, "--ledger"), err))
        : Optional.empty();
  }

  /** A ledger that a command only reads: a slip in its name must not count as an empty one. */
  static String thereAlready(Words words, String option) {
    String file = needed(words, option);
    if (!Files.isRegularFile(Path.of(file))) {
      throw words.refused(option, file + " is not a file", "a ledger");
    }
    return file;
  }

  /** A ledger that a command writes, and makes where its folder is there. */
  static String toWrite(Words words, String option) {
    String file = needed(words, option);
    Path folder = InputFile.of(file).toAbsolutePath().getParent();
    if (folder == null || !Files.isDirectory(folder)) {
      throw words.refused(
          option, "there is no folder " + folder, "a ledger in a folder that is there");
    }
    return file;
  }

  /** What a ledger holds; one that is not there yet is empty. */
  static Ledger ledger(String file, PrintStream err) throws IOException {
    LedgerFile.Reading reading = new LedgerFile(Path.of(file)).read();
    reading.torn().ifPresent(err::println);
    return reading.ledger();
  }

  /** What sheet and ledger do not agree on. */
  static List<String> disagreements(Cabinet sheet, Ledger ledger) {
    List<String> notes = new ArrayList<>(CountNotes.of(sheet.lots(), ledger));
    for (var lot : sheet.lots()) {
      if (ledger.knows(lot.lot()) && !ledger.left(lot.lot()).equals(lot.left())) {
        notes.add(
            "lot "
                + lot.lot()
                + ": the sheet says "
                + lot.left()
                + " mL left, the ledger "
                + ledger.left(lot.lot())
                + " mL; the ledger counts");
      }
    }
    for (var lot : sheet.lots()) {
      for (HeldBack held : lot.heldBack()) {
        boolean cleared = ledger.heldBack(lot.lot()).stream().noneMatch(held::isSame);
        if (held.isOfSheet() && cleared && ledger.hasHeldBack(lot.lot(), held)) {
          notes.add(
              "lot "
                  + lot.lot()
                  + ": the sheet says "
                  + held.words()
                  + "; the ledger has cleared that and counts");
        }
      }
    }
    for (var entry : ledger.left().entrySet()) {
      boolean known = sheet.lots().stream().anyMatch(l -> l.lot().equals(entry.getKey()));
      if (!known && entry.getValue().microlitres() != 0) {
        notes.add(
            "lot "
                + entry.getKey()
                + ": "
                + entry.getValue()
                + " mL in the ledger, not in the sheet");
      }
    }
    return notes;
  }

  /** A day given as an option, or today. */
  static LocalDate day(Words words, String option, Surround surround) {
    Optional<String> text = words.value(option);
    if (text.isEmpty()) {
      return surround.today();
    }
    try {
      return LocalDate.parse(text.get());
    } catch (DateTimeException e) {
      throw words.refused(
          option, "\"" + text.get() + "\" is not a day", "year-month-day such as 2026-11-25");
    }
  }

  /** The day of a movement: never one to come, never one that only a slip in the year makes. */
  static LocalDate movedOn(Words words, Surround surround) throws IOException {
    LocalDate day = day(words, "--on", surround);
    LocalDate today = surround.today();
    if (day.equals(today)) {
      return day;
    }
    try {
      EntryDays.requireMoved("--on", day, today, of(words).policy());
    } catch (InvalidValue e) {
      throw words.refused(e.field(), e.problem(), e.allowed());
    }
    return day;
  }

  /** Every lot that a ledger or a sheet names. */
  static Set<String> knownLots(Ledger ledger, Optional<Cabinet> cabinet) {
    Set<String> known = new TreeSet<>(ledger.left().keySet());
    cabinet.ifPresent(c -> c.lots().forEach(l -> known.add(l.lot())));
    return known;
  }

  static InputRefused unknownLot(Words words, String lot, Set<String> known) {
    return words.refused(
        "--lot",
        "\"" + lot + "\" is neither in the ledger nor in a sheet given with --stock",
        known.isEmpty() ? RECEIVE : Nearest.allowed(lot, known));
  }

  /** Records a movement; what can't be written is told with the ledger's name. */
  static LedgerFile.Outcome recorded(String file, Movement movement) throws IOException {
    try {
      return new LedgerFile(Path.of(file)).append(movement);
    } catch (FileSystemException e) {
      throw e;
    } catch (IOException e) {
      FileSystemException named =
          new FileSystemException(file, null, "the movement is not recorded: " + e.getMessage());
      named.initCause(e);
      throw named;
    }
  }

  /** A plain number given as an option. */
  static Optional<Double> number(Words words, String option, double low, double high) {
    Optional<String> text = words.value(option);
    if (text.isEmpty()) {
      return Optional.empty();
    }
    boolean plain = text.get().matches("[+-]?[0-9]{1,9}(\\.[0-9]{1,9})?");
    double value = plain ? Double.parseDouble(text.get()) : Double.NaN;
    if (!(value >= low && value <= high)) {
      boolean comma = text.get().matches("[+-]?[0-9]{1,9},[0-9]{1,9}");
      String point = comma ? "a decimal point: " + text.get().replace(',', '.') + "; " : "";
      throw words.refused(
          option,
          "\"" + text.get() + "\" " + (comma ? "has a decimal comma" : "can't be used"),
          point + "a number from " + (long) low + " to " + (long) high);
    }
    return Optional.of(value);
  }

  static String needed(Words words, String option) {
    return words
        .value(option)
        .orElseThrow(
            () -> Words.refused(0, option, "is missing", option + " and a value (see help)"));
  }
}
