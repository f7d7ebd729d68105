package annulus.fit.iso286;

import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;

/** What a drawing writes behind a diameter. Sizes in mm, deviations in µm, on the diameter. */
public sealed interface Designation {
  /** Nominal diameter, mm. */
  double nominalMm();

  /**
   * A size with one tolerance class: {@code 35 H7}.
   *
   * @param nominalMm nominal diameter, mm
   * @param toleranceClass letter and grade
   */
  record OfClass(double nominalMm, ToleranceClass toleranceClass) implements Designation {
    @Override
    public String toString() {
      return Numbers.plain(nominalMm) + " " + toleranceClass;
    }
  }

  /**
   * A fit: {@code 40 H7/s6}.
   *
   * @param nominalMm nominal diameter of both, mm
   * @param hole the hole's class
   * @param shaft the shaft's class
   */
  record OfFit(double nominalMm, ToleranceClass hole, ToleranceClass shaft) implements Designation {
    public OfFit {
      if (hole.member() != Member.HOLE || shaft.member() != Member.SHAFT) {
        throw new InvalidValue(
            "fit", hole + "/" + shaft + " is not hole and shaft", "the hole first, such as H7/s6");
      }
    }

    @Override
    public String toString() {
      return Numbers.plain(nominalMm) + " " + hole + "/" + shaft;
    }
  }

  /**
   * A size with its deviations written out: {@code 42 (+0.010/-0.005)}.
   *
   * @param nominalMm nominal diameter, mm
   * @param lowerUm lower deviation, µm
   * @param upperUm upper deviation, µm
   */
  record Written(double nominalMm, double lowerUm, double upperUm) implements Designation {
    public Written {
      DesignationText.requireOrder(lowerUm, upperUm);
    }

    /** The limits it names. */
    public LimitsOfSize limits() {
      return new LimitsOfSize(nominalMm, lowerUm, upperUm);
    }
  }

  /**
   * Reads {@code 35 H7}, {@code 35H7}, {@code ø35 H7}, {@code 40 H7/s6} and {@code 42
   * (+0.010/-0.005)} (deviations in mm, in either order). Decimal point only.
   *
   * @throws InvalidValue naming what is allowed
   */
  static Designation parse(String text) {
    return DesignationText.parse(text);
  }
}
