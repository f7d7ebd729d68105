package annulus.exchange;

import annulus.exchange.LoggerOptions.DateOrder;
import annulus.exchange.LoggerOptions.TemperatureUnit;
import annulus.exchange.LoggerReading.TimeForm;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * What the first pass over a file learns: order of day and month, direction, usual interval, unit
 * and decimal mark. Memory does not grow with the file.
 */
final class LoggerSurvey {
  /** What the second pass needs to know. */
  record Plan(
      Optional<DateOrder> order,
      String orderBasis,
      TimeForm form,
      boolean absolute,
      boolean newestFirst,
      double intervalSeconds,
      double togetherSeconds,
      Optional<Character> decimalMark,
      TemperatureUnit unit,
      boolean unitAssumed) {
    DateOrder orderOrAny() {
      return order.orElse(DateOrder.DAY_FIRST);
    }
  }

  private final String file;
  private final LoggerLayout layout;
  private final LoggerOptions options;
  private final LoggerRules rules;
  private final LoggerValue values;
  private final LoggerTrack readDayFirst;
  private final LoggerTrack readMonthFirst;
  private final List<PlacedProblem> problems = new ArrayList<>();
  private LoggerStamp firstOpen;
  private int firstOpenLine;
  private String firstOpenText = "";
  private LoggerStamp first;
  private boolean sawAbsolute;
  private boolean sawLocal;
  private boolean dotted;
  private Optional<Character> mark = Optional.empty();
  private Optional<TemperatureUnit> cellUnit = Optional.empty();
  private int fahrenheitLine;
  private double coldest = Double.POSITIVE_INFINITY;
  private double warmest = Double.NEGATIVE_INFINITY;
  private int readings;

  LoggerSurvey(String file, LoggerLayout layout, LoggerOptions options, LoggerRules rules) {
    this.file = file;
    this.layout = layout;
    this.options = options;
    this.rules = rules;
    this.values = new LoggerValue(rules);
    this.readDayFirst = new LoggerTrack(rules);
    this.readMonthFirst = new LoggerTrack(rules);
  }

  void line(int number, LoggerLayout.Cells cells) {
    if (cells.stamp() != null) {
      time(number, cells.stamp(), cells.line());
      temperature(number, cells);
    } else if (fahrenheitLine == 0 && number > layout.titleLines()) {
      String text = cells.line().text();
      boolean turns = LoggerUnits.turnsToFahrenheit(text, layout.temperatureText(text));
      fahrenheitLine = turns ? number : 0;
    }
  }

  private void time(int number, LoggerStamp stamp, LoggerLine line) {
    first = first == null ? stamp : first;
    sawAbsolute |= stamp.absolute();
    sawLocal |= !stamp.absolute();
    dotted |= stamp.dotted();
    if (sawAbsolute && sawLocal && problems.isEmpty()) {
      refuse(number, "time", "some times carry an offset and some do not", "one form throughout");
    }
    OptionalLong dayFirst = stamp.millis(DateOrder.DAY_FIRST);
    OptionalLong monthFirst = stamp.needsOrder() ? stamp.millis(DateOrder.MONTH_FIRST) : dayFirst;
    if (dayFirst.isEmpty() && monthFirst.isEmpty()) {
      return;
    }
    readDayFirst.add(number, dayFirst, stamp.year());
    readMonthFirst.add(number, monthFirst, stamp.year());
    if (firstOpen == null && !dayFirst.equals(monthFirst)) {
      firstOpen = stamp;
      firstOpenLine = number;
      firstOpenText = layout.timeText(line.text());
    }
  }

  private void temperature(int number, LoggerLayout.Cells cells) {
    LoggerNumber cell = cells.temperature();
    Optional<Character> here = cell.decimalMark();
    if (here.isPresent() && mark.isPresent() && !here.equals(mark) && problems.isEmpty()) {
      refuse(number, "temperature", "point and comma both stand as decimal mark", "one of them");
    }
    mark = mark.isPresent() ? mark : here;
    unit(number, cell.unit());
    if (layout.unitColumn() >= 0) {
      unit(number, layout.unitText(cells.line().text()));
    }
    if (values.refuse(cell, TemperatureUnit.CELSIUS) == null) {
      readings++;
      double value = cell.value();
      boolean counts = !values.isPowerOn(value);
      coldest = counts ? Math.min(coldest, value) : coldest;
      warmest = counts ? Math.max(warmest, value) : warmest;
    }
  }

  /** The unit that stands beside one reading. */
  private void unit(int number, Optional<TemperatureUnit> unit) {
    if (unit.isPresent() && cellUnit.isPresent() && !unit.equals(cellUnit) && problems.isEmpty()) {
      refuse(number, "temperature", "°C and °F stand in one column", "one unit");
    }
    cellUnit = cellUnit.isPresent() ? cellUnit : unit;
  }

  /**
   * @throws InputRefused when something can't be told from the file
   */
  Plan plan() {
    throwIfAny();
    Optional<DateOrder> order = order();
    LoggerTrack track = track(order.orElse(DateOrder.DAY_FIRST));
    if (track.worstBackSeconds() > rules.value("backward-most-s")) {
      refuse(
          track.worstBackLine(),
          "time",
          "runs back by "
              + Math.round(track.worstBackSeconds())
              + " s against the rows before: the logger's clock was changed, or the rows are not"
              + " in the order of time",
          "rows in the order of time");
    }
    boolean assumed = options.unit().isEmpty() && layout.unit().isEmpty() && cellUnit.isEmpty();
    TemperatureUnit unit = unit();
    throwIfAny();
    return new Plan(
        order,
        basis(order),
        first.form(),
        sawAbsolute,
        track.newestFirst(),
        track.usualIntervalSeconds(),
        rules.togetherSeconds(track.longIntervalSeconds()),
        mark,
        unit,
        assumed);
  }

