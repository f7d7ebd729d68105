package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class NearestTest {
  private static final List<String> MATERIALS =
      List.of("steel-plain", "steel-alloy", "brass-c260", "bronze-phosphor", "bronze-bearing");
  private static final List<String> INSTRUMENTS =
      List.of("caliper-150", "outside-micrometer", "inside-micrometer", "bore-gauge-dial");

  /** At the bench one says steel, bronze or micrometer; which of them is for the asker to say. */
  @Test
  void a_part_of_several_names_suggests_all_of_them() {
    String steel = Nearest.allowed("Steel", MATERIALS);
    assertTrue(steel.startsWith("did you mean steel-plain or steel-alloy? one of: "), steel);
    String bronce = Nearest.allowed("bronce", MATERIALS);
    assertTrue(bronce.startsWith("did you mean bronze-phosphor or bronze-bearing?"), bronce);
    String micrometer = Nearest.allowed("micrometer", INSTRUMENTS);
    assertTrue(
        micrometer.startsWith("did you mean outside-micrometer or inside-micrometer?"), micrometer);
  }

  @Test
  void a_mistyped_name_suggests_the_nearest_and_a_strange_one_none() {
    assertTrue(Nearest.allowed("steel-plane", MATERIALS).startsWith("did you mean steel-plain?"));
    assertEquals(String.join(", ", MATERIALS), Nearest.allowed("unobtainium", MATERIALS));
  }
}
