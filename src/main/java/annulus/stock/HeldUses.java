package annulus.stock;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Which jobs got some of a lot that is held back now. */
public final class HeldUses {
  private final Map<String, Set<Use>> byKey;

  private HeldUses(Map<String, Set<Use>> byKey) {
    this.byKey = byKey;
  }

  /**
   * A lot that went into a job before it was held back, or in spite of it.
   *
   * @param lot the lot
   * @param job the job's reference as it was written with the use
   * @param heldBack why the lot is held back
   */
  public record Use(String lot, String job, List<HeldBack> heldBack) {
    public Use {
      heldBack = List.copyOf(heldBack);
    }
  }

  /**
   * The jobs of what was used.
   *
   * @param held what is held back, by lot
   * @param movements among them the uses of these lots
   */
  public static HeldUses of(Map<String, List<HeldBack>> held, Collection<Movement> movements) {
    Map<String, Set<Use>> byKey = new LinkedHashMap<>();
    for (Movement m : movements) {
      boolean used = m.kind() == Movement.Kind.USE && !m.job().isEmpty();
      if (used && held.containsKey(m.lot())) {
        Use use = new Use(m.lot(), m.job(), held.get(m.lot()));
        Spelling.keysOfJob(m.job())
            .forEach(k -> byKey.computeIfAbsent(k, x -> new LinkedHashSet<>()).add(use));
      }
    }
    return new HeldUses(byKey);
  }

  /** What a job got, also under a reference that may stand for it; each lot and reference once. */
  public List<Use> of(String job) {
    if (byKey.isEmpty()) {
      return List.of();
    }
    Set<Use> found = new LinkedHashSet<>();
    Spelling.keysOfJob(job).forEach(k -> found.addAll(byKey.getOrDefault(k, Set.of())));
    return List.copyOf(found);
  }
}
