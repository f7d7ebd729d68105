package annulus.stock;

import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.OptionalDouble;

/**
 * What the label of a lot says, as the shop typed it.
 *
 * @param id id of the shop class it makes: small letters, digits and dashes
 * @param name what the shop calls it; stays in the shop's own file
 * @param like id of the class it is most like; what the label does not say comes from there
 * @param basis whether gaps are per side or across the diameter
 * @param largestGapUm largest gap on that basis, µm
 * @param smallestGapUm smallest gap on that basis, µm; empty: that of the class it is like
 * @param fixtureMinutes time to fixture, min
 * @param fullHours time to full cure, h
 * @param atC temperature those times hold at, °C
 * @param surface activity of the faces they hold on
 * @param atGapUm gap they hold at, on that basis, µm
 * @param strengthMpa shear strength on pin and collar, MPa
 * @param serviceLowC lowest service temperature, °C
 * @param serviceHighC highest service temperature, °C
 * @param leastCureC least temperature it cures at, °C
 * @param openMonths life once opened, months
 * @param shelfMonths unopened life, months; empty: that of the class it is like
 */
public record ShopLabel(
    String id,
    String name,
    String like,
    Basis basis,
    double largestGapUm,
    OptionalDouble smallestGapUm,
    double fixtureMinutes,
    double fullHours,
    double atC,
    Activity.Level surface,
    double atGapUm,
    double strengthMpa,
    double serviceLowC,
    double serviceHighC,
    double leastCureC,
    double openMonths,
    OptionalDouble shelfMonths) {
  /** Source of every class made from a label. */
  public static final String SOURCE = "shop label";

  /** How the label counts a gap. */
  public enum Basis {
    /** Per side. */
    RADIAL,
    /** Across the diameter: twice the radial gap. */
    DIAMETRAL
  }

  public ShopLabel {
    if (id == null || !id.matches("[a-z][a-z0-9-]{1,40}")) {
      throw new InvalidValue(
          "class",
          "\"" + id + "\" is no id",
          "small letters, digits and dashes, such as shop-blend");
    }
    Check.text("name", name);
    Check.text("like", like);
    Check.within("largest_gap_um", largestGapUm, 1, 5000, "µm");
    Check.within("at_gap_um", atGapUm, 0.5, 5000, "µm");
    Check.positive("fixture_minutes", fixtureMinutes, "min");
    Check.positive("full_hours", fullHours, "h");
    Check.within("at_c", atC, 0, 60, "°C");
    Check.positive("strength_mpa", strengthMpa, "MPa");
    Check.finite("service_low_c", serviceLowC, "°C");
    Check.finite("service_high_c", serviceHighC, "°C");
    Check.finite("least_cure_c", leastCureC, "°C");
    Check.positive("open_months", openMonths, "months");
    if (serviceLowC >= serviceHighC) {
      throw new InvalidValue(
          "service_low_c", "the service range is reversed", "service_low_c below service_high_c");
    }
    if (fullHours * 60 <= fixtureMinutes) {
      throw new InvalidValue(
          "full_hours", "full cure is not after fixture", "hours longer than fixture_minutes");
    }
  }

  private double radial(double um) {
    return basis == Basis.RADIAL ? um : um / 2;
  }

  /** Largest radial gap, µm. */
  public double largestRadialUm() {
    return radial(largestGapUm);
  }

  /** Radial gap the times hold at, µm. */
  public double atRadialUm() {
    return radial(atGapUm);
  }

  /** Smallest radial gap, µm. */
  public OptionalDouble smallestRadialUm() {
    return smallestGapUm.isPresent()
        ? OptionalDouble.of(radial(smallestGapUm.getAsDouble()))
        : smallestGapUm;
  }

  /** Whether a class was made from a label of the shop. */
  public static boolean made(CompoundClass compound) {
    return compound.provenance().source().equals(SOURCE);
  }
}
