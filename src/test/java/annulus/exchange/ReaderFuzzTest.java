package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.BenchLearning;
import annulus.advice.FitExplanation;
import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.LearningRules;
import annulus.advice.Observation;
import annulus.advice.OrderText;
import annulus.advice.PromiseDesk;
import annulus.advice.Shop;
import annulus.catalog.Policy;
import annulus.exchange.FitWords.Measured;
import annulus.exchange.FuzzRun.Take;
import annulus.measure.Side;
import annulus.quantity.InvalidValue;
import annulus.report.BatchColumns;
import annulus.report.FitText;
import annulus.report.JsonReport;
import annulus.report.TextReport;
import annulus.stock.Lot;
import annulus.stock.LotCheck;
import annulus.stock.Millilitres;
import annulus.stock.Movement;
import annulus.stock.ShopClass;
import annulus.stock.ShopLabel;
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
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
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
  private static final Policy STOCK_POLICY = stockPolicy();
  private static final Set<String> TRIED = new HashSet<>();

  @TempDir Path folder;

  private static Map<String, StockItem> items() {
    return StockItem.all(OrderText.KNOWLEDGE.catalog(), stockPolicy());
  }

  private static Policy stockPolicy() {
    try {
      return StockFiles.policy(DataFiles.bundled());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
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

  /** What was read is answered too, in words and for machines, with numbers that are numbers. */
  private static void answered(Knowledge knowledge, Advice advice) {
    String text = TextReport.of(advice, knowledge.catalog(), true);
    String json = JsonReport.of(advice, knowledge.catalog());
    assertTrue(text.codePoints().allMatch(c -> c == '\n' || !FuzzRun.harmsATerminal(c)), text);
    JointOrder order = advice.order();
    boolean own = (order.job() + order.title()).matches("(?s).*(NaN|Infinity|Exception).*");
    String noNumber =
        "(?s).*((?<!\\p{L})(NaN|Infinity)(?!\\p{L})|Exception).*"; // not within a word
    assertTrue(own || !(text + json).matches(noNumber), text);
    advice.handBack().ifPresent(h -> assertFalse(h.after().isNegative(), text));
  }

  @AfterAll
  static void the_normal_build_tries_at_least_20_000_files() {
    System.out.println("fuzz: " + FuzzRun.total() + " cases");
    if (TRIED.size() == 13) {
      assertTrue(FuzzRun.total() >= 20_000L, FuzzRun.total() + " cases");
    }
  }

  private static void over(String name, int cases, long seed, List<byte[]> good, Take take) {
    TRIED.add(name);
    FuzzRun.over(name, cases, seed, good, take);
  }

  /** A tenth of the deep run for readers that take ten times as long. */
  private static void dear(String name, int cases, long seed, List<byte[]> good, Take take) {
    TRIED.add(name);
    FuzzRun.over(name, (long) cases * Math.max(1, Damage.TIMES / 10), seed, good, take);
  }

  @Test
  void orders_are_answered_or_refused() {
    over(
        "orders",
        6000,
        1,
        files("demo-data/orders"),
        b ->
            answered(
                OrderText.KNOWLEDGE,
                OrderText.ADVISOR.advise(orders().json("order.json", text(b)))));
  }

  @Test
  void job_lists_are_answered_or_refused_row_by_row() {
    dear(
        "job lists",
        2500,
        2,
        named("demo-data/jobs.csv", "demo-data/jobs-semicolon.csv"),
        b ->
            BatchAnswers.read(
                "jobs.csv",
                text(b),
                orders(),
                OrderText.ADVISOR::advise,
                row -> {
                  assertTrue(row.advice().isPresent() != !row.problems().isEmpty());
                  return row.advice().map(BatchColumns::row);
                },
                cells -> assertTrue(cells.stream().noneMatch(List::isEmpty))));
  }

  @Test
  void shop_files_are_read_and_promised_by_or_refused() throws IOException {
    JointOrder order = new OrderText().order(OrderText.KNOWLEDGE);
    dear(
        "shop files",
        2500,
        3,
        named("demo-data/shop.json"),
        b -> {
          Shop shop = ShopFile.read("shop.json", text(b), OrderText.KNOWLEDGE.catalog().policy());
          PromiseDesk.Told told = new PromiseDesk(OrderText.KNOWLEDGE, shop).tell(order);
          told.promise()
              .ifPresent(p -> assertFalse(p.promise().isBefore(told.ready().orElseThrow())));
        });
  }

  @Test
  void logger_files_are_read_or_refused() {
    dear(
        "logger files",
        2000,
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
  void stock_sheets_are_judged_or_refused() {
    over(
        "stock sheets",
        2500,
        5,
        named("demo-data/stock.csv", "demo-data/stock-semicolon.csv", "demo-data/stock-tab.csv"),
        b -> {
          StockSheet sheet = StockSheet.read("stock.csv", text(b), ITEMS);
          for (Lot lot : sheet.cabinet().lots()) {
            LotCheck.of(lot, ITEMS.get(lot.item()), LocalDate.of(2027, 3, 11), 30);
          }
        });
  }

  @Test
  void labels_make_a_class_or_are_refused() {
    over(
        "label sheets",
        1000,
        6,
        named("demo-data/stock-labels.csv"),
        b -> {
          for (LabelSheet.Placed label : LabelSheet.read("l.csv", text(b))) {
            made(label.label());
          }
        });
  }

  /** A label may be well written and yet make no sense; that too is said in words. */
  private static void made(ShopLabel label) {
    try {
      ShopClass.of(label, OrderText.KNOWLEDGE.catalog(), STOCK_POLICY);
    } catch (InvalidValue e) {
      assertFalse(e.problem().isBlank() || e.allowed().isBlank(), e.getMessage());
    }
  }

  @Test
  void observations_teach_or_are_refused() throws IOException {
    LearningRules rules = LearningFile.rules(DataFiles.bundled());
    dear(
        "observations",
        1000,
        7,
        named("demo-data/observations.csv"),
        b -> {
          List<Observation> seen =
              LearningFile.observations("o.csv", text(b), OrderText.KNOWLEDGE.catalog(), rules);
          new BenchLearning(OrderText.KNOWLEDGE.catalog(), rules).learn(seen);
        });
  }

  /** The checksum is made right again for half of them, so that what is behind it is reached. */
  @Test
  void ledger_lines_are_read_or_refused() {
    List<byte[]> good = new ArrayList<>();
    for (Movement.Kind kind : Movement.Kind.values()) {
      good.add(LedgerLines.line(movement(kind)).getBytes(StandardCharsets.UTF_8));
    }
    over(
        "ledger lines",
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
    String id =
        switch (kind) {
          case CLEAR -> "cleared-m-1";
          case TAKE_BACK -> "taken-back-m-1";
          default -> "m-1";
        };
    return new Movement(
        id,
        Instant.parse("2027-03-11T09:00:00Z"),
        LocalDate.of(2027, 3, 11),
        kind,
        "Mira",
        "J-1",
        "L-1",
        "thin-lasting",
        kind.moves() ? Millilitres.of(1.5) : Millilitres.NONE,
        "a\\tb",
        "");
  }

  /** Words of a command line, one a line: the option, then its value. */
  @Test
  void words_of_an_order_are_answered_or_refused() {
    List<byte[]> good =
        texts(
            lines(
                "--bore",
                "42.04 42.05",
                "--part",
                "41.98",
                "--engagement",
                "11",
                "--temp",
                "18",
                "--materials",
                "steel-plain,steel-bearing",
                "--primer",
                "none",
                "--axial-n",
                "500"),
            lines(
                "--radial-gap-um",
                "60",
                "--radial-gap-plus-minus-um",
                "4",
                "--diameter",
                "30",
                "--engagement",
                "1 in",
                "--temp",
                "64 F",
                "--primer",
                "primer-solvent",
                "--primer-minutes",
                "5",
                "--start",
                "2027-03-12T10:00",
                "--zone",
                "Europe/Dublin",
                "--confidence",
                "0.9",
                "--seal-near",
                "true"),
            lines(
                "--bore",
                "28.01",
                "--part-bearing",
                "28",
                "--engagement",
                "9",
                "--finish",
                "ground,anodised",
                "--duty",
                "bottom-bracket-cup",
                "--consequence",
                "stranding",
                "--service-high",
                "90"));
    over(
        "words of an order",
        1500,
        9,
        good,
        b -> answered(OrderText.KNOWLEDGE, OrderText.ADVISOR.advise(said(b))));
  }

  private static JointOrder said(byte[] bytes) {
    String[] lines = new String(bytes, StandardCharsets.UTF_8).split("\n", -1);
    List<String> known = new ArrayList<>(CommandWords.single());
    known.addAll(CommandWords.pairs());
    known.addAll(CommandWords.flags());
    List<CommandWords.Word> words = new ArrayList<>();
    for (int i = 0; i + 1 < lines.length; i += 2) {
      String option = lines[i];
      if (!known.contains(option)) {
        throw new InputRefused(
            List.of(new PlacedProblem("words", 0, i, "x", "is no option", "others")));
      }
      words.add(new CommandWords.Word(option, lines[i + 1], i + 1));
    }
    return CommandWords.order(orders(), words);
  }

  @Test
  void fit_designations_are_explained_or_refused() throws IOException {
    List<byte[]> good =
        texts("35 H7\n35 k6", "40 H7/s6", "bearing outside 62", "bearing bore 25\n25 h6", "3 JS9");
    Measured bore = new Measured(Side.BORE, "35.012 35.014", "caliper-150", "steel-plain", 20);
    FitWords words = new FitWords(OrderText.KNOWLEDGE, DataFiles.bundled());
    over(
        "fit designations",
        1500,
        10,
        good,
        b -> {
          String[] said = new String(b, StandardCharsets.UTF_8).split("\n", -1);
          FitExplanation fit =
              words.explain(List.of(said), said.length > 1 ? List.of(bore) : List.of());
          assertFalse(FitText.of(fit).contains("NaN"));
        });
  }

  @Test
  void clock_times_are_read_or_refused() {
    over(
        "clock times",
        1000,
        11,
        texts("2027-03-28T01:30", "2027-10-31T01:30+01:00", "2027-03-11T09:00:00Z"),
        b ->
            ClockWord.read(
                "command line",
                0,
                "--now",
                new String(b, StandardCharsets.UTF_8),
                ZoneId.of("Europe/Dublin")));
  }

  @Test
  void calendar_files_written_before_are_read() {
    Path file = folder.resolve("before.ics");
    List<String> before =
        List.of(
            "BEGIN:VCALENDAR",
            "PRODID:-//any//EN",
            "BEGIN:VEVENT",
            "UID:a-1",
            "SEQUENCE:3",
            "DTSTART:20270312T093000Z",
            "STATUS:CONFIRMED",
            "SUMMARY:A long line that is folded after a certain",
            "  number of octets",
            "END:VEVENT",
            "END:VCALENDAR",
            "");
    over(
        "calendar files",
        500,
        12,
        texts(String.join("\r\n", before)),
        b -> {
          Files.write(file, b);
          CalendarState.of(file, "-//any//EN")
              .entry("a-1")
              .ifPresent(e -> assertTrue(e.sequence() >= 0));
        });
  }

  private static String lines(String... lines) {
    return String.join("\n", lines);
  }

  private static List<byte[]> texts(String... texts) {
    return Stream.of(texts).map(t -> t.getBytes(StandardCharsets.UTF_8)).toList();
  }

  static List<String> tables() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("data"))) {
      return files
          .filter(Files::isRegularFile)
          .map(f -> f.getFileName().toString())
          .filter(f -> !f.equals("number-limits.csv"))
          .toList();
    }
  }

  /** A shop's table over the program's; with one that is read every question has its answer. */
  @Test
  void a_shops_tables_are_read_and_answered_by_or_refused() throws IOException {
    List<String> tables = tables().stream().sorted().toList();
    assertTrue(tables.size() > 22, tables.toString());
    for (String table : tables) {
      List<byte[]> good = named("data/" + table);
      Path file = folder.resolve(table);
      dear(
          "tables",
          25,
          100 + tables.indexOf(table),
          good,
          b -> {
            Files.write(file, b);
            try {
              withTable(table, DataFiles.withShop(folder));
            } finally {
              Files.delete(file);
            }
          });
    }
  }

  private static void withTable(String table, DataFiles laid) throws IOException {
    if (table.startsWith("warm-up")) {
      WarmUpFile.read(laid);
    } else if (table.startsWith("stock-")) {
      StockFiles.policy(laid);
      StockFiles.cover(laid);
    } else if (table.startsWith("iso286-")) {
      String[] words = {"35 H7", "35 k6"};
      FitText.of(new FitWords(OrderText.KNOWLEDGE, laid).explain(List.of(words), List.of()));
    } else if (table.equals("learning.csv")) {
      LearningFile.rules(laid);
    } else if (table.equals("logger-rules.csv")) {
      LoggerRules.read(laid);
    } else {
      Knowledge knowledge = KnowledgeFiles.read(laid);
      answered(knowledge, new Advisor(knowledge).advise(new OrderText().order(knowledge)));
    }
  }
}
