package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;

/** Propagation of correlated uncertainties. */
public final class Correlated {
  private Correlated() {}

  /**
   * Standard uncertainty of a result of correlated inputs.
   *
   * <p>{@code u² = ΣΣ c_i c_j u_i u_j r_ij}
   *
   * @param sensitivities c_i, result unit per input unit
   * @param standards u_i, each in its input's unit, not negative
   * @param correlations r_ij, -1 to 1, symmetric with ones on the diagonal
   * @return u in the result's unit
   *     <p>Valid for: a function close to linear over the uncertainties; a consistent correlation
   *     matrix.
   *     <p>Source: JCGM 100:2008, equation (16).
   */
  public static double standard(
      double[] sensitivities, double[] standards, double[][] correlations) {
    int n = sensitivities.length;
    checkLength("standards", standards.length, n);
    checkLength("correlations", correlations.length, n);
    double variance = 0;
    for (int i = 0; i < n; i++) {
      checkLength("correlations[" + i + "]", correlations[i].length, n);
      for (int j = 0; j < n; j++) {
        double r = Check.within("correlation", correlations[i][j], -1, 1, "");
        variance += sensitivities[i] * sensitivities[j] * standards[i] * standards[j] * r;
      }
    }
    return Math.sqrt(Math.max(0, variance));
  }

  /**
   * Standard uncertainty of the radial gap when the two diameters' errors are correlated.
   *
   * <p>{@code g = (D − d)/2; u(g) = √(u²(D) + u²(d) − 2·r·u(D)·u(d))/2}
   *
   * @param boreUm u(D), µm
   * @param partUm u(d), µm
   * @param correlation r between the two errors, -1 to 1
   * @return u(g) of the radial gap, µm
   *     <p>Valid for: any r; {@link Budget#ofGap} takes r = 0, which is the wide side for r &gt; 0.
   *     <p>Source: JCGM 100:2008, equation (16).
   */
  public static double gapStandardUm(double boreUm, double partUm, double correlation) {
    return standard(
        new double[] {0.5, -0.5},
        new double[] {boreUm, partUm},
        new double[][] {{1, correlation}, {correlation, 1}});
  }

  private static void checkLength(String field, int length, int wanted) {
    if (length != wanted) {
      throw new InvalidValue(field, "has " + length + " values", wanted + " values");
    }
  }
}
