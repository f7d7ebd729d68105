package annulus.web;

import annulus.advice.BenchLearning;
import annulus.advice.FitExplanation;
import annulus.advice.Knowledge;
import annulus.advice.Learned;
import annulus.advice.LearningRules;
import annulus.advice.PromiseDesk;
import annulus.advice.Shop;
import annulus.catalog.Catalog;
import annulus.exchange.BatchAnswers;
import annulus.exchange.BatchAnswers.Answered;
import annulus.exchange.CommandWords;
import annulus.exchange.DataFiles;
import annulus.exchange.FitWords;
import annulus.exchange.FitWords.Measured;
import annulus.exchange.LabelSheet;
import annulus.exchange.LearningFile;
import annulus.exchange.OrderReader;
import annulus.exchange.ShopClassFile;
import annulus.exchange.SpreadsheetCells;
import annulus.exchange.StockFiles;
import annulus.report.BatchTable;
import annulus.stock.ShopClass;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What is asked beside jobs: fits, job lists, labels of lots, and what the shop saw itself. */
final class ShopTools {
  private final Knowledge knowledge;
  private final DataFiles files;
  private final Optional<Path> folder;
  private final PromiseDesk desk;
  private final Clock clock;

  /**
   * @param folder the shop's own tables, where labels are kept
   */
  ShopTools(
      Knowledge knowledge, DataFiles files, Optional<Path> folder, PromiseDesk desk, Clock clock) {
    this.knowledge = knowledge;
    this.files = files;
    this.folder = folder;
    this.desk = desk;
    this.clock = clock;
  }

  Knowledge knowledge() {
    return knowledge;
  }

  /** Whether the board was started with a folder for the shop's own tables. */
  boolean keeps() {
    return folder.isPresent();
  }

  /** What designations allow, and whether measured sizes keep them. */
  FitExplanation fit(List<String> words, List<Measured> measured) {
    try {
      return new FitWords(knowledge, files).explain(words, measured);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Temperature of parts whose temperature is not said, °C. */
  double defaultCelsius() {
    return knowledge.catalog().policy().value("default-temperature-c");
  }

  /** A job list answered row by row. */
  String batch(Upload list) {
    OrderReader reader = reader();
    StringBuilder out = new StringBuilder();
    try {
      BatchTable table = new BatchTable(out, SpreadsheetCells::safe);
      StringReader in = new StringReader(list.text());
      BatchAnswers.read(
          list.name(),
          in,
          reader,
          order -> desk.tell(order).advice(),
          row -> line(table, row),
          table::write);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return out.toString();
  }

  private OrderReader reader() {
    Shop shop = desk.shop();
    return new OrderReader(knowledge, clock.instant(), shop.hours().zone(), shop.places());
  }

  /** When each job of a list is ready, and which promise can't be kept. */
  ReadyList ready(Upload list) {
    return ReadyList.of(list, desk, reader(), clock.instant());
  }

  private static BatchTable.Row line(BatchTable table, Answered row) {
    return row.advice().isPresent()
        ? table.answered(row.line(), row.advice().get())
        : table.refused(row.line(), row.job(), row.problems().get(0).toString());
  }

  /** What a file of observations teaches; nothing is written. */
  List<Learned> learn(Upload observations) {
    LearningFile.refuseLearned("--data of serve", knowledge.catalog());
    try {
      Catalog catalog = knowledge.catalog();
      LearningRules rules = LearningFile.rules(files);
      StringReader in = new StringReader(observations.text());
      return new BenchLearning(catalog, rules)
          .learn(LearningFile.observations(observations.name(), in, catalog, rules));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The class that a lot's label makes, by the columns of {@link LabelSheet}. */
  ShopClass label(Map<String, String> said) {
    Map<String, CommandWords.Word> words = new LinkedHashMap<>();
    for (String column : LabelSheet.COLUMNS) {
      String value = said.getOrDefault(column, "");
      if (!value.isBlank()) {
        words.put(column, new CommandWords.Word(column, value.strip(), 0));
      }
    }
    try {
      return ShopClass.of(LabelSheet.words(words), knowledge.catalog(), StockFiles.policy(files));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Writes a class into the shop's own tables; in force when the board is started anew. */
  synchronized Path keep(ShopClass made) {
    Path to =
        folder.orElseThrow(
            () ->
                new annulus.store.Refused(
                    "Nothing was kept: the board was started without --data FOLDER."));
    LocalDate day = LocalDate.ofInstant(clock.instant(), desk.shop().hours().zone());
    try {
      return ShopClassFile.put(to, made.after(), day);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
