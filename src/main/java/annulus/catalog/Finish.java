package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import java.util.Optional;

/**
 * What lies on a member's face.
 *
 * @param id stable name used in orders
 * @param name what a mechanic calls it
 * @param film what kind of layer it is
 * @param activity overrides the base metal's activity; absent where the base metal decides
 * @param strengthFactor bond strength on this face relative to a clean grit-blasted face, 0 to 1.2
 * @param roughnessRzUm Rz, µm
 * @param provenance source of this row
 */
public record Finish(
    String id,
    String name,
    Film film,
    Optional<Activity.Level> activity,
    Estimate strengthFactor,
    Estimate roughnessRzUm,
    Provenance provenance) {
  public Finish {
    Check.text("id", id);
    Check.text("name", name);
    strengthFactor.checkedWithin("strength_factor", 0, 1.2, "");
    roughnessRzUm.checkedWithin("rz", 0.01, 200, "µm");
  }

  /** Layer on the face. */
  public enum Film {
    /** Bare base material. */
    BARE,
    /** Metal plating. */
    PLATED,
    /** Grown or converted layer: anodic, oxide, phosphate, chromate. */
    CONVERSION,
    /** Organic coat: the bond is only as good as the coat's hold on the metal. */
    COAT
  }
}
