package annulus.quantity;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Locale-free number texts, the same on every machine. */
public final class Numbers {
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
    String text = new BigDecimal(Double.toString(value)).stripTrailingZeros().toPlainString();
    return text;
  }

  /**
   * The value rounded half-up to a fixed number of decimals; never prints {@code -0}.
   *
   * @param decimals 0 to 12
   */
  public static String fixed(double value, int decimals) {
    if (!Double.isFinite(value)) {
      return Double.toString(value);
    }
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
