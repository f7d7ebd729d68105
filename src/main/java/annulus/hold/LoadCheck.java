package annulus.hold;

import annulus.quantity.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A joint's hold against its load.
 *
 * @param hold the joint at the time asked
 * @param load the load
 */
public record LoadCheck(HybridHold hold, Load load) {

  /** The outcome; only {@link #COVERED} releases a joint. */
  public enum Verdict {
    /** Even the low end holds the load with its safety factor. */
    COVERED,
    /** The likely hold does, the low end does not. */
    LIKELY_ONLY,
    /** Not even the likely hold does. */
    NOT_COVERED
  }

  public Verdict verdict() {
    double required = load.requiredN(hold.bond().diameterMm());
    Estimate held = hold.axialN();
    if (held.low() >= required) {
      return Verdict.COVERED;
    }
    return held.likely() >= required ? Verdict.LIKELY_ONLY : Verdict.NOT_COVERED;
  }

  /**
   * Safety factor reached.
   *
   * <p>{@code S = F_hold / F_combined}
   *
   * @return low, likely, high; empty when there is no load
   *     <p>Valid for: as {@link HybridHold#axialN}.
   *     <p>Source: definition.
   */
  public Optional<Estimate> safety() {
    double combined = load.combinedN(hold.bond().diameterMm());
    return combined == 0
        ? Optional.empty()
        : Optional.of(Estimates.times(hold.axialN(), 1 / combined));
  }

  /**
   * The least share of the bond's full strength at which the load is covered: the stage of cure to
   * wait for.
   *
   * @return 0 to 1; empty when full strength does not cover it
   *     <p>Valid for: as {@link HybridHold#strengthFractionFor}.
   *     <p>Source: computed.
   */
  public OptionalDouble strengthFractionNeeded() {
    return hold.strengthFractionFor(load.requiredN(hold.bond().diameterMm()));
  }
}
