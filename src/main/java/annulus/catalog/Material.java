package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import java.util.Optional;

/**
 * What a member is made of.
 *
 * @param id stable name used in orders
 * @param name what a mechanic calls it
 * @param kind metal, brittle metal, plastic or laminate
 * @param expansion linear thermal expansion, 1e-6/K
 * @param youngGPa Young's modulus, GPa; for plastics and laminates only a hint of size
 * @param poisson Poisson's ratio
 * @param activity how readily a bare clean face starts cure
 * @param attack what the uncured liquid does to it
 * @param heatLimitC highest temperature it may be brought to on the bench, °C
 * @param bondFace row of the hold factors that says how well compound holds on it
 * @param yieldMPa yield or proof stress, MPa; absent where no isotropic value would be honest
 * @param provenance source of this row
 */
public record Material(
    String id,
    String name,
    Kind kind,
    Estimate expansion,
    Estimate youngGPa,
    Estimate poisson,
    Activity.Level activity,
    Attack attack,
    double heatLimitC,
    String bondFace,
    Optional<Estimate> yieldMPa,
    Provenance provenance) {
  public Material {
    Check.text("id", id);
    Check.text("name", name);
    expansion.checkedWithin("expansion", -5, 300, "1e-6/K");
    youngGPa.checkedWithin("young", 0.1, 1000, "GPa");
    poisson.checkedWithin("poisson", 0, 0.499, "");
    Check.text("bond_face", bondFace);
    Check.within("heat_limit_c", heatLimitC, 30, 600, "°C");
    yieldMPa.ifPresent(y -> y.checkedWithin("yield", 5, 3000, "MPa"));
  }

  /** How it fails and what may be computed for it. */
  public enum Kind {
    METAL,
    BRITTLE_METAL,
    PLASTIC,
    LAMINATE
  }

  /** Effect of uncured compound on the material. */
  public enum Attack {
    NONE,
    TEST_FIRST,
    STRESS_CRACKS
  }

  public boolean isMetal() {
    return kind == Kind.METAL || kind == Kind.BRITTLE_METAL;
  }
}
