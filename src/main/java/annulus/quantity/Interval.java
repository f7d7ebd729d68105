package annulus.quantity;

/** A closed range of numbers in one unit; {@code low <= high}, both ends belong to it. */
public record Interval(double low, double high) {
  /**
   * @throws InvalidValue when not finite or not in order
   */
  public Interval {
    Check.finite("low", low, "");
    Check.finite("high", high, "");
    if (low > high) {
      throw new InvalidValue(
          "range",
          Numbers.plain(low) + " to " + Numbers.plain(high) + " is out of order",
          "low <= high");
    }
  }

  public boolean contains(double value) {
    return value >= low && value <= high;
  }

  public double width() {
    return high - low;
  }

  /** Requires both ends within the bounds, ends allowed. */
  public Interval checkedWithin(String field, double min, double max, String unit) {
    if (!(low >= min && high <= max)) {
      Check.within(field + ".low", low, min, max, unit);
      Check.within(field + ".high", high, min, max, unit);
    }
    return this;
  }
}
