package annulus.cure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * How far a factor may be off: log-normal about 1.
 *
 * @param sigmaLn standard deviation of the factor's natural logarithm, 0 to 20
 */
public record Spread(double sigmaLn) {
  /** Limits of estimates are taken as 5 % points of a log-normal: z(0.95) of the normal one. */
  public static final double LIMIT_Z = 1.6448536269514722;

  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

  /** Above what the widest catalogue that is allowed adds up to; beyond it numbers overflow. */
  private static final double MOST = 20;

  /** No spread. */
  public static final Spread NONE = new Spread(0);

  /**
   * @throws InvalidValue when out of range
   */
  public Spread {
    Check.within("sigmaLn", sigmaLn, 0, MOST, "");
  }

  /**
   * The spread whose central 95 % runs from {@code low} to {@code high}.
   *
   * @param low lower limit, above 0
   * @param high upper limit in the same unit, at least {@code low}
   */
  public static Spread ofLimits95(double low, double high) {
    Check.positive("low", low, "");
    Check.within("high", high, low, Double.MAX_VALUE, "");
    double z = NORMAL.inverseCumulativeProbability(0.975);
    return new Spread(Math.log(high / low) / (2 * z));
  }

  /** The spread of the product of independent factors: root of the sum of squares. */
  public static Spread combine(Spread... parts) {
    double squares = 0;
    for (Spread part : parts) {
      squares += part.sigmaLn * part.sigmaLn;
    }
    return new Spread(Math.sqrt(squares));
  }

  /**
   * The factor that is not exceeded with a given probability.
   *
   * <p>{@code factor = exp(z(q)·σ)}
   *
   * @param quantile probability q, above 0 and below 1
   * @return the factor, without unit; 1 at q = 0.5
   *     <p>Valid for: 0 &lt; q &lt; 1.
   *     <p>Source: log-normal distribution with median 1.
   */
  public double factor(double quantile) {
    checkQuantile(quantile);
    return sigmaLn == 0 ? 1 : Math.exp(NORMAL.inverseCumulativeProbability(quantile) * sigmaLn);
  }

  /**
   * The probability that the factor is at most a value, the inverse of {@link #factor}.
   *
   * @param factor 0 or more
   */
  public double probabilityOfAtMost(double factor) {
    Check.within("factor", factor, 0, Double.POSITIVE_INFINITY, "");
    if (sigmaLn == 0) {
      return factor >= 1 ? 1 : 0;
    }
    return NORMAL.cumulativeProbability(Math.log(factor) / sigmaLn);
  }

  static void checkQuantile(double quantile) {
    if (!(quantile > 0 && quantile < 1)) {
      throw new InvalidValue("quantile", quantile + " is out of range", "more than 0, less than 1");
    }
  }
}
