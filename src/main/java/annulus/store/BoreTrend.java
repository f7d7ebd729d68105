package annulus.store;

import java.util.List;

/**
 * How a bore has opened from fit to fit.
 *
 * @param fits oldest first, at least two
 * @param grownUm last mean less first, µm on the diameter
 * @param doubtUm expanded uncertainty of that difference, µm on the diameter
 */
public record BoreTrend(List<BoreFit> fits, double grownUm, double doubtUm) {
  public BoreTrend {
    fits = List.copyOf(fits);
  }

  /**
   * The trend of these fits: {@code grown = last − first}, {@code doubt = √(U_first² + U_last²)}.
   *
   * @param fits oldest first, at least two
   */
  public static BoreTrend of(List<BoreFit> fits) {
    BoreFit first = fits.get(0);
    BoreFit last = fits.get(fits.size() - 1);
    double grown = (last.meanMm() - first.meanMm()) * 1000;
    return new BoreTrend(fits, grown, Math.hypot(first.plusMinusUm(), last.plusMinusUm()));
  }

  /** Whether more than the doubt of the measurements. */
  public boolean isSure() {
    return grownUm > doubtUm;
  }

  /** Growth for one fit, µm on the diameter. */
  public double perFitUm() {
    return grownUm / (fits.size() - 1);
  }
}
