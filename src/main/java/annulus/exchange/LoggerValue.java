package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import annulus.exchange.LoggerReading.SkipReason;
import annulus.quantity.Units;
import java.util.Locale;
import java.util.Set;

/** A temperature cell: its number, its unit if written beside it, and whether it is a fault. */
final class LoggerValue {
  private static final Set<String> FAULT_WORDS =
      Set.of(
          "", "nan", "-", "--", "---", "----", "n/a", "na", "null", "err", "error", "open",
          "fault");

  private final double[] faults;
  private final double coldestC;
  private final double warmestC;
  private final double powerOnC;
  private final double same;

  LoggerValue(LoggerRules rules) {
    this.faults = rules.faultValues().stream().mapToDouble(Double::doubleValue).toArray();
    this.coldestC = rules.value("coldest-c");
    this.warmestC = rules.value("warmest-c");
    this.powerOnC = rules.value("power-on-c");
    this.same = rules.value("same-reading");
  }

  static boolean isInteger(String cell) {
    return cell.matches("[0-9]{1,9}");
  }

  static boolean isFaultWord(String cell) {
    return FAULT_WORDS.contains(cell.toLowerCase(Locale.ROOT));
  }

  static double celsius(double number, TemperatureUnit unit) {
    return unit == TemperatureUnit.CELSIUS ? number : Units.celsiusFromFahrenheit(number);
  }

  /** Why a cell is no temperature, apart from the power-on value; null when it is one. */
  SkipReason refuse(LoggerNumber read, TemperatureUnit unit) {
    if (!read.isNumber()) {
      return SkipReason.NOT_A_READING;
    }
    double celsius = celsius(read.value(), unit);
    for (double fault : faults) {
      if (Math.abs(read.value() - fault) < same || Math.abs(celsius - fault) < same) {
        return SkipReason.FAULT_VALUE;
      }
    }
    return celsius >= coldestC && celsius <= warmestC ? null : SkipReason.OUT_OF_RANGE;
  }

  boolean isPowerOn(double celsius) {
    return Math.abs(celsius - powerOnC) < same;
  }
}
