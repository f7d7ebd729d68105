package annulus.fit.iso286;

import static annulus.fit.FitData.TABLES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;

class Iso286PropertyTest {
  private static final List<String> WORKSHOP_HOLES =
      List.of("C7", "D8", "E8", "F8", "G7", "H7", "H11", "JS7", "K7", "M7", "N7", "P7", "R7", "S7");
  private static final List<String> WORKSHOP_SHAFTS =
      List.of("c11", "d9", "e8", "f7", "g6", "h6", "js6", "j6", "k6", "m6", "n6", "p6", "r6", "s6");

  @Provide
  Arbitrary<String> holes() {
    return Arbitraries.of(WORKSHOP_HOLES);
  }

  @Provide
  Arbitrary<String> shafts() {
    return Arbitraries.of(WORKSHOP_SHAFTS);
  }

  @Property
  void every_workshop_fit_is_tabulated_and_its_kind_agrees_with_its_ends(
      @ForAll("holes") String hole,
      @ForAll("shafts") String shaft,
      @ForAll @IntRange(min = 1_000, max = 500_000) int micrometres) {
    double mm = micrometres / 1000.0;
    Fit fit = TABLES.fit(mm, ToleranceClass.parse(hole), ToleranceClass.parse(shaft));
    double span = fit.greatestDiametralClearanceUm() - fit.leastDiametralClearanceUm();
    assertEquals(fit.hole().toleranceUm() + fit.shaft().toleranceUm(), span, 1e-9);
    assertEquals(fit.kind() == FitKind.CLEARANCE, fit.greatestDiametralInterferenceUm() == 0);
    boolean alwaysTight = fit.leastDiametralInterferenceUm() > 0;
    assertTrue(!alwaysTight || fit.kind() == FitKind.INTERFERENCE);
  }

  @Property
  void a_designation_prints_and_reads_back_the_same(
      @ForAll("holes") String hole,
      @ForAll("shafts") String shaft,
      @ForAll @IntRange(min = 1_000, max = 500_000) int micrometres) {
    Designation fit =
        new Designation.OfFit(
            micrometres / 1000.0, ToleranceClass.parse(hole), ToleranceClass.parse(shaft));
    assertEquals(fit, Designation.parse(fit.toString()));
  }
}
