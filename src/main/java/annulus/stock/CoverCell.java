package annulus.stock;

import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;

/**
 * One kind of joint in the coverage picture.
 *
 * @param gap id of the stretch of gaps
 * @param surfaces id of the pair of faces
 * @param service id of the highest service temperature
 * @param releasable whether it is meant to come apart again
 * @param alternatives sets of classes and primers of which any one would serve it
 */
public record CoverCell(
    String gap,
    String surfaces,
    String service,
    boolean releasable,
    List<Set<String>> alternatives) {
  public CoverCell {
    alternatives = alternatives.stream().map(a -> Set.copyOf(a)).toList();
  }

  /** Whether these items serve it. */
  public boolean servedBy(Collection<String> items) {
    return alternatives.stream().anyMatch(items::containsAll);
  }

  /** Whether anything known could serve it. */
  public boolean possible() {
    return !alternatives.isEmpty();
  }

  /** What an alternative lacks beside what is there, sorted. */
  static Set<String> lacking(Set<String> alternative, Set<String> there) {
    Set<String> lacking = new TreeSet<>(alternative);
    lacking.removeAll(there);
    return lacking;
  }
}
