package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import annulus.advice.OrderText;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.StockItem;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Every reader, on files harmed in every way that could be thought of, from fixed seeds: an answer
 * or a refusal with a reason, never another exception. The profile {@code fuzz} multiplies the
 * cases.
 */
class ReaderFuzzTest {
  private static final Map<String, StockItem> ITEMS = items();
  private static final LoggerRules LOGGER_RULES = LoggerCsvTest.rules();

  @TempDir Path folder;

  /** One reader under test. */
  @FunctionalInterface
  private interface Take {
    void read(byte[] bytes) throws IOException;
  }

  private static Map<String, StockItem> items() {
    try {
      return StockItem.all(OrderText.KNOWLEDGE.catalog(), StockFiles.policy(DataFiles.bundled()));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void run(int cases, long seed, List<byte[]> good, Take take) {
    int read = 0;
    int refused = 0;
    for (long i = 0; i < (long) cases * Damage.TIMES; i++) {
      long own = seed * 1_000_000_007L + i;
      byte[] bytes = Damage.done(good, new Random(own));
      try {
        take.read(bytes);
        read++;
      } catch (InputRefused e) {
        clear(e, own);
        refused++;
      } catch (IOException | RuntimeException | StackOverflowError e) {
        fail("case " + own + ":\n" + shown(bytes), e);
      }
    }
    assertTrue(refused > cases / 20, refused + " of " + cases + " were refused");
    assertTrue(read > 0 || refused == cases * Damage.TIMES, "read " + read);
  }

  private static void clear(InputRefused refused, long own) {
    assertFalse(refused.problems().isEmpty(), "case " + own);
    for (PlacedProblem problem : refused.problems()) {
      String text = problem.toString();
      assertFalse(problem.file().isBlank() || problem.problem().isBlank(), "case " + own + text);
      assertFalse(problem.allowed().isBlank(), "case " + own + ": " + text);
      assertFalse(text.contains("\n") || text.contains("Exception"), "case " + own + ": " + text);
    }
  }

  private static String shown(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    return text.substring(0, Math.min(3000, text.length()));
  }

  private static List<byte[]> files(String where) {
    try (Stream<Path> files = Files.list(Path.of(where))) {
      List<byte[]> all = new ArrayList<>();
      for (Path file : files.filter(Files::isRegularFile).sorted().toList()) {
        byte[] bytes = Files.readAllBytes(file);
        if (bytes.length < 20_000) {
          all.add(bytes);
        }
      }
      return all;
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static List<byte[]> named(String... files) {
    List<byte[]> all = new ArrayList<>();
    for (String file : files) {
      try {
        all.add(Files.readAllBytes(Path.of(file)));
      } catch (IOException e) {
        throw new IllegalStateException(e);
      }
    }
    return all;
  }

  private static Reader text(byte[] bytes) {
    return DataFiles.utf8(new ByteArrayInputStream(bytes));
  }

  private static OrderReader orders() {
    return new OrderReader(OrderText.KNOWLEDGE, OrderText.NOW, ZoneOffset.UTC);
  }

  @Test
  void orders_are_read_or_refused() {
    run(6000, 1, files("demo-data/orders"), b -> orders().json("order.json", text(b)));
  }

  @Test
  void job_lists_are_read_or_refused() {
    run(
        2500,
        2,
        named("demo-data/jobs.csv", "demo-data/jobs-semicolon.csv"),
        b ->
            BatchOrders.read(
                "jobs.csv",
                text(b),
                orders(),
                row -> assertTrue(row.order().isPresent() != !row.problems().isEmpty())));
  }

  @Test
  void shop_files_are_read_or_refused() {
    run(
        2500,
        3,
        named("demo-data/shop.json"),
        b -> ShopFile.read("shop.json", text(b), OrderText.KNOWLEDGE.catalog().policy()));
  }

  @Test
  void logger_files_are_read_or_refused() {
    run(
        2500,
        4,
        files("demo-data/loggers"),
        b ->
            LoggerCsv.read(
                "log.csv",
                () -> new InputStreamReader(new ByteArrayInputStream(b), LoggerBytes.charset(b)),
                LoggerOptions.in(ZoneOffset.UTC),
                LOGGER_RULES,
                () -> (start, from, end, until) -> assertTrue(Double.isFinite(from + until))));
  }

  @Test
  void stock_sheets_are_read_or_refused() {
    run(
        2500,
        5,
        named("demo-data/stock.csv", "demo-data/stock-semicolon.csv", "demo-data/stock-tab.csv"),
        b -> StockSheet.read("stock.csv", text(b), ITEMS));
  }

  @Test
  void label_sheets_are_read_or_refused() {
    run(1000, 6, named("demo-data/stock-labels.csv"), b -> LabelSheet.read("l.csv", text(b)));
  }

  @Test
  void observations_are_read_or_refused() {
    run(
        1000,
        7,
        named("demo-data/observations.csv"),
        b -> LearningFile.observations("o.csv", text(b), OrderText.KNOWLEDGE.catalog()));
  }

  /** The checksum is made right again for half of them, so that what is behind it is reached. */
  @Test
  void ledger_lines_are_read_or_refused() {
    List<byte[]> good = new ArrayList<>();
    for (Movement.Kind kind : Movement.Kind.values()) {
      good.add(LedgerLines.line(movement(kind)).getBytes(StandardCharsets.UTF_8));
    }
    run(
        2500,
        8,
        good,
        b -> {
          String line = new String(b, StandardCharsets.UTF_8);
          int rest = line.indexOf('\t', 3) + 1;
          LedgerLines.movement(
              "ledger",
              1,
              b.length % 2 == 0 && rest > 0 ? LedgerLines.marked(line.substring(rest)) : line);
        });
  }

  private static Movement movement(Movement.Kind kind) {
    return new Movement(
        "m-1",
        Instant.parse("2027-03-11T09:00:00Z"),
        LocalDate.of(2027, 3, 11),
        kind,
        "Mira",
        "J-1",
        "L-1",
        "thin-lasting",
        Millilitres.of(1.5),
        "a\\tb",
        "");
  }

  /** A shop's folder of tables over the program's. */
  @Test
  void a_shops_tables_are_read_or_refused() {
    List<String> tables =
        List.of(
            "compounds.json",
            "primers.json",
            "policy.csv",
            "activities.csv",
            "materials.csv",
            "finishes.csv",
            "instruments.csv",
            "consequences.csv",
            "rules.json",
            "hold-factors.csv",
            "duty-cases.csv",
            "friction.csv",
            "press-factors.csv",
            "bearing-normal.csv",
            "warm-up.csv",
            "stock-policy.csv",
            "learning.csv");
    for (String table : tables) {
      List<byte[]> good = named("data/" + table);
      Path file = folder.resolve(table);
      run(
          20,
          100 + tables.indexOf(table),
          good,
          b -> {
            Files.write(file, b);
            try {
              DataFiles laid = DataFiles.withShop(folder);
              KnowledgeFiles.read(laid);
              WarmUpFile.read(laid);
              StockFiles.policy(laid);
              LearningFile.rules(laid);
            } finally {
              Files.delete(file);
            }
          });
    }
  }
}
