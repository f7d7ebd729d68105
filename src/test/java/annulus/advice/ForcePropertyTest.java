package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.Kind;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/** Force and hand-back never contradict each other. */
class ForcePropertyTest {
  @Property(tries = 300)
  void a_load_that_is_not_covered_is_never_handed_back(
      @ForAll @IntRange(min = 10, max = 110) int gap,
      @ForAll @IntRange(min = 1, max = 6000) int newtons) {
    Advice advice =
        new OrderText()
            .radialGapUm(gap)
            .set("load.axialN", newtons)
            .set("load.repeats", "static")
            .advice();
    if (advice.decision().kind() != Kind.USE_COMPOUND) {
      return;
    }
    HoldReport hold = advice.hold().orElseThrow();
    boolean covered = hold.bondHot().low() >= hold.wantedN().orElseThrow();
    assertEquals(covered, advice.handBack().isPresent());
    Statistics.label("covered").collect(covered);
    if (covered) {
      double then = hold.atHandBack().orElseThrow().low();
      assertTrue(then >= hold.wantedN().orElseThrow(), then + " N at hand-back");
    }
  }

  @Property(tries = 200)
  void hot_is_never_stronger_than_cold(
      @ForAll @IntRange(min = 10, max = 110) int gap,
      @ForAll @IntRange(min = 23, max = 90) int hot) {
    Advice advice = new OrderText().radialGapUm(gap).set("serviceHighC", hot).advice();
    advice
        .hold()
        .ifPresent(
            h -> {
              assertTrue(h.bondHot().low() <= h.bondCold().low());
              assertTrue(h.bondHot().high() <= h.bondCold().high());
            });
  }

  @Property(tries = 200)
  void more_interference_never_presses_easier(
      @ForAll @IntRange(min = 8, max = 30) int tight,
      @ForAll @IntRange(min = 1, max = 8) int more) {
    double one = pressIn(tight);
    double two = pressIn(tight + more);
    assertTrue(two >= one, one + " N became " + two);
  }

  private static double pressIn(int interferenceUm) {
    Advice advice =
        new OrderText()
            .radialGapUm(-interferenceUm)
            .set("bore.outsideDiameterMm", 60)
            .set("part.insideDiameterMm", 0)
            .advice();
    return advice.press().orElseThrow().answer().orElseThrow()
            instanceof annulus.fit.PressAnswer.Pressed pressed
        ? pressed.pressInForceN().high()
        : 0;
  }
}
