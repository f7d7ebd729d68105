package annulus.cure;

import annulus.quantity.Check;

/** How a wider gap lengthens the cure. */
public final class GapFactor {
  private GapFactor() {}

  /**
   * Time factor of the gap.
   *
   * <p>{@code F_gap = max(1, (g/g_ref)^n)}; 1 for interference.
   *
   * @param radialGapUm radial gap g, µm, negative for interference
   * @param referenceGapUm radial reference gap, µm, above 0
   * @param exponent n, 0 to 4
   * @return factor on the time, 1 or more
   *     <p>Valid for: gaps within the class's range; the caller refuses wider ones.
   *     <p>Source: common practice, no source (time grows about with the gap).
   */
  public static double of(double radialGapUm, double referenceGapUm, double exponent) {
    Check.finite("radialGapUm", radialGapUm, "µm");
    Check.positive("referenceGapUm", referenceGapUm, "µm");
    Check.within("exponent", exponent, 0, 4, "");
    return radialGapUm <= referenceGapUm ? 1 : Math.pow(radialGapUm / referenceGapUm, exponent);
  }
}
