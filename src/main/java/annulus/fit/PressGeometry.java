package annulus.fit;

import annulus.quantity.Check;

/**
 * A hollow or solid part pressed into a ring.
 *
 * @param jointDiameterMm nominal diameter of the joint, mm
 * @param hubOutsideMm outside diameter of the outer member, mm
 * @param partBoreMm bore of the inner member, mm; 0 for a solid one
 * @param lengthMm length in contact, mm
 */
public record PressGeometry(
    double jointDiameterMm, double hubOutsideMm, double partBoreMm, double lengthMm) {
  public PressGeometry {
    Check.within("jointDiameterMm", jointDiameterMm, 0.5, 2000, "mm");
    Check.within("hubOutsideMm", hubOutsideMm, Math.nextUp(jointDiameterMm), 100_000, "mm");
    Check.within("partBoreMm", partBoreMm, 0, Math.nextDown(jointDiameterMm), "mm");
    Check.within("lengthMm", lengthMm, 0.1, 5000, "mm");
  }

  /** Contact area, mm². */
  public double areaMm2() {
    return Math.PI * jointDiameterMm * lengthMm;
  }

  /** Diameter ratio Q of the hub, joint over outside. */
  public double hubRatio() {
    return jointDiameterMm / hubOutsideMm;
  }

  /** Diameter ratio of the part, bore over joint; 0 for a solid one. */
  public double partRatio() {
    return partBoreMm / jointDiameterMm;
  }
}
