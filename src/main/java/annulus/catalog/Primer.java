package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.Estimate;

/**
 * A primer (activator) class of our own naming.
 *
 * @param id stable name used in orders
 * @param name what a mechanic calls it
 * @param application how it may be put on
 * @param rate activity rate of a primed face, in the scale of {@link Activity#rate()}
 * @param strengthFactor what it leaves of the bond strength, 0 to 1
 * @param flashOffMinutes time for the solvent to leave before the compound goes on
 * @param onPartDays how long a primed face stays good
 * @param workingTimeFactor what it leaves of the working time, 0 to 1
 * @param slowFullHours full cure as the slowest practice has it with both faces primed, hours at
 *     the class's reference
 * @param provenance source of this row
 */
public record Primer(
    String id,
    String name,
    Application application,
    Estimate rate,
    Estimate strengthFactor,
    Estimate flashOffMinutes,
    Estimate onPartDays,
    Estimate workingTimeFactor,
    double slowFullHours,
    Provenance provenance) {
  public Primer {
    Check.text("id", id);
    Check.text("name", name);
    rate.checkedWithin("rate", 0.01, 20, "");
    strengthFactor.checkedWithin("strengthFactor", 0.05, 1, "");
    flashOffMinutes.checkedWithin("flashOffMinutes", 0, 120, "min");
    onPartDays.checkedWithin("onPartDays", 0.01, 365, "days");
    Check.within("slowFullHours", slowFullHours, 1, 2000, "h");
    workingTimeFactor.checkedWithin("workingTimeFactor", 0.01, 1, "");
  }

  /** How a primer may be put on. */
  public enum Application {
    /** Nobody said: the label of the bottle does. */
    AS_LABELLED,
    WIPE,
    WIPE_OR_SPRAY
  }
}
