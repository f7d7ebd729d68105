package annulus.select;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Sets of small numbers, beyond one machine word, too: a shop may write a hundred rules. */
class BitsTest {
  private static Bits of(int... numbers) {
    Bits bits = new Bits(130);
    for (int number : numbers) {
      bits.set(number);
    }
    return bits;
  }

  private static List<Integer> numbers(Bits bits) {
    List<Integer> numbers = new ArrayList<>();
    for (int n = bits.next(0); n >= 0; n = bits.next(n + 1)) {
      numbers.add(n);
    }
    return numbers;
  }

  @Test
  void numbers_come_out_rising_whatever_word_they_lie_in() {
    assertEquals(List.of(0, 63, 64, 127, 128, 129), numbers(of(129, 64, 0, 128, 63, 127)));
    assertEquals(List.of(), numbers(of()));
    assertEquals(6, of(129, 64, 0, 128, 63, 127).count());
  }

  @Test
  void a_set_holds_a_number_or_any_of_another_set_or_shares_some_with_it() {
    Bits set = of(3, 64, 129);
    assertTrue(set.holds(3) && set.holds(64) && set.holds(129));
    assertFalse(set.holds(2) || set.holds(65) || set.holds(128));
    assertTrue(set.holdsAny(of(128, 129)));
    assertFalse(set.holdsAny(of(0, 128)));
    assertEquals(2, set.common(of(3, 4, 129)));
  }

  @Test
  void removing_changes_only_the_set_itself() {
    Bits set = of(1, 70, 129);
    Bits copy = set.copy();
    copy.remove(129);
    copy.remove(128);
    assertEquals(List.of(1, 70), numbers(copy));
    copy.removeAll(of(1, 2));
    assertEquals(List.of(70), numbers(copy));
    copy.keepOnly(of(1));
    assertEquals(List.of(), numbers(copy));
    assertEquals(List.of(1, 70, 129), numbers(set));
  }
}
