package annulus.fit.iso286;

import annulus.quantity.Check;

/**
 * Limits of size of one feature, on the diameter.
 *
 * @param nominalMm nominal diameter, mm
 * @param lowerUm lower deviation (EI, ei) from the nominal diameter, µm
 * @param upperUm upper deviation (ES, es) from the nominal diameter, µm
 */
public record LimitsOfSize(double nominalMm, double lowerUm, double upperUm) {
  public LimitsOfSize {
    Check.positive("nominalMm", nominalMm, "mm");
    DesignationText.requireOrder(lowerUm, upperUm);
    lowerUm = Microns.clean(lowerUm);
    upperUm = Microns.clean(upperUm);
    Check.positive("smallest size", nominalMm + lowerUm / 1000, "mm");
  }

  /** Smallest allowed diameter, mm. */
  public double smallestMm() {
    return nominalMm + lowerUm / 1000;
  }

  /** Largest allowed diameter, mm. */
  public double largestMm() {
    return nominalMm + upperUm / 1000;
  }

  /** Width of the zone on the diameter, µm. */
  public double toleranceUm() {
    return Microns.clean(upperUm - lowerUm);
  }

  /** Distance of a diameter (mm) from the nominal one, µm. */
  public double deviationUm(double diameterMm) {
    return Microns.clean((diameterMm - nominalMm) * 1000);
  }
}
