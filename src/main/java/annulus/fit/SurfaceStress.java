package annulus.fit;

/**
 * Stress at one surface of a ring under plane stress.
 *
 * @param hoopMPa around the ring, MPa, tension positive
 * @param radialMPa across the wall, MPa, tension positive
 */
public record SurfaceStress(double hoopMPa, double radialMPa) {

  /**
   * Equivalent stress to compare with a yield strength.
   *
   * <p>{@code sqrt(hoop^2 + radial^2 - hoop * radial)}
   *
   * @return MPa, not negative
   *     <p>Valid for: plane stress, isotropic material.
   *     <p>Source: von Mises criterion, any strength textbook (Shigley, Mechanical Engineering
   *     Design, ch. 5).
   */
  public double vonMisesMPa() {
    return Math.sqrt(hoopMPa * hoopMPa + radialMPa * radialMPa - hoopMPa * radialMPa);
  }
}
