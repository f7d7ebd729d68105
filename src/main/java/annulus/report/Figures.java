package annulus.report;

import annulus.quantity.Numbers;
import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/** Numbers as people read them. No rounding here turns a number against a limit it was held to. */
final class Figures {
  private static final int MOST_DECIMALS = 6;

  private Figures() {}

  /** Micrometres: whole from 10 on, one decimal below; a trailing {@code .0} goes. */
  static int micrometreDecimals(double um) {
    return Math.abs(um) < 9.95 ? 1 : 0;
  }

  /** A length in µm with its unit. */
  static String um(double um) {
    return trimmed(um, micrometreDecimals(um)) + " µm";
  }

  /** One decimal, for columns that stand under each other. */
  static String oneDecimal(double value) {
    return Numbers.fixed(value, 1);
  }

  /** Away from the middle: an upper limit is never printed lower than it is. */
  static String roundedUp(double value, int decimals) {
    return Numbers.directed(value, decimals, true);
  }

  /** A lower limit is never printed higher than it is. */
  static String roundedDown(double value, int decimals) {
    return Numbers.directed(value, decimals, false);
  }

  /**
   * A force or torque as people read it: three significant digits, or as many as are asked for, and
   * one decimal at most.
   */
  private static String force(double value, int digits, RoundingMode mode) {
    if (!Double.isFinite(value)) {
      return Numbers.plain(value);
    }
    BigDecimal exact = new BigDecimal(Double.toString(value)).setScale(9, RoundingMode.HALF_EVEN);
    BigDecimal result = exact.round(new MathContext(digits, mode));
    result = result.scale() > 1 ? result.setScale(1, mode) : result;
    return result.signum() == 0 ? "0" : trimmedZeros(result);
  }

  /** What is wanted or needed is never printed smaller than it is. */
  static String forceUp(double value, int digits) {
    return force(value, digits, RoundingMode.CEILING);
  }

  /** What holds is never printed larger than it is. */
  static String forceDown(double value, int digits) {
    return force(value, digits, RoundingMode.FLOOR);
  }

  /** A likely force. */
  static String force(double value, int digits) {
    return force(value, digits, RoundingMode.HALF_UP);
  }

  private static String trimmedZeros(BigDecimal value) {
    return value.stripTrailingZeros().toPlainString();
  }

  /** Fixed decimals without zeros at the end. */
  static String trimmed(double value, int decimals) {
    StringBuilder text = new StringBuilder(20);
    appendTrimmed(text, value, decimals);
    return text.toString();
  }

  /** Appends what {@link #trimmed} gives. */
  static void appendTrimmed(StringBuilder text, double value, int decimals) {
    int start = text.length();
    Numbers.appendFixed(text, value, decimals);
    cutZeros(text, start);
  }

  private static void cutZeros(StringBuilder text, int start) {
    if (text.indexOf(".", start) < 0) {
      return;
    }
    int end = text.length();
    while (text.charAt(end - 1) == '0') {
      end--;
    }
    text.setLength(text.charAt(end - 1) == '.' ? end - 1 : end);
  }

  /**
   * A probability as percent: whole, or one decimal from 90 % on, and more where fewer would print
   * a doubt as certainty or a probability below the wanted one as reaching it.
   *
   * @param wanted the probability it is held to
   */
  static String percent(double probability, double wanted) {
    if (probability > 0.9999 && probability < 1) {
      return "more than 99.99 %";
    }
    if (probability < 0.0001 && probability > 0) {
      return "less than 0.01 %";
    }
    int decimals = probability >= 0.9 && probability < 1 ? 1 : 0;
    while (decimals < MOST_DECIMALS && misleads(probability, wanted, decimals)) {
      decimals++;
    }
    String text = Numbers.fixed(100 * probability, decimals);
    if (misleads(probability, wanted, decimals)) {
      text = (probability < wanted ? "just under " : "just over ") + trimmed(100 * wanted, 4);
    }
    return text + " %";
  }

  private static boolean misleads(double probability, double wanted, int decimals) {
    double printed = Numbers.rounded(100 * probability, decimals) / 100;
    boolean turned = Math.signum(printed - wanted) != Math.signum(probability - wanted);
    boolean certain = (printed >= 1 && probability < 1) || (printed <= 0 && probability > 0);
    return certain || (turned && Math.abs(probability - wanted) > 1e-12);
  }

  /** A probability as a number, rounded down. */
  static String probability(double value, int decimals) {
    StringBuilder text = new StringBuilder(Numbers.floored(value, decimals));
    cutZeros(text, 0);
    return text.toString();
  }

  /** Six significant digits, plainly written. */
  static String significant(double value) {
    if (!Double.isFinite(value) || value == 0) {
      return Numbers.plain(value);
    }
    BigDecimal rounded =
        new BigDecimal(Double.toString(value)).round(new MathContext(6, RoundingMode.HALF_UP));
    return rounded.stripTrailingZeros().toPlainString();
  }

  /** The wanted probability itself, such as {@code 95 %}. */
  static String wanted(double probability) {
    return trimmed(100 * probability, 4) + " %";
  }
}
