package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.catalog.Catalog;
import annulus.fit.FitData;
import annulus.select.RuleBook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A shop's own folder, written by a test and laid over the program's tables. */
final class ShopFolder {
  /** The tables that a catalogue and a rule book are read from. */
  static final List<String> TABLES =
      List.of(
          "materials.csv",
          "finishes.csv",
          "activities.csv",
          "instruments.csv",
          "policy.csv",
          "form-limits.csv",
          "consequences.csv",
          "cautions.csv",
          "caution-ranks.csv",
          "limited-use.csv",
          "compounds.json",
          "primers.json",
          "rules.json",
          "logger-rules.csv");

  private final Path folder;

  ShopFolder(Path folder) {
    this.folder = folder;
  }

  static String shipped(String table) {
    return FitData.text(table);
  }

  ShopFolder put(String table, String text) {
    return put(table, text.getBytes(StandardCharsets.UTF_8));
  }

  ShopFolder put(String table, byte[] bytes) {
    try {
      Files.write(folder.resolve(table), bytes);
      return this;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The shipped table with one text replaced, which must be in it. */
  ShopFolder change(String table, String from, String to) {
    String text = shipped(table);
    if (!text.contains(from)) {
      throw new IllegalArgumentException(table + " does not contain " + from);
    }
    int at = text.indexOf(from);
    return put(table, text.substring(0, at) + to + text.substring(at + from.length()));
  }

  Catalog catalog() {
    try {
      return CatalogFiles.read(DataFiles.withShop(folder));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  RuleBook rules() {
    try {
      return RuleFile.read(DataFiles.withShop(folder));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private LoggerRules loggerRules() {
    try {
      return LoggerRules.read(DataFiles.withShop(folder));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Reads what the table belongs to. */
  Object read(String table) {
    return switch (table) {
      case "rules.json" -> rules();
      case "logger-rules.csv" -> loggerRules();
      default -> catalog();
    };
  }

  /** All problems of a table that must be refused. */
  List<PlacedProblem> problems(String table) {
    return assertThrows(InputRefused.class, () -> read(table), table).problems();
  }

  /** The only problem of a table that must be refused, with the folder cut from its file. */
  PlacedProblem problem(String table) {
    List<PlacedProblem> all = problems(table);
    if (all.size() != 1) {
      throw new AssertionError("expected one problem: " + all);
    }
    PlacedProblem p = all.get(0);
    String file = p.file().replace(folder.toString() + "/", "");
    return new PlacedProblem(file, p.line(), p.column(), p.field(), p.problem(), p.allowed());
  }
}
