package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.Locale;
import java.util.Map;

/**
 * What must be reached before a joint of this consequence is handed back.
 *
 * @param consequence what a failure would do
 * @param stage stage of cure that must be reached
 * @param slowPractice whether the slowest practice for full cure rules as well
 * @param safetyFactor hold over load, 1 to 20
 * @param provenance source of this row
 */
public record ReleaseRule(
    Consequence consequence,
    Stage stage,
    boolean slowPractice,
    double safetyFactor,
    Provenance provenance) {
  public ReleaseRule {
    Check.within("safety_factor", safetyFactor, 1, 20, "");
  }

  /** A worse consequence must not ask for less than a lighter one. */
  static void checkOrder(Map<Consequence, ReleaseRule> rules) {
    Consequence[] all = Consequence.values();
    for (int i = 1; i < all.length; i++) {
      ReleaseRule lighter = rules.get(all[i - 1]);
      ReleaseRule worse = rules.get(all[i]);
      atLeast("stage", worse, lighter, worse.stage.compareTo(lighter.stage) >= 0);
      atLeast("slow_practice", worse, lighter, worse.slowPractice || !lighter.slowPractice);
      atLeast("safety_factor", worse, lighter, worse.safetyFactor >= lighter.safetyFactor);
    }
  }

  private static void atLeast(String field, ReleaseRule worse, ReleaseRule lighter, boolean kept) {
    if (!kept) {
      throw new InvalidValue(
          field,
          "of " + worse.word() + " asks for less than " + lighter.word(),
          "at least as much");
    }
  }

  private String word() {
    return consequence.name().toLowerCase(Locale.ROOT);
  }
}
