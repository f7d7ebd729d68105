package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.util.List;
import java.util.Optional;

/**
 * Where in a line the time and the temperature stand.
 *
 * @param delimiter cell delimiter
 * @param timeColumn column of the date, or of date and time, from 0
 * @param clockColumn column of the time of day, -1 when it stands with the date
 * @param temperatureColumn column of the temperature, from 0
 * @param columnName its header, or its number
 * @param unitColumn column that holds nothing but the unit, -1 when there is none
 * @param unit unit named above the readings
 * @param unitDoubt what is wrong with the unit named above the readings; counts where no reading
 *     carries its own
 * @param titleLines lines before the first reading
 */
record LoggerLayout(
    char delimiter,
    int timeColumn,
    int clockColumn,
    int temperatureColumn,
    String columnName,
    int unitColumn,
    Optional<TemperatureUnit> unit,
    Optional<PlacedProblem> unitDoubt,
    int titleLines) {

  private static final Optional<TemperatureUnit> CELSIUS = Optional.of(TemperatureUnit.CELSIUS);
  private static final Optional<TemperatureUnit> FAHRENHEIT =
      Optional.of(TemperatureUnit.FAHRENHEIT);

  /** The time of a line as it is written; empty when it has no such column. */
  String timeText(String line) {
    String date = cell(line, timeColumn);
    return clockColumn < 0 ? date : date + " " + cell(line, clockColumn);
  }

  /** The temperature of a line as it is written; empty when it has no such column. */
  String temperatureText(String line) {
    return cell(line, temperatureColumn);
  }

  /** The unit in a line's own column; empty when it has none. */
  Optional<TemperatureUnit> unitText(String line) {
    return switch (unitColumn < 0 ? "" : cell(line, unitColumn)) {
      case "" -> Optional.empty();
      case "C", "°C" -> CELSIUS;
      case "F", "°F" -> FAHRENHEIT;
      default -> LoggerUnits.ofWord(cell(line, unitColumn)).stream().findFirst();
    };
  }

  /**
   * What a line holds.
   *
   * @param line the line
   * @param stamp its time; null when it has none
   * @param temperature its temperature
   */
  record Cells(LoggerLine line, LoggerStamp stamp, LoggerNumber temperature) {}

  /** Reads a line. */
  Cells cells(LoggerLine line) {
    boolean quoted = line.find('"', line.from()) < line.until();
    return new Cells(line, stamp(line, quoted), temperature(line, quoted));
  }

  private LoggerStamp stamp(LoggerLine line, boolean quoted) {
    int start = quoted || clockColumn >= 0 ? -1 : start(line, timeColumn);
    LoggerStamp plain =
        start < 0 ? null : LoggerStamp.plain(line.chars(), start, line.find(delimiter, start));
    return plain == null ? LoggerStamp.parse(timeText(line.text())).orElse(null) : plain;
  }

  private LoggerNumber temperature(LoggerLine line, boolean quoted) {
    int start = quoted ? -1 : start(line, temperatureColumn);
    LoggerNumber plain =
        start < 0 ? null : LoggerNumber.plain(line.chars(), start, line.find(delimiter, start));
    return plain == null ? LoggerNumber.of(temperatureText(line.text())) : plain;
  }

  /** Where a cell begins in a line without quotes; below 0 when there is none. */
  private int start(LoggerLine line, int column) {
    int start = line.from();
    for (int i = 0; i < column && start >= 0; i++) {
      int next = line.find(delimiter, start);
      start = next < line.until() ? next + 1 : -1;
    }
    return start;
  }

  /** One cell; without quotes in the line no other cell needs to be made. */
  private String cell(String line, int column) {
    if (line.indexOf('"') >= 0) {
      List<String> cells = LoggerLines.cells(line, delimiter);
      return column < cells.size() ? cells.get(column) : "";
    }
    LoggerLine plain = LoggerLine.of(line);
    int start = start(plain, column);
    return start < 0 ? "" : line.substring(start, plain.find(delimiter, start)).strip();
  }
}
