package annulus.fit.iso286;

/** Keeps decimal micrometres free of binary dust. */
final class Microns {
  private Microns() {}

  /** Rounded to a nanometre, and never minus zero. */
  static double clean(double um) {
    return Math.rint(um * 1000) / 1000 + 0.0;
  }
}
