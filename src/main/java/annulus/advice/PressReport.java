package annulus.advice;

import annulus.fit.PressAnswer;
import annulus.fit.ShrinkAssembly;
import annulus.hold.FrictionHold;
import annulus.hold.LoadCheck;
import annulus.quantity.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What an interference does to both members and what it holds by itself.
 *
 * @param answer pressure, stresses and forces at 20 °C; empty when a diameter is missing
 * @param tightest the same at the tightest that it gets, at 20 °C, closing or in service; empty
 *     when a diameter is missing
 * @param standing how the pressure at its tightest stands to the members' limits
 * @param borneWhateverDiameters whether a diameter is missing and the members bear the tightest fit
 *     whatever it is
 * @param standsSoAtC temperature at which it does, °C: that of a sure limit, else of the tightest
 * @param looseAtC temperature at which the fit has no interference left; empty: none
 * @param tooTightAtC temperature at which the pressure reaches a member's limit; empty: never or
 *     not known
 * @param slip temperature at which a heated outer member slips over; empty when a diameter is
 *     missing
 * @param loosestRadialUm mean radial gap at the looser end of service, by the expansions that open
 *     it most, µm; negative is interference
 * @param atRest grip at 20 °C, after the tightest
 * @param least grip at the looser end of service, after the tightest; its low end by the expansions
 *     that open the gap most
 * @param load outcome of the load check on friction alone; empty without a load or a figure
 */
public record PressReport(
    Optional<PressAnswer> answer,
    Optional<PressAnswer> tightest,
    Standing standing,
    boolean borneWhateverDiameters,
    double standsSoAtC,
    OptionalDouble looseAtC,
    OptionalDouble tooTightAtC,
    Optional<ShrinkAssembly.Answer> slip,
    double loosestRadialUm,
    FrictionHold atRest,
    FrictionHold least,
    Optional<LoadCheck.Verdict> load) {

  /** Axial force that friction holds at the looser end of service, N; empty without a figure. */
  public Optional<Estimate> leastHold() {
    return least.isKnown() ? Optional.of(least.axialN()) : Optional.empty();
  }

  /** How the contact pressure stands to what the weaker member bears. */
  public enum Standing {
    WITHIN,
    MAY_EXCEED,
    EXCEEDS,
    /** A member's strength is not known. */
    LIMIT_NOT_KNOWN,
    /** Outside or inside diameter not given. */
    DIAMETER_MISSING,
    /** Laminate or plastic: no figure would be honest. */
    NO_HONEST_FIGURE
  }
}
