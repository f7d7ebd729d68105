package annulus.measure;

import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;

/** Student's t, which is the normal distribution at infinite degrees of freedom. */
final class Student {
  private static final ContinuousDistribution NORMAL = NormalDistribution.of(0, 1);

  private Student() {}

  static double cumulative(double x, double degreesOfFreedom) {
    return of(degreesOfFreedom).cumulativeProbability(x);
  }

  static double quantile(double probability, double degreesOfFreedom) {
    return of(degreesOfFreedom).inverseCumulativeProbability(probability);
  }

  /** The next lower whole number, at least 1: fewer degrees of freedom are the wide side. */
  static double whole(double degreesOfFreedom) {
    return Math.max(1, Math.floor(degreesOfFreedom));
  }

  static ContinuousDistribution of(double degreesOfFreedom) {
    return Double.isInfinite(degreesOfFreedom) ? NORMAL : TDistribution.of(degreesOfFreedom);
  }
}
