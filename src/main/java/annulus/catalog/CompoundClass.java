package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.List;

/**
 * A class of anaerobic retaining compound, named by what it is.
 *
 * @param id stable name used in orders
 * @param name what a mechanic calls it
 * @param summary one sentence on what it is for
 * @param permanence whether it is meant to come apart with hand tools
 * @param role what it does in the joint
 * @param gapUm radial gap it fills, µm; a negative low end is a slight interference
 * @param primedGapMaxUm largest radial gap with primer on both faces, µm
 * @param viscosity mPa·s at room temperature
 * @param strengthMPa shear strength on the ISO 10123 pin and collar, MPa
 * @param cure times and temperature behaviour
 * @param serviceC service temperature, °C
 * @param hotStrength strength left at temperature, ordered by temperature
 * @param removalHeatC joint temperature at which it weakens enough to come apart, °C
 * @param storageC storage temperature of the unopened container, °C
 * @param shelfMonths unopened life, months
 * @param openMonths life once opened, months
 * @param provenance source of this row
 */
public record CompoundClass(
    String id,
    String name,
    String summary,
    Permanence permanence,
    Role role,
    Interval gapUm,
    double primedGapMaxUm,
    Interval viscosity,
    Estimate strengthMPa,
    Cure cure,
    Interval serviceC,
    List<HotPoint> hotStrength,
    Estimate removalHeatC,
    Interval storageC,
    Estimate shelfMonths,
    Estimate openMonths,
    Provenance provenance) {
  public CompoundClass {
    Check.text("id", id);
    Check.text("name", name);
    Check.text("summary", summary);
    gapUm.checkedWithin("gapUm", -50, 760, "µm radial");
    Check.within("primedGapMaxUm", primedGapMaxUm, gapUm.high(), 760, "µm radial");
    viscosity.checkedWithin("viscosityMPas", 1, 5_000_000, "mPa·s");
    strengthMPa.checkedWithin("strengthMPa", 0.2, 60, "MPa");
    serviceC.checkedWithin("serviceC", -100, 350, "°C");
    removalHeatC.checkedWithin("removalHeatC", 60, 400, "°C");
    storageC.checkedWithin("storageC", -40, 60, "°C");
    hotStrength = List.copyOf(hotStrength);
    checkHotStrength(hotStrength);
  }

  private static void checkHotStrength(List<HotPoint> points) {
    if (points.isEmpty()) {
      throw new InvalidValue("hotStrength", "is empty", "at least one point");
    }
    for (int i = 1; i < points.size(); i++) {
      HotPoint a = points.get(i - 1);
      HotPoint b = points.get(i);
      boolean falling =
          b.fraction().low() <= a.fraction().low()
              && b.fraction().likely() <= a.fraction().likely()
              && b.fraction().high() <= a.fraction().high();
      if (b.celsius() <= a.celsius() || !falling) {
        throw new InvalidValue(
            "hotStrength",
            "point " + (i + 1) + " is out of order",
            "hotter points, never stronger");
      }
    }
  }

  /** Whether a joint is meant to come apart. */
  public enum Permanence {
    RELEASABLE,
    LASTING
  }

  /** What the compound does in the joint. */
  public enum Role {
    /** A film that keeps a near line-to-line joint from creaking and fretting. */
    FILM,
    /** Holds a slip fit. */
    RETAIN,
    /** Fills a worn seat. */
    REBUILD
  }

  /**
   * Strength left at a temperature.
   *
   * @param celsius joint temperature, °C
   * @param fraction of the strength at room temperature, 0 to 1
   */
  public record HotPoint(double celsius, Estimate fraction) {
    public HotPoint {
      Check.within("celsius", celsius, -100, 400, "°C");
      fraction.checkedWithin("fraction", 0, 1, "");
    }
  }

  /**
   * Time and temperature behaviour, for two active faces at the reference temperature and gap.
   *
   * @param referenceC temperature the hours hold at, °C
   * @param referenceGapUm radial gap the hours hold at, µm
   * @param gapExponent cure time grows with (gap / reference gap) to this power above the reference
   * @param activationKJ activation energy, kJ/mol
   * @param minimumC no cure is counted below this, °C
   * @param cautionBelowC slow and uncertain below this, °C
   * @param heldAboveC the rate is held, not extrapolated, above this, °C
   * @param spreadLn standard deviation of ln(time) between lots, shops and faces of one kind
   * @param stages the four stages in order, strength fraction and hours rising
   * @param completeHours hours at which the strength fraction is 1
   * @param slowFullHours full cure as the slowest practice has it, hours; rules where failure can
   *     hurt
   * @param workingMinutes time from joining the parts until it may grab, minutes
   */
  public record Cure(
      double referenceC,
      double referenceGapUm,
      Estimate gapExponent,
      Estimate activationKJ,
      double minimumC,
      double cautionBelowC,
      double heldAboveC,
      double spreadLn,
      List<StagePoint> stages,
      double completeHours,
      double slowFullHours,
      Estimate workingMinutes) {
    public Cure {
      Check.within("referenceC", referenceC, 0, 60, "°C");
      Check.within("referenceGapUm", referenceGapUm, 1, 500, "µm radial");
      gapExponent.checkedWithin("gapExponent", 0, 3, "");
      activationKJ.checkedWithin("activationKJ", 5, 150, "kJ/mol");
      Check.within("minimumC", minimumC, -20, referenceC, "°C");
      Check.within("cautionBelowC", cautionBelowC, minimumC, 60, "°C");
      Check.within("heldAboveC", heldAboveC, referenceC, 120, "°C");
      Check.within("spreadLn", spreadLn, 0, 2, "");
      workingMinutes.checkedWithin("workingMinutes", 0.1, 240, "min");
      stages = List.copyOf(stages);
      checkStages(stages);
      StagePoint full = stages.get(Stage.FULL.ordinal());
      Check.within("completeHours", completeHours, full.hours(), 2000, "h");
      Check.within("slowFullHours", slowFullHours, full.hours(), 2000, "h");
    }

    private static void checkStages(List<StagePoint> stages) {
      Stage[] all = Stage.values();
      if (stages.size() != all.length) {
        throw new InvalidValue("stages", stages.size() + " given", "the four stages in order");
      }
      for (int i = 0; i < all.length; i++) {
        StagePoint point = stages.get(i);
        boolean rising =
            i == 0
                || (point.hours() > stages.get(i - 1).hours()
                    && point.fraction() > stages.get(i - 1).fraction());
        if (point.stage() != all[i] || !rising) {
          throw new InvalidValue(
              "stages",
              "number " + (i + 1) + " is out of order",
              "fixture, handling, functional, full with rising hours and fractions");
        }
      }
    }

    /** The declared point of a stage. */
    public StagePoint at(Stage stage) {
      return stages.get(stage.ordinal());
    }
  }

  /**
   * One stage of cure at the reference.
   *
   * @param stage which
   * @param fraction strength reached, above 0 to 1
   * @param hours at the reference temperature, faces and gap
   */
  public record StagePoint(Stage stage, double fraction, double hours) {
    public StagePoint {
      Check.within("fraction", fraction, 1e-6, 1, "");
      Check.within("hours", hours, 1e-4, 2000, "h");
    }
  }

  /**
   * Strength left at a joint temperature: linear between the declared points, that of the first
   * point below them.
   *
   * @param celsius joint temperature, °C
   * @return the fraction, 0 to 1; all zero above the service range, where nothing is known
   */
  public Estimate hotFraction(double celsius) {
    if (celsius > serviceC.high()) {
      return Estimate.exactly(0);
    }
    HotPoint before = hotStrength.get(0);
    if (celsius <= before.celsius()) {
      return before.fraction();
    }
    for (int i = 1; i < hotStrength.size(); i++) {
      HotPoint next = hotStrength.get(i);
      if (celsius <= next.celsius()) {
        double share = (celsius - before.celsius()) / (next.celsius() - before.celsius());
        return Estimate.between(before.fraction(), next.fraction(), share);
      }
      before = next;
    }
    return before.fraction();
  }
}
