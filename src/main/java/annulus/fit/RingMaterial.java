package annulus.fit;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.OptionalDouble;

/**
 * What one member of a press fit is made of, as far as elastic rings need it.
 *
 * @param behaviour how it gives way
 * @param youngGPa modulus of elasticity, GPa, with its spread
 * @param poisson Poisson's ratio
 * @param limitMPa yield strength of a ductile metal, tensile strength of a brittle one, MPa; empty
 *     where not known
 */
public record RingMaterial(
    Behaviour behaviour, Estimate youngGPa, double poisson, OptionalDouble limitMPa) {

  /** How a material gives way. */
  public enum Behaviour {
    /** Yields before it breaks: steel, wrought aluminium, titanium, brass. */
    DUCTILE,
    /** Breaks without yielding: grey cast iron. */
    BRITTLE,
    /** Creeps and relaxes: no lasting pressure can be computed. */
    PLASTIC,
    /** Differs with direction and splits between plies: isotropic rings do not describe it. */
    LAMINATE;

    /** Whether the formula of elastic isotropic rings holds. */
    public boolean isIsotropicElastic() {
      return this == DUCTILE || this == BRITTLE;
    }
  }

  public RingMaterial {
    if (behaviour == null || limitMPa == null) {
      throw new InvalidValue("material", "behaviour or limit is missing", "both named");
    }
    youngGPa.checkedWithin("youngGPa", 0.1, 1000, "GPa");
    Check.within("poisson", poisson, 0, 0.4999, "");
    if (limitMPa.isPresent()) {
      Check.within("limitMPa", limitMPa.getAsDouble(), 1, 5000, "MPa");
    }
  }

  /** A metal that yields; modulus in GPa without spread, yield strength in MPa. */
  public static RingMaterial ductile(double youngGPa, double poisson, double yieldMPa) {
    return new RingMaterial(
        Behaviour.DUCTILE, Estimate.exactly(youngGPa), poisson, OptionalDouble.of(yieldMPa));
  }

  /** A metal that breaks without yielding; modulus in GPa without spread, tensile strength MPa. */
  public static RingMaterial brittle(double youngGPa, double poisson, double tensileMPa) {
    return new RingMaterial(
        Behaviour.BRITTLE, Estimate.exactly(youngGPa), poisson, OptionalDouble.of(tensileMPa));
  }
}
