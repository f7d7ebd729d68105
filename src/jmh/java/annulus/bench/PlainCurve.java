package annulus.bench;

import annulus.hold.FactorCurve;

/** A factor curve's numbers, laid out flat. */
final class PlainCurve {
  final double[] at;
  final double[] low;
  final double[] likely;
  final double[] high;

  PlainCurve(FactorCurve curve) {
    at = curve.points().stream().mapToDouble(FactorCurve.Point::at).toArray();
    low = curve.points().stream().mapToDouble(p -> p.value().low()).toArray();
    likely = curve.points().stream().mapToDouble(p -> p.value().likely()).toArray();
    high = curve.points().stream().mapToDouble(p -> p.value().high()).toArray();
  }

  /** Straight between the points; the first one's below them, NaN above. */
  static double at(double[] x, double[] y, double where) {
    if (where <= x[0]) {
      return y[0];
    }
    for (int i = 1; i < x.length; i++) {
      if (where <= x[i]) {
        return y[i - 1] + (y[i] - y[i - 1]) * ((where - x[i - 1]) / (x[i] - x[i - 1]));
      }
    }
    return Double.NaN;
  }

  /** The least between two places. */
  static double least(double[] x, double[] y, double from, double to) {
    double least = Math.min(at(x, y, from), at(x, y, to));
    for (int i = 0; i < x.length; i++) {
      if (x[i] > from && x[i] < to) {
        least = Math.min(least, y[i]);
      }
    }
    return least;
  }

  /** The most between two places. */
  static double most(double[] x, double[] y, double from, double to) {
    double most = Math.max(at(x, y, from), at(x, y, to));
    for (int i = 0; i < x.length; i++) {
      if (x[i] > from && x[i] < to) {
        most = Math.max(most, y[i]);
      }
    }
    return most;
  }
}
