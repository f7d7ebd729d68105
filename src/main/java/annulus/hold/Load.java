package annulus.hold;

import annulus.quantity.Check;

/**
 * What the joint has to bear.
 *
 * @param axialN axial force, N
 * @param torqueNm torque, N·m
 * @param wantedSafety safety factor wanted, at least 1
 */
public record Load(double axialN, double torqueNm, double wantedSafety) {
  public Load {
    Check.within("axialN", axialN, 0, 1e7, "N");
    Check.within("torqueNm", torqueNm, 0, 1e6, "N·m");
    Check.within("wantedSafety", wantedSafety, 1, 20, "");
  }

  /**
   * Axial force and torque as one shear force in the joint.
   *
   * <p>{@code sqrt(F^2 + (2T/d)^2)}: both shears lie in the cylinder, at right angles.
   *
   * @param diameterMm joint diameter, mm
   * @return N
   *     <p>Valid for: thin films, load spread over the length.
   *     <p>Source: vector sum of shears (statics).
   */
  public double combinedN(double diameterMm) {
    Check.positive("diameterMm", diameterMm, "mm");
    return Math.hypot(axialN, 2000 * torqueNm / diameterMm);
  }

  /** Force the joint must hold with its safety factor, N. */
  public double requiredN(double diameterMm) {
    return wantedSafety * combinedN(diameterMm);
  }
}
