package annulus.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Locale-free number texts, the same on every machine. */
public final class Numbers {
  /** Below this size a double times a power of ten up to 10⁶ is off by far less than 1e-3. */
  private static final double SHORT = 1e6;

  private static final long[] TENS = {1, 10, 100, 1000, 10_000, 100_000, 1_000_000};

  private Numbers() {}

  /**
   * The shortest plain decimal text that reads back as the same double, without exponent and
   * without a trailing {@code .0}.
   */
  public static String plain(double value) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    if (value == 0) {
      return "0";
    }
    int decimals = decimals(value);
    return decimals < 0 ? exactPlain(value) : decimal(Math.round(value * TENS[decimals]), decimals);
  }

  static String exactPlain(double value) {
    return new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
  }

  /**
   * How many decimals, up to three, write a short number such as 41.97 in full; −1 for any other.
   * Such a number is the double nearest to few digits, which no shorter text can be.
   */
  private static int decimals(double value) {
    for (int decimals = 0; decimals <= 3 && Math.abs(value) < SHORT; decimals++) {
      if ((double) Math.round(value * TENS[decimals]) / TENS[decimals] == value) {
        return decimals;
      }
    }
    return -1;
  }

  /** A whole number of units of the last decimal, written with that many decimals. */
  private static String decimal(long units, int decimals) {
    StringBuilder text = new StringBuilder(20);
    decimal(text, units, decimals);
    return text.toString();
  }

  private static void decimal(StringBuilder text, long units, int decimals) {
    long size = Math.abs(units);
    text.append(units < 0 ? "-" : "").append(size / TENS[decimals]);
    if (decimals > 0) {
      text.append('.');
    }
    for (int place = decimals - 1; place >= 0; place--) {
      text.append((char) ('0' + size / TENS[place] % 10));
    }
  }

  /**
   * The value rounded half-up to a fixed number of decimals; never prints {@code -0}.
   *
   * @param decimals 0 to 12
   */
  public static String fixed(double value, int decimals) {
    StringBuilder text = new StringBuilder(20);
    appendFixed(text, value, decimals);
    return text.toString();
  }

  /** Appends what {@link #fixed} gives. */
  public static void appendFixed(StringBuilder text, double value, int decimals) {
    if (!Double.isFinite(value)) {
      text.append(value);
      return;
    }
    if (decimals < TENS.length && Math.abs(value) < SHORT) {
      double units = Math.abs(value) * TENS[decimals];
      double whole = Math.floor(units + 0.5);
      // near a tie the decimal text decides, not the double
      if (Math.abs(units - Math.floor(units) - 0.5) > 1e-3) {
        decimal(text, (long) (value < 0 ? -whole : whole), decimals);
        return;
      }
    }
    text.append(exactFixed(value, decimals));
  }

  static String exactFixed(double value, int decimals) {
    BigDecimal rounded =
        new BigDecimal(Double.toString(value)).setScale(decimals, RoundingMode.HALF_UP);
    return rounded.signum() == 0 ? rounded.abs().toPlainString() : rounded.toPlainString();
  }

  /** As {@link #fixed} with an explicit plus sign on values that print above zero. */
  public static String signed(double value, int decimals) {
    String text = fixed(value, decimals);
    boolean positive = value > 0 && new BigDecimal(text).signum() > 0;
    return positive ? "+" + text : text;
  }
}
