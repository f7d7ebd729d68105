package annulus.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotSame;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A list that is made late is made once, and can't be told from one that is there. */
class WhenAskedTest {
  private int made;
  private final List<String> source = new ArrayList<>(List.of("clean", "close"));

  private List<String> late() {
    return WhenAsked.list(
        () -> {
          made++;
          return source;
        });
  }

  @Test
  void it_is_made_once_and_not_before_somebody_looks() {
    List<String> late = late();
    assertEquals(0, made);
    assertEquals(2, late.size());
    assertEquals("close", late.get(1));
    assertEquals(List.of("clean", "close"), late);
    assertEquals(1, made);
  }

  @Test
  void it_does_not_follow_its_source_and_nobody_changes_it() {
    List<String> late = late();
    assertEquals(2, late.size());
    source.add("wait");
    assertEquals(2, late.size());
    assertThrows(UnsupportedOperationException.class, () -> late.add("wait"));
  }

  @Test
  void a_copy_does_not_look_and_that_of_a_common_list_stands_alone() {
    List<String> late = late();
    assertSame(late, WhenAsked.copyOf(late));
    assertEquals(0, made);
    List<String> copy = WhenAsked.copyOf(source);
    assertNotSame(source, copy);
    source.add("wait");
    assertEquals(List.of("clean", "close"), copy);
  }
}
