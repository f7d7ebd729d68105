package annulus.hold;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * What the compound of a joint holds in shear.
 *
 * @param diameterMm joint diameter, mm
 * @param lengthMm bonded length, mm
 * @param shearMPa shear strength of the class on its specimen, MPa
 * @param factors what lowers it, each kind once
 */
public record BondHold(
    double diameterMm, double lengthMm, Estimate shearMPa, List<HoldFactor> factors) {
  public BondHold {
    Check.within("diameterMm", diameterMm, 0.5, 2000, "mm");
    Check.within("lengthMm", lengthMm, 0.1, 5000, "mm");
    shearMPa.checkedWithin("shearMPa", 0, 100, "MPa");
    factors = List.copyOf(factors);
    if (kinds(factors) < factors.size()) {
      throw new InvalidValue("factors", "hold one kind twice", "each kind at most once");
    }
  }

  private static int kinds(List<HoldFactor> factors) {
    Set<HoldFactor.Kind> kinds = EnumSet.noneOf(HoldFactor.Kind.class);
    for (HoldFactor factor : factors) {
      kinds.add(factor.kind());
    }
    return kinds.size();
  }

  /** Bonded area {@code pi d L}, mm². */
  public double areaMm2() {
    return Math.PI * diameterMm * lengthMm;
  }

  /** Product of all factors. */
  public Estimate factor() {
    double low = 1;
    double likely = 1;
    double high = 1;
    for (HoldFactor factor : factors) {
      low *= factor.value().low();
      likely *= factor.value().likely();
      high *= factor.value().high();
    }
    return new Estimate(low, likely, high);
  }

  /**
   * Axial force the bond holds.
   *
   * <p>{@code F = pi d L tau prod(f)}; low takes every low value, high every high one.
   *
   * @return N
   *     <p>Valid for: shear strength and factors of the same joint type; a ranking value, not a
   *     design value.
   *     <p>Source: definition of the shear strength in ISO 10123 (force over area); factors from
   *     data.
   */
  public Estimate axialN() {
    return Estimates.times(Estimates.product(shearMPa, factor()), areaMm2());
  }

  /**
   * Torque the bond holds.
   *
   * <p>{@code T = F d/2}
   *
   * @return N·m
   *     <p>Valid for: as {@link #axialN}.
   *     <p>Source: as {@link #axialN}.
   */
  public Estimate torqueNm() {
    return Estimates.torqueNm(axialN(), diameterMm);
  }

  /** The factor of a kind; 1 where the bond has none. */
  public Estimate factor(HoldFactor.Kind kind) {
    for (HoldFactor factor : factors) {
      if (factor.kind() == kind) {
        return factor.value();
      }
    }
    return Estimate.exactly(1);
  }

  /** The same bond with one factor set or replaced. */
  public BondHold with(HoldFactor.Kind kind, Estimate value) {
    List<HoldFactor> changed = new ArrayList<>(factors.size() + 1);
    for (HoldFactor factor : factors) {
      if (factor.kind() != kind) {
        changed.add(factor);
      }
    }
    changed.add(new HoldFactor(kind, value));
    return new BondHold(diameterMm, lengthMm, shearMPa, changed);
  }

  /** The same bond at a share (0 to 1) of its full strength. */
  public BondHold atStrength(double fraction) {
    return with(HoldFactor.Kind.STRENGTH_FRACTION, Estimate.exactly(fraction));
  }
}
