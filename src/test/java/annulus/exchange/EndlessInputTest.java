package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.LearningRules;
import annulus.advice.OrderText;
import annulus.stock.StockItem;
import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Input that never ends is refused after a few MB, so that nobody's memory is filled. */
class EndlessInputTest {
  private static final long FEW_CHARACTERS = 4_000_000;

  /** A beginning, and then the same text for ever. */
  private static final class Endless extends Reader {
    private final String begin;
    private final String again;
    private long given;

    Endless(String begin, String again) {
      this.begin = begin;
      this.again = again;
    }

    @Override
    public int read(char[] buffer, int offset, int length) {
      for (int i = 0; i < length; i++, given++) {
        buffer[offset + i] =
            given < begin.length()
                ? begin.charAt((int) given)
                : again.charAt((int) ((given - begin.length()) % again.length()));
      }
      assertTrue(given < FEW_CHARACTERS, given + " characters were read");
      return length;
    }

    @Override
    public void close() {}
  }

  private static void refused(ThrowingRead read) {
    InputRefused e = assertThrows(InputRefused.class, read::run);
    assertTrue(e.problems().size() <= 201, e.problems().size() + " problems");
  }

  @FunctionalInterface
  private interface ThrowingRead {
    void run() throws IOException;
  }

  private static OrderReader orders() {
    return new OrderReader(OrderText.KNOWLEDGE, OrderText.NOW, ZoneOffset.UTC);
  }

  @ParameterizedTest
  @ValueSource(strings = {" ", "[", "{\"a\":", "1,", "[1],", "\"", "9", "\\", "\n", "x"})
  void an_order_or_a_shop_file_without_end_is_refused(String again) {
    for (String begin : List.of("", "{\"format\": 1, \"title\": \"", "{\"a\": [", "{\"a\": 1")) {
      refused(() -> orders().json("o.json", new Endless(begin, again)));
      refused(
          () ->
              ShopFile.read(
                  "s.json", new Endless(begin, again), OrderText.KNOWLEDGE.catalog().policy()));
    }
  }

  @Test
  void an_order_with_fields_without_end_is_refused() {
    StringBuilder text = new StringBuilder("{");
    for (int i = 0; i < 100_000; i++) {
      text.append("\"f").append(i).append("\":1,");
    }
    refused(() -> orders().json("o.json", new java.io.StringReader(text + "\"z\":1}")));
  }

  @ParameterizedTest
  @ValueSource(strings = {" ", ",", "x", "\"", "\n", "\"x\",", "a,b\n", "\"\n\""})
  void a_sheet_without_end_is_refused(String again) throws IOException {
    Map<String, StockItem> items =
        StockItem.all(OrderText.KNOWLEDGE.catalog(), StockFiles.policy(DataFiles.bundled()));
    String stock = "lot,class,container_ml,left_ml\n";
    refused(() -> StockSheet.read("s.csv", new Endless("", again), items));
    refused(() -> StockSheet.read("s.csv", new Endless(stock, again), items));
    refused(() -> LabelSheet.read("l.csv", new Endless("", again)));
    LearningRules rules = LearningFile.rules(DataFiles.bundled());
    refused(
        () ->
            LearningFile.observations(
                "o.csv", new Endless("", again), OrderText.KNOWLEDGE.catalog(), rules));
  }

  @ParameterizedTest
  @ValueSource(strings = {" ", ",", "x", "\"\"", "x\n"})
  void a_row_of_a_job_list_without_end_is_refused_and_those_before_it_are_answered(String again)
      throws IOException {
    String good = "job,radial_gap_um\nJ-1,20\n\"";
    List<BatchOrders.Row> rows = new ArrayList<>();
    BatchOrders.read("jobs.csv", new Endless(good, again), orders(), rows::add);
    assertEquals(List.of(2L, 3L), rows.stream().map(BatchOrders.Row::line).toList());
    assertTrue(rows.get(1).problems().get(0).problem().startsWith("has a row without end"));
    if (!again.contains("\n")) {
      refused(() -> BatchOrders.read("jobs.csv", new Endless("", again), orders(), rows::add));
    }
  }

  @Test
  void a_line_of_a_logger_without_end_is_refused() {
    refused(
        () ->
            LoggerCsv.read(
                "log.csv",
                () -> new Endless("time,temp\n", "1"),
                LoggerOptions.in(ZoneOffset.UTC),
                LoggerCsvTest.rules(),
                () -> (start, from, end, until) -> {}));
  }

  @Test
  void a_calendar_file_that_is_none_is_not_written_over(@TempDir Path folder) throws IOException {
    Path file = Files.writeString(folder.resolve("x.ics"), "a letter");
    refused(() -> CalendarState.of(file, "any"));
    Files.write(file, new byte[2_000_001]);
    refused(() -> CalendarState.of(file, "any"));
    Files.write(file, new byte[] {(byte) 0xC3, 0x28});
    refused(() -> CalendarState.of(file, "any"));
  }
}
