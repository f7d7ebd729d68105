package annulus.exchange;

import annulus.exchange.LoggerReading.TimeForm;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Finds a file's layout from its first lines, or says what it can't tell. */
final class LoggerLayouts {
  private static final char[] DELIMITERS = {';', '\t', ',', '|'};
  private static final String ANY_DAY = "2024-01-01 ";
  private static final String ANY_TIME = " 00:00";
  private static final List<String> TEMPERATURE_WORDS =
      List.of(
          "temp",
          "celsius",
          "fahrenheit",
          "°c",
          "°f",
          "deg c",
          "deg f",
          "degc",
          "degf",
          "(c)",
          "(f)");
  private static final List<String> OTHER_WORDS =
      List.of("dew", "hum", "%", "rh", "volt", "batt", "alarm", "limit", "high", "low", "serial");

  /** The columns of a time. */
  private record TimeColumns(int time, int clock) {}

  private final String file;
  private final List<String> sample;
  private final LoggerOptions options;

  private LoggerLayouts(String file, List<String> sample, LoggerOptions options) {
    this.file = file;
    this.sample = sample;
    this.options = options;
  }

  /**
   * @throws InputRefused when no reading is found or the temperature column can't be told
   */
  static LoggerLayout find(String file, List<String> sample, LoggerOptions options) {
    return new LoggerLayouts(file, sample, options).find();
  }

  private LoggerLayout find() {
    char best = DELIMITERS[0];
    int most = 0;
    for (char delimiter : DELIMITERS) {
      int count = timeRows(delimiter).values().stream().mapToInt(List::size).max().orElse(0);
      if (count > most) {
        most = count;
        best = delimiter;
      }
    }
    if (most == 0) {
      throw refused(
          1, "", "no line has a date with a time and a number", "a temperature logger's CSV file");
    }
    return columns(best);
  }

  /** Lines, by number from 0, that have a time in the same columns and a number beside it. */
  private Map<TimeColumns, List<Integer>> timeRows(char delimiter) {
    Map<TimeColumns, List<Integer>> rows = new HashMap<>();
    for (int i = 0; i < sample.size(); i++) {
      List<String> cells = LoggerLines.cells(sample.get(i), delimiter);
      Optional<TimeColumns> time = timeColumns(cells);
      boolean hasNumber = cells.stream().anyMatch(c -> LoggerNumber.of(c).isNumber());
      if (time.isPresent() && hasNumber) {
        rows.computeIfAbsent(time.get(), key -> new ArrayList<>()).add(i);
      }
    }
    return rows;
  }

  private static Optional<TimeColumns> timeColumns(List<String> cells) {
    int date = -1;
    int clock = -1;
    int epoch = -1;
    for (int i = 0; i < cells.size(); i++) {
      String cell = cells.get(i);
      Optional<LoggerStamp> stamp = LoggerStamp.parse(cell);
      boolean counts = stamp.isPresent() && isEpoch(stamp.get());
      if (stamp.isPresent() && !counts) {
        return Optional.of(new TimeColumns(i, -1));
      }
      epoch = counts && epoch < 0 ? i : epoch;
      date = date < 0 && LoggerStamp.parse(cell + ANY_TIME).isPresent() ? i : date;
      boolean isClock = cell.indexOf(':') > 0 && LoggerStamp.parse(ANY_DAY + cell).isPresent();
      clock = clock < 0 && isClock ? i : clock;
    }
    if (date >= 0 && clock >= 0) {
      return Optional.of(new TimeColumns(date, clock));
    }
    return epoch >= 0 ? Optional.of(new TimeColumns(epoch, -1)) : Optional.empty();
  }

  private static boolean isEpoch(LoggerStamp stamp) {
    return stamp.form() == TimeForm.EPOCH_SECONDS || stamp.form() == TimeForm.EPOCH_MILLISECONDS;
  }

