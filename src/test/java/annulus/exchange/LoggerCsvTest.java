package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.ArrheniusRate;
import annulus.cure.CureAccumulator;
import annulus.cure.PieceConsumer;
import annulus.exchange.LoggerOptions.DateOrder;
import annulus.exchange.LoggerOptions.TemperatureUnit;
import annulus.exchange.LoggerReading.SkipReason;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The invented files of {@code demo-data/loggers} and {@code demo-data/malformed/loggers}. */
class LoggerCsvTest {
  private static final Path GOOD = Path.of("demo-data/loggers");
  private static final Path BAD = Path.of("demo-data/malformed/loggers");
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
  private static final LoggerOptions OPTIONS = LoggerOptions.in(BERLIN);

  /** A piece as given. */
  private record Piece(double start, double startC, double end, double endC) {}

  /** A reading taken from a file by other means. */
  private record Truth(double seconds, double celsius) {}

  private final List<Piece> pieces = new ArrayList<>();

  static LoggerRules rules() {
    try {
      return LoggerRules.read(DataFiles.bundled());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private PieceConsumer anew() {
    pieces.clear();
    return (s, a, e, b) -> pieces.add(new Piece(s, a, e, b));
  }

  private LoggerReading read(Path path, LoggerOptions options) throws IOException {
    pieces.clear();
    return LoggerCsv.read(
        path.getFileName().toString(), LoggerSource.of(path), options, rules(), this::anew);
  }

  private LoggerReading text(String content, LoggerOptions options) throws IOException {
    pieces.clear();
    return LoggerCsv.read(
        "text.csv", () -> new StringReader(content), options, rules(), this::anew);
  }

  /** The night in the plain file, read by the JDK alone. */
  private static List<Truth> night() throws IOException {
    DateTimeFormatter form = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);
    List<Truth> night = new ArrayList<>();
    for (String line : Files.readAllLines(GOOD.resolve("plain.csv")).stream().skip(1).toList()) {
      int comma = line.indexOf(',');
      Instant at = LocalDateTime.parse(line.substring(0, comma), form).atZone(BERLIN).toInstant();
      night.add(new Truth(at.getEpochSecond(), Double.parseDouble(line.substring(comma + 1))));
    }
    return night;
  }

  private void assertNight(double withinK) throws IOException {
    List<Truth> night = night();
    assertEquals(103, night.size());
    assertEquals(night.size() - 1, pieces.size());
    for (int i = 0; i < pieces.size(); i++) {
      assertEquals(night.get(i).seconds(), pieces.get(i).start());
      assertEquals(night.get(i + 1).seconds(), pieces.get(i).end());
      assertEquals(night.get(i).celsius(), pieces.get(i).startC(), withinK);
      assertEquals(night.get(i + 1).celsius(), pieces.get(i).endC(), withinK);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "plain",
        "semicolon-decimal-comma",
        "semicolon-decimal-point",
        "tabs",
        "iso-utc",
        "iso-offset",
        "epoch-seconds",
        "epoch-milliseconds",
        "date-and-time-apart",
        "twelve-hour-month-first",
        "day-first-slashes",
        "fahrenheit",
        "counter-and-serial",
        "titles-and-footer",
        "newest-first",
        "repeated-rows",
        "no-header",
        "month-names",
        "month-names-first",
        "humidity-and-dew-point",
        "quoted-decimal-comma",
        "units-in-cells",
        "year-slashes",
        "marked-and-returns",
        "latin-1",
        "utf-16",
        "faults"
      })
  void one_night_reads_the_same_in_every_shape(String name) throws IOException {
    LoggerReading reading = read(GOOD.resolve(name + ".csv"), OPTIONS);
    assertNight(name.equals("fahrenheit") ? 0.01 : 1e-12);
    assertEquals(103, reading.rowsRead());
    assertEquals(0, reading.gapCount());
    assertEquals(600, reading.usualIntervalSeconds());
    assertEquals(Instant.parse("2027-03-12T15:00:00Z"), reading.first());
    assertEquals(Instant.parse("2027-03-13T08:00:00Z"), reading.last());
  }

  @Test
  void the_reading_says_how_the_file_was_read() throws IOException {
    LoggerReading comma = read(GOOD.resolve("semicolon-decimal-comma.csv"), OPTIONS);
    assertEquals(';', comma.delimiter());
    assertEquals(Optional.of(','), comma.decimalMark());
    assertEquals(Optional.of(DateOrder.DAY_FIRST), comma.dateOrder());
    assertEquals("dates with dots are written day first", dottedBasis());
    assertFalse(comma.timesCarryZone());
    LoggerReading titles = read(GOOD.resolve("titles-and-footer.csv"), OPTIONS);
    assertEquals(5, titles.titleLines());
    assertEquals("Temperature", titles.temperatureColumn());
    assertEquals(2, titles.skipCounts().get(SkipReason.NOT_A_READING));
    LoggerReading named = read(GOOD.resolve("counter-and-serial.csv"), OPTIONS);
    assertEquals("Celsius(°C)", named.temperatureColumn());
    assertTrue(read(GOOD.resolve("newest-first.csv"), OPTIONS).newestFirst());
    assertTrue(read(GOOD.resolve("no-header.csv"), OPTIONS).unitAssumed());
    assertTrue(read(GOOD.resolve("iso-offset.csv"), OPTIONS).timesCarryZone());
    LoggerReading american = read(GOOD.resolve("twelve-hour-month-first.csv"), OPTIONS);
    assertEquals(Optional.of(DateOrder.MONTH_FIRST), american.dateOrder());
    assertEquals("the other order gives a month above 12", american.orderBasis());
    LoggerReading hot = read(GOOD.resolve("fahrenheit.csv"), OPTIONS);
    assertEquals(TemperatureUnit.FAHRENHEIT, hot.unit());
  }

  private String dottedBasis() throws IOException {
    return text("t;°C\n03.04.2027 10:00;20,1\n03.04.2027 10:10;20,2\n", OPTIONS).orderBasis();
  }

  @Test
  void every_fault_is_skipped_with_its_line_and_reason() throws IOException {
    LoggerReading reading = read(GOOD.resolve("faults.csv"), OPTIONS);
    assertEquals(11, reading.rowsSkipped());
    assertEquals(7, reading.skipCounts().get(SkipReason.FAULT_VALUE));
    assertEquals(2, reading.skipCounts().get(SkipReason.POWER_ON_VALUE));
    assertEquals(1, reading.skipCounts().get(SkipReason.OUT_OF_RANGE));
    assertEquals(1, reading.skipCounts().get(SkipReason.NOT_A_READING));
    assertEquals(new LoggerReading.Skipped(2, SkipReason.POWER_ON_VALUE), reading.skipped().get(0));
  }

  @Test
  void faults_in_fahrenheit_are_known_by_their_celsius_value_too() throws IOException {
    LoggerReading reading = read(GOOD.resolve("fahrenheit-faults.csv"), OPTIONS);
    assertEquals(100, reading.rowsRead());
    assertEquals(2, reading.skipCounts().get(SkipReason.FAULT_VALUE));
    assertEquals(1, reading.skipCounts().get(SkipReason.POWER_ON_VALUE));
    assertEquals(1, reading.gapCount());
  }

  @Test
  void an_oven_that_passes_the_power_on_value_is_believed() throws IOException {
    LoggerReading reading =
        text(
            "t,°C\n2027-03-12T10:00Z,81.5\n2027-03-12T10:10Z,85.0\n2027-03-12T10:20Z,85.0\n",
            OPTIONS);
    assertEquals(3, reading.rowsRead());
  }

  @Test
  void a_gap_over_night_takes_its_colder_end_or_the_floor() throws IOException {
    LoggerReading reading = read(GOOD.resolve("gap-over-night.csv"), OPTIONS);
    assertEquals(1, reading.gapCount());
    LoggerReading.Gap gap = reading.gaps().get(0);
    assertEquals(Instant.parse("2027-03-12T18:50:00Z"), gap.start());
    assertEquals(Instant.parse("2027-03-13T06:00:00Z"), gap.end());
    double colder = night().get(90).celsius();
    assertEquals(colder, gap.takenC());
    Piece across = pieces.stream().filter(p -> p.end() - p.start() > 3600).findAny().orElseThrow();
    assertEquals(colder, across.startC());
    assertEquals(colder, across.endC());
    LoggerReading floored = read(GOOD.resolve("gap-over-night.csv"), OPTIONS.withFloor(4));
    assertEquals(4, floored.gaps().get(0).takenC());
    LoggerReading warmFloor = read(GOOD.resolve("gap-over-night.csv"), OPTIONS.withFloor(18));
    assertEquals(colder, warmFloor.gaps().get(0).takenC());
  }

  @ParameterizedTest
  @CsvSource({
    "autumn-hour, 109, 600",
    "autumn-hour-newest-first, 109, 600",
    "autumn-hour-hourly, 19, 3600"
  })
  void the_hour_that_comes_twice_in_autumn_is_two_hours(String name, int rows, double step)
      throws IOException {
    LoggerReading reading = read(GOOD.resolve(name + ".csv"), OPTIONS);
    assertEquals(rows, reading.rowsRead());
    assertEquals(0, reading.rowsSkipped());
    assertFalse(reading.summerTimeKept());
    assertEquals(Instant.parse("2027-10-30T14:00:00Z"), reading.first());
    assertEquals(reading.first().plusSeconds(Math.round(step * (rows - 1))), reading.last());
    assertTrue(pieces.stream().allMatch(p -> p.end() - p.start() == step));
  }

  @Test
  void a_clock_that_was_not_put_back_in_autumn_adds_no_hour() throws IOException {
    LoggerReading reading = read(GOOD.resolve("autumn-hour-clock-not-changed.csv"), OPTIONS);
    assertTrue(reading.summerTimeKept());
    assertEquals(0, reading.gapCount());
    assertEquals(Instant.parse("2027-10-31T07:00:00Z"), reading.last());
    assertFalse(read(GOOD.resolve("autumn-hour.csv"), OPTIONS).summerTimeKept());
  }

  @Test
  void a_clock_that_was_not_put_forward_in_spring_takes_no_hour_away() throws IOException {
    LoggerReading reading = read(GOOD.resolve("spring-hour-clock-not-changed.csv"), OPTIONS);
    assertTrue(reading.winterTimeKept());
    assertFalse(reading.summerTimeKept());
    assertEquals(0, reading.rowsSkipped());
    assertEquals(103, reading.rowsRead());
    assertEquals(0, reading.gapCount());
    assertTrue(pieces.stream().allMatch(p -> p.end() - p.start() == 600));
    assertEquals(Instant.parse("2027-03-28T08:00:00Z"), reading.last());
    assertTrue(
        ReadingText.of(reading, BERLIN).contains("; the logger's clock was not put forward in"));
  }

  @Test
  void a_clock_that_was_put_forward_in_spring_stays_as_it_is() throws IOException {
    LoggerReading reading =
        text("t,°C\n2027-03-28 01:50,20\n2027-03-28 03:00,20\n2027-03-28 03:10,20\n", OPTIONS);
    assertFalse(reading.winterTimeKept());
    assertEquals(Instant.parse("2027-03-28T01:10:00Z"), reading.last());
    assertEquals(0, reading.gapCount());
  }

  @Test
  void a_log_that_begins_in_the_hour_that_does_not_exist_is_in_winter_time() throws IOException {
    LoggerReading reading =
        text("t,°C\n2027-03-28 02:30,20\n2027-03-28 03:00,20\n2027-03-28 03:30,20\n", OPTIONS);
    assertTrue(reading.winterTimeKept());
    assertEquals(Instant.parse("2027-03-28T01:30:00Z"), reading.first());
    assertEquals(Instant.parse("2027-03-28T02:30:00Z"), reading.last());
  }

  @Test
  void midnight_tells_the_order_of_day_and_month() throws IOException {
    LoggerReading reading = read(GOOD.resolve("order-told-by-midnight.csv"), OPTIONS);
    assertEquals(Optional.of(DateOrder.DAY_FIRST), reading.dateOrder());
    assertEquals("only so the rows run on across midnight", reading.orderBasis());
    assertEquals(ZonedDateTime.of(2027, 4, 3, 16, 0, 0, 0, BERLIN).toInstant(), reading.first());
  }

  @Test
  void an_open_order_of_day_and_month_is_asked_for_with_both_readings() throws IOException {
    Path open = BAD.resolve("day-and-month-open.csv");
    InputRefused refused = assertThrows(InputRefused.class, () -> read(open, OPTIONS));
    assertEquals(
        "day-and-month-open.csv:2: date: \"03/04/2027 16:00\" is 2027-04-03 (day first) or"
            + " 2027-03-04 (month first), and the file does not tell which; allowed: declare"
            + " the order, day-first or month-first (at the command line --date-order)",
        refused.getMessage());
    LoggerReading declared = read(open, OPTIONS.with(DateOrder.MONTH_FIRST));
    assertEquals(ZonedDateTime.of(2027, 3, 4, 16, 0, 0, 0, BERLIN).toInstant(), declared.first());
    assertEquals("declared", declared.orderBasis());
  }

  @Test
  void a_declared_order_that_the_file_contradicts_is_refused() {
    LoggerOptions wrong = OPTIONS.with(DateOrder.DAY_FIRST);
    InputRefused refused =
        assertThrows(
            InputRefused.class, () -> read(GOOD.resolve("twelve-hour-month-first.csv"), wrong));
    assertTrue(refused.getMessage().contains("is no date in the declared order, day first"));
  }

  @ParameterizedTest
  @CsvSource({
    "dates-fit-neither-order, fit neither day first nor month first",
    "point-and-comma, csv:52: temperature: point and comma both stand as decimal mark",
    "decimal-comma-between-commas, csv:2: has more cells than the header",
    "two-temperatures, 'several columns could be the temperature; allowed: declare one of temp front °C, temp back °C'",
    "unit-open, the file names no unit",
    "units-mixed, csv:32: temperature: °C and °F stand in one column",
    "clock-set-back, csv:62: time: runs back by 17400 s",
    "clock-far-ahead-once, csv:63: time: runs back by",
    "offsets-mixed, csv:12: time: some times carry an offset and some do not",
    "one-reading, has fewer than two usable readings",
    "all-faults, has fewer than two usable readings",
    "no-times, no line has a date with a time",
    "empty, no line has a date with a time",
    "long-line, csv:2: the line is too long",
    "picture, no line has a date with a time"
  })
  void what_can_not_be_told_is_refused_with_its_place(String name, String said) {
    InputRefused refused =
        assertThrows(InputRefused.class, () -> read(BAD.resolve(name + ".csv"), OPTIONS));
    assertTrue(refused.getMessage().contains(said), refused.getMessage());
    assertTrue(refused.getMessage().startsWith(name + ".csv"), refused.getMessage());
  }

  @Test
  void what_was_refused_reads_once_declared() throws IOException {
    LoggerReading front =
        read(BAD.resolve("two-temperatures.csv"), OPTIONS.withColumn("temp front °C"));
    assertEquals("temp front °C", front.temperatureColumn());
    assertNight(1e-12);
    read(BAD.resolve("unit-open.csv"), OPTIONS.with(TemperatureUnit.FAHRENHEIT));
    assertNight(0.06);
  }

  @Test
  void two_rows_of_one_time_count_as_the_colder() throws IOException {
    LoggerReading reading =
        text(
            """
            t,°C
            2027-03-12T10:00Z,20
            2027-03-12T10:10Z,21
            2027-03-12T10:10Z,19
            2027-03-12T10:20Z,20
            """,
            OPTIONS);
    assertEquals(4, reading.rowsRead());
    assertEquals(19, pieces.get(1).startC());
  }

  @Test
  void a_row_slightly_back_in_time_is_skipped() throws IOException {
    LoggerReading reading =
        text(
            """
            t,°C
            2027-03-12T10:00Z,20
            2027-03-12T10:10Z,21
            2027-03-12T10:05Z,19
            2027-03-12T10:20Z,20
            """,
            OPTIONS);
    assertEquals(List.of(new LoggerReading.Skipped(4, SkipReason.BACK_IN_TIME)), reading.skipped());
  }

  /** A log at one row a second that is never held anywhere. */
  private static Supplier<Reader> endless(int rows) {
    return () ->
        new Reader() {
          private int row = -1;
          private String text = "epoch;temp °C\n";
          private int at;

          @Override
          public int read(char[] buffer, int offset, int length) {
            if (at == text.length()) {
              row++;
              text = row < rows ? (1_804_863_600L + row) + ";22.0\n" : "";
              at = 0;
            }
            int count = Math.min(length, text.length() - at);
            text.getChars(at, at + count, buffer, offset);
            at += count;
            return count == 0 ? -1 : count;
          }

          @Override
          public void close() {}
        };
  }

  @Test
  void what_only_later_lines_tell_is_read_anew_and_nothing_counts_twice() throws IOException {
    StringBuilder text = new StringBuilder("time,temp °C\n");
    LocalDateTime start = LocalDateTime.of(2027, 3, 12, 0, 0);
    for (int i = 0; i < 1200; i++) {
      String tenths = i < 700 ? "" : ".5";
      LocalDateTime at = i < 550 ? start.plusMinutes(i) : start.plusMinutes(550 + 10L * (i - 550));
      text.append(at).append(',').append(15).append(tenths).append('\n');
    }
    LoggerReading reading = text(text.toString(), OPTIONS);
    assertEquals(1200, reading.rowsRead());
    assertEquals(1199, pieces.size());
    assertEquals(Optional.of('.'), reading.decimalMark());
    assertEquals(60, reading.usualIntervalSeconds());
    for (int i = 1; i < pieces.size(); i++) {
      assertEquals(pieces.get(i - 1).end(), pieces.get(i).start());
    }
  }

  @Test
  void days_of_seconds_stream_into_an_accumulator() throws IOException {
    List<CureAccumulator> made = new ArrayList<>();
    int rows = 3 * 86_400 + 1;
    LoggerReading reading =
        LoggerCsv.read(
            "long.csv",
            endless(rows),
            OPTIONS,
            rules(),
            () -> {
              made.add(new CureAccumulator(new ArrheniusRate(45, 22, 5, 40), 24));
              return made.get(made.size() - 1);
            });
    CureAccumulator cure = made.get(made.size() - 1);
    assertEquals(rows, reading.rowsRead());
    assertEquals(72, cure.hours(), 1e-10);
    assertEquals(1_804_863_600L + 86_400, cure.reachedAt(0).orElseThrow(), 1e-3);
  }
}
