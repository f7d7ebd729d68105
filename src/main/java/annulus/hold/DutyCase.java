package annulus.hold;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.Estimate;

/**
 * The usual load of a usual joint, for a job whose load nobody has measured.
 *
 * @param id stable name
 * @param name what a mechanic calls it
 * @param axialN axial force, N
 * @param torqueNm torque, N·m
 * @param dynamic key of the knock-down in {@link HoldTables}
 * @param couldHurt whether a failure could hurt someone
 * @param provenance source of the row
 */
public record DutyCase(
    String id,
    String name,
    Estimate axialN,
    Estimate torqueNm,
    String dynamic,
    boolean couldHurt,
    Provenance provenance) {
  public DutyCase {
    Check.text("duty", id);
    Check.text("name", name);
    Check.text("dynamic", dynamic);
    axialN.checkedWithin("axial", 0, 1e6, "N");
    torqueNm.checkedWithin("torque", 0, 1e5, "N·m");
  }

  /** The load to check with: the high ends, since nobody has measured it. */
  public Load load(double wantedSafety) {
    return new Load(axialN.high(), torqueNm.high(), wantedSafety);
  }
}
