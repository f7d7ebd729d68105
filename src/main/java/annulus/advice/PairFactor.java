package annulus.advice;

import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.cure.Spread;
import annulus.cure.SurfaceActivity;
import annulus.quantity.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Time factor of a pair of faces.
 *
 * @param likely on the reference time
 * @param sigmaLn spread of its logarithm, from the slow side of the rates
 * @param quick factor on the quick side of the rates
 */
record PairFactor(double likely, double sigmaLn, double quick) {
  /** The larger time and the larger doubt of two pairs. */
  PairFactor slower(PairFactor other) {
    return new PairFactor(
        Math.max(likely, other.likely),
        Math.max(sigmaLn, other.sigmaLn),
        Math.min(quick, other.quick));
  }

  /** The slowest of all pairs whose faces are at least as active; empty when none cures. */
  static Optional<PairFactor> slowest(
      Catalog catalog, Optional<PlannedPrimer> primer, Activity.Level bore, Activity.Level part) {
    Rates rates = new Rates(catalog, primer);
    Optional<PairFactor> slowest = Optional.empty();
    for (Activity.Level b : Activity.Level.values()) {
      for (Activity.Level p : Activity.Level.values()) {
        Optional<PairFactor> pair =
            b.compareTo(bore) <= 0 && p.compareTo(part) <= 0 ? rates.of(b, p) : Optional.empty();
        slowest = slowest.isEmpty() ? pair : slowest.map(s -> pair.map(s::slower).orElse(s));
      }
    }
    return slowest;
  }

  /**
   * Rates of faces in one catalogue under one primer.
   *
   * @param catalog with the activities
   * @param primer which faces it is on; empty: none
   */
  record Rates(Catalog catalog, Optional<PlannedPrimer> primer) {
    /** The factor of a pair; empty when it does not cure. */
    Optional<PairFactor> of(Activity.Level bore, Activity.Level part) {
      OptionalDouble likely = factor(bore, part, Estimate::likely);
      OptionalDouble low = factor(bore, part, Estimate::low);
      OptionalDouble high = factor(bore, part, Estimate::high);
      if (likely.isEmpty() || low.isEmpty() || high.isEmpty()) {
        return Optional.empty();
      }
      double sigma = Math.log(low.getAsDouble() / likely.getAsDouble()) / Spread.LIMIT_Z;
      return Optional.of(
          new PairFactor(likely.getAsDouble(), Math.max(0, sigma), high.getAsDouble()));
    }

    private OptionalDouble factor(
        Activity.Level bore, Activity.Level part, ToDoubleFunction<Estimate> limit) {
      return SurfaceActivity.surfaceFactor(
          face(bore, primer.filter(PlannedPrimer::onBore), limit),
          face(part, primer.filter(PlannedPrimer::onPart), limit));
    }

    private SurfaceActivity face(
        Activity.Level level, Optional<PlannedPrimer> on, ToDoubleFunction<Estimate> limit) {
      double own = limit.applyAsDouble(catalog.activities().get(level).rate());
      SurfaceActivity bare =
          level == Activity.Level.INERT
              ? new SurfaceActivity.Inert(OptionalDouble.of(own))
              : new SurfaceActivity.Active(own);
      return on.isPresent() ? bare.primed(limit.applyAsDouble(on.get().primer().rate())) : bare;
    }
  }
}
