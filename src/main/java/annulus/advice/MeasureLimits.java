package annulus.advice;

import annulus.catalog.Policy;
import annulus.measure.FormLimits;

/** The limits of the measurement model as the policy data has them. */
public final class MeasureLimits {
  private MeasureLimits() {}

  /** The choices of the measurement model, from the policy data. */
  public static FormLimits of(Policy policy) {
    return new FormLimits(
        policy.value("oval-note"),
        policy.value("taper-note"),
        policy.value("repeat-note"),
        policy.value("single-reading-steps"),
        policy.value("dominant-share"),
        policy.value("instrument-expansion"),
        (int) policy.value("most-readings"));
  }
}
