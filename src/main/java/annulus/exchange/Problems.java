package annulus.exchange;

import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Supplier;

/** Collects what is wrong so that one run shows all of it. */
final class Problems {
  /** Who has this many to mend reads no further; more would only fill the memory. */
  private static final int MOST = 200;

  private final List<PlacedProblem> found = new ArrayList<>();
  private final Set<PlacedProblem> seen = new HashSet<>();
  private int repeated;

  /**
   * Notes a problem; the same one at the same place is noted once.
   *
   * @throws InputRefused with all of them when there are very many
   */
  void add(Node.Place place, String field, String problem, String allowed) {
    PlacedProblem next = place.problem(field, problem, allowed);
    if (!seen.add(next)) {
      repeated++;
    } else {
      found.add(next);
    }
    if (found.size() == MOST) {
      found.add(place.problem("", "the rest is not looked at: too much is wrong", "see above"));
      throw new InputRefused(found);
    }
  }

  boolean none() {
    return found.isEmpty();
  }

  /** How often something was found, counting repeats, so that a caller sees that it failed. */
  int count() {
    return found.size() + repeated;
  }

  /**
   * Builds a value whose constructor checks the order of its parts; a refusal is placed at the
   * node.
   *
   * @return the value, or null when refused
   */
  <T> T place(Node.Place place, String path, Supplier<T> build) {
    try {
      return build.get();
    } catch (InvalidValue e) {
      add(place, path, e.problem(), e.allowed());
      return null;
    }
  }

  private List<PlacedProblem> inFileOrder() {
    List<String> files = found.stream().map(PlacedProblem::file).distinct().toList();
    List<PlacedProblem> sorted = new ArrayList<>(found);
    sorted.sort(
        Comparator.<PlacedProblem>comparingInt(p -> files.indexOf(p.file()))
            .thenComparingInt(PlacedProblem::line)
            .thenComparingInt(PlacedProblem::column));
    return sorted;
  }

  /**
   * @throws InputRefused with everything found, if anything was
   */
  void throwIfAny() {
    if (!found.isEmpty()) {
      throw new InputRefused(inFileOrder());
    }
  }
}
