package annulus.badhouse.quantity;

/** A pure package prints the same text everywhere. */
public final class ReadsLocale {
  @SuppressWarnings("DefaultLocale") // the fault this class is here for
  String text(double value) {
    return String.format("%.1f", value);
  }
}
