package annulus.cure;

import annulus.quantity.Check;
import java.util.OptionalDouble;

/**
 * What decides how long one joint takes to cure. The factors multiply the time a reference joint
 * needs; the spread is that of the product.
 *
 * @param surfaceFactor time factor of the pair of surfaces, above 0
 * @param gapFactor time factor of the gap, above 0
 * @param primerFactor time factor of the primer, 1 without, above 0
 * @param curve strength against reduced time of the reference joint
 * @param typical rate with the likely activation energy, for quantiles up to 0.5
 * @param slow rate on the slow side of the energies, for quantiles above 0.5; nowhere faster than
 *     typical
 * @param spread uncertainty of the factors and of the curve's times
 */
public record CureModel(
    double surfaceFactor,
    double gapFactor,
    double primerFactor,
    CureCurve curve,
    Rate typical,
    Rate slow,
    Spread spread) {
  /**
   * @throws annulus.quantity.InvalidValue when a factor is not above 0
   */
  public CureModel {
    Check.positive("surfaceFactor", surfaceFactor, "");
    Check.positive("gapFactor", gapFactor, "");
    Check.positive("primerFactor", primerFactor, "");
  }

  /** The same joint with another time factor of the gap. */
  public CureModel withGapFactor(double other) {
    return new CureModel(surfaceFactor, other, primerFactor, curve, typical, slow, spread);
  }

  /** Product of the time factors. */
  public double timeFactor() {
    return surfaceFactor * gapFactor * primerFactor;
  }

  /**
   * Temperature-weighted hours, at the reference temperature, after which a strength fraction is
   * reached with a given probability.
   *
   * <p>{@code H(s, q) = τ(s)·f·exp(z(q)·σ)}
   *
   * @param fraction share of full strength, 0 to 1
   * @param quantile probability that no more is needed, above 0 and below 1
   * @return hours at the reference temperature; empty when the curve never gets there
   *     <p>Valid for: factors as declared by the catalog.
   *     <p>Source: quantile of a log-normal product.
   */
  public OptionalDouble hoursNeeded(double fraction, double quantile) {
    Spread.checkQuantile(quantile);
    OptionalDouble hours = curve.hoursAt(fraction);
    return hours.isEmpty()
        ? hours
        : OptionalDouble.of(hours.getAsDouble() * timeFactor() * spread.factor(quantile));
  }

  /** This joint in a temperature history that starts when the joint is closed. */
  public CureForecast in(TemperatureHistory history) {
    return new CureForecast(
        this, new ReducedTime(history, typical), new ReducedTime(history, slow));
  }

  /**
   * This joint at one quantile, above 0 and below 1, in such a history: the slow rate above the
   * middle, the typical one up to it.
   */
  public CureCourse in(TemperatureHistory history, double quantile) {
    Rate rate = quantile > CureForecast.MIDDLE ? slow : typical;
    return new CureCourse(this, new ReducedTime(history, rate), quantile);
  }
}
