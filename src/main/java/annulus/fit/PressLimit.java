package annulus.fit;

import annulus.quantity.Estimate;
import java.util.OptionalDouble;

/**
 * How a contact pressure stands to what a member bears.
 *
 * @param behaviour how the member gives way
 * @param pressureMPa contact pressure at which it starts to, MPa; empty when not known
 * @param standing where the computed pressure lies
 */
public record PressLimit(
    RingMaterial.Behaviour behaviour, OptionalDouble pressureMPa, Standing standing) {

  /** Where the computed pressure lies against the limit. */
  public enum Standing {
    /** Below the limit even at the high end: the elastic numbers hold. */
    WITHIN,
    /** The limit lies between the likely and the high pressure. */
    MAY_EXCEED,
    /** The likely pressure reaches the limit: the elastic numbers are upper bounds only. */
    EXCEEDS,
    /** The member's strength is not known: ask its maker before pressing. */
    NOT_KNOWN
  }

  static PressLimit of(RingMaterial material, OptionalDouble limitMPa, Estimate pressureMPa) {
    return new PressLimit(material.behaviour(), limitMPa, standing(limitMPa, pressureMPa));
  }

  private static Standing standing(OptionalDouble limitMPa, Estimate pressureMPa) {
    if (limitMPa.isEmpty()) {
      return Standing.NOT_KNOWN;
    }
    double limit = limitMPa.getAsDouble();
    if (pressureMPa.likely() >= limit) {
      return Standing.EXCEEDS;
    }
    return pressureMPa.high() >= limit ? Standing.MAY_EXCEED : Standing.WITHIN;
  }

  /**
   * The pressure that a member surely still takes after the joint was at its tightest, MPa:
   * infinite where it keeps within its limit; of a brittle one that may crack, or one of unknown
   * strength, nothing.
   */
  double surelyBorneMPa() {
    if (standing == Standing.WITHIN) {
      return Double.POSITIVE_INFINITY;
    }
    return behaviour == RingMaterial.Behaviour.BRITTLE ? 0 : pressureMPa.orElse(0);
  }

  /**
   * The pressure that may be counted on to hold: a yielding member holds at the pressure at which
   * it starts to yield; a brittle one that may crack, or one of unknown strength, holds nothing for
   * sure.
   */
  double countedOnMPa(double elasticMPa, boolean atLowEnd) {
    if (standing == Standing.WITHIN) {
      return elasticMPa;
    }
    if (pressureMPa.isEmpty()) {
      return atLowEnd ? 0 : elasticMPa;
    }
    if (behaviour == RingMaterial.Behaviour.BRITTLE) {
      return atLowEnd || standing == Standing.EXCEEDS ? 0 : elasticMPa;
    }
    return Math.min(elasticMPa, pressureMPa.getAsDouble());
  }
}
