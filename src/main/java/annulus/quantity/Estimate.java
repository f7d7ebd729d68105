package annulus.quantity;

/**
 * A number known only within limits: {@code low <= likely <= high}, all in one unit that the field
 * using it names. The limits are meant to hold in about 19 cases of 20; where the source gives only
 * a range, {@code likely} is the author's choice inside it and the row's confidence says so.
 */
public record Estimate(double low, double likely, double high) {
  /**
   * @throws InvalidValue when not finite or not in order
   */
  public Estimate {
    Check.finite("low", low, "");
    Check.finite("likely", likely, "");
    Check.finite("high", high, "");
    if (low > likely || likely > high) {
      throw new InvalidValue(
          "estimate",
          Numbers.plain(low)
              + ", "
              + Numbers.plain(likely)
              + ", "
              + Numbers.plain(high)
              + " are out of order",
          "low <= likely <= high");
    }
  }

  /** A value without spread. */
  public static Estimate exactly(double value) {
    return new Estimate(value, value, value);
  }

  /** On the straight line between two estimates; a share of 0 gives the first, 1 the second. */
  public static Estimate between(Estimate a, Estimate b, double share) {
    double likely = between(a.likely, b.likely, share);
    // numbers that meet may cross by a rounding error
    double low = Math.min(likely, between(a.low, b.low, share));
    double high = Math.max(likely, between(a.high, b.high, share));
    return new Estimate(low, likely, high);
  }

  private static double between(double a, double b, double share) {
    return a + (b - a) * share;
  }

  /** Requires all three numbers within the bounds, ends allowed. */
  public Estimate checkedWithin(String field, double min, double max, String unit) {
    if (!(low >= min && high <= max)) {
      Check.within(field + ".low", low, min, max, unit);
      Check.within(field + ".high", high, min, max, unit);
    }
    return this;
  }
}
