package annulus.hold;

import annulus.fit.PressAnswer;
import annulus.quantity.Estimate;

/**
 * What the grip of an interference holds.
 *
 * @param axialN axial force, N; 0 where there is no grip
 * @param pressureMPa contact pressure counted on, MPa
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

  /** The grip of a press fit, as far as it can be computed. */
  public static FrictionHold of(PressAnswer answer) {
    if (answer instanceof PressAnswer.Pressed pressed) {
      return new FrictionHold(pressed.holdN(), pressed.holdingPressureMPa(), true);
    }
    boolean known = answer instanceof PressAnswer.Loose;
    return new FrictionHold(Estimate.exactly(0), Estimate.exactly(0), known);
  }

  boolean isNothing() {
    return isKnown && axialN.high() == 0;
  }
}