  private LoggerTrack track(DateOrder order) {
    return order == DateOrder.DAY_FIRST ? readDayFirst : readMonthFirst;
  }

  private Optional<DateOrder> order() {
    if (firstOpen == null) {
      return Optional.empty();
    }
    if (options.dateOrder().isPresent()) {
      checkDeclared(options.dateOrder().get());
      return options.dateOrder();
    }
    if (dotted && readDayFirst.impossible() == 0) {
      return Optional.of(DateOrder.DAY_FIRST);
    }
    if ((readDayFirst.impossible() == 0) != (readMonthFirst.impossible() == 0)) {
      boolean day = readDayFirst.impossible() == 0;
      return Optional.of(day ? DateOrder.DAY_FIRST : DateOrder.MONTH_FIRST);
    }
    boolean bothPossible = readDayFirst.impossible() == 0;
    if (bothPossible && (readDayFirst.midnights() > 0) != (readMonthFirst.midnights() > 0)) {
      return Optional.of(
          readDayFirst.midnights() > 0 ? DateOrder.DAY_FIRST : DateOrder.MONTH_FIRST);
    }
    refuse(
        firstOpenLine,
        "date",
        bothReadings(bothPossible),
        "declare the order, day-first or month-first (at the command line --date-order)");
    return Optional.empty();
  }

  private void checkDeclared(DateOrder declared) {
    boolean dayFirst = declared == DateOrder.DAY_FIRST;
    DateOrder other = dayFirst ? DateOrder.MONTH_FIRST : DateOrder.DAY_FIRST;
    if (track(declared).impossible() > track(other).impossible()) {
      refuse(
          track(declared).firstImpossibleLine(),
          "date",
          "is no date in the declared order, " + (dayFirst ? "day first" : "month first"),
          "the other order, or none declared");
    }
  }

  private String bothReadings(boolean bothPossible) {
    String text = Fields.quoted(firstOpenText);
    if (!bothPossible) {
      return text + " and the other dates fit neither day first nor month first";
    }
    return text
        + " is "
        + firstOpen.date(DateOrder.DAY_FIRST).orElseThrow()
        + " (day first) or "
        + firstOpen.date(DateOrder.MONTH_FIRST).orElseThrow()
        + " (month first), and the file does not tell which";
  }

  private String basis(Optional<DateOrder> order) {
    if (order.isEmpty()) {
      return "the dates read the same either way";
    }
    if (options.dateOrder().isPresent()) {
      return "declared";
    }
    DateOrder other =
        order.get() == DateOrder.DAY_FIRST ? DateOrder.MONTH_FIRST : DateOrder.DAY_FIRST;
    if (track(other).impossible() > 0) {
      return "the other order gives a month above 12";
    }
    return dotted
        ? "dates with dots are written day first"
        : "only so the rows run on across midnight";
  }

  private TemperatureUnit unit() {
    if (options.unit().isPresent()) {
      return options.unit().get();
    }
    Optional<TemperatureUnit> named = cellUnit.or(layout::unit);
    if (named.isEmpty() && layout.unitDoubt().isPresent()) {
      problems.add(layout.unitDoubt().get());
    } else if (cellUnit.isPresent()
        && layout.unit().isPresent()
        && !cellUnit.equals(layout.unit())) {
      refuse(
          layout.titleLines() + 1,
          "unit",
          "the readings carry "
              + sign(cellUnit.get())
              + ", the lines above "
              + sign(layout.unit().get()),
          LoggerUnitSearch.DECLARE);
    } else if (fahrenheitLine > 0 && !named.equals(Optional.of(TemperatureUnit.FAHRENHEIT))) {
      refuse(
          fahrenheitLine,
          "unit",
          "°F is named here, but " + (named.isPresent() ? "°C" : "no unit") + " above",
          LoggerUnitSearch.DECLARE);
    }
    return named.orElseGet(this::assumed);
  }

  private TemperatureUnit assumed() {
    boolean likelyCelsius =
        coldest >= rules.value("assumed-celsius-low-c")
            && warmest <= rules.value("assumed-celsius-high-c");
    if (problems.isEmpty() && readings > 0 && !likelyCelsius) {
      refuse(
          layout.titleLines() + 1,
          "unit",
          "the file names no unit, and readings from "
              + coldest
              + " to "
              + warmest
              + " need not be °C",
          LoggerUnitSearch.DECLARE);
    }
    return TemperatureUnit.CELSIUS;
  }

  private static String sign(TemperatureUnit unit) {
    return unit == TemperatureUnit.CELSIUS ? "°C" : "°F";
  }

  private void refuse(int line, String field, String problem, String allowed) {
    problems.add(new PlacedProblem(file, line, 0, field, problem, allowed));
  }

  private void throwIfAny() {
    if (!problems.isEmpty()) {
      throw new InputRefused(problems);
    }
  }
}
