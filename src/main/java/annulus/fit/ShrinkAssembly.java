package annulus.fit;

import annulus.quantity.Check;
import java.util.Collections;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * Slipping a tight ring over a part by heat.
 *
 * @param thermal diameter and expansion of ring (outer) and part (inner)
 * @param diametralInterferenceUm largest interference on the diameter at 20 °C, µm, above 0
 * @param slipClearanceUm clearance on the diameter wanted while slipping, µm
 * @param ring how the ring's material behaves
 * @param part how the part's material behaves
 * @param ringLimitCelsius highest temperature the ring bears (temper, coating, bearing), °C
 * @param partLimitCelsius highest temperature the part bears, °C
 */
public record ShrinkAssembly(
    ThermalGap thermal,
    double diametralInterferenceUm,
    double slipClearanceUm,
    RingMaterial.Behaviour ring,
    RingMaterial.Behaviour part,
    OptionalDouble ringLimitCelsius,
    OptionalDouble partLimitCelsius) {
  /**
   * Above this temperature handbook expansion coefficients (20 to 100 °C) are stretched: what the
   * column of materials.csv means, not a choice. It decides a caution only.
   */
  private static final double COEFFICIENTS_HOLD_TO_CELSIUS = 100;

  public ShrinkAssembly {
    Check.within("diametralInterferenceUm", diametralInterferenceUm, 0, 5000, "µm");
    Check.within("slipClearanceUm", slipClearanceUm, 0, 5000, "µm");
  }

  /** What to mind. */
  public enum Caution {
    /** Hot metal burns; anything wet with compound, oil or solvent must stay away from it. */
    BURNS_AND_FUMES,
    /** Compound on a face sets or spoils at this temperature: slip dry. */
    NO_COMPOUND_ON_HOT_FACES,
    /** The ring's own limit is lower than the temperature needed: do not do it. */
    ABOVE_RING_LIMIT,
    /** The part's own limit is lower than the temperature needed: do not do it. */
    ABOVE_PART_LIMIT,
    /** No limit is known for a member: ask its maker first. */
    LIMIT_NOT_KNOWN,
    /** The expansion coefficients are stretched beyond their range: the temperature is rough. */
    EXPANSION_STRETCHED
  }

  /** Why there is no temperature. */
  public enum Reason {
    /** Heat is refused on a laminate. */
    LAMINATE,
    /** Heat is refused on a plastic. */
    PLASTIC,
    /** Heated together, the part grows at least as much as the ring. */
    RING_NEVER_OUTGROWS_PART
  }

  /** Temperature or refusal. */
  public sealed interface Answer {}

  /**
   * It slips at this temperature.
   *
   * @param ringCelsius ring temperature, °C
   * @param partCelsius part temperature, °C
   * @param cautions what to mind; never empty
   */
  public record Slips(double ringCelsius, double partCelsius, Set<Caution> cautions)
      implements Answer {
    public Slips {
      cautions = Collections.unmodifiableSet(new TreeSet<>(cautions));
    }

    /** Whether both members bear the temperature, as far as their limits are known. */
    public boolean isWithinLimits() {
      return !cautions.contains(Caution.ABOVE_RING_LIMIT)
          && !cautions.contains(Caution.ABOVE_PART_LIMIT);
    }
  }

  /**
   * No temperature is given.
   *
   * @param reason why
   */
  public record Refused(Reason reason) implements Answer {}

  /**
   * Ring heated, part kept at a temperature.
   *
   * <p>{@code T = 20 + ((delta + s)/d + alpha_i (Tp - 20)) / alpha_o}
   *
   * @param partCelsius temperature of the part, °C
   * @return {@link Slips} or {@link Refused}
   *     <p>Valid for: first order, as {@link ThermalGap}.
   *     <p>Source: linear expansion.
   */
  public Answer heatingRing(double partCelsius) {
    Reason refused = refusal();
    if (refused != null) {
      return new Refused(refused);
    }
    double tightUm = -thermal.diametralUm(-neededUm(), 20, partCelsius);
    double perK = thermal.diameterMm() * thermal.outerMicroPerK() / 1000;
    if (perK <= 0) {
      return new Refused(Reason.RING_NEVER_OUTGROWS_PART);
    }
    return slips(20 + tightUm / perK, partCelsius);
  }

  /**
   * Ring and part heated together, such as to take a shrunk ring off.
   *
   * <p>{@code T = 20 + (delta + s) / (d (alpha_o - alpha_i))}
   *
   * @return {@link Slips} or {@link Refused}
   *     <p>Valid for: first order, as {@link ThermalGap}.
   *     <p>Source: linear expansion.
   */
  public Answer heatingBoth() {
    Reason refused = refusal();
    if (refused != null) {
      return new Refused(refused);
    }
    if (thermal.diametralUmPerK() <= 0) {
      return new Refused(Reason.RING_NEVER_OUTGROWS_PART);
    }
    double celsius = 20 + neededUm() / thermal.diametralUmPerK();
    return slips(celsius, celsius);
  }

  /** The part is asked too: it takes the ring's heat as soon as they touch. */
  private Reason refusal() {
    return refusal(ring) != null ? refusal(ring) : refusal(part);
  }

  private double neededUm() {
    return diametralInterferenceUm + slipClearanceUm;
  }

  private Slips slips(double ringCelsius, double partCelsius) {
    Set<Caution> cautions = EnumSet.of(Caution.BURNS_AND_FUMES, Caution.NO_COMPOUND_ON_HOT_FACES);
    if (ringLimitCelsius.isEmpty() || partLimitCelsius.isEmpty()) {
      cautions.add(Caution.LIMIT_NOT_KNOWN);
    }
    if (ringCelsius > ringLimitCelsius.orElse(Double.POSITIVE_INFINITY)) {
      cautions.add(Caution.ABOVE_RING_LIMIT);
    }
    if (ringCelsius > partLimitCelsius.orElse(Double.POSITIVE_INFINITY)) {
      cautions.add(Caution.ABOVE_PART_LIMIT);
    }
    if (Math.max(ringCelsius, partCelsius) > COEFFICIENTS_HOLD_TO_CELSIUS) {
      cautions.add(Caution.EXPANSION_STRETCHED);
    }
    return new Slips(ringCelsius, partCelsius, cautions);
  }

  private static Reason refusal(RingMaterial.Behaviour behaviour) {
    return switch (behaviour) {
      case LAMINATE -> Reason.LAMINATE;
      case PLASTIC -> Reason.PLASTIC;
      case DUCTILE, BRITTLE -> null;
    };
  }
}
