package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.Kind;
import annulus.fit.PressAnswer;
import annulus.hold.Removal;
import annulus.hold.Tool;
import org.junit.jupiter.api.Test;

/** Published press and bond figures through the whole program, from an order to the answer. */
class ForcePublishedTest {
  /** Shigley, Mechanical Engineering Design, solution 3-68: 1 in on 2 in, 0.002 in: 22 500 psi. */
  @Test
  void the_steel_on_steel_press_fit_of_the_textbook_comes_out_of_an_order() {
    Advice advice =
        new OrderText()
            .set("bore.readingsMm", java.util.List.of(25.4))
            .set("part.readingsMm", java.util.List.of(25.4 + 0.002 * 25.4))
            .set("bore.outsideDiameterMm", 50.8)
            .set("part.insideDiameterMm", 0)
            .set("engagementMm", 25.4)
            .advice();
    PressAnswer answer = advice.press().orElseThrow().answer().orElseThrow();
    PressAnswer.Pressed pressed = (PressAnswer.Pressed) answer;
    // The program takes the flattened peaks off first; put them back to compare with the book.
    double working = pressed.workingInterferenceUm().likely() / 50.8;
    double psi = pressed.pressureMPa().likely() / working * 145.0377377;
    assertEquals(22_500, psi, 250);
  }

  /** DIN 7190-1 (start of yield): a heavy press into a thin aluminium ring is refused. */
  @Test
  void a_press_that_yields_the_ring_is_refused() {
    Advice advice =
        new OrderText()
            .radialGapUm(-38)
            .set("bore.material", "aluminium-cast")
            .set("bore.outsideDiameterMm", 36)
            .set("part.insideDiameterMm", 0)
            .advice();
    assertEquals(Kind.TOO_TIGHT, advice.decision().kind());
    assertTrue(
        advice.decision().because().stream().anyMatch(f -> f.rule().id().equals("press-too-high")));
  }

  /** Aluminium on steel, +10 K on 50 mm: 5.75 µm across the diameter (computed, ISO 1). */
  @Test
  void the_gap_over_temperature_is_that_of_the_expansion_difference() {
    Advice advice =
        new OrderText()
            .set("bore.material", "aluminium-6061")
            .set("serviceLowC", 20)
            .set("serviceHighC", 30)
            .advice();
    double perK = advice.gap().inService().atHighUm() - advice.gap().gap().meanUm();
    assertEquals(30.03 / 2 * (23.6 - 11.7) * 10 * 1e-3, perK, 2e-3);
  }

  /** Common practice, no source: never heat a laminate, never drift on a seal. */
  @Test
  void heat_on_carbon_and_blows_on_a_seal_are_refused() {
    Advice advice =
        new OrderText()
            .set("bore.material", "carbon-epoxy")
            .set("bore.finish", "abraded")
            .set("primer", "primer-dry")
            .set("comesApartLater", true)
            .set("sealNear", true)
            .advice();
    assertEquals(Kind.USE_COMPOUND, advice.decision().kind());
    for (Removal.Way way : advice.hold().orElseThrow().ways()) {
      if (way.tool() instanceof Tool.LocalHeat || way.tool() instanceof Tool.Drift) {
        assertEquals(Removal.Outcome.REFUSED, way.outcome());
      }
    }
  }

  @Test
  void a_load_on_a_laminate_is_never_called_covered() {
    OrderText order =
        new OrderText()
            .set("bore.material", "carbon-epoxy")
            .set("bore.finish", "abraded")
            .set("primer", "primer-dry");
    assertTrue(order.advice().handBack().isPresent());
    assertTrue(order.set("load.axialN", 1).advice().handBack().isEmpty());
  }

  @Test
  void a_press_fit_that_goes_loose_in_service_is_not_promised() {
    OrderText order =
        new OrderText()
            .radialGapUm(-12)
            .set("bore.material", "aluminium-6061")
            .set("bore.outsideDiameterMm", 60)
            .set("part.insideDiameterMm", 0);
    assertTrue(order.advice().handBack().isPresent());
    assertTrue(order.set("serviceHighC", 120).advice().handBack().isEmpty());
  }

  @Test
  void an_unmeasured_bearing_takes_its_class_normal_tolerance() {
    // ISO 492, class Normal: outside 30 to 50 mm, 0 to -11 µm.
    Advice advice =
        new OrderText()
            .set("bore.readingsMm", java.util.List.of(42.04))
            .set("part.readingsMm", null)
            .set("part.instrument", null)
            .set("part.bearingMm", 42)
            .advice();
    assertEquals(42 - 0.0055, advice.gap().part().orElseThrow().meanMm(), 1e-9);
    assertTrue(advice.gap().part().orElseThrow().budget().combinedUm() >= 5.5 / Math.sqrt(3));
  }
}
