package annulus.fit;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * A part pressed or shrunk into a ring, with the spread of what is known.
 *
 * @param geometry diameters and length
 * @param hub material of the outer member
 * @param part material of the inner member
 * @param diametralInterferenceUm interference on the diameter before the peaks flatten, µm;
 *     negative where the pair may be loose
 * @param smoothingUm loss of interference on the diameter by flattened peaks, µm
 * @param friction coefficient of friction
 */
public record PressFit(
    PressGeometry geometry,
    RingMaterial hub,
    RingMaterial part,
    Estimate diametralInterferenceUm,
    Estimate smoothingUm,
    Estimate friction) {
  public PressFit {
    diametralInterferenceUm.checkedWithin("diametralInterferenceUm", -5000, 5000, "µm");
    smoothingUm.checkedWithin("smoothingUm", 0, 1000, "µm");
    friction.checkedWithin("friction", 0, 1, "");
  }

  /**
   * Interference on the diameter from the radial gap.
   *
   * <p>{@code -2 g}
   *
   * @param radialGapUm radial gap, µm, negative for interference
   * @return interference on the diameter, µm, negative where loose
   *     <p>Valid for: any gap.
   *     <p>Source: definition.
   */
  public static Estimate interferenceFromRadialGapUm(Estimate radialGapUm) {
    return new Estimate(-2 * radialGapUm.high(), -2 * radialGapUm.likely(), -2 * radialGapUm.low());
  }

  /**
   * Loss of interference when the peaks of both faces flatten.
   *
   * <p>{@code k (Rz1 + Rz2)}
   *
   * @param hubRzUm mean roughness depth of the bore, µm
   * @param partRzUm mean roughness depth of the part, µm
   * @param lossFactor k, from data (two schools: 0.2 and 0.8)
   * @return loss on the diameter, µm
   *     <p>Valid for: turned, reamed and ground metal faces.
   *     <p>Source: DIN 7190-1 and older practice, from memory.
   */
  public static Estimate smoothingUm(double hubRzUm, double partRzUm, Estimate lossFactor) {
    double sum =
        Check.within("hubRzUm", hubRzUm, 0, 400, "µm")
            + Check.within("partRzUm", partRzUm, 0, 400, "µm");
    lossFactor.checkedWithin("lossFactor", 0, 1, "");
    return new Estimate(sum * lossFactor.low(), sum * lossFactor.likely(), sum * lossFactor.high());
  }

  /**
   * Contact pressure of two elastic rings of different materials.
   *
   * <p>{@code p = (delta/d) / { [(D^2+d^2)/(D^2-d^2) + nu_o]/E_o + [(d^2+di^2)/(d^2-di^2) -
   * nu_i]/E_i }}
   *
   * @param geometry diameters, mm
   * @param hubYoungGPa modulus of the outer member, GPa
   * @param hubPoisson Poisson's ratio of the outer member
   * @param partYoungGPa modulus of the inner member, GPa
   * @param partPoisson Poisson's ratio of the inner member
   * @param diametralInterferenceUm interference on the diameter that works, µm
   * @return MPa; 0 for no interference
   *     <p>Valid for: elastic isotropic rings, plane stress, both as long as the joint, below the
   *     start of yield.
   *     <p>Source: Lamé thick-wall equations (Shigley, Mechanical Engineering Design, eq. 3-56).
   */
  public static double pressureMPa(
      PressGeometry geometry,
      double hubYoungGPa,
      double hubPoisson,
      double partYoungGPa,
      double partPoisson,
      double diametralInterferenceUm) {
    if (diametralInterferenceUm <= 0) {
      return 0;
    }
    double hub2 = geometry.hubRatio() * geometry.hubRatio();
    double part2 = geometry.partRatio() * geometry.partRatio();
    double hubGives = ((1 + hub2) / (1 - hub2) + hubPoisson) / (hubYoungGPa * 1000);
    double partGives = ((1 + part2) / (1 - part2) - partPoisson) / (partYoungGPa * 1000);
    double strain = diametralInterferenceUm / 1000 / geometry.jointDiameterMm();
    return strain / (hubGives + partGives);
  }

  /** Interference on the diameter that works after the peaks have flattened, µm; not below 0. */
  public Estimate workingInterferenceUm() {
    return new Estimate(
        Math.max(0, diametralInterferenceUm.low() - smoothingUm.high()),
        Math.max(0, diametralInterferenceUm.likely() - smoothingUm.likely()),
        Math.max(0, diametralInterferenceUm.high() - smoothingUm.low()));
  }

  /**
   * Pressure, stresses, force and torque, or why there is no number.
   *
   * <p>Force {@code F = mu p pi d L}, torque {@code T = F d/2}; low, likely and high take the low,
   * likely and high interference, modulus and friction together.
   *
   * @return {@link PressAnswer.Pressed}, {@link PressAnswer.Loose} or {@link PressAnswer.Refused}
   *     <p>Valid for: metals, elastic; beyond the start of yield the answer says so.
   *     <p>Source: Lamé; DIN 7190-1 for friction and the start of yield in the hub.
   */
  public PressAnswer answer() {
    List<PressAnswer.Reason> refusals = refusals();
    if (!refusals.isEmpty()) {
      return new PressAnswer.Refused(refusals);
    }
    Estimate working = workingInterferenceUm();
    if (working.high() <= 0) {
      return new PressAnswer.Loose(diametralInterferenceUm);
    }
    Estimate pressure =
        new Estimate(
            pressure(working.low(), hub.youngGPa().low(), part.youngGPa().low()),
            pressure(working.likely(), hub.youngGPa().likely(), part.youngGPa().likely()),
            pressure(working.high(), hub.youngGPa().high(), part.youngGPa().high()));
    PressLimit hubLimit = PressLimit.of(hub, hubLimitMPa(), pressure);
    PressLimit partLimit = PressLimit.of(part, partLimitMPa(), pressure);
    return new PressAnswer.Pressed(geometry, working, pressure, friction, hubLimit, partLimit);
  }

  /**
   * Contact pressure at which the outer member starts to give way.
   *
   * <p>Ductile: {@code (1-Q^2) Re/sqrt(3)}; brittle: the hoop stress reaches the tensile strength,
   * {@code Rm (1-Q^2)/(1+Q^2)}.
   *
   * @return MPa; empty when the strength is not known
   *     <p>Valid for: ductile and brittle isotropic rings.
   *     <p>Source: DIN 7190-1, modified shear criterion; largest normal stress for brittle rings.
   */
  public OptionalDouble hubLimitMPa() {
    double q2 = geometry.hubRatio() * geometry.hubRatio();
    double perStrength =
        hub.behaviour() == RingMaterial.Behaviour.BRITTLE
            ? (1 - q2) / (1 + q2)
            : (1 - q2) / Math.sqrt(3);
    return scaled(hub.limitMPa(), perStrength);
  }

  /**
   * Contact pressure at which the inner member starts to give way.
   *
   * <p>Hollow: the hoop stress at its bore reaches the limit, {@code (1-q^2) R/2}; solid: {@code
   * R}.
   *
   * @return MPa; empty when the strength is not known
   *     <p>Valid for: ductile isotropic parts; for brittle ones on the safe side (they bear more in
   *     compression).
   *     <p>Source: Lamé with a uniaxial limit, on the safe side of DIN 7190-1.
   */
  public OptionalDouble partLimitMPa() {
    double q2 = geometry.partRatio() * geometry.partRatio();
    return scaled(part.limitMPa(), geometry.partBoreMm() == 0 ? 1 : (1 - q2) / 2);
  }

  /**
   * Pressure that is surely left once this fit, at its tightest, has opened again.
   *
   * <p>{@code p_limit - p(delta)}: what a member yields at the limit is lost for good, and the rest
   * gives way elastically as the joint opens by delta.
   *
   * @param pressed the answer of this fit
   * @param openedUm how far the joint opens from here, on the diameter, µm, from 0
   * @return MPa, from 0; infinite where no member can give way
   *     <p>Valid for: metals; ductile ones without hardening.
   *     <p>Source: Lamé, by superposition of the elastic return on the start of yield.
   */
  public double surelyLeftMPa(PressAnswer.Pressed pressed, double openedUm) {
    double borne =
        Math.min(pressed.hubLimit().surelyBorneMPa(), pressed.partLimit().surelyBorneMPa());
    return Math.max(0, borne - pressure(openedUm, hub.youngGPa().high(), part.youngGPa().high()));
  }

  private static OptionalDouble scaled(OptionalDouble strength, double factor) {
    return strength.isPresent()
        ? OptionalDouble.of(strength.getAsDouble() * factor)
        : OptionalDouble.empty();
  }

  private double pressure(double interferenceUm, double hubGPa, double partGPa) {
    return pressureMPa(geometry, hubGPa, hub.poisson(), partGPa, part.poisson(), interferenceUm);
  }

  private List<PressAnswer.Reason> refusals() {
    List<PressAnswer.Reason> reasons = new ArrayList<>();
    for (RingMaterial material : List.of(hub, part)) {
      PressAnswer.Reason reason = PressAnswer.Reason.against(material.behaviour());
      if (reason != null && !reasons.contains(reason)) {
        reasons.add(reason);
      }
    }
    return reasons;
  }
}
