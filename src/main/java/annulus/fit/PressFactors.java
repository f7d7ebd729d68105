package annulus.fit;

import annulus.catalog.Provenance;
import annulus.quantity.Estimate;

/**
 * Factors of press and shrink fits that come from data.
 *
 * @param smoothingLoss part of the summed roughness depth that the interference loses
 * @param slipClearance clearance on the diameter that lets a heated ring slip, µm per mm of
 *     diameter
 * @param bearingClearanceLoss part of the interference that a bearing's internal clearance loses
 */
public record PressFactors(
    Sourced smoothingLoss, Sourced slipClearance, Sourced bearingClearanceLoss) {
  public PressFactors {
    smoothingLoss.value().checkedWithin("smoothing-loss", 0, 1, "");
    slipClearance.value().checkedWithin("slip-clearance", 0, 10, "µm/mm");
    bearingClearanceLoss.value().checkedWithin("bearing-clearance-loss", 0, 1, "");
  }

  /**
   * A factor with its source.
   *
   * @param value the factor
   * @param provenance where it comes from
   */
  public record Sourced(Estimate value, Provenance provenance) {}

  /**
   * By how much a bearing's internal clearance shrinks under a tight fit.
   *
   * <p>{@code k * interference}
   *
   * @param diametralInterferenceUm interference on the diameter, µm; below 0 counts as 0
   * @return loss of internal radial clearance (whole play across the diameter, ISO 5753-1), µm
   *     <p>Valid for: a caution only; deep-groove bearings on solid steel shafts and in steel.
   *     <p>Source: the row's.
   */
  public Estimate bearingClearanceLossUm(Estimate diametralInterferenceUm) {
    Estimate part = bearingClearanceLoss.value();
    return new Estimate(
        part.low() * Math.max(0, diametralInterferenceUm.low()),
        part.likely() * Math.max(0, diametralInterferenceUm.likely()),
        part.high() * Math.max(0, diametralInterferenceUm.high()));
  }
}
