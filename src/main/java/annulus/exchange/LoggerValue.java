package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import annulus.exchange.LoggerReading.SkipReason;
import annulus.quantity.Units;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A temperature cell: its number, its unit if written beside it, and whether it is a fault. */
final class LoggerValue {
  private static final Pattern NUMBER =
      Pattern.compile("([+-]?[0-9]{1,6})(?:([.,])([0-9]{1,6}))?(?: ?(?:°|deg)? ?([CFcf]))?");
  private static final Set<String> FAULT_WORDS =
      Set.of(
          "", "nan", "-", "--", "---", "----", "n/a", "na", "null", "err", "error", "open",
          "fault");
  private static final double SAME = 0.06;

  private final List<Double> faults;
  private final double coldestC;
  private final double warmestC;
  private final double powerOnC;

  LoggerValue(LoggerRules rules) {
    this.faults = rules.faultValues();
    this.coldestC = rules.value("coldest-c");
    this.warmestC = rules.value("warmest-c");
    this.powerOnC = rules.value("power-on-c");
  }

  static boolean isNumber(String cell) {
    return NUMBER.matcher(cell).matches();
  }

  static boolean isInteger(String cell) {
    return cell.matches("[0-9]{1,9}");
  }

  static boolean isFaultWord(String cell) {
    return FAULT_WORDS.contains(cell.toLowerCase(Locale.ROOT));
  }

  /** The number in a cell; NaN when there is none. */
  static double number(String cell) {
    Matcher m = NUMBER.matcher(cell);
    if (!m.matches()) {
      return Double.NaN;
    }
    return Double.parseDouble(m.group(1) + "." + (m.group(3) == null ? "0" : m.group(3)));
  }

  /** The decimal mark in a cell, if it has one. */
  static Optional<Character> decimalMark(String cell) {
    Matcher m = NUMBER.matcher(cell);
    return m.matches() && m.group(2) != null ? Optional.of(m.group(2).charAt(0)) : Optional.empty();
  }

  /** The unit written in a cell, if there is one. */
  static Optional<TemperatureUnit> unit(String cell) {
    Matcher m = NUMBER.matcher(cell);
    if (!m.matches() || m.group(4) == null) {
      return Optional.empty();
    }
    boolean celsius = m.group(4).equals("C") || m.group(4).equals("c");
    return Optional.of(celsius ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
  }

  static double celsius(double number, TemperatureUnit unit) {
    return unit == TemperatureUnit.CELSIUS ? number : Units.celsiusFromFahrenheit(number);
  }

  /** Why a cell is no temperature, if it is none, apart from the power-on value. */
  Optional<SkipReason> refuse(String cell, TemperatureUnit unit) {
    double number = number(cell);
    if (Double.isNaN(number)) {
      return Optional.of(isFaultWord(cell) ? SkipReason.FAULT_VALUE : SkipReason.NOT_A_READING);
    }
    double celsius = celsius(number, unit);
    for (double fault : faults) {
      if (Math.abs(number - fault) < SAME || Math.abs(celsius - fault) < SAME) {
        return Optional.of(SkipReason.FAULT_VALUE);
      }
    }
    boolean inRange = celsius >= coldestC && celsius <= warmestC;
    return inRange ? Optional.empty() : Optional.of(SkipReason.OUT_OF_RANGE);
  }

  boolean isPowerOn(double celsius) {
    return Math.abs(celsius - powerOnC) < SAME;
  }
}