  private LoggerLayout columns(char delimiter) {
    TimeColumns time = null;
    List<Integer> lines = List.of();
    for (Map.Entry<TimeColumns, List<Integer>> entry : timeRows(delimiter).entrySet()) {
      if (entry.getValue().size() > lines.size()) {
        time = entry.getKey();
        lines = entry.getValue();
      }
    }
    List<List<String>> rows =
        lines.stream().map(i -> LoggerLines.cells(sample.get(i), delimiter)).toList();
    int firstLine = lines.get(0);
    int headerLine = headerLine(firstLine, delimiter);
    List<String> header =
        headerLine < 0 ? List.of() : LoggerLines.cells(sample.get(headerLine), delimiter);
    checkDecimalComma(delimiter, header, rows, firstLine);
    int column = temperatureColumn(time, header, rows, firstLine);
    LoggerUnitSearch units =
        new LoggerUnitSearch(file, sample.subList(0, firstLine), headerLine, delimiter, column);
    return new LoggerLayout(
        delimiter,
        time.time(),
        time.clock(),
        column,
        column < header.size() ? header.get(column) : "column " + (column + 1),
        LoggerUnitSearch.column(header, rows, column),
        units.unit(),
        units.doubt(),
        firstLine);
  }

  /** The line of the header, from 0; -1 when there is none. */
  private int headerLine(int firstLine, char delimiter) {
    for (int i = firstLine - 1; i >= 0; i--) {
      List<String> cells = LoggerLines.cells(sample.get(i), delimiter);
      if (cells.stream().filter(c -> !c.isEmpty()).count() > 1) {
        return i;
      }
    }
    return -1;
  }

  private void checkDecimalComma(
      char delimiter, List<String> header, List<List<String>> rows, int firstLine) {
    long longer = rows.stream().filter(r -> filled(r) > header.size()).count();
    if (delimiter == ',' && header.size() > 1 && longer * 2 > rows.size()) {
      throw refused(
          firstLine + 1,
          "",
          "has more cells than the header: a decimal comma can't be told from a comma between cells",
          "another delimiter, or numbers in quotes");
    }
  }

  private static int filled(List<String> cells) {
    int size = cells.size();
    while (size > 0 && cells.get(size - 1).isEmpty()) {
      size--;
    }
    return size;
  }

  private int temperatureColumn(
      TimeColumns time, List<String> header, List<List<String>> rows, int firstLine) {
    if (options.temperatureColumn().isPresent()) {
      int declared = header.indexOf(options.temperatureColumn().get());
      if (declared < 0) {
        throw refused(
            firstLine,
            "temperatureColumn",
            Fields.quoted(options.temperatureColumn().get()) + " is not a column here",
            String.join(", ", header));
      }
      return declared;
    }
    List<Integer> named = new ArrayList<>();
    List<Integer> others = new ArrayList<>();
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    for (int i = 0; i < columns; i++) {
      String name = i < header.size() ? header.get(i).toLowerCase(Locale.ROOT) : "";
      boolean free = i != time.time() && i != time.clock();
      if (free && !hasAny(name, OTHER_WORDS) && holdsNumbers(rows, i)) {
        (hasAny(name, TEMPERATURE_WORDS) ? named : others).add(i);
      }
    }
    List<Integer> found = named.isEmpty() ? others : named;
    if (found.size() != 1) {
      throw whichColumn(found, header, firstLine);
    }
    return found.get(0);
  }

  private InputRefused whichColumn(List<Integer> found, List<String> header, int firstLine) {
    List<String> names =
        found.stream().map(i -> i < header.size() ? header.get(i) : "column " + (i + 1)).toList();
    return refused(
        firstLine + 1,
        "temperatureColumn",
        found.isEmpty()
            ? "no column holds temperatures"
            : "several columns could be the temperature",
        found.isEmpty()
            ? "a column of numbers"
            : "declare one of " + String.join(", ", names) + " (at the command line --column)");
  }

  private static boolean hasAny(String name, List<String> words) {
    return words.stream().anyMatch(name::contains);
  }

  /** Numbers or fault words in most rows, and not a counter. */
  private static boolean holdsNumbers(List<List<String>> rows, int column) {
    int numbers = 0;
    int words = 0;
    boolean counter = rows.size() > 2;
    long before = -1;
    for (List<String> row : rows) {
      String cell = column < row.size() ? row.get(column) : "";
      numbers += LoggerNumber.of(cell).isNumber() ? 1 : 0;
      words += column < row.size() && LoggerValue.isFaultWord(cell) ? 1 : 0;
      boolean integer = LoggerValue.isInteger(cell);
      long here = integer ? Long.parseLong(cell) : -1;
      counter &= integer && (before < 0 || Math.abs(here - before) == 1);
      before = here;
    }
    return !counter && numbers > 0 && (numbers + words) * 2 >= rows.size() && words < rows.size();
  }

  private InputRefused refused(int line, String field, String problem, String allowed) {
    return new InputRefused(List.of(new PlacedProblem(file, line, 0, field, problem, allowed)));
  }
}
