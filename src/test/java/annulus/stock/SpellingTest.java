package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
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
  void every_container_of_a_lot_is_found_however_it_is_counted() {
    List<String> containers =
        List.of("KB-2211 (2)", "KB-2211-02", "KB-2211-10", "KB-2211-2", "KB-2211/2", "KB-2211_120");
    List<String> lots = new ArrayList<>(containers);
    lots.addAll(List.of("KB-2211", "KB-2212", "KB-2212-10", "KB-22", "KB-2211-4711"));
    assertEquals(containers, Spelling.alike("KB-2211", lots));
    for (String one : containers) {
      List<String> others = new ArrayList<>(containers);
      others.remove(one);
      others.add("KB-2211");
      assertEquals(others.stream().sorted().toList(), Spelling.alike(one, lots));
    }
  }

  /** Jobs have no containers; the jobs of one year are not one job. */
  @Test
  void jobs_counted_within_a_year_stay_apart() {
    List<String> jobs = List.of("26-101", "26-102", "26-101-2", "26101");
    assertEquals(List.of("26-101-2", "26101"), Spelling.jobsAlike("26-101", jobs));
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
