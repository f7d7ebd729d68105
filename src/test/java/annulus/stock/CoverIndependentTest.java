package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

/** The fewest items against every subset of them. */
class CoverIndependentTest {
  private static final List<String> ITEMS = List.of("a", "b", "c", "d", "e", "p", "q");

  @Provide
  Arbitrary<List<CoverCell>> cells() {
    Arbitrary<Set<String>> alternative = Arbitraries.of(ITEMS).set().ofMinSize(1).ofMaxSize(2);
    return alternative
        .list()
        .ofMaxSize(4)
        .map(a -> new CoverCell("g", "s", "t", true, a))
        .list()
        .ofMaxSize(10);
  }

  @Property(tries = 500)
  void no_smaller_set_closes_every_hole(@ForAll("cells") List<CoverCell> cells, @ForAll int bits) {
    Set<String> there = subset(bits & 0b1001000);
    Cover cover = new Cover(cells, there);
    Set<String> found = cover.fewest();
    Set<String> with = new HashSet<>(there);
    with.addAll(found);
    assertTrue(new Cover(cells, with).holes().isEmpty());
    int least = ITEMS.size();
    for (int mask = 0; mask < 1 << ITEMS.size(); mask++) {
      Set<String> all = new HashSet<>(there);
      Set<String> more = subset(mask);
      all.addAll(more);
      if (new Cover(cells, all).holes().isEmpty()) {
        least = Math.min(least, more.size());
      }
    }
    assertEquals(least, found.size());
    Statistics.collect(found.size());
  }

  private static Set<String> subset(int mask) {
    Set<String> items = new HashSet<>();
    for (int i = 0; i < ITEMS.size(); i++) {
      if ((mask >> i & 1) == 1) {
        items.add(ITEMS.get(i));
      }
    }
    return items;
  }

  @Test
  void the_obvious_first_choice_may_not_be_the_fewest() {
    List<CoverCell> cells = new ArrayList<>();
    for (String pair : List.of("ab", "ab", "ac", "ac", "bc")) {
      cells.add(
          new CoverCell(
              "g",
              "s",
              "t",
              true,
              List.of(Set.of(pair.substring(0, 1)), Set.of(pair.substring(1)))));
    }
    assertEquals(2, new Cover(cells, Set.of()).fewest().size());
    assertEquals(5, new Cover(cells, Set.of("a", "b", "c")).served());
    assertEquals(Set.of(), new Cover(cells, Set.of("a", "b", "c")).fewest());
  }
}
