package annulus.exchange;

import annulus.exchange.LoggerOptions.DateOrder;
import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/** What is declared about a logger's file, in words. */
public final class LogWords {
  private LogWords() {}

  /**
   * Options from words.
   *
   * @param zone zone of a file whose times carry none
   * @param order {@code day-first} or {@code month-first}
   * @param unit {@code C} or {@code F}
   * @param column header of the column to read
   * @param place names the words in messages
   * @throws InputRefused for another word
   */
  public static LoggerOptions options(
      ZoneId zone,
      Optional<String> order,
      Optional<String> unit,
      Optional<String> column,
      Place place) {
    LoggerOptions options = LoggerOptions.in(zone);
    if (order.isPresent()) {
      options = options.with(dateOrder(order.get(), place));
    }
    if (unit.isPresent()) {
      options = options.with(unit(unit.get(), place));
    }
    return column.isPresent() ? options.withColumn(column.get()) : options;
  }

  /**
   * What the words are called where they are given.
   *
   * @param file such as {@code command line}
   * @param order name of the word for the order of day and month
   * @param unit name of the word for the unit
   */
  public record Place(String file, String order, String unit) {}

  private static DateOrder dateOrder(String word, Place place) {
    return switch (word) {
      case "day-first" -> DateOrder.DAY_FIRST;
      case "month-first" -> DateOrder.MONTH_FIRST;
      default -> throw refused(place.file(), place.order(), word, "day-first or month-first");
    };
  }

  private static TemperatureUnit unit(String word, Place place) {
    return switch (word) {
      case "C", "°C", "celsius" -> TemperatureUnit.CELSIUS;
      case "F", "°F", "fahrenheit" -> TemperatureUnit.FAHRENHEIT;
      default -> throw refused(place.file(), place.unit(), word, "C or F");
    };
  }

  private static InputRefused refused(String file, String field, String word, String allowed) {
    return new InputRefused(
        List.of(new PlacedProblem(file, 0, 0, field, word + " is unknown", allowed)));
  }
}
