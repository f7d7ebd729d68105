package annulus.cure;

import java.util.OptionalDouble;

/**
 * One joint's cure in one temperature history, at any quantile, without sampling. Above the middle
 * quantile the slow rate is used, up to it the typical one: a promise at 95 % carries both the
 * spread of the factors and the doubt about the activation energy, added on the slow side.
 */
public final class CureForecast {
  static final double MIDDLE = 0.5;

  private final CureModel model;
  private final ReducedTime typical;
  private final ReducedTime slow;

  CureForecast(CureModel model, ReducedTime typical, ReducedTime slow) {
    this.model = model;
    this.typical = typical;
    this.slow = slow;
  }

  /**
   * The time by which a strength fraction is reached with a given probability.
   *
   * <p>{@code t = τ⁻¹(H(s, q))}
   *
   * @param fraction share of full strength, 0 to 1
   * @param quantile probability, above 0 and below 1
   * @return seconds since the start, to 1e-6 s; empty when never (too cold, or beyond the curve)
   *     <p>Valid for: as {@link ReducedTime} and {@link CureModel#hoursNeeded}.
   *     <p>Source: monotone inversion at the quantile.
   */
  public OptionalDouble secondsTo(double fraction, double quantile) {
    return at(quantile).secondsTo(fraction);
  }

  /**
   * The strength fraction that is reached or passed with a given probability at a time.
   *
   * <p>{@code s = curve(τ(t)/(f·exp(z(q)·σ)))}
   *
   * @param seconds time since the start, s
   * @param quantile probability, above 0 and below 1
   * @return share of full strength
   *     <p>Valid for: as {@link #secondsTo}.
   *     <p>Source: inverse of {@link #secondsTo}.
   */
  public double fractionAt(double seconds, double quantile) {
    return at(quantile).fractionAt(seconds);
  }

  /**
   * The probability that a strength fraction is reached by a time: the highest quantile whose time
   * is not later.
   *
   * <p>{@code q = Φ(ln(τ(t)/(τ(s)·f))/σ)}
   *
   * @param fraction share of full strength, 0 to 1
   * @param seconds time since the start, s
   * @return probability, 0 to 1
   *     <p>Valid for: as {@link #secondsTo}.
   *     <p>Source: log-normal distribution function.
   */
  public double probabilityReached(double fraction, double seconds) {
    OptionalDouble curveHours = model.curve().hoursAt(fraction);
    if (curveHours.isEmpty()) {
      return 0;
    }
    double median = curveHours.getAsDouble() * model.timeFactor();
    if (median == 0) {
      return 1;
    }
    double sure = model.spread().probabilityOfAtMost(slow.hoursAt(seconds) / median);
    double likely = model.spread().probabilityOfAtMost(typical.hoursAt(seconds) / median);
    return sure > MIDDLE ? sure : Math.min(MIDDLE, likely);
  }

  private CureCourse at(double quantile) {
    return new CureCourse(model, reduced(quantile), quantile);
  }

  /** The reduced time behind a quantile: slow side above the middle, typical up to it. */
  public ReducedTime reduced(double quantile) {
    return quantile > MIDDLE ? slow : typical;
  }
}
