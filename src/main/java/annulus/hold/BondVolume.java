package annulus.hold;

import annulus.quantity.Check;
import annulus.quantity.Estimate;

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

  /**
   * Compound to take from the bottle.
   *
   * <p>{@code max(net, film) (1 + waste)}; the film is what wets the faces of a tight fit.
   *
   * @param boreMm bore diameter, mm
   * @param partMm part diameter, mm
   * @param lengthMm bonded length, mm
   * @param wettingFilmUm radial film, µm, from data
   * @param waste lost part, from data
   * @return mL
   *     <p>Valid for: one joint.
   *     <p>Source: geometry; waste and film from data.
   */
  public static Estimate neededMl(
      double boreMm, double partMm, double lengthMm, Estimate wettingFilmUm, Estimate waste) {
    double net = netMm3(boreMm, partMm, lengthMm) / 1000;
    double perFilmUm = Math.PI * partMm * lengthMm / 1e6;
    return new Estimate(
        Math.max(net, perFilmUm * wettingFilmUm.low()) * (1 + waste.low()),
        Math.max(net, perFilmUm * wettingFilmUm.likely()) * (1 + waste.likely()),
        Math.max(net, perFilmUm * wettingFilmUm.high()) * (1 + waste.high()));
  }
}
