package annulus.cli;

import annulus.advice.Knowledge;
import annulus.catalog.Policy;
import annulus.exchange.DataFiles;
import annulus.exchange.KnowledgeFiles;
import annulus.exchange.StockFiles;
import annulus.exchange.StockSheet;
import annulus.report.CountNotes;
import annulus.stock.Cabinet;
import annulus.stock.Ledger;
import annulus.stock.StockItem;
import annulus.store.LedgerFile;
import java.io.IOException;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

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

  static StockTables of(Words words) throws IOException {
    DataFiles files = Tables.files(words);
    Knowledge knowledge = KnowledgeFiles.read(files);
    Policy policy = StockFiles.policy(files);
    return new StockTables(files, knowledge, policy, StockItem.all(knowledge.catalog(), policy));
  }

  StockSheet sheet(String file) throws IOException {
    try (Reader in = InputFile.text(InputFile.of(file))) {
      return StockSheet.read(file, in, items);
    }
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
      throw Words.refused(
          words.among(List.of(option)).get(0).position(),
          option,
          file + " is not a file",
          "a ledger");
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
      return LocalDate.ofInstant(surround.clock().instant(), surround.zone());
    }
    try {
      return LocalDate.parse(text.get());
    } catch (DateTimeException e) {
      throw Words.refused(
          words.among(List.of(option)).get(0).position(),
          option,
          "\"" + text.get() + "\" is not a day",
          "year-month-day such as 2026-11-25");
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
      throw Words.refused(
          words.among(List.of(option)).get(0).position(),
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
