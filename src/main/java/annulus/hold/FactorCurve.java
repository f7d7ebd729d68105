package annulus.hold;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;
import java.util.Optional;

/**
 * A factor over something measured, straight between its points.
 *
 * @param points in rising order; at least two
 */
public record FactorCurve(List<Point> points) {

  /**
   * One point.
   *
   * @param at where, in the unit the user of the curve names
   * @param value the factor there, 0 to 1
   * @param provenance source of the row
   */
  public record Point(double at, Estimate value, Provenance provenance) {
    public Point {
      Check.finite("at", at, "");
      value.checkedWithin("factor", 0, 1, "");
    }
  }

  public FactorCurve {
    points = List.copyOf(points);
    if (points.size() < 2) {
      throw new InvalidValue("points", "are " + points.size(), "at least two points");
    }
    for (int i = 1; i < points.size(); i++) {
      if (points.get(i).at() <= points.get(i - 1).at()) {
        throw new InvalidValue(
            "at", Numbers.plain(points.get(i).at()) + " does not rise", "points in rising order");
      }
    }
  }

  /** The factor there; the first point's below the curve, empty above it. */
  public Optional<Estimate> at(double x) {
    Check.finite("at", x, "");
    if (x <= points.get(0).at()) {
      return Optional.of(points.get(0).value());
    }
    for (int i = 1; i < points.size(); i++) {
      if (x <= points.get(i).at()) {
        return Optional.of(between(points.get(i - 1), points.get(i), x));
      }
    }
    return Optional.empty();
  }

  /** From the least low and likely factors between two places to the greatest high; empty above. */
  public Optional<Estimate> between(double from, double to) {
    Optional<Estimate> first = at(from);
    Optional<Estimate> last = at(to);
    if (first.isEmpty() || last.isEmpty()) {
      return Optional.empty();
    }
    Estimate all = Estimates.spanned(first.get(), last.get());
    for (Point point : points) {
      if (point.at() > from && point.at() < to) {
        all = Estimates.spanned(all, point.value());
      }
    }
    return Optional.of(all);
  }

  /** The last point. */
  public Point last() {
    return points.get(points.size() - 1);
  }

  private static Estimate between(Point a, Point b, double x) {
    return Estimate.between(a.value(), b.value(), (x - a.at()) / (b.at() - a.at()));
  }
}
