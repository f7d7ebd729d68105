package annulus.cure;

/**
 * The integral of a rate over one linear temperature piece, and its inverse.
 *
 * <p>The piece is cut where the rate changes its formula (minimum, reference, hold temperature) and
 * then into slices of at most 10 K, each integrated with the 8-point Gauss-Legendre rule. The error
 * is at most 4e-10 of the result: with slice middle m, half width h = 5 K and Bernstein ellipse ρ =
 * 8 (within the circle of radius a = 4.0625·h = 20.4 K about m) the rate exp(−b/T) is analytic and
 * at most exp(−b/(m + a)), so the error is at most 64/15 · ρ^−16 / (1 − ρ^−2) times that, against
 * at least 2·exp(−b/(m − h)) for the integral. The worst case allowed here, 150 kJ/mol at −80 °C,
 * gives 4e-10; 45 kJ/mol at 5 °C gives 5e-14. No cancellation occurs in nearly constant pieces.
 * Bound: L. N. Trefethen, Is Gauss quadrature better than Clenshaw-Curtis?, SIAM Review 50 (2008),
 * theorem 4.5, from memory; nodes: Abramowitz and Stegun, table 25.4.
 */
final class PieceIntegral {
  private PieceIntegral() {}

  private static final double SECONDS_PER_HOUR = 3600;
  private static final double SLICE_K = 10;
  private static final double SOLVED_S = 1e-8;
  private static final int MOST_STEPS = 200;
  private static final double[] NODE = {
    0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363
  };
  private static final double[] WEIGHT = {
    0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763
  };

  /** Reduced hours gathered in a piece of {@code seconds} from {@code startC} to {@code endC}. */
  static double hours(Rate rate, double seconds, double startC, double endC) {
    double cut = nextChange(rate, startC, endC);
    if (Double.isNaN(cut)) {
      return smooth(rate, seconds, startC, endC);
    }
    double first = seconds * ((cut - startC) / (endC - startC));
    return smooth(rate, first, startC, cut) + hours(rate, seconds - first, cut, endC);
  }

  /**
   * The earliest time since the start of the piece, s, at which the piece has gathered the hours
   * needed; at most the end of the piece.
   */
  static double secondsToReach(
      Rate rate, double seconds, double startC, double endC, double neededHours) {
    double cut = nextChange(rate, startC, endC);
    if (Double.isNaN(cut)) {
      return solve(rate, seconds, startC, endC, neededHours);
    }
    double first = seconds * ((cut - startC) / (endC - startC));
    double gathered = smooth(rate, first, startC, cut);
    if (gathered >= neededHours) {
      return solve(rate, first, startC, cut, neededHours);
    }
    return first + secondsToReach(rate, seconds - first, cut, endC, neededHours - gathered);
  }

  /** The first temperature after the start at which the formula changes, NaN when there is none. */
  private static double nextChange(Rate rate, double startC, double endC) {
    double nearest = Double.NaN;
    for (double change : new double[] {rate.minimumC(), rate.referenceC(), rate.holdAboveC()}) {
      boolean inside = change > Math.min(startC, endC) && change < Math.max(startC, endC);
      boolean nearer =
          Double.isNaN(nearest) || Math.abs(change - startC) < Math.abs(nearest - startC);
      if (inside && nearer) {
        nearest = change;
      }
    }
    return nearest;
  }

  private static double smooth(Rate rate, double seconds, double startC, double endC) {
    if (startC == endC) {
      return rate.at(startC) * seconds / SECONDS_PER_HOUR;
    }
    if (Math.max(startC, endC) <= rate.minimumC()) {
      return 0;
    }
    int slices = Math.max(1, (int) Math.ceil(Math.abs(endC - startC) / SLICE_K));
    double step = (endC - startC) / slices;
    double mean = 0;
    for (int i = 0; i < slices; i++) {
      mean += mean(rate, startC + step * (i + 0.5), step / 2);
    }
    return mean / slices * seconds / SECONDS_PER_HOUR;
  }

  private static double mean(Rate rate, double middleC, double halfK) {
    double sum = 0;
    for (int i = 0; i < NODE.length; i++) {
      double off = halfK * NODE[i];
      sum += WEIGHT[i] * (rate.at(middleC - off) + rate.at(middleC + off));
    }
    return sum / 2;
  }

  /** Newton's method kept inside a shrinking bracket; the rate is smooth and not zero here. */
  private static double solve(
      Rate rate, double seconds, double startC, double endC, double neededHours) {
    double total = smooth(rate, seconds, startC, endC);
    if (neededHours <= 0 || total <= 0) {
      return 0;
    }
    if (neededHours >= total) {
      return seconds;
    }
    double low = 0;
    double high = seconds;
    double at = seconds * (neededHours / total);
    for (int i = 0; i < MOST_STEPS; i++) {
      double hereC = startC + (endC - startC) * (at / seconds);
      double missing = neededHours - smooth(rate, at, startC, hereC);
      if (missing > 0) {
        low = at;
      } else {
        high = at;
      }
      double next = at + missing * SECONDS_PER_HOUR / rate.at(hereC);
      if (!(next > low && next < high)) {
        next = (low + high) / 2;
      }
      if (Math.abs(next - at) <= SOLVED_S + Math.ulp(seconds)) {
        return next;
      }
      at = next;
    }
    return high;
  }
}
