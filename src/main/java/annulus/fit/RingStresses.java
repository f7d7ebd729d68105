package annulus.fit;

import annulus.quantity.Check;

/**
 * Stresses of a press fit at its four surfaces.
 *
 * @param hubBore outer member at the joint: its highest stress
 * @param hubRim outer member at its outside
 * @param partOutside inner member at the joint
 * @param partBore inner member at its own bore; for a solid part its middle
 */
public record RingStresses(
    SurfaceStress hubBore,
    SurfaceStress hubRim,
    SurfaceStress partOutside,
    SurfaceStress partBore) {

  /**
   * Stresses under a contact pressure.
   *
   * <p>With Q = d/D and q = di/d: hub bore {@code p(1+Q^2)/(1-Q^2)} and {@code -p}; hub rim {@code
   * 2pQ^2/(1-Q^2)}; part outside {@code -p(1+q^2)/(1-q^2)} and {@code -p}; part bore {@code
   * -2p/(1-q^2)}; solid part {@code -p} all through.
   *
   * @param geometry diameters, mm
   * @param pressureMPa contact pressure, MPa
   * @return stresses, MPa, tension positive
   *     <p>Valid for: elastic isotropic rings, plane stress, both as long as the joint.
   *     <p>Source: Lamé thick-wall equations (Shigley, Mechanical Engineering Design, 3-14).
   */
  public static RingStresses under(PressGeometry geometry, double pressureMPa) {
    double p = Check.within("pressureMPa", pressureMPa, 0, 1e6, "MPa");
    double hub2 = geometry.hubRatio() * geometry.hubRatio();
    double part2 = geometry.partRatio() * geometry.partRatio();
    SurfaceStress hubBore = new SurfaceStress(p * (1 + hub2) / (1 - hub2), -p);
    SurfaceStress hubRim = new SurfaceStress(2 * p * hub2 / (1 - hub2), 0);
    SurfaceStress outside = new SurfaceStress(-p * (1 + part2) / (1 - part2), -p);
    SurfaceStress bore =
        geometry.partBoreMm() == 0
            ? new SurfaceStress(-p, -p)
            : new SurfaceStress(-2 * p / (1 - part2), 0);
    return new RingStresses(hubBore, hubRim, outside, bore);
  }
}
