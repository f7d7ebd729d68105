package annulus.exchange;

import annulus.catalog.Activity;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.quantity.Estimate;
import java.util.List;
import java.util.Optional;

/** Rows of the material, finish, activity and release tables. */
final class MaterialRows {
  static final List<String> HEADER =
      List.of(
          "id",
          "name",
          "kind",
          "expansion_low",
          "expansion_likely",
          "expansion_high",
          "young_low",
          "young_likely",
          "young_high",
          "poisson_low",
          "poisson_likely",
          "poisson_high",
          "activity",
          "attack",
          "heat_limit_c",
          "bond_face",
          "yield_low",
          "yield_likely",
          "yield_high",
          "source",
          "confidence");
  static final List<String> FINISH_HEADER =
      List.of(
          "id",
          "name",
          "film",
          "activity",
          "strength_low",
          "strength_likely",
          "strength_high",
          "rz_low",
          "rz_likely",
          "rz_high",
          "source",
          "confidence");
  static final List<String> ACTIVITY_HEADER =
      List.of("level", "rate_low", "rate_likely", "rate_high", "source", "confidence");
  static final List<String> CAUTION_HEADER = List.of("id", "text", "source", "confidence");
  static final List<String> RANK_HEADER = List.of("id", "severity", "card", "source", "confidence");
  static final List<String> LIMIT_HEADER = List.of("until", "not_allowed", "source", "confidence");
  static final List<String> RELEASE_HEADER =
      List.of("consequence", "stage", "slow_practice", "safety_factor", "source", "confidence");

  private MaterialRows() {}

  static Material material(Fields f, Problems problems) {
    Optional<Estimate> yield =
        f.has("yield_low") || f.has("yield_likely") || f.has("yield_high")
            ? Optional.of(Values.rowEstimate(f, problems, "yield", "MPa"))
            : Optional.empty();
    return new Material(
        f.requiredText("id"),
        f.requiredText("name"),
        f.requiredChoice("kind", Material.Kind.values()),
        Values.rowEstimate(f, problems, "expansion", "1e-6/K"),
        Values.rowEstimate(f, problems, "young", "GPa"),
        Values.rowEstimate(f, problems, "poisson", ""),
        f.requiredChoice("activity", Activity.Level.values()),
        f.requiredChoice("attack", Material.Attack.values()),
        f.requiredNumber("heat_limit_c", 30, 600, "°C"),
        f.requiredText("bond_face"),
        yield,
        Values.provenance(f));
  }

  static Finish finish(Fields f, Problems problems) {
    return new Finish(
        f.requiredText("id"),
        f.requiredText("name"),
        f.requiredChoice("film", Finish.Film.values()),
        f.choice("activity", Activity.Level.values()),
        Values.rowEstimate(f, problems, "strength", ""),
        Values.rowEstimate(f, problems, "rz", "µm"),
        Values.provenance(f));
  }
}
