package annulus.catalog;

import annulus.quantity.InvalidValue;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * Everything read from {@code data/}, in file order, with a version that changes with any byte of
 * it.
 *
 * @param version short digest of the files read
 * @param materials by id
 * @param finishes by id
 * @param activities by level
 * @param compounds by id
 * @param primers by id
 * @param instruments by id
 * @param release by consequence of failure
 * @param cautions those that every answer carries, by id
 * @param ranks how grave a caution is, by id of the caution or the rule; gravest first
 * @param limitedUse what must not be done between hand-back and full cure
 * @param policy the numbers of the policy
 */
public record Catalog(
    String version,
    Map<String, Material> materials,
    Map<String, Finish> finishes,
    Map<Activity.Level, Activity> activities,
    Map<String, CompoundClass> compounds,
    Map<String, Primer> primers,
    Map<String, Instrument> instruments,
    Map<Consequence, ReleaseRule> release,
    Map<String, StandingCaution> cautions,
    Map<String, CautionRank> ranks,
    LimitedUse limitedUse,
    Policy policy) {
  public Catalog {
    materials = ordered(materials);
    finishes = ordered(finishes);
    activities = ordered(activities);
    compounds = ordered(compounds);
    primers = ordered(primers);
    instruments = ordered(instruments);
    release = ordered(release);
    cautions = ordered(cautions);
    ranks = ordered(ranks);
    for (Consequence consequence : Consequence.values()) {
      if (!release.containsKey(consequence)) {
        throw new InvalidValue("consequence", consequence + " is missing", "one row for each");
      }
    }
    ReleaseRule.checkOrder(release);
    for (Activity.Level level : Activity.Level.values()) {
      if (!activities.containsKey(level)) {
        throw new InvalidValue("activity", level + " is missing", "one row for each level");
      }
    }
  }

  /** Indexes rows by id, keeping their order; a repeated id is an {@link InvalidValue}. */
  public static <K, V> Map<K, V> index(List<V> rows, Function<V, K> id) {
    Map<K, V> map = new LinkedHashMap<>();
    for (V row : rows) {
      if (map.put(id.apply(row), row) != null) {
        throw new InvalidValue("id", id.apply(row) + " stands twice", "each id once");
      }
    }
    return map;
  }

  /** The same catalogue with another set of compound classes. */
  public Catalog withCompounds(Map<String, CompoundClass> other) {
    return new Catalog(
        version,
        materials,
        finishes,
        activities,
        other,
        primers,
        instruments,
        release,
        cautions,
        ranks,
        limitedUse,
        policy);
  }

  private static <K, V> Map<K, V> ordered(Map<K, V> map) {
    return Collections.unmodifiableMap(new LinkedHashMap<>(map));
  }
}
