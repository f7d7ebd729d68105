package annulus.fit;

import annulus.quantity.Estimate;
import java.util.List;

/** What can be said about a press fit. */
public sealed interface PressAnswer {

  /** Why no pressure is computed. The part's maker is the one to ask. */
  enum Reason {
    /** A laminate differs with direction and splits between plies. */
    LAMINATE_IS_NOT_ISOTROPIC,
    /** A plastic creeps: the pressure of today is not the pressure of next month. */
    PLASTIC_CREEPS;

    static Reason against(RingMaterial.Behaviour behaviour) {
      return switch (behaviour) {
        case LAMINATE -> LAMINATE_IS_NOT_ISOTROPIC;
        case PLASTIC -> PLASTIC_CREEPS;
        case DUCTILE, BRITTLE -> null;
      };
    }
  }

  /**
   * No number, because it would mean nothing.
   *
   * @param reasons why; never empty
   */
  record Refused(List<Reason> reasons) implements PressAnswer {
    public Refused {
      reasons = List.copyOf(reasons);
    }
  }

  /**
   * Even at the tight end nothing presses.
   *
   * @param diametralInterferenceUm interference on the diameter before smoothing, µm
   */
  record Loose(Estimate diametralInterferenceUm) implements PressAnswer {}

  /**
   * It presses, at least at the tight end.
   *
   * @param geometry diameters and length
   * @param workingInterferenceUm interference on the diameter after smoothing, µm
   * @param pressureMPa elastic contact pressure, MPa; an upper bound where a member yields
   * @param friction coefficient of friction
   * @param hubLimit the outer member's limit
   * @param partLimit the inner member's limit
   */
  record Pressed(
      PressGeometry geometry,
      Estimate workingInterferenceUm,
      Estimate pressureMPa,
      Estimate friction,
      PressLimit hubLimit,
      PressLimit partLimit)
      implements PressAnswer {
    private static final List<PressLimit.Standing> WORST_FIRST =
        List.of(
            PressLimit.Standing.EXCEEDS,
            PressLimit.Standing.MAY_EXCEED,
            PressLimit.Standing.NOT_KNOWN);

    /** Stresses at the high end of the pressure: those to compare with a limit. */
    public RingStresses highStresses() {
      return RingStresses.under(geometry, pressureMPa.high());
    }

    /** Force to press it home, N, from the elastic pressure: high end an upper bound. */
    public Estimate pressInForceN() {
      return new Estimate(
          forceN(friction.low(), pressureMPa.low()),
          forceN(friction.likely(), pressureMPa.likely()),
          forceN(friction.high(), pressureMPa.high()));
    }

    /** Pressure that may be counted on to hold, MPa, not above the start of yield. */
    public Estimate holdingPressureMPa() {
      double high = counted(pressureMPa.high(), false);
      double likely = Math.min(high, counted(pressureMPa.likely(), false));
      double low = Math.min(likely, counted(pressureMPa.low(), true));
      return new Estimate(low, likely, high);
    }

    /** Axial force the friction holds, N. */
    public Estimate holdN() {
      Estimate pressure = holdingPressureMPa();
      return new Estimate(
          forceN(friction.low(), pressure.low()),
          forceN(friction.likely(), pressure.likely()),
          forceN(friction.high(), pressure.high()));
    }

    /** Torque the friction holds, N·m: {@code F d/2}. */
    public Estimate holdTorqueNm() {
      Estimate force = holdN();
      double arm = geometry.jointDiameterMm() / 2000;
      return new Estimate(force.low() * arm, force.likely() * arm, force.high() * arm);
    }

    /** Whether the elastic numbers hold over the whole range. */
    public boolean isElasticThroughout() {
      return standing() == PressLimit.Standing.WITHIN;
    }

    /** How the pressure stands to the weaker member's limit: a known excess before an unknown. */
    public PressLimit.Standing standing() {
      for (PressLimit.Standing standing : WORST_FIRST) {
        if (hubLimit.standing() == standing || partLimit.standing() == standing) {
          return standing;
        }
      }
      return PressLimit.Standing.WITHIN;
    }

    private double counted(double elasticMPa, boolean atLowEnd) {
      return Math.min(
          hubLimit.countedOnMPa(elasticMPa, atLowEnd),
          partLimit.countedOnMPa(elasticMPa, atLowEnd));
    }

    private double forceN(double mu, double pressure) {
      return mu * pressure * geometry.areaMm2();
    }
  }
}
