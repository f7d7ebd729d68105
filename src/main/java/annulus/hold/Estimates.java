package annulus.hold;

import annulus.quantity.Estimate;

/** Products and sums of estimates that are not negative: low with low, high with high. */
final class Estimates {
  private Estimates() {}

  static Estimate product(Estimate a, Estimate b) {
    return new Estimate(a.low() * b.low(), a.likely() * b.likely(), a.high() * b.high());
  }

  static Estimate times(Estimate a, double factor) {
    return new Estimate(a.low() * factor, a.likely() * factor, a.high() * factor);
  }

  /** The lesser of each of the three numbers. */
  static Estimate lesser(Estimate a, Estimate b) {
    return new Estimate(
        Math.min(a.low(), b.low()), Math.min(a.likely(), b.likely()), Math.min(a.high(), b.high()));
  }

  /** The lesser low and likely numbers, and the greater high one: what either may be. */
  static Estimate spanned(Estimate a, Estimate b) {
    return new Estimate(
        Math.min(a.low(), b.low()), Math.min(a.likely(), b.likely()), Math.max(a.high(), b.high()));
  }

  static Estimate sum(Estimate a, Estimate b) {
    return new Estimate(a.low() + b.low(), a.likely() + b.likely(), a.high() + b.high());
  }

  /** Straight between two estimates; {@code share} 0 gives the first, 1 the second. */
  static Estimate between(Estimate a, Estimate b, double share) {
    double likely = mix(a.likely(), b.likely(), share);
    // numbers that meet may cross by a rounding error
    double low = Math.min(likely, mix(a.low(), b.low(), share));
    double high = Math.max(likely, mix(a.high(), b.high(), share));
    return new Estimate(low, likely, high);
  }

  private static double mix(double a, double b, double share) {
    return a + (b - a) * share;
  }

  /** Torque (N·m) of an axial force (N) at a diameter (mm): {@code F d/2}. */
  static Estimate torqueNm(Estimate axialN, double diameterMm) {
    return times(axialN, diameterMm / 2000);
  }
}
