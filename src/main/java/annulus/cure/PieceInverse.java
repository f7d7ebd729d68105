package annulus.cure;

import annulus.quantity.Units;

/**
 * When a linear temperature piece has gathered an amount of reduced time. The first guess takes the
 * rate as exponential in time between the ends of the piece. Each further step integrates only from
 * the last guess on and goes the rest by the rate and its slope there: with m what is missing over
 * the rate, k = b·T′/T² the slope of its logarithm and c = k·T′/T half the loss of that slope,
 * {@code m = (e^(k·d) − 1)/k − c·d³/3} up to terms of d⁴, which are held below the error allowed.
 */
final class PieceInverse {
  private static final double SOLVED_S = 1e-8;
  private static final int MOST_STEPS = 200;

  private final ArrheniusRate formula;
  private final double seconds;
  private final double startC;
  private final double endC;

  private PieceInverse(ArrheniusRate formula, double seconds, double startC, double endC) {
    this.formula = formula;
    this.seconds = seconds;
    this.startC = startC;
    this.endC = endC;
  }

  /**
   * The earliest time since the start of the piece, s, at which the piece has gathered the hours
   * needed; at most the end of the piece.
   */
  static double secondsToReach(
      Rate rate, double seconds, double startC, double endC, double neededHours) {
    double cut = PieceIntegral.nextChange(rate, startC, endC);
    if (Double.isNaN(cut)) {
      return inSmooth(rate, seconds, startC, endC, neededHours);
    }
    double first = seconds * ((cut - startC) / (endC - startC));
    double gathered = PieceIntegral.smooth(rate, first, startC, cut);
    if (gathered >= neededHours) {
      return inSmooth(rate, first, startC, cut, neededHours);
    }
    return first + secondsToReach(rate, seconds - first, cut, endC, neededHours - gathered);
  }

  private static double inSmooth(
      Rate rate, double seconds, double startC, double endC, double neededHours) {
    double fastest = rate.at(Math.max(startC, endC));
    if (neededHours <= 0 || fastest <= 0) {
      return 0;
    }
    if (PieceIntegral.isSteady(rate, startC, endC)) {
      return Math.min(seconds, neededHours * PieceIntegral.SECONDS_PER_HOUR / fastest);
    }
    if (Math.max(startC, endC) == rate.minimumC()) {
      return 0; // below the minimum but for its end
    }
    ArrheniusRate formula = PieceIntegral.formula(rate, (startC + endC) / 2);
    return new PieceInverse(formula, seconds, startC, endC).solved(neededHours);
  }

  /** Newton's steps with the slope of the rate, kept inside a shrinking bracket. */
  private double solved(double neededHours) {
    double low = 0;
    double high = seconds;
    double at = Math.min(seconds, guess(neededHours));
    double missing = neededHours - gathered(0, at);
    for (int i = 0; i < MOST_STEPS; i++) {
      if (missing > 0) {
        low = at;
      } else {
        high = at;
      }
      Step step = step(at, missing);
      double next = at + step.seconds();
      boolean inside = next >= low && next <= high;
      if (inside && step.doubt() <= SOLVED_S) {
        return next;
      }
      next = inside ? next : (low + high) / 2;
      if (high - low <= SOLVED_S + Math.ulp(seconds)) {
        return next;
      }
      missing -= gathered(at, next);
      at = next;
    }
    return high;
  }

  private double guess(double neededHours) {
    double slope = (formula.exponent(endC) - formula.exponent(startC)) / seconds;
    double steady =
        neededHours * PieceIntegral.SECONDS_PER_HOUR / Math.exp(formula.exponent(startC));
    double grown = slope * steady;
    return grown > -1 ? Math.log1p(grown) / slope : seconds;
  }

  private double gathered(double from, double to) {
    return PieceIntegral.smooth(formula, to - from, celsius(from), celsius(to));
  }

  private double celsius(double at) {
    return startC + (endC - startC) * (at / seconds);
  }

  /** How far on the hours missing lie, s, and how far off that may be. */
  private record Step(double seconds, double doubt) {}

  private Step step(double at, double missingHours) {
    double celsius = celsius(at);
    double kelvin = Units.kelvin(celsius);
    double warming = (endC - startC) / seconds / kelvin;
    double slope = formula.perKelvin() / kelvin * warming;
    double missing =
        missingHours * PieceIntegral.SECONDS_PER_HOUR / Math.exp(formula.exponent(celsius));
    double rough = along(slope, missing);
    double bend = slope * warming;
    double cube = rough * rough * rough;
    double doubt = (Math.abs(slope) + Math.abs(warming)) * Math.abs(bend * cube * rough);
    return new Step(along(slope, missing + bend * cube / 3), doubt);
  }

  /** When a rate of 1 that grows by this share a second has gathered so much; NaN for never. */
  private static double along(double slope, double wanted) {
    double grown = slope * wanted;
    return grown == 0 ? wanted : Math.log1p(grown) / slope;
  }
}
