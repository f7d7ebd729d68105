package annulus.advice;

import annulus.catalog.CompoundClass;
import annulus.catalog.Consequence;
import annulus.catalog.Primer;
import annulus.cure.TemperatureHistory;
import annulus.quantity.Check;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Everything one joint needs to be judged.
 *
 * @param job the shop's job reference; never a customer's name
 * @param title what the joint is
 * @param bore the outer member
 * @param part the inner member
 * @param givenGap the gap itself, where the shop knows it instead of two diameters
 * @param engagementMm length the members share, mm
 * @param cure where it cures
 * @param primer what is said about primer
 * @param service temperature range in use, °C
 * @param load what it must hold, if known
 * @param consequence what a failure would do
 * @param surroundings what is near and what is wanted
 * @param start when the joint is closed
 * @param zone the shop's time zone
 * @param confidence probability wanted for decisions and times
 * @param compound the class the user insists on
 * @param movedAt when the part was moved after closing, if it was
 * @param assumptions defaults that were taken
 */
public record JointOrder(
    String job,
    String title,
    Member bore,
    Member part,
    Optional<GivenGap> givenGap,
    double engagementMm,
    CurePlace cure,
    PrimerPlan primer,
    Interval service,
    Optional<Load> load,
    Consequence consequence,
    Surroundings surroundings,
    Instant start,
    ZoneId zone,
    double confidence,
    Optional<CompoundClass> compound,
    Optional<Instant> movedAt,
    List<Assumption> assumptions) {
  public JointOrder {
    Check.within("engagementMm", engagementMm, 0.5, 500, "mm");
    Check.within("confidence", confidence, 0.8, 0.999, "");
    service.checkedWithin("serviceC", -100, 350, "°C");
    assumptions = List.copyOf(assumptions);
    boolean measured = !bore.readings().isEmpty() && !part.readings().isEmpty();
    if (measured == givenGap.isPresent()) {
      throw new InvalidValue(
          "bore", "needs readings of both members or a given gap", "one of the two");
    }
  }

  /**
   * A gap known without diameters.
   *
   * @param nominalMm nominal diameter, mm
   * @param radialUm radial gap, µm; negative is interference
   * @param radialPlusMinusUm its expanded uncertainty at 95 %, radial µm
   */
  public record GivenGap(double nominalMm, double radialUm, double radialPlusMinusUm) {
    public GivenGap {
      Check.within("diameterMm", nominalMm, 0.5, 500, "mm");
      Check.within("radialGapUm", radialUm, -1000, 1000, "µm radial");
      Check.within("radialGapPlusMinusUm", radialPlusMinusUm, 0.1, 500, "µm radial");
    }
  }

  /**
   * Where the joint cures.
   *
   * @param history planned or measured temperature of the joint since the start
   * @param coldSide the coldest it may be since the start
   * @param plusMinusC doubt in it, half-width, °C
   * @param describedAs how the plan is printed
   * @param air temperature of the place itself, which parts that come in colder must first take on
   */
  public record CurePlace(
      TemperatureHistory history,
      TemperatureHistory coldSide,
      double plusMinusC,
      String describedAs,
      TemperatureHistory air) {
    public CurePlace {
      Check.within("temperaturePlusMinusC", plusMinusC, 0, 20, "°C");
    }

    /** The same doubt throughout; the joint is as warm as the place. */
    public CurePlace(TemperatureHistory history, double plusMinusC, String describedAs) {
      this(
          history,
          history.shiftedBy(-Check.within("temperaturePlusMinusC", plusMinusC, 0, 20, "°C")),
          plusMinusC,
          describedAs,
          history);
    }

    /** A constant temperature. */
    public static CurePlace constant(double celsius, double plusMinusC, String describedAs) {
      return new CurePlace(TemperatureHistory.constant(celsius), plusMinusC, describedAs);
    }
  }

  /** What the order says about primer. */
  public sealed interface PrimerPlan {
    /** The primer that is on a face, fresh or not. */
    default Optional<Primer> used() {
      return this instanceof Used used ? Optional.of(used.primer()) : Optional.empty();
    }

    /**
     * Nothing was said: it may be planned where a class needs it, but is not counted as quicker.
     */
    record Open() implements PrimerPlan {}

    /** There is none. */
    record None() implements PrimerPlan {}

    /**
     * This one is used.
     *
     * @param primer which
     * @param onBore whether the bore is primed
     * @param onPart whether the part is primed
     * @param age time since it was put on
     */
    record Used(Primer primer, boolean onBore, boolean onPart, Duration age) implements PrimerPlan {
      /** Whether its shortest on-part life has gone, so that it is not counted. */
      boolean isTooOld() {
        return ageShare() > 1;
      }

      /** Its age over its shortest on-part life. */
      double ageShare() {
        return age.toSeconds() / (primer.onPartDays().low() * 86_400);
      }
    }
  }

  /**
   * A load on the joint.
   *
   * @param axialN along the bore, N, 0 or more
   * @param torqueNm about the bore, N·m, 0 or more
   * @param repeats row of the dynamic factors: static, light-repeated, reversing, shock
   * @param safetyFactor wanted hold over load; empty: that of the consequence
   */
  public record Load(double axialN, double torqueNm, String repeats, OptionalDouble safetyFactor) {
    public Load {
      Check.within("axialN", axialN, 0, 1e7, "N");
      Check.within("torqueNm", torqueNm, 0, 1e6, "N·m");
      if (axialN == 0 && torqueNm == 0) {
        throw new InvalidValue("load", "is zero", "axialN or torqueNm above 0");
      }
    }
  }

  /**
   * What is near and what is wanted.
   *
   * @param comesApartLater the joint must come apart later
   * @param sealNear a seal or open bearing is near the film
   * @param electronicsNear battery or electronics are near
   * @param warranty a warranty claim may be open
   */
  public record Surroundings(
      boolean comesApartLater, boolean sealNear, boolean electronicsNear, boolean warranty) {}

  /**
   * A default that was taken.
   *
   * @param field what was not said
   * @param value what was taken
   * @param why on what ground
   */
  public record Assumption(String field, String value, String why) {}

  /** Whether old compound is on a face. */
  public boolean hasOldCompound() {
    return bore.state() == Member.FaceState.OLD_COMPOUND
        || part.state() == Member.FaceState.OLD_COMPOUND;
  }
}
