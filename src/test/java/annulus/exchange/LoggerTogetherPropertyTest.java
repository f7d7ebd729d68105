package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;

/** Several readings of one time, as of a logger that writes two probes into one column. */
class LoggerTogetherPropertyTest {
  private static final LoggerRules RULES = LoggerCsvTest.rules();
  private static final LocalDateTime START = LocalDateTime.of(2027, 3, 11, 9, 50);

  private record Read(List<List<Double>> pieces, LoggerReading reading) {}

  private static Read read(List<String> rows) throws IOException {
    String text = "time,temp C\n" + String.join("\n", rows) + "\n";
    List<List<Double>> pieces = new ArrayList<>();
    LoggerReading reading =
        LoggerCsv.read(
            "made.csv",
            () -> new StringReader(text),
            LoggerOptions.in(ZoneOffset.UTC),
            RULES,
            () -> {
              pieces.clear();
              return (s, a, e, b) -> pieces.add(List.of(s, a, e, b));
            });
    return new Read(pieces, reading);
  }

  private static String row(long seconds, double celsius) {
    return START.plusSeconds(seconds).toString().replace('T', ' ') + "," + celsius;
  }

  @Property(tries = 300)
  void the_order_of_the_rows_of_one_time_makes_no_difference(
      @ForAll @Size(min = 2, max = 30)
          List<@Size(min = 1, max = 4) List<@IntRange(min = -20, max = 90) Integer>> times,
      @ForAll long seed,
      @ForAll boolean newestFirst)
      throws IOException {
    Random random = new Random(seed);
    List<String> written = new ArrayList<>();
    List<String> shuffled = new ArrayList<>();
    for (int i = 0; i < times.size(); i++) {
      List<String> rows = new ArrayList<>();
      for (int celsius : times.get(i)) {
        rows.add(row(i * 600L + 1, celsius));
      }
      written.addAll(rows);
      Collections.shuffle(rows, random);
      shuffled.addAll(rows);
    }
    if (newestFirst) {
      Collections.reverse(shuffled);
    }
    Statistics.label("order differs").collect(!written.equals(shuffled));
    Read one = read(written);
    Read other = read(shuffled);
    assertEquals(one.pieces(), other.pieces());
    assertEquals(one.reading().differing(), other.reading().differing());
  }

  @Property(tries = 100)
  void a_warmer_row_beside_a_reading_warms_nothing(
      @ForAll @Size(min = 3, max = 30) List<@IntRange(min = -10, max = 30) Integer> celsius,
      @ForAll @IntRange(min = 0, max = 20) int secondsLater,
      @ForAll boolean warmFirst,
      @ForAll boolean oneMore)
      throws IOException {
    List<String> alone = new ArrayList<>();
    List<String> beside = new ArrayList<>();
    for (int i = 0; i < celsius.size(); i++) {
      long at = i * 600L + 30;
      alone.add(row(at, celsius.get(i)));
      beside.add(row(at, warmFirst ? 39 : celsius.get(i)));
      beside.add(row(at + secondsLater, warmFirst ? celsius.get(i) : 39));
    }
    if (oneMore) {
      beside.add(row(celsius.size() * 600L + 30, 39));
    }
    Read both = read(beside);
    Statistics.label("some seconds apart").collect(secondsLater > 0);
    for (List<Double> piece : both.pieces()) {
      long passed = Math.round(piece.get(0)) - START.toEpochSecond(ZoneOffset.UTC) - 30;
      assertEquals((double) celsius.get((int) (passed / 600)), piece.get(1), piece::toString);
      assertTrue(piece.get(3) <= 30 || (oneMore && piece.get(3) == 39), piece::toString);
    }
    if (secondsLater == 0 && !oneMore) {
      assertEquals(read(alone).pieces(), both.pieces());
    }
  }

  @Example
  void two_probes_in_one_column_are_told() throws IOException {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      rows.add(row(i * 600L, 39));
      rows.add(row(i * 600L, 14));
    }
    Read read = read(rows);
    String text = ReadingText.of(read.reading(), ZoneOffset.UTC);
    assertTrue(
        text.endsWith(
            "at 20 times the column has readings up to 25.0 K apart, probably of two probes:"
                + " the colder counts"),
        text);
    assertTrue(read.pieces().stream().allMatch(p -> p.get(1) == 14 && p.get(3) == 14));
  }

  @Example
  void two_odd_seconds_are_not_told() throws IOException {
    List<String> rows = new ArrayList<>();
    for (int i = 0; i < 20; i++) {
      rows.add(row(i * 600L, 20));
      if (i % 10 == 5) {
        rows.add(row(i * 600L, 23));
      }
    }
    String text = ReadingText.of(read(rows).reading(), ZoneOffset.UTC);
    assertFalse(text.contains("probe"), text);
  }
}
