package annulus.catalog;

import annulus.quantity.Check;

/**
 * What must be reached before a joint of this consequence is handed back.
 *
 * @param consequence what a failure would do
 * @param stage stage of cure that must be reached
 * @param slowPractice whether the slowest practice for full cure rules as well
 * @param safetyFactor hold over load, 1 to 20
 * @param provenance source of this row
 */
public record ReleaseRule(
    Consequence consequence,
    Stage stage,
    boolean slowPractice,
    double safetyFactor,
    Provenance provenance) {
  public ReleaseRule {
    Check.within("safety_factor", safetyFactor, 1, 20, "");
  }
}
