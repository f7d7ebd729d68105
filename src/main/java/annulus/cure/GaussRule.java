package annulus.cure;

import annulus.quantity.Units;

/**
 * Gauss-Legendre rules for the mean of a rate over a slice of temperatures, with as few points as
 * keep the error of {@link PieceIntegral}. A slice of half width h lies in the circle of radius
 * 20.4 K about its middle, hence in the Bernstein ellipse with (ρ + 1/ρ)/2 = 20.4 K/h; n points
 * leave a share of about ρ^−2n. The 8 points over 10 K have ρ = 8; 6 points do as well from ρ = 16
 * on (5.08 K), 4 points from ρ = 64 on (1.27 K). Nodes: Abramowitz and Stegun, table 25.4.
 */
enum GaussRule {
  FOUR(
      1.25,
      new double[] {0.3399810435848563, 0.8611363115940526},
      new double[] {0.6521451548625461, 0.3478548451374538}),
  SIX(
      5,
      new double[] {0.2386191860831969, 0.6612093864662645, 0.932469514203152},
      new double[] {0.4679139345726910, 0.3607615730481386, 0.1713244923791704}),
  EIGHT(
      10,
      new double[] {0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363},
      new double[] {
        0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763
      });

  private final double widestK;
  private final double[] node;
  private final double[] weight;

  GaussRule(double widestK, double[] node, double[] weight) {
    this.widestK = widestK;
    this.node = node;
    this.weight = weight;
  }

  /** Into how many slices a span of temperatures is cut, K. */
  static int slices(double spanK) {
    return Math.max(1, (int) Math.ceil(spanK / EIGHT.widestK));
  }

  /** The rule for a slice of this width, K. */
  static GaussRule of(double widthK) {
    return widthK <= FOUR.widestK ? FOUR : widthK <= SIX.widestK ? SIX : EIGHT;
  }

  /** Mean rate over a slice that lies between the formula's minimum and hold temperatures. */
  double mean(ArrheniusRate formula, double middleC, double halfK) {
    double b = formula.perKelvin();
    double reference = 1 / Units.kelvin(formula.referenceC());
    double middle = Units.kelvin(middleC);
    double sum = 0;
    for (int i = 0; i < node.length; i++) {
      double off = halfK * node[i];
      double colder = Math.exp(-b * (1 / (middle - off) - reference));
      double warmer = Math.exp(-b * (1 / (middle + off) - reference));
      sum += weight[i] * (colder + warmer);
    }
    return sum / 2;
  }
}
