package annulus.cure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Strength fraction against reduced time through a class's declared points (fixture, handling,
 * functional, full): straight lines over the logarithm of time. Lines were chosen over a smoothed
 * curve because they claim nothing between the points, cannot overshoot, and invert exactly. Before
 * the first point no strength is claimed (0); after the last one the fraction stays.
 *
 * @param points declared points, hours and fractions both strictly rising
 */
public record CureCurve(List<Point> points) {
  /**
   * A declared point.
   *
   * @param fraction share of full strength, above 0 to 1
   * @param hours reduced time, h, above 0
   */
  public record Point(double fraction, double hours) {
    /**
     * @throws InvalidValue when out of range
     */
    public Point {
      Check.positive("fraction", fraction, "");
      Check.within("fraction", fraction, 0, 1, "");
      Check.positive("hours", hours, "h");
    }
  }

  /**
   * @throws InvalidValue when there is no point or the points do not rise
   */
  public CureCurve {
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new InvalidValue("points", "has no point", "at least one (fraction, hours)");
    }
    for (int i = 1; i < points.size(); i++) {
      checkRises("hours", points.get(i - 1).hours(), points.get(i).hours(), " h");
      checkRises("fraction", points.get(i - 1).fraction(), points.get(i).fraction(), "");
    }
  }

  private static void checkRises(String field, double before, double value, String unit) {
    if (value <= before) {
      throw new InvalidValue(
          field,
          Numbers.plain(value) + unit + " does not rise from the point before",
          "more than " + Numbers.plain(before) + unit);
    }
  }

  /** The highest declared fraction. */
  public double lastFraction() {
    return points.get(points.size() - 1).fraction();
  }

  /**
   * Strength fraction after a reduced time.
   *
   * <p>{@code s = s₁ + (s₂ − s₁)·ln(τ/τ₁)/ln(τ₂/τ₁)} between neighbouring points.
   *
   * @param hours reduced time, h, 0 or more
   * @return share of full strength, 0 before the first point, never above the last fraction
   *     <p>Valid for: any reduced time; outside the declared points as the class says.
   *     <p>Source: choice of this program; the points are the catalog's.
   */
  public double fractionAt(double hours) {
    Check.within("hours", hours, 0, Double.POSITIVE_INFINITY, "h");
    int after = after(0, hours);
    return between(after, hours, logWidth(after));
  }

  /** As {@link #fractionAt}, for reduced times, h, that never fall: one walk along the points. */
  double[] fractionsAt(double[] risingHours) {
    double[] fractions = new double[risingHours.length];
    int after = 0;
    double logWidth = logWidth(0);
    for (int i = 0; i < fractions.length; i++) {
      int next = after(after, risingHours[i]);
      logWidth = next == after ? logWidth : logWidth(next);
      after = next;
      fractions[i] = between(after, risingHours[i], logWidth);
    }
    return fractions;
  }

  /** The first point after a reduced time, from a point on that is not beyond it. */
  private int after(int from, double hours) {
    int after = from;
    while (after < points.size() && points.get(after).hours() <= hours) {
      after++;
    }
    return after;
  }

  /** Logarithm of a point's hours over those of the point before; NaN where there is none. */
  private double logWidth(int after) {
    return after == 0 || after == points.size()
        ? Double.NaN
        : Math.log(points.get(after).hours() / points.get(after - 1).hours());
  }

  private double between(int after, double hours, double logWidth) {
    if (after == 0 || after == points.size()) {
      return after == 0 ? 0 : lastFraction();
    }
    Point low = points.get(after - 1);
    Point high = points.get(after);
    double share = Math.log(hours / low.hours()) / logWidth;
    double fraction = low.fraction() + (high.fraction() - low.fraction()) * share;
    return Math.min(high.fraction(), Math.max(low.fraction(), fraction));
  }

  /**
   * The least reduced time at which a strength fraction is reached.
   *
   * <p>{@code τ = τ₁·(τ₂/τ₁)^((s − s₁)/(s₂ − s₁))} between neighbouring points.
   *
   * @param fraction share of full strength, 0 to 1
   * @return reduced time, h; 0 for fraction 0, the first point's for any fraction up to its own,
   *     empty above the last fraction
   *     <p>Valid for: fractions 0 to 1.
   *     <p>Source: inverse of {@link #fractionAt}.
   */
  public OptionalDouble hoursAt(double fraction) {
    Check.within("fraction", fraction, 0, 1, "");
    if (fraction == 0) {
      return OptionalDouble.of(0);
    }
    int after = 0;
    while (after < points.size() && points.get(after).fraction() < fraction) {
      after++;
    }
    if (after == points.size()) {
      return OptionalDouble.empty();
    }
    Point high = points.get(after);
    if (after == 0 || fraction == high.fraction()) {
      return OptionalDouble.of(high.hours());
    }
    Point low = points.get(after - 1);
    double share = (fraction - low.fraction()) / (high.fraction() - low.fraction());
    double hours = low.hours() * Math.pow(high.hours() / low.hours(), share);
    return OptionalDouble.of(Math.min(high.hours(), Math.max(low.hours(), hours)));
  }
}
