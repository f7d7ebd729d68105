package annulus.cure;

import java.util.OptionalDouble;

/**
 * One joint's cure in one temperature history at one quantile: what does not change from time to
 * time is worked out once.
 */
public final class CureCourse {
  private final CureCurve curve;
  private final ReducedTime reduced;
  private final double timeFactor;
  private final double spreadFactor;

  CureCourse(CureModel model, ReducedTime reduced, double quantile) {
    this.curve = model.curve();
    this.reduced = reduced;
    this.timeFactor = model.timeFactor();
    this.spreadFactor = model.spread().factor(quantile);
  }

  /**
   * The time by which a strength fraction is reached at this quantile.
   *
   * <p>{@code t = τ⁻¹(H(s, q))}
   *
   * @param fraction share of full strength, 0 to 1
   * @return seconds since the start, to 1e-6 s; empty when never (too cold, or beyond the curve)
   *     <p>Valid for: as {@link ReducedTime} and {@link CureModel#hoursNeeded}.
   *     <p>Source: monotone inversion at the quantile.
   */
  public OptionalDouble secondsTo(double fraction) {
    OptionalDouble hours = curve.hoursAt(fraction);
    return hours.isEmpty()
        ? hours
        : reduced.secondsToReach(hours.getAsDouble() * timeFactor * spreadFactor);
  }

  /**
   * The strength fraction that is reached or passed at a time at this quantile.
   *
   * <p>{@code s = curve(τ(t)/(f·exp(z(q)·σ)))}
   *
   * @param seconds time since the start, s
   * @return share of full strength
   *     <p>Valid for: as {@link #secondsTo}.
   *     <p>Source: inverse of {@link #secondsTo}.
   */
  public double fractionAt(double seconds) {
    return curve.fractionAt(reduced.hoursAt(seconds) / (timeFactor * spreadFactor));
  }

  /** As {@link #fractionAt}, for times, s, that never fall. */
  public double[] fractionsAt(double[] risingSeconds) {
    double[] hours = new double[risingSeconds.length];
    double factor = timeFactor * spreadFactor;
    for (int i = 0; i < hours.length; i++) {
      hours[i] = reduced.hoursAt(risingSeconds[i]) / factor;
    }
    return curve.fractionsAt(hours);
  }

  /** The reduced time behind it. */
  public ReducedTime reduced() {
    return reduced;
  }
}
