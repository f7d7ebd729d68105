package annulus.cure;

/**
 * The integral of a rate over one linear temperature piece, and its inverse.
 *
 * <p>The piece is cut where the rate changes its formula (minimum, reference, hold temperature) and
 * then into slices of at most 10 K, each integrated with the 8-point Gauss-Legendre rule, narrower
 * slices with fewer points at no larger error ({@link GaussRule}). The error is at most 4e-10 of
 * the result: with slice middle m, half width h = 5 K and Bernstein ellipse ρ = 8 (within the
 * circle of radius a = 4.0625·h = 20.4 K about m) the rate exp(−b/T) is analytic and at most
 * exp(−b/(m + a)), so the error is at most 64/15 · ρ^−16 / (1 − ρ^−2) times that, against at least
 * 2·exp(−b/(m − h)) for the integral. The worst case allowed here, 150 kJ/mol at −80 °C, gives
 * 4e-10; 45 kJ/mol at 5 °C gives 5e-14. No cancellation occurs in nearly constant pieces. Bound: L.
 * N. Trefethen, Is Gauss quadrature better than Clenshaw-Curtis?, SIAM Review 50 (2008), theorem
 * 4.5, from memory; nodes: Abramowitz and Stegun, table 25.4.
 */
final class PieceIntegral {
  private PieceIntegral() {}

  static final double SECONDS_PER_HOUR = 3600;

  /** Reduced hours gathered in a piece of {@code seconds} from {@code startC} to {@code endC}. */
  static double hours(Rate rate, double seconds, double startC, double endC) {
    double cut = nextChange(rate, startC, endC);
    if (Double.isNaN(cut)) {
      return smooth(rate, seconds, startC, endC);
    }
    double first = seconds * ((cut - startC) / (endC - startC));
    return smooth(rate, first, startC, cut) + hours(rate, seconds - first, cut, endC);
  }

  /** The first temperature after the start at which the formula changes, NaN when there is none. */
  static double nextChange(Rate rate, double startC, double endC) {
    double nearest = nearer(rate.minimumC(), startC, endC, Double.NaN);
    nearest = nearer(rate.referenceC(), startC, endC, nearest);
    return nearer(rate.holdAboveC(), startC, endC, nearest);
  }

  private static double nearer(double change, double startC, double endC, double nearest) {
    boolean inside = change > Math.min(startC, endC) && change < Math.max(startC, endC);
    boolean nearer =
        Double.isNaN(nearest) || Math.abs(change - startC) < Math.abs(nearest - startC);
    return inside && nearer ? change : nearest;
  }

  /** The integral over a piece in which the formula does not change. */
  static double smooth(Rate rate, double seconds, double startC, double endC) {
    if (isSteady(rate, startC, endC)) {
      return rate.at(startC) * seconds / SECONDS_PER_HOUR;
    }
    if (Math.max(startC, endC) <= rate.minimumC()) {
      return 0;
    }
    int slices = GaussRule.slices(Math.abs(endC - startC));
    double step = (endC - startC) / slices;
    GaussRule rule = GaussRule.of(Math.abs(step));
    ArrheniusRate formula = formula(rate, (startC + endC) / 2);
    double mean = 0;
    for (int i = 0; i < slices; i++) {
      mean += rule.mean(formula, startC + step * (i + 0.5), step / 2);
    }
    return mean / slices * seconds / SECONDS_PER_HOUR;
  }

  /** Whether the rate stays the same: one temperature, or all of them where it is held. */
  static boolean isSteady(Rate rate, double startC, double endC) {
    return startC == endC || Math.min(startC, endC) >= rate.holdAboveC();
  }

  /** The one formula that holds on a temperature's side of the reference. */
  static ArrheniusRate formula(Rate rate, double celsius) {
    if (rate instanceof SlowestRate slowest) {
      return celsius < slowest.referenceC() ? slowest.highest() : slowest.lowest();
    }
    return (ArrheniusRate) rate;
  }
}
