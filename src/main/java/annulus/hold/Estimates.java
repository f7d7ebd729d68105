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

  /** Torque (N·m) of an axial force (N) at a diameter (mm): {@code F d/2}. */
  static Estimate torqueNm(Estimate axialN, double diameterMm) {
    return times(axialN, diameterMm / 2000);
  }
}
