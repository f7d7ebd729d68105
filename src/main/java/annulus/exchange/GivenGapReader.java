package annulus.exchange;

import annulus.advice.JointOrder.GivenGap;
import annulus.catalog.Policy;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads a gap that an order gives in place of readings. */
final class GivenGapReader {
  /** Names of a gap that leave open how it is counted. */
  private static final List<String> BARE_GAPS =
      List.of("gap", "clearance", "gapUm", "clearanceUm", "gapMm");

  private static final List<String> BESIDE_A_GAP =
      List.of("radialGapPlusMinusUm", "diametralClearancePlusMinusUm", "diameterMm");

  private final Problems problems;
  private final Measures measures;
  private final Policy policy;

  GivenGapReader(Problems problems, Measures measures, Policy policy) {
    this.problems = problems;
    this.measures = measures;
    this.policy = policy;
  }

  /** Refuses a gap that does not say how it is counted. */
  void refuseBare(Fields f) {
    for (String bare : BARE_GAPS) {
      if (f.stands(bare)) {
        f.allow(bare);
        problems.add(
            f.placeOf(bare),
            bare,
            "does not say whether it is per side or across the diameter",
            "radialGapUm (per side) or diametralClearanceUm (across the diameter)");
      }
    }
  }

  /** The gap that stands in place of readings, if any. */
  Optional<GivenGap> read(Fields f) {
    boolean radial = f.has("radialGapUm");
    boolean diametral = f.has("diametralClearanceUm");
    if (!radial && !diametral) {
      refuseLone(f);
      return Optional.empty();
    }
    if (radial && diametral) {
      problems.add(
          f.placeOf("diametralClearanceUm"),
          "diametralClearanceUm",
          "stands beside radialGapUm",
          "one of the two");
      return Optional.empty();
    }
    String name = radial ? "radialGapUm" : "diametralClearanceUm";
    String plusMinus = radial ? "radialGapPlusMinusUm" : "diametralClearancePlusMinusUm";
    double share = radial ? 1 : 0.5;
    double limit = policy.value("entry-gap-limit-um") / share;
    OptionalDouble value = measures.number(f, name, -limit, limit, "µm");
    f.required(plusMinus);
    OptionalDouble doubt = measures.number(f, plusMinus, 0.1 / share, 500 / share, "µm");
    OptionalDouble nominal =
        f.required("diameterMm")
            .map(n -> measures.lengthMm(n, "diameterMm", 0.5, 500))
            .orElse(OptionalDouble.empty());
    if (value.isEmpty() || doubt.isEmpty() || nominal.isEmpty()) {
      return Optional.of(new GivenGap(10, 0, 1));
    }
    return Optional.of(
        new GivenGap(
            nominal.getAsDouble(), value.getAsDouble() * share, doubt.getAsDouble() * share));
  }

  /** Fields that say something about a given gap, where none is given. */
  private void refuseLone(Fields f) {
    for (String lone : BESIDE_A_GAP) {
      if (f.has(lone)) {
        problems.add(
            f.placeOf(lone),
            lone,
            "stands without a given gap",
            "beside radialGapUm or diametralClearanceUm only");
      }
    }
  }
}
