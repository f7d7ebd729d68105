package annulus.measure;

import annulus.quantity.Check;

/** Flat inside jaws of a caliper in a round bore. */
public final class Jaws {
  private Jaws() {}

  /**
   * How much too small two flat jaws read a bore.
   *
   * <p>{@code D − √(D² − w²)}
   *
   * @param diameterMm bore diameter D, mm
   * @param flatMm width w of the flats, mm, from 0 to less than D; twice the offset for jaws that
   *     measure a chord beside the centre
   * @return error, mm on the diameter, 0 or more
   *     <p>Valid for: a round bore and flats of equal width, square to the reading.
   *     <p>Source: chord of a circle, exact.
   */
  public static double readSmallMm(double diameterMm, double flatMm) {
    Check.positive("diameterMm", diameterMm, "mm");
    Check.within("flatMm", flatMm, 0, diameterMm, "mm");
    // same as D − √(D² − w²) without the cancelling digits
    return flatMm * flatMm / (diameterMm + Math.sqrt(diameterMm * diameterMm - flatMm * flatMm));
  }
}
