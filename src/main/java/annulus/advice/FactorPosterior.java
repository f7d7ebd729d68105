package annulus.advice;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * What is believed of the logarithm of a factor: a normal prior about 0, updated by observations
 * that say no more than between which limits one joint's value lies, on a grid.
 *
 * @param priorSigmaLn standard deviation of the prior, ln
 * @param lnFactor the grid
 * @param density probability density at each point, per ln
 */
public record FactorPosterior(double priorSigmaLn, List<Double> lnFactor, List<Double> density) {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final int POINTS = 2001;
  private static final double REACH = 6;
  private static final double LEAST_LIKELIHOOD = 1e-300;

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
   * @param sigmaLn its scatter, ln, above 0
   */
  public record Limits(double lowLn, double highLn, double sigmaLn) {
    /**
     * @throws InvalidValue when not in order
     */
    public Limits {
      Check.positive("sigmaLn", sigmaLn, "");
      if (!(lowLn < highLn)) {
        throw new InvalidValue("fixed", "was seen earlier than not fixed", "not fixed, then fixed");
      }
    }
  }

  /**
   * The posterior of the factor.
   *
   * <p>{@code p(θ) ∝ φ(θ/σ₀)·∏ (Φ((highᵢ − θ)/σᵢ) − Φ((lowᵢ − θ)/σᵢ))}, normalised by the trapezoid
   * rule over ±6 σ₀.
   *
   * @param priorSigmaLn σ₀, ln, above 0
   * @param joints limits of each joint's value
   * @return the posterior, its integral exact to 1e-6 for scatters of 0.05 and more
   *     <p>Valid for: joints that are independent given the factor.
   *     <p>Source: Bayes' theorem with interval-censored normal data.
   */
  public static FactorPosterior of(double priorSigmaLn, List<Limits> joints) {
    Check.positive("priorSigmaLn", priorSigmaLn, "");
    double reach = REACH * Math.max(priorSigmaLn, 0.1);
    double[] log = new double[POINTS];
    List<Double> grid = new ArrayList<>();
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < POINTS; i++) {
      double theta = -reach + 2 * reach * i / (POINTS - 1);
      grid.add(theta);
      log[i] = -theta * theta / (2 * priorSigmaLn * priorSigmaLn);
      for (Limits joint : joints) {
        log[i] += Math.log(Math.max(LEAST_LIKELIHOOD, likelihood(joint, theta)));
      }
      most = Math.max(most, log[i]);
    }
    double step = 2 * reach / (POINTS - 1);
    double total = 0;
    for (int i = 0; i < POINTS; i++) {
      log[i] = Math.exp(log[i] - most);
      total += log[i] * step;
    }
    List<Double> density = new ArrayList<>();
    for (double value : log) {
      density.add(value / total);
    }
    return new FactorPosterior(priorSigmaLn, grid, density);
  }

  private static double likelihood(Limits joint, double theta) {
    return NORMAL.probability(
        (joint.lowLn() - theta) / joint.sigmaLn(), (joint.highLn() - theta) / joint.sigmaLn());
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

  /**
   * The factor that is not exceeded with a probability.
   *
   * @param quantile above 0, below 1
   */
  public double factor(double quantile) {
    Check.within("quantile", quantile, 1e-6, 1 - 1e-6, "");
    double below = 0;
    for (int i = 1; i < lnFactor.size(); i++) {
      double piece = (density.get(i - 1) + density.get(i)) / 2 * step();
      if (below + piece >= quantile && piece > 0) {
        double share = (quantile - below) / piece;
        return Math.exp(lnFactor.get(i - 1) + share * step());
      }
      below += piece;
    }
    return Math.exp(lnFactor.get(lnFactor.size() - 1));
  }
}
