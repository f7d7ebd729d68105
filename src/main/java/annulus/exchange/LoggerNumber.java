package annulus.exchange;

import annulus.exchange.LoggerOptions.TemperatureUnit;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A cell read as a number with what stands beside it.
 *
 * @param value the number; not a number when there is none
 * @param decimalMark the decimal mark, if it has one
 * @param unit the unit written in the cell, if there is one
 */
record LoggerNumber(double value, Optional<Character> decimalMark, Optional<TemperatureUnit> unit) {
  private static final Pattern WRITTEN =
      Pattern.compile("([+-]?[0-9]{1,6})(?:([.,])([0-9]{1,6}))?(?: ?(?:°|deg)? ?([CFcf]))?");
  private static final int MOST_DIGITS = 6;
  private static final double[] TENS = {1, 10, 100, 1e3, 1e4, 1e5, 1e6};
  private static final Optional<Character> POINT = Optional.of('.');
  private static final Optional<Character> COMMA = Optional.of(',');
  private static final LoggerNumber NONE =
      new LoggerNumber(Double.NaN, Optional.empty(), Optional.empty());

  boolean isNumber() {
    return !Double.isNaN(value);
  }

  /** What a cell holds. */
  static LoggerNumber of(String cell) {
    LoggerNumber plain = plain(cell.toCharArray(), 0, cell.length());
    return plain == null ? written(cell) : plain;
  }

  /** By the full pattern. */
  static LoggerNumber written(String cell) {
    Matcher m = WRITTEN.matcher(cell);
    if (!m.matches()) {
      return NONE;
    }
    String digits = m.group(1) + "." + (m.group(3) == null ? "0" : m.group(3));
    return new LoggerNumber(Double.parseDouble(digits), mark(m.group(2)), unit(m.group(4)));
  }

  private static Optional<Character> mark(String text) {
    return Optional.ofNullable(text).map(t -> t.charAt(0));
  }

  private static Optional<TemperatureUnit> unit(String text) {
    return Optional.ofNullable(text)
        .map(t -> t.equalsIgnoreCase("c") ? TemperatureUnit.CELSIUS : TemperatureUnit.FAHRENHEIT);
  }

  /**
   * Digits with at most one mark, as nearly all cells are; null for any other. A whole number below
   * 10¹² over a power of ten to 10⁶ is rounded once, as reading its text is.
   */
  static LoggerNumber plain(char[] line, int from, int until) {
    boolean minus = from < until && line[from] == '-';
    boolean signed = minus || (from < until && line[from] == '+');
    int at = signed ? from + 1 : from;
    int end = digitsEnd(line, at, until);
    if (end == at || end - at > MOST_DIGITS) {
      return null;
    }
    long whole = whole(line, at, end, 0);
    int decimals = 0;
    Optional<Character> mark = Optional.empty();
    if (end < until) {
      mark = line[end] == '.' ? POINT : COMMA;
      int last = digitsEnd(line, end + 1, until);
      decimals = last - end - 1;
      boolean marked = line[end] == '.' || line[end] == ',';
      if (!marked || decimals < 1 || decimals > MOST_DIGITS || last < until) {
        return null;
      }
      whole = whole(line, end + 1, last, whole);
    }
    double value = whole / TENS[decimals];
    return new LoggerNumber(minus ? -value : value, mark, Optional.empty());
  }

  private static int digitsEnd(char[] cell, int from, int until) {
    int i = from;
    while (i < until && cell[i] >= '0' && cell[i] <= '9') {
      i++;
    }
    return i;
  }

  private static long whole(char[] cell, int from, int end, long before) {
    long whole = before;
    for (int i = from; i < end; i++) {
      whole = whole * 10 + (cell[i] - '0');
    }
    return whole;
  }
}
