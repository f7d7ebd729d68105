package annulus.fit.iso286;

/**
 * A hole and a shaft inside their limits. Clearance is positive, interference negative, in µm;
 * names say whether on the diameter or per side.
 *
 * @param hole limits of the hole
 * @param shaft limits of the shaft
 */
public record Fit(LimitsOfSize hole, LimitsOfSize shaft) {

  /**
   * The loosest the two can be, on the diameter.
   *
   * <p>{@code ES - ei}, with the nominal sizes' difference added where they differ.
   *
   * @return µm on the diameter, negative for interference
   *     <p>Valid for: any limits.
   *     <p>Source: ISO 286-1:2010, 3.4.
   */
  public double greatestDiametralClearanceUm() {
    return Microns.clean(nominalStepUm() + hole.upperUm() - shaft.lowerUm());
  }

  /**
   * The tightest the two can be, on the diameter.
   *
   * <p>{@code EI - es}, with the nominal sizes' difference added where they differ.
   *
   * @return µm on the diameter, negative for interference
   *     <p>Valid for: any limits.
   *     <p>Source: ISO 286-1:2010, 3.4.
   */
  public double leastDiametralClearanceUm() {
    return Microns.clean(nominalStepUm() + hole.lowerUm() - shaft.upperUm());
  }

  /** As {@link #greatestDiametralClearanceUm} per side (radial gap), µm. */
  public double greatestRadialGapUm() {
    return greatestDiametralClearanceUm() / 2;
  }

  /** As {@link #leastDiametralClearanceUm} per side (radial gap), µm. */
  public double leastRadialGapUm() {
    return leastDiametralClearanceUm() / 2;
  }

  /** The largest interference on the diameter, µm; 0 where there is none. */
  public double greatestDiametralInterferenceUm() {
    return Math.max(0, -leastDiametralClearanceUm());
  }

  /** The interference that is always there, on the diameter, µm; 0 where a pair may be loose. */
  public double leastDiametralInterferenceUm() {
    return Math.max(0, -greatestDiametralClearanceUm());
  }

  /** Clearance, transition or interference fit. */
  public FitKind kind() {
    if (leastDiametralClearanceUm() >= 0) {
      return FitKind.CLEARANCE;
    }
    return greatestDiametralClearanceUm() <= 0 ? FitKind.INTERFERENCE : FitKind.TRANSITION;
  }

  private double nominalStepUm() {
    return (hole.nominalMm() - shaft.nominalMm()) * 1000;
  }
}
