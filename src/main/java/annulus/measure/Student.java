package annulus.measure;

import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Student's t, which is the normal distribution at infinite degrees of freedom. */
final class Student {
  private static final ContinuousDistribution NORMAL = NormalDistribution.of(0, 1);

  private static final double LEAST_FOR_SERIES = 3;
  private static final int MOST_STEPS = 20;

  /** After a step of this share of the quantile the next one is beyond the last digit. */
  private static final double LAST_STEP = 1e-5;

  private Student() {}

  static double cumulative(double x, double degreesOfFreedom) {
    return of(degreesOfFreedom).cumulativeProbability(x);
  }

  /**
   * Halley's steps from a series in 1/ν, which treble the right digits each time; few degrees of
   * freedom have tails too long for the series and are left to a general search.
   */
  static double quantile(double probability, double degreesOfFreedom) {
    ContinuousDistribution t = of(degreesOfFreedom);
    boolean series = degreesOfFreedom >= LEAST_FOR_SERIES && probability > 0.5;
    if (!series || Double.isInfinite(degreesOfFreedom)) {
      return t.inverseCumulativeProbability(probability);
    }
    double at = series(NORMAL.inverseCumulativeProbability(probability), degreesOfFreedom);
    for (int i = 0; i < MOST_STEPS; i++) {
      double newton = (t.cumulativeProbability(at) - probability) / t.density(at);
      double bend = (degreesOfFreedom + 1) * at / (degreesOfFreedom + at * at);
      at -= newton / (1 + newton * bend / 2);
      if (Math.abs(newton) <= LAST_STEP * at) {
        return at;
      }
    }
    return t.inverseCumulativeProbability(probability);
  }

  /** The quantile to a few digits: Abramowitz and Stegun, 26.7.5. */
  static double series(double z, double degreesOfFreedom) {
    double n = degreesOfFreedom;
    double s = z * z;
    double first = (s + 1) * z / 4;
    double second = ((5 * s + 16) * s + 3) * z / 96;
    double third = (((3 * s + 19) * s + 17) * s - 15) * z / 384;
    return z + (first + (second + third / n) / n) / n;
  }

  /** The next lower whole number, at least 1: fewer degrees of freedom are the wide side. */
  static double whole(double degreesOfFreedom) {
    return Math.max(1, Math.floor(degreesOfFreedom));
  }

  static ContinuousDistribution of(double degreesOfFreedom) {
    return Double.isInfinite(degreesOfFreedom) ? NORMAL : TDistribution.of(degreesOfFreedom);
  }
}
