package annulus.measure;

import annulus.quantity.Check;
import java.util.Comparator;
import java.util.OptionalDouble;

/**
 * One reading of a diameter.
 *
 * @param mm diameter as read, mm; 0.5 to 500
 * @param depthMm distance from the mouth, mm, if known; 0 to 1000
 * @param angleDeg clock angle of one contact, degrees, if known; 0 to 360
 */
public record Reading(double mm, OptionalDouble depthMm, OptionalDouble angleDeg) {
  /** A fixed order, so that sums do not depend on the order of typing. */
  static final Comparator<Reading> ORDER = Reading::compare;

  public Reading {
    Check.within("mm", mm, 0.5, 500, "mm");
    depthMm.ifPresent(d -> Check.within("depthMm", d, 0, 1000, "mm"));
    angleDeg.ifPresent(a -> Check.within("angleDeg", a, 0, 360, "°"));
  }

  private static int compare(Reading a, Reading b) {
    int byDepth = Double.compare(a.depthMm.orElse(-1), b.depthMm.orElse(-1));
    int byAngle =
        byDepth != 0 ? byDepth : Double.compare(a.angleDeg.orElse(-1), b.angleDeg.orElse(-1));
    return byAngle != 0 ? byAngle : Double.compare(a.mm, b.mm);
  }

  /** A reading of which the place is not known. */
  public static Reading of(double mm) {
    return new Reading(mm, OptionalDouble.empty(), OptionalDouble.empty());
  }

  /** A reading at a known depth (mm) and angle (degrees). */
  public static Reading at(double mm, double depthMm, double angleDeg) {
    return new Reading(mm, OptionalDouble.of(depthMm), OptionalDouble.of(angleDeg));
  }

  /** A reading at a known angle (degrees), depth not given. */
  public static Reading atAngle(double mm, double angleDeg) {
    return new Reading(mm, OptionalDouble.empty(), OptionalDouble.of(angleDeg));
  }
}
