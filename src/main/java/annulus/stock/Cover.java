package annulus.stock;

import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which joints a cabinet can serve.
 *
 * @param cells all kinds of joint
 * @param there what is in the cabinet
 */
public record Cover(List<CoverCell> cells, Set<String> there) {
  public Cover {
    cells = List.copyOf(cells);
    there = Set.copyOf(there);
  }

  /** Joints the cabinet serves. */
  public long served() {
    return cells.stream().filter(c -> c.servedBy(there)).count();
  }

  /** Joints that something known would serve, but nothing in the cabinet. */
  public List<CoverCell> holes() {
    return cells.stream().filter(c -> c.possible() && !c.servedBy(there)).toList();
  }

  /**
   * The fewest items that close every hole: exact, by trying one item, then two, and so on.
   *
   * @return sorted ids; empty when there is no hole
   */
  public Set<String> fewest() {
    Set<CoverCell> open = new LinkedHashSet<>();
    holes().stream()
        .map(c -> new CoverCell("", "", "", false, least(c.alternatives())))
        .sorted(Comparator.comparingInt(c -> c.alternatives().size()))
        .forEach(open::add);
    for (int count = 0; ; count++) {
      Optional<Set<String>> found = close(List.copyOf(open), new TreeSet<>(), count);
      if (found.isPresent()) {
        return found.get();
      }
    }
  }

  /** Alternatives that need nothing another one does not need; an order that never changes. */
  private List<Set<String>> least(List<Set<String>> alternatives) {
    List<Set<String>> lacking =
        alternatives.stream().map(a -> CoverCell.lacking(a, there)).distinct().toList();
    return lacking.stream()
        .filter(a -> lacking.stream().noneMatch(b -> !b.equals(a) && a.containsAll(b)))
        .sorted(Comparator.comparing(Set::toString))
        .toList();
  }

  private static Optional<Set<String>> close(List<CoverCell> open, Set<String> chosen, int more) {
    Optional<CoverCell> first = open.stream().filter(c -> !c.servedBy(chosen)).findFirst();
    if (first.isEmpty()) {
      return Optional.of(new TreeSet<>(chosen));
    }
    for (Set<String> alternative : first.get().alternatives()) {
      Set<String> lacking = CoverCell.lacking(alternative, chosen);
      if (lacking.size() <= more) {
        Set<String> next = new HashSet<>(chosen);
        next.addAll(lacking);
        Optional<Set<String>> found = close(open, next, more - lacking.size());
        if (found.isPresent()) {
          return found;
        }
      }
    }
    return Optional.empty();
  }
}
