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
 * @param unit unit named by the header or a title line
 * @param titleLines lines before the first reading
 */
record LoggerLayout(
    char delimiter,
    int timeColumn,
    int clockColumn,
    int temperatureColumn,
    String columnName,
    Optional<TemperatureUnit> unit,
    int titleLines) {

  List<String> cells(String line) {
    return LoggerLines.cells(line, delimiter);
  }

  /** The time in a line's cells, if there is one. */
  Optional<LoggerStamp> stamp(List<String> cells) {
    return LoggerStamp.parse(timeText(cells));
  }

  String timeText(List<String> cells) {
    String date = cell(cells, timeColumn);
    return clockColumn < 0 ? date : date + " " + cell(cells, clockColumn);
  }

  String temperatureText(List<String> cells) {
    return cell(cells, temperatureColumn);
  }

  private static String cell(List<String> cells, int column) {
    return column < cells.size() ? cells.get(column) : "";
  }
}
