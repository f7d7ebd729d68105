package annulus.cli;

import annulus.exchange.LoggerOptions;
import annulus.exchange.LoggerOptions.DateOrder;
import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.time.ZoneId;
import java.util.Optional;

/** What the command line declares about a logger's file. */
final class LogWords {
  private LogWords() {}

  static LoggerOptions options(Words words, ZoneId zone) {
    LoggerOptions options = LoggerOptions.in(zone);
    Optional<String> order = words.value("--date-order");
    if (order.isPresent()) {
      options =
          options.with(
              switch (order.get()) {
                case "day-first" -> DateOrder.DAY_FIRST;
                case "month-first" -> DateOrder.MONTH_FIRST;
                default ->
                    throw Words.refused(
                        0, "--date-order", order.get() + " is unknown", "day-first or month-first");
              });
    }
    Optional<String> unit = words.value("--unit");
    if (unit.isPresent()) {
      options =
          options.with(
              switch (unit.get()) {
                case "C", "°C" -> TemperatureUnit.CELSIUS;
                case "F", "°F" -> TemperatureUnit.FAHRENHEIT;
                default -> throw Words.refused(0, "--unit", unit.get() + " is unknown", "C or F");
              });
    }
    Optional<String> column = words.value("--column");
    return column.isPresent() ? options.withColumn(column.get()) : options;
  }
}
