package annulus.exchange;

import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Collects what is wrong so that one run shows all of it. */
final class Problems {
  private final List<PlacedProblem> found = new ArrayList<>();

  void add(Node.Place place, String field, String problem, String allowed) {
    found.add(place.problem(field, problem, allowed));
  }

  boolean none() {
    return found.isEmpty();
  }

  int count() {
    return found.size();
  }

  /**
   * Builds a value whose constructor checks ranges; a refusal is placed at the node.
   *
   * @return the value, or null when refused
   */
  <T> T place(Node.Place place, String path, Supplier<T> build) {
    try {
      return build.get();
    } catch (InvalidValue e) {
      add(place, path.isEmpty() ? e.field() : path + "." + e.field(), e.problem(), e.allowed());
      return null;
    }
  }

  /**
   * @throws InputRefused with everything found, if anything was
   */
  void throwIfAny() {
    if (!found.isEmpty()) {
      throw new InputRefused(found);
    }
  }
}
