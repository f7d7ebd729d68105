package annulus.hold;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import java.util.Collections;
import java.util.EnumSet;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Bond and grip of one joint together.
 *
 * @param bond the bond
 * @param friction the grip, cold or hot as the bond's factors are
 * @param limits how far the two may simply be added
 */
public record HybridHold(BondHold bond, FrictionHold friction, Limits limits) {

  /**
   * Bounds of what was tested.
   *
   * @param pressureMaxMPa highest contact pressure, MPa
   * @param shearMinMPa weakest compound, MPa on its specimen
   */
  public record Limits(double pressureMaxMPa, double shearMinMPa) {
    public Limits {
      Check.within("pressureMaxMPa", pressureMaxMPa, 0, 1000, "MPa");
      Check.within("shearMinMPa", shearMinMPa, 0, 100, "MPa");
    }
  }

  /** On what the figure rests. */
  public enum Basis {
    /** No grip: the bond alone. */
    BOND_ALONE,
    /** Grip plus bond, within what was tested. */
    SUM,
    /** Grip and bond outside what was tested: the low end counts on the lesser of the two. */
    LESSER_OF_BOTH,
    /** The grip can't be computed: the bond alone is counted on, and a weak one not at all. */
    GRIP_NOT_KNOWN
  }

  /** What to mind. */
  public enum Caution {
    /** Weak compound under high pressure can hold less than the dry press fit. */
    WEAK_COMPOUND_UNDER_PRESSURE,
    /** More pressure than was tested: the sum is not proven. */
    PRESSURE_BEYOND_TESTS,
    /** The joint may grip harder than any figure here says: mind it when taking it apart. */
    GRIP_MAY_ADD
  }

  /** On what the figure rests. */
  public Basis basis() {
    if (!friction.isKnown()) {
      return Basis.GRIP_NOT_KNOWN;
    }
    if (friction.isNothing()) {
      return Basis.BOND_ALONE;
    }
    return isWeak() || isBeyondTests() ? Basis.LESSER_OF_BOTH : Basis.SUM;
  }

  /** What to mind; may be empty. */
  public Set<Caution> cautions() {
    Set<Caution> cautions = EnumSet.noneOf(Caution.class);
    if (!friction.isKnown()) {
      cautions.add(Caution.GRIP_MAY_ADD);
    } else if (!friction.isNothing()) {
      if (isWeak()) {
        cautions.add(Caution.WEAK_COMPOUND_UNDER_PRESSURE);
      }
      if (isBeyondTests()) {
        cautions.add(Caution.PRESSURE_BEYOND_TESTS);
      }
    }
    return Collections.unmodifiableSet(cautions);
  }

  /**
   * Axial force the joint holds.
   *
   * <p>{@code F = F_grip + F_bond} within what was tested; outside, low is the lesser of the two,
   * likely the greater, high the sum. A grip that is not known may be the lesser, and nothing. A
   * dynamic factor of the bond lowers the grip too.
   *
   * @return N
   *     <p>Valid for: {@code SUM}: steel on steel, pressures and compounds within the limits;
   *     otherwise a safe range.
   *     <p>Source: Croccolo, De Agostinis, Mauri (sum); Castagnetti, Dragoni (weak compound under
   *     pressure can be worse than dry).
   */
  public Estimate axialN() {
    Estimate glue = bond.axialN();
    Estimate grip = gripN();
    Estimate sum = Estimates.sum(glue, grip);
    if (!isLesserCounted()) {
      return sum;
    }
    return new Estimate(
        Math.min(glue.low(), grip.low()), Math.max(glue.likely(), grip.likely()), sum.high());
  }

  /** Torque the joint holds, N·m: {@code F d/2}. */
  public Estimate torqueNm() {
    return Estimates.torqueNm(axialN(), bond.diameterMm());
  }

  /** The same joint at a share (0 to 1) of the bond's full strength. */
  public HybridHold atStrength(double fraction) {
    return new HybridHold(bond.atStrength(fraction), friction, limits);
  }

  /**
   * The least share of the bond's full strength at which the low end holds a force.
   *
   * @param forceN force, N
   * @return 0 to 1; empty when not even the full strength holds it
   *     <p>Valid for: as {@link #axialN}; the inverse of its low end.
   *     <p>Source: computed.
   */
  public OptionalDouble strengthFractionFor(double forceN) {
    Check.within("forceN", forceN, 0, 1e12, "N");
    if (forceN > atStrength(1).axialN().low()) {
      return OptionalDouble.empty();
    }
    double rest = isLesserCounted() ? forceN : forceN - gripN().low();
    double full = bond.atStrength(1).axialN().low();
    return OptionalDouble.of(rest <= 0 ? 0 : settled(rest / full, forceN));
  }

  /** Steps over the last rounding error, so that the share found is enough when checked. */
  private double settled(double fraction, double forceN) {
    double enough = Math.min(1, fraction);
    while (enough < 1 && atStrength(enough).axialN().low() < forceN) {
      enough = Math.nextUp(enough);
    }
    return enough;
  }

  private Estimate gripN() {
    return Estimates.product(friction.axialN(), bond.factor(HoldFactor.Kind.DYNAMIC));
  }

  private boolean isLesserCounted() {
    return basis() == Basis.LESSER_OF_BOTH || (basis() == Basis.GRIP_NOT_KNOWN && isWeak());
  }

  private boolean isWeak() {
    return bond.shearMPa().low() < limits.shearMinMPa();
  }

  private boolean isBeyondTests() {
    return friction.pressureMPa().high() > limits.pressureMaxMPa();
  }
}
