package annulus.advice;

import annulus.advice.FactorPosterior.Limits;
import annulus.advice.FactorPosterior.Scatter;
import annulus.quantity.Check;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** The logarithm of the probability of factor and scatter on a grid, joint by joint. */
final class FactorGrid {
  private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
  private static final int POINTS = 401;

  /** Odd, as Simpson's rule asks. */
  private static final int SCATTERS = 61;

  private static final double REACH = 6;

  /** Of the mean of what comes on top of the least scatter: exp(-20) is left out. */
  private static final double SCATTER_REACH = 20;

  private static final double LEAST_LIKELIHOOD = 1e-300;

  private final double priorSigmaLn;
  private final double[] theta = new double[POINTS];
  private final double[] scatter;
  private final double[] weight;
  private final double[][] log;

  /**
   * The prior.
   *
   * @param priorSigmaLn standard deviation of ln(factor), above 0
   * @param scatter of the joints
   * @param joints all that will be added, for the grid to reach as far as they do
   */
  FactorGrid(double priorSigmaLn, Scatter scatter, List<Limits> joints) {
    Check.positive("priorSigmaLn", priorSigmaLn, "");
    this.priorSigmaLn = priorSigmaLn;
    double reach = REACH * Math.max(priorSigmaLn, 0.1);
    for (Limits joint : joints) {
      // Only what draws the factor away from the prior: above a low limit or below a high one.
      double far = Math.max(joint.lowLn(), -joint.highLn());
      reach = Math.max(reach, far + REACH * Math.max(priorSigmaLn, 0.1) / 2);
    }
    for (int i = 0; i < POINTS; i++) {
      theta[i] = -reach + 2 * reach * i / (POINTS - 1);
    }
    boolean known = scatter.moreLn() == 0;
    this.scatter = new double[known ? 1 : SCATTERS];
    this.weight = new double[this.scatter.length];
    this.log = new double[this.scatter.length][POINTS];
    if (known) {
      this.scatter[0] = scatter.leastLn();
      weight[0] = 1;
    } else {
      layScatters(scatter);
    }
    for (double[] row : log) {
      for (int i = 0; i < POINTS; i++) {
        row[i] = -theta[i] * theta[i] / (2 * priorSigmaLn * priorSigmaLn);
      }
    }
  }

  /** Even in the root of what comes on top: the least scatters matter most. */
  private void layScatters(Scatter prior) {
    for (int j = 0; j < SCATTERS; j++) {
      double root = j / (SCATTERS - 1.0);
      double more = SCATTER_REACH * prior.moreLn() * root * root;
      scatter[j] = prior.leastLn() + more;
      double simpson = j == 0 || j == SCATTERS - 1 ? 1 : 2 + 2 * (j % 2);
      weight[j] = simpson * root * Math.exp(-more / prior.moreLn());
    }
  }

  /** Counts one joint. */
  void add(Limits joint) {
    for (int j = 0; j < scatter.length; j++) {
      double sigma = Math.hypot(scatter[j], joint.sigmaLn());
      for (int i = 0; i < POINTS; i++) {
        double likelihood =
            NORMAL.probability(
                (joint.lowLn() - theta[i]) / sigma, (joint.highLn() - theta[i]) / sigma);
        log[j][i] += Math.log(Math.max(LEAST_LIKELIHOOD, likelihood));
      }
    }
  }

  /** What is believed after the joints added so far. */
  FactorPosterior posterior() {
    double most =
        Arrays.stream(log).flatMapToDouble(Arrays::stream).max().orElse(Double.NEGATIVE_INFINITY);
    double[] density = new double[POINTS];
    double total = 0;
    double square = 0;
    for (int j = 0; j < scatter.length; j++) {
      for (int i = 0; i < POINTS; i++) {
        double mass = weight[j] * Math.exp(log[j][i] - most);
        density[i] += mass;
        total += mass;
        square += mass * scatter[j] * scatter[j];
      }
    }
    double step = theta[1] - theta[0];
    List<Double> grid = new ArrayList<>(POINTS);
    List<Double> per = new ArrayList<>(POINTS);
    for (int i = 0; i < POINTS; i++) {
      grid.add(theta[i]);
      per.add(density[i] / (total * step));
    }
    return new FactorPosterior(priorSigmaLn, Math.sqrt(square / total), grid, per);
  }
}
