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
    if (isPlainToRound(value, decimals)) {
      decimal(text, roundedUnits(value, decimals), decimals);
    } else if (Double.isFinite(value)) {
      text.append(exactFixed(value, decimals));
    } else {
      text.append(value);
    }
  }

  /** The number that {@link #fixed} writes. */
  public static double rounded(double value, int decimals) {
    return isPlainToRound(value, decimals)
        ? (double) roundedUnits(value, decimals) / TENS[decimals] // as near as reading the text
        : Double.parseDouble(fixed(value, decimals));
  }

  /** Near a tie the decimal text decides which way to round, not the double. */
  private static boolean isPlainToRound(double value, int decimals) {
    if (decimals >= TENS.length || !(Math.abs(value) < SHORT)) {
      return false;
    }
    double units = Math.abs(value) * TENS[decimals];
    return Math.abs(units - Math.floor(units) - 0.5) > 1e-3;
  }

  private static long roundedUnits(double value, int decimals) {
    long units = (long) Math.floor(Math.abs(value) * TENS[decimals] + 0.5);
    return value < 0 ? -units : units;
  }

  /**
   * The least number of so many decimals that is not below the value, or the greatest that is not
   * above it. The value is first rounded to nine decimals: 3.1000000000000001 is 3.1, not 3.2.
   *
   * @param decimals 0 to 9
   */
  public static String directed(double value, int decimals, boolean upwards) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
    String quick = quickDirected(value, decimals, upwards);
    return quick == null ? exactDirected(value, decimals, upwards) : quick;
  }

  /** Null where the decimal text has to decide, not the double. */
  private static String quickDirected(double value, int decimals, boolean upwards) {
    if (decimals >= TENS.length || Math.abs(value) >= SHORT) {
      return null;
    }
    double units = value * TENS[decimals];
    if (isExact(value, decimals)) {
      return decimal(Math.round(units), decimals);
    }
    return isWellBetween(units)
        ? decimal((long) (upwards ? Math.ceil(units) : Math.floor(units)), decimals)
        : null;
  }

  /** Whether so many decimals write the number in full. */
  private static boolean isExact(double value, int decimals) {
    int own = decimals(value);
    return own >= 0 && own <= decimals;
  }

  /** Nearer to a whole number the decimal text decides which way to round, not the double. */
  private static boolean isWellBetween(double units) {
    return Math.abs(units - Math.rint(units)) > 1e-2;
  }

  /**
   * The greatest number of so many decimals that is not above the finite value, to the last digit.
   *
   * @param decimals 0 or more
   */
  public static String floored(double value, int decimals) {
    String quick = quickDirected(value, decimals, false);
    return quick == null ? exactFloored(value, decimals) : quick;
  }

  static String exactFloored(double value, int decimals) {
    return new BigDecimal(Double.toString(value))
        .setScale(decimals, RoundingMode.FLOOR)
        .toPlainString();
  }

  static String exactDirected(double value, int decimals, boolean upwards) {
    BigDecimal exact = new BigDecimal(Double.toString(value)).setScale(9, RoundingMode.HALF_EVEN);
    BigDecimal result =
        exact.setScale(decimals, upwards ? RoundingMode.CEILING : RoundingMode.FLOOR);
    return result.signum() == 0 ? result.abs().toPlainString() : result.toPlainString();
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
