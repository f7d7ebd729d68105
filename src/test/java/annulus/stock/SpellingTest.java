package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

class SpellingTest {
  private static final List<String> LOTS =
      List.of(
          "A-114", "A-114-2", "A-114-3", "a114", "T-12", "T-13", "007", "7", "--", "70", "A-11");

  @Test
  void a_second_container_and_another_hand_are_found() {
    assertEquals(List.of("A-114-2", "A-114-3", "a114"), Spelling.alike("A-114", LOTS));
    assertEquals(List.of("A-114", "A-114-3", "a114"), Spelling.alike("A-114-2", LOTS));
    assertEquals(List.of("A-114", "A-114-2", "A-114-3", "a114"), Spelling.alike("A 114", LOTS));
    assertEquals(List.of("7"), Spelling.alike("007", LOTS));
    assertEquals(List.of("T-13"), Spelling.alike("t-13", LOTS));
  }

  @Test
  void other_numbers_stay_apart() {
    assertEquals(List.of(), Spelling.alike("T-12", LOTS));
    assertEquals(List.of(), Spelling.alike("70", LOTS));
    assertEquals(List.of(), Spelling.alike("--", LOTS));
    assertEquals(List.of(), Spelling.alike("", LOTS));
    assertEquals(List.of(), Spelling.alike("A-11", LOTS));
  }
}
