package annulus.advice;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.List;

/**
 * What is believed of the logarithm of a factor: a normal prior about 0, updated by observations
 * that say no more than between which limits one joint's value lies, on a grid.
 *
 * @param priorSigmaLn standard deviation of the prior, ln
 * @param scatterLn root mean square of what is believed of the scatter between joints, ln
 * @param lnFactor the grid
 * @param density probability density at each point, per ln
 */
public record FactorPosterior(
    double priorSigmaLn, double scatterLn, List<Double> lnFactor, List<Double> density) {
  /** Copies the lists. */
  public FactorPosterior {
    lnFactor = List.copyOf(lnFactor);
    density = List.copyOf(density);
  }

  /**
   * One joint's value of the factor, known to lie between two limits and scattered about the
   * shop's.
   *
   * @param lowLn it is above this, ln; negative infinity when nothing is known
   * @param highLn it is at most this, ln; positive infinity when nothing is known
   * @param sigmaLn doubt of this one value beside the scatter between joints, ln, 0 or more
   */
  public record Limits(double lowLn, double highLn, double sigmaLn) {
    /**
     * @throws InvalidValue when not in order
     */
    public Limits {
      Check.within("sigmaLn", sigmaLn, 0, Double.MAX_VALUE, "");
      if (!(lowLn < highLn)) {
        throw new InvalidValue("fixed", "was seen earlier than not fixed", "not fixed, then fixed");
      }
    }
  }

  /**
   * What is known beforehand of the scatter between joints: never below a least value, and above it
   * less and less likely by an exponential law.
   *
   * @param leastLn least standard deviation, ln; above 0 unless {@code moreLn} is 0
   * @param moreLn mean of what comes on top, ln; 0 when the scatter is known
   */
  public record Scatter(double leastLn, double moreLn) {
    /** No scatter between joints: all doubt is in their own values. */
    public static final Scatter NONE = new Scatter(0, 0);

    /**
     * @throws InvalidValue when out of range
     */
    public Scatter {
      Check.within("leastLn", leastLn, moreLn > 0 ? Double.MIN_NORMAL : 0, 10, "");
      Check.within("moreLn", moreLn, 0, 10, "");
    }
  }

  /**
   * The posterior of the factor, the scatter between joints τ integrated out.
   *
   * <p>{@code p(θ, τ) ∝ φ(θ/σ₀)·exp(−(τ − τ₀)/m)·∏ (Φ((highᵢ − θ)/sᵢ) − Φ((lowᵢ − θ)/sᵢ))} with
   * {@code sᵢ² = τ² + σᵢ²}, by the trapezoid rule over θ, at least ±6 σ₀ and beyond all that was
   * seen, and Simpson's rule over √(τ − τ₀).
   *
   * @param priorSigmaLn σ₀, ln, above 0
   * @param scatter τ₀ and m
   * @param joints limits of each joint's value
   * @return the posterior, its integral over θ exact to 1e-6 for scatters of 0.05 and more
   *     <p>Valid for: joints that are independent given factor and scatter.
   *     <p>Source: Bayes' theorem with interval-censored normal data; an exponential prior of a
   *     standard deviation: Simpson et al. (2017), Statistical Science 32(1), section 3, from
   *     memory.
   */
  public static FactorPosterior of(double priorSigmaLn, Scatter scatter, List<Limits> joints) {
    FactorGrid grid = new FactorGrid(priorSigmaLn, scatter, joints);
    joints.forEach(grid::add);
    return grid.posterior();
  }

  private double step() {
    return lnFactor.get(1) - lnFactor.get(0);
  }

  /** Mean of ln(factor). */
  public double meanLn() {
    double sum = 0;
    for (int i = 0; i < lnFactor.size(); i++) {
      sum += lnFactor.get(i) * density.get(i) * step();
    }
    return sum;
  }

  /** Standard deviation of ln(factor). */
  public double sigmaLn() {
    double mean = meanLn();
    double sum = 0;
    for (int i = 0; i < lnFactor.size(); i++) {
      double off = lnFactor.get(i) - mean;
      sum += off * off * density.get(i) * step();
    }
    return Math.sqrt(sum);
  }

  /** Standard deviation of the next joint's ln(factor): doubt of the factor and scatter. */
  public double nextSigmaLn() {
    return Math.hypot(sigmaLn(), scatterLn);
  }

  /**
   * The factor that is not exceeded with a probability.
   *
   * @param quantile above 0, below 1
   */
  public double factor(double quantile) {
    Check.within("quantile", quantile, 1e-6, 1 - 1e-6, "");
    double below = 0;
    for (int i = 1; i < lnFactor.size(); i++) {
      double piece = piece(i);
      if (below + piece >= quantile && piece > 0) {
        double share = share(i, piece, quantile - below);
        return Math.exp(lnFactor.get(i - 1) + share * step());
      }
      below += piece;
    }
    return Math.exp(lnFactor.get(lnFactor.size() - 1));
  }

  /** The integral from one point to the next, by the cubic through two points on either side. */
  private double piece(int i) {
    double sum = 13 * (density.get(i - 1) + density.get(i));
    sum -= i > 1 ? density.get(i - 2) : 0;
    sum -= i + 1 < density.size() ? density.get(i + 1) : 0;
    return Math.max(0, sum / 24 * step());
  }

  /**
   * How far into a piece so much of it lies: halved until found on the cubic that has the piece as
   * its rise and the densities as its slopes.
   */
  private double share(int i, double piece, double wanted) {
    double left = density.get(i - 1) * step();
    double right = density.get(i) * step();
    double low = 0;
    double high = 1;
    for (int halving = 0; halving < 50; halving++) {
      double x = (low + high) / 2;
      double rise =
          piece * x * x * (3 - 2 * x) + left * x * (1 - x) * (1 - x) - right * x * x * (1 - x);
      if (rise < wanted) {
        low = x;
      } else {
        high = x;
      }
    }
    return (low + high) / 2;
  }
}
