package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Which unit the lines above the first reading name, and whether they agree. */
final class LoggerUnitSearch {
  /** What helps wherever the unit can't be told. */
  static final String DECLARE = "declare the unit, C or F (at the command line --unit)";

  private final String file;
  private final List<String> titles;
  private final int headerLine;
  private final char delimiter;
  private final int column;
  private final Map<TemperatureUnit, Integer> lineOf = new EnumMap<>(TemperatureUnit.class);

  /**
   * @param file for messages
   * @param titles the lines above the first reading
   * @param headerLine line of the header among them, from 0; -1 when there is none
   * @param delimiter cell delimiter
   * @param column column of the temperature, from 0
   */
  LoggerUnitSearch(String file, List<String> titles, int headerLine, char delimiter, int column) {
    this.file = file;
    this.titles = titles;
    this.headerLine = headerLine;
    this.delimiter = delimiter;
    this.column = column;
    for (int i = titles.size() - 1; i >= 0; i--) {
      look(i);
    }
  }

  private void look(int line) {
    List<String> cells = LoggerLines.cells(titles.get(line), delimiter);
    String cell = column < cells.size() ? cells.get(column) : "";
    if (line == headerLine) {
      note(LoggerUnits.ofHeader(cell), line);
      cells.stream()
          .filter(LoggerUnits::announcesUnit)
          .forEach(c -> note(LoggerUnits.ofLine(c), line));
      return;
    }
    note(LoggerUnits.ofLine(titles.get(line)), line);
    if (line > headerLine) {
      note(LoggerUnits.ofWord(cell), line);
    }
  }

  private void note(Set<TemperatureUnit> units, int line) {
    units.forEach(u -> lineOf.putIfAbsent(u, line + 1));
  }

  /** The unit, where one alone is named. */
  Optional<TemperatureUnit> unit() {
    return lineOf.size() == 1 ? lineOf.keySet().stream().findFirst() : Optional.empty();
  }

  /** Two units are named, or none while °F is spoken of. */
  Optional<PlacedProblem> doubt() {
    if (lineOf.size() > 1) {
      int celsius = lineOf.get(TemperatureUnit.CELSIUS);
      int fahrenheit = lineOf.get(TemperatureUnit.FAHRENHEIT);
      return Optional.of(
          celsius == fahrenheit
              ? problem(celsius, "both °C and °F are named here")
              : problem(fahrenheit, "°F is named here, but °C in line " + celsius));
    }
    for (int i = 0; i < titles.size() && lineOf.isEmpty(); i++) {
      boolean header =
          i == headerLine
              && LoggerLines.cells(titles.get(i), delimiter).stream()
                  .anyMatch(c -> LoggerUnits.ofHeader(c).contains(TemperatureUnit.FAHRENHEIT));
      if (header || LoggerUnits.mentionsFahrenheit(titles.get(i))) {
        return Optional.of(
            problem(i + 1, "°F is spoken of here, and no unit is named for the readings"));
      }
    }
    return Optional.empty();
  }

  private PlacedProblem problem(int line, String problem) {
    return new PlacedProblem(file, line, 0, "unit", problem, DECLARE);
  }

  /**
   * A column that holds the unit of each reading, the nearest behind it first; -1 when there is
   * none. A lone letter counts only under a header that announces a unit or none at all, since a
   * state may be written so too.
   */
  static int column(List<String> header, List<List<String>> rows, int temperature) {
    int columns = rows.stream().mapToInt(List::size).max().orElse(0);
    int found = -1;
    for (int i = 0; i < columns; i++) {
      boolean nearer = i > temperature ? found < temperature : true;
      if (i != temperature
          && nearer
          && holdsUnits(i < header.size() ? header.get(i) : "", rows, i)) {
        found = i;
      }
    }
    return found;
  }

  private static boolean holdsUnits(String name, List<List<String>> rows, int column) {
    boolean letters = name.isEmpty() || LoggerUnits.announcesUnit(name);
    List<String> cells =
        rows.stream().filter(r -> column < r.size()).map(r -> r.get(column)).toList();
    return cells.stream().anyMatch(c -> !c.isEmpty())
        && cells.stream()
            .filter(c -> !c.isEmpty())
            .allMatch(c -> (letters || c.length() > 1) && !LoggerUnits.ofWord(c).isEmpty());
  }
}
