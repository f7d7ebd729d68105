package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** A budget tells of each line what it is and where its figure comes from. */
class BudgetLinesTest {
  private static final Component LINE =
      new Component("limit", "error limit", 2, 5, Component.Shape.RECTANGULAR, "its certificate");

  @Test
  void a_line_keeps_its_words() {
    assertEquals("error limit", LINE.name());
    assertEquals("its certificate", LINE.why());
    assertTrue(LINE.toString().contains("error limit"), LINE.toString());
    Component like =
        new Component("limit", "error limit", 2, 5, Component.Shape.RECTANGULAR, "its certificate");
    assertEquals(LINE, like);
    assertEquals(LINE.hashCode(), like.hashCode());
    assertNotEquals(0, LINE.hashCode());
    assertNotEquals(LINE, LINE.scaled(2));
    assertNotEquals(LINE, LINE.ofMember("bore", 1));
  }

  @Test
  void every_line_of_a_measurement_says_where_it_comes_from() {
    Set<String> ids = new TreeSet<>();
    for (MeasuredDiameter measured :
        new MeasuredDiameter[] {
          Samples.bore(Samples.CALIPER, Samples.readings(42.06)),
          Samples.bore(Samples.CALIPER, Samples.readings(42.06, 42.1, 42.02)),
          Samples.bore(Samples.DIAL_BORE, Samples.readings(42.06, 42.1, 42.02, 42.06))
        }) {
      for (Component line : measured.budget().components()) {
        ids.add(line.id());
        assertFalse(line.name().isBlank(), line.id());
        assertFalse(line.why().isBlank(), line.id());
      }
    }
    assertTrue(ids.size() >= 3, ids.toString());
  }

  @Test
  void budgets_are_equal_by_their_lines() {
    Budget budget = Samples.bore(Samples.CALIPER, Samples.readings(42.06)).budget();
    Budget same = Samples.bore(Samples.CALIPER, Samples.readings(42.06)).budget();
    assertEquals(budget, same);
    assertEquals(budget.hashCode(), same.hashCode());
    assertNotEquals(0, budget.hashCode());
    assertNotEquals(budget, budget.scaled(2));
    assertTrue(budget.toString().contains("Component"), budget.toString());
    int both = budget.combinedWith(same).components().size();
    assertEquals(2 * budget.components().size(), both);
  }

  @Test
  void readings_that_spread_without_their_places_are_told() {
    Set<Note> wide = notes(42.00, 42.20);
    assertTrue(wide.contains(Note.READINGS_SPREAD), wide.toString());
    Set<Note> close = notes(42.00, 42.01);
    assertFalse(close.contains(Note.READINGS_SPREAD), close.toString());
  }

  private static Set<Note> notes(double... readings) {
    return Set.copyOf(Samples.bore(Samples.CALIPER, Samples.readings(readings)).notes());
  }
}
