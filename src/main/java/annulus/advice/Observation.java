package annulus.advice;

import annulus.catalog.Activity;
import annulus.catalog.Primer;
import annulus.quantity.Check;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Optional;

/** Something the shop saw of a joint of its own. */
public sealed interface Observation {
  /** What it was seen on. */
  Joint joint();

  /** Time since the joint was closed. */
  Duration after();

  /**
   * A joint that was watched.
   *
   * @param id what the shop calls it; observations of one joint belong together
   * @param date when it was closed
   * @param compoundId class used
   * @param celsius temperature it cured at, °C
   * @param bore activity of the bore's face
   * @param part activity of the part's face
   * @param radialGapUm radial gap, µm
   * @param primer on both faces, if any
   */
  record Joint(
      String id,
      LocalDate date,
      String compoundId,
      double celsius,
      Activity.Level bore,
      Activity.Level part,
      double radialGapUm,
      Optional<Primer> primer) {
    /**
     * @throws annulus.quantity.InvalidValue when out of range
     */
    public Joint {
      Check.text("joint", id);
      Check.within("temperature_c", celsius, -20, 60, "°C");
      Check.within("radial_gap_um", radialGapUm, 0, 760, "µm radial");
    }
  }

  /**
   * Whether it stayed by itself.
   *
   * @param joint which
   * @param after time since it was closed
   * @param fixed yes or not yet
   */
  record Fixed(Joint joint, Duration after, boolean fixed) implements Observation {}

  /**
   * A pull test on a witness pin and collar.
   *
   * @param joint which
   * @param after time since it was closed
   * @param forceN force at which it let go, N
   * @param diameterMm shared diameter, mm
   * @param lengthMm shared length, mm
   */
  record Pull(Joint joint, Duration after, double forceN, double diameterMm, double lengthMm)
      implements Observation {
    /**
     * @throws annulus.quantity.InvalidValue when out of range
     */
    public Pull {
      Check.within("force_n", forceN, 1, 1e7, "N");
      Check.within("diameter_mm", diameterMm, 1, 500, "mm");
      Check.within("length_mm", lengthMm, 1, 500, "mm");
    }

    /** Shear strength, MPa: {@code F/(π·d·L)}. */
    double strengthMPa() {
      return forceN / (Math.PI * diameterMm * lengthMm);
    }
  }
}
