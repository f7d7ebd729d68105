package annulus.hold;

import annulus.hold.Removal.Reason;
import annulus.hold.Removal.Surrounding;
import java.util.EnumSet;
import java.util.Map;
import java.util.Set;

/** What must not be done to, or close to, some things. */
final class SurroundingRules {
  private static final Map<Surrounding, Reason> NO_HEAT =
      Map.of(
          Surrounding.LAMINATE, Reason.NO_HEAT_ON_LAMINATE,
          Surrounding.PLASTIC, Reason.NO_HEAT_ON_PLASTIC,
          Surrounding.SEAL, Reason.NO_HEAT_NEAR_SEAL,
          Surrounding.PAINT, Reason.NO_HEAT_ON_PAINT,
          Surrounding.BATTERY, Reason.NO_HEAT_NEAR_BATTERY);
  private static final Map<Surrounding, Reason> NO_BLOWS =
      Map.of(
          Surrounding.LAMINATE, Reason.NO_BLOWS_ON_LAMINATE,
          Surrounding.PLASTIC, Reason.NO_BLOWS_ON_PLASTIC,
          Surrounding.SEAL, Reason.NO_BLOWS_ON_SEAL);

  private SurroundingRules() {}

  static Set<Reason> againstHeat(Set<Surrounding> surroundings) {
    return reasons(NO_HEAT, surroundings);
  }

  static Set<Reason> againstBlows(Set<Surrounding> surroundings) {
    return reasons(NO_BLOWS, surroundings);
  }

  private static Set<Reason> reasons(
      Map<Surrounding, Reason> rules, Set<Surrounding> surroundings) {
    Set<Reason> reasons = EnumSet.noneOf(Reason.class);
    rules.forEach(
        (surrounding, reason) -> {
          if (surroundings.contains(surrounding)) {
            reasons.add(reason);
          }
        });
    return reasons;
  }
}
