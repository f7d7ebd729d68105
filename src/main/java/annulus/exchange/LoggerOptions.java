package annulus.exchange;

import java.time.ZoneId;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the user declares about a logger's file; what is empty is found in the file or asked for.
 *
 * @param zone time zone of a file whose times carry none
 * @param dateOrder order of day and month where both are numbers
 * @param unit unit of the temperatures
 * @param temperatureColumn header of the column to read
 * @param floorC temperature, °C, that a gap is not taken to be above
 */
public record LoggerOptions(
    ZoneId zone,
    Optional<DateOrder> dateOrder,
    Optional<TemperatureUnit> unit,
    Optional<String> temperatureColumn,
    OptionalDouble floorC) {
  /** Order of day and month. */
  public enum DateOrder {
    DAY_FIRST,
    MONTH_FIRST
  }

  /** Unit of the temperatures. */
  public enum TemperatureUnit {
    CELSIUS,
    FAHRENHEIT
  }

  /** Nothing declared but the zone. */
  public static LoggerOptions in(ZoneId zone) {
    return new LoggerOptions(
        zone, Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty());
  }

  /** The same with the order of day and month declared. */
  public LoggerOptions with(DateOrder order) {
    return new LoggerOptions(zone, Optional.of(order), unit, temperatureColumn, floorC);
  }

  /** The same with the unit declared. */
  public LoggerOptions with(TemperatureUnit declared) {
    return new LoggerOptions(zone, dateOrder, Optional.of(declared), temperatureColumn, floorC);
  }

  /** The same with the column declared. */
  public LoggerOptions withColumn(String header) {
    return new LoggerOptions(zone, dateOrder, unit, Optional.of(header), floorC);
  }

  /** The same with a floor for gaps, °C. */
  public LoggerOptions withFloor(double celsius) {
    return new LoggerOptions(zone, dateOrder, unit, temperatureColumn, OptionalDouble.of(celsius));
  }
}
