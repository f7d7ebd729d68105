package annulus.hold;

import annulus.fit.PressAnswer;
import annulus.quantity.Estimate;

/**
 * What the grip of an interference holds.
 *
 * @param axialN axial force, N; 0 where there is no grip
 * @param pressureMPa contact pressure counted on, MPa; its high end is the most that ever presses
 * @param isKnown false where no pressure can be computed (laminate, plastic): nothing is counted
 *     on, yet the joint may grip
 */
public record FrictionHold(Estimate axialN, Estimate pressureMPa, boolean isKnown) {
  public FrictionHold {
    axialN.checkedWithin("axialN", 0, 1e9, "N");
    pressureMPa.checkedWithin("pressureMPa", 0, 1e5, "MPa");
  }

  /** No grip at all: a slip fit. */
  public static FrictionHold none() {
    return new FrictionHold(Estimate.exactly(0), Estimate.exactly(0), true);
  }

  /** A grip of which nothing can be said. */
  public static FrictionHold notKnown() {
    return new FrictionHold(Estimate.exactly(0), Estimate.exactly(0), false);
  }

  /** The grip of a press fit, as far as it can be computed. */
  public static FrictionHold of(PressAnswer answer) {
    if (answer instanceof PressAnswer.Pressed pressed) {
      return new FrictionHold(pressed.holdN(), pressed.holdingPressureMPa(), true);
    }
    return answer instanceof PressAnswer.Loose ? none() : notKnown();
  }

  /**
   * The same grip with no more pressure counted on than this, MPa.
   *
   * @param lowMPa most that is surely left
   * @param likelyMPa most that is likely left, from lowMPa
   */
  public FrictionHold atMost(double lowMPa, double likelyMPa) {
    double likely = share(pressureMPa.likely(), likelyMPa);
    double low = share(pressureMPa.low(), lowMPa);
    return new FrictionHold(capped(axialN, low, likely), capped(pressureMPa, low, likely), isKnown);
  }

  /** The same grip in a joint that is pressed harder at another temperature, MPa. */
  public FrictionHold pressedUpTo(double mostMPa) {
    double high = Math.max(pressureMPa.high(), mostMPa);
    return new FrictionHold(
        axialN, new Estimate(pressureMPa.low(), pressureMPa.likely(), high), isKnown);
  }

  private static double share(double pressure, double most) {
    return pressure > most ? most / pressure : 1;
  }

  private static Estimate capped(Estimate of, double lowShare, double likelyShare) {
    double likely = of.likely() * likelyShare;
    return new Estimate(Math.min(likely, of.low() * lowShare), likely, of.high());
  }

  /** It neither grips nor presses, at any temperature. */
  boolean isNothing() {
    return isKnown && axialN.high() == 0 && pressureMPa.high() == 0;
  }
}
