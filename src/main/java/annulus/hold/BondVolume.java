package annulus.hold;

import annulus.quantity.Check;

/** How much compound a joint takes. */
public final class BondVolume {
  private BondVolume() {}

  /**
   * Volume between bore and part.
   *
   * <p>{@code pi/4 (D^2 - d^2) L}
   *
   * @param boreMm bore diameter, mm
   * @param partMm part diameter, mm
   * @param lengthMm bonded length, mm
   * @return mm³; 0 for interference
   *     <p>Valid for: round members, full gap.
   *     <p>Source: geometry.
   */
  public static double netMm3(double boreMm, double partMm, double lengthMm) {
    Check.within("boreMm", boreMm, 0.5, 2000, "mm");
    Check.within("partMm", partMm, 0.5, 2000, "mm");
    Check.within("lengthMm", lengthMm, 0.1, 5000, "mm");
    double sum = boreMm + partMm;
    return Math.max(0, Math.PI / 4 * sum * (boreMm - partMm) * lengthMm);
  }
}
