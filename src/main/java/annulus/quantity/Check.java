package annulus.quantity;

/** Range checks for constructors. Every failure is an {@link InvalidValue}. */
public final class Check {
  private Check() {}

  /**
   * Requires {@code low <= value <= high}, both ends allowed; NaN and infinities are refused.
   *
   * @return the value
   * @throws InvalidValue when outside
   */
  public static double within(String field, double value, double low, double high, String unit) {
    if (!(value >= low && value <= high)) {
      throw new InvalidValue(
          field,
          Numbers.plain(value) + suffix(unit) + " is out of range",
          Numbers.plain(low) + " to " + Numbers.plain(high) + suffix(unit));
    }
    return value;
  }

  /**
   * Requires {@code value > 0} and finite.
   *
   * @return the value
   * @throws InvalidValue when not
   */
  public static double positive(String field, double value, String unit) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new InvalidValue(
          field,
          Numbers.plain(value) + suffix(unit) + " is not above zero",
          "more than 0" + suffix(unit));
    }
    return value;
  }

  /**
   * Requires a finite number.
   *
   * @return the value
   * @throws InvalidValue for NaN and infinities
   */
  public static double finite(String field, double value, String unit) {
    if (!Double.isFinite(value)) {
      throw new InvalidValue(field, value + " is not a number", "a finite number" + suffix(unit));
    }
    return value;
  }

  /**
   * Requires text that is not blank.
   *
   * @return the text
   * @throws InvalidValue when null or blank
   */
  public static String text(String field, String value) {
    if (value == null || value.isBlank()) {
      throw new InvalidValue(field, "is empty", "some text");
    }
    return value;
  }

  private static String suffix(String unit) {
    return unit.isEmpty() ? "" : " " + unit;
  }
}
