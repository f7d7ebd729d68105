package annulus.badhouse.quantity;

import java.util.Locale;

/** Nothing wrong here. */
public record Innocent(double value) {
  static final double LIMIT = 1;

  String text() {
    return String.format(Locale.ROOT, "%.1f", Math.max(value, LIMIT));
  }
}
