package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import org.apache.commons.statistics.distribution.ContinuousDistribution;

/** What one measurement lets us believe of a true value; asked for many ranges. */
public final class Belief {
  private final double valueUm;
  private final double standardUm;
  private final ContinuousDistribution error;

  /**
   * @param valueUm measured value, µm
   * @param standardUm standard uncertainty, µm; 0 means exact
   * @param degreesOfFreedom more than 0 or infinite
   */
  public Belief(double valueUm, double standardUm, double degreesOfFreedom) {
    this.valueUm = Check.finite("valueUm", valueUm, "µm");
    this.standardUm = Check.within("standardUm", standardUm, 0, Double.MAX_VALUE, "µm");
    checkFreedom(degreesOfFreedom);
    this.error = Student.of(degreesOfFreedom);
  }

  static void checkFreedom(double degreesOfFreedom) {
    if (!(degreesOfFreedom > 0)) {
      throw new InvalidValue(
          "degreesOfFreedom", degreesOfFreedom + " is not above zero", "more than 0");
    }
  }

  static void checkRange(double lowUm, double highUm) {
    if (!(lowUm <= highUm)) {
      throw new InvalidValue(
          "range", Numbers.plain(lowUm) + " to " + Numbers.plain(highUm) + " µm", "low <= high");
    }
  }

  /**
   * Probability that the true value lies in a range.
   *
   * <p>{@code p = F((high − y)/u) − F((low − y)/u)}, F normal, or Student's t for finite ν
   *
   * @param lowUm lower end, µm, or minus infinity
   * @param highUm upper end, µm, or plus infinity
   * @return probability, 0 to 1
   *     <p>Valid for: no knowledge but the measurement itself. Where a rectangular error rules, the
   *     bell-shaped tail is kept as the wide side.
   *     <p>Source: JCGM 106:2012, 7.2 to 7.4.
   */
  public double within(double lowUm, double highUm) {
    checkRange(lowUm, highUm);
    if (standardUm == 0) {
      return valueUm >= lowUm && valueUm <= highUm ? 1 : 0;
    }
    double below = (lowUm - valueUm) / standardUm;
    double above = (highUm - valueUm) / standardUm;
    if (below > 0) { // both in the upper tail: mirror, to keep small figures exact
      return error.cumulativeProbability(-below) - error.cumulativeProbability(-above);
    }
    return error.cumulativeProbability(above) - error.cumulativeProbability(below);
  }
}
