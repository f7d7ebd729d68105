package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.Kind;
import annulus.catalog.Stage;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What the trade says of retaining compounds, against the shipped data. Each fact is common
 * practice, no source, unless the test names one.
 */
class TradeFactsPublishedTest {
  private static Duration typical(OrderText order, Stage stage) {
    return order.advice().cure().orElseThrow().at(stage).typical().orElseThrow();
  }

  @Test
  void a_thin_gap_steel_joint_at_22_degrees_sets_in_10_to_40_minutes() {
    Duration fixture = typical(new OrderText().radialGapUm(20), Stage.FIXTURE);
    assertTrue(fixture.toMinutes() >= 10 && fixture.toMinutes() <= 40, fixture.toString());
  }

  @Test
  void a_thin_gap_steel_joint_at_22_degrees_is_full_in_about_a_day() {
    Duration full = typical(new OrderText().radialGapUm(20), Stage.FULL);
    assertTrue(full.toHours() >= 20 && full.toHours() <= 30, full.toString());
  }

  @Test
  void primed_it_sets_in_5_to_30_minutes_and_is_full_in_4_to_24_hours() {
    OrderText primed = new OrderText().radialGapUm(20).set("primer", "primer-solvent");
    Duration fixture = typical(primed, Stage.FIXTURE);
    Duration full = typical(primed, Stage.FULL);
    assertTrue(fixture.toMinutes() >= 5 && fixture.toMinutes() <= 30, fixture.toString());
    assertTrue(full.toHours() >= 4 && full.toHours() <= 24, full.toString());
  }

  @Test
  void where_it_can_hurt_the_72_hours_of_the_slower_practice_rule() {
    Advice advice = new OrderText().radialGapUm(18).set("consequence", "injury").advice();
    assertTrue(advice.handBack().orElseThrow().after().toHours() >= 72);
  }

  @Test
  void ten_kelvin_about_double_the_speed_near_22_degrees() {
    // Petrie, Handbook of Adhesives and Sealants: cure pair gives 44.7 kJ/mol; "doubles" 51.2.
    double warm = typical(new OrderText().set("temperatureC", 22), Stage.FULL).toSeconds();
    double cold = typical(new OrderText().set("temperatureC", 12), Stage.FULL).toSeconds();
    assertTrue(cold / warm > 1.6 && cold / warm < 2.3, "ratio " + cold / warm);
  }

  @Test
  void no_cure_is_counted_on_above_0_76_mm_between_the_faces() {
    // Petrie, Handbook of Adhesives and Sealants: no cure above about 30 mil.
    OrderText order = new OrderText().set("primer", "primer-solvent");
    Advice wide = order.radialGapUm(395).advice();
    assertEquals(Kind.TOO_WIDE, wide.decision().kind());
    assertTrue(wide.handBack().isEmpty());
    Advice within = order.radialGapUm(365).advice();
    assertEquals("paste-rebuild", within.decision().compound().orElseThrow().id());
  }

  @Test
  void larger_gaps_want_thicker_compound() {
    double last = 0;
    for (int gap : List.of(15, 60, 100)) {
      Advice advice = new OrderText().radialGapUm(gap).advice();
      double viscosity = advice.decision().compound().orElseThrow().viscosity().high();
      assertTrue(viscosity > last, gap + " µm");
      last = viscosity;
    }
  }

  @Test
  void below_5_degrees_there_is_no_promise() {
    assertTrue(new OrderText().set("temperatureC", 4.9).advice().handBack().isEmpty());
    assertTrue(new OrderText().set("temperatureC", 5.0).advice().handBack().isPresent());
  }

  @Test
  void plated_faces_without_primer_stay_liquid() {
    // Petrie: zinc, cadmium and bright plate inhibit; they need primer.
    Advice bare = new OrderText().faces("steel-plain", "zinc-plated").advice();
    assertEquals(Kind.NO_CLASS, bare.decision().kind());
    assertTrue(
        bare.decision().because().stream().anyMatch(f -> f.rule().id().equals("two-inert-faces")));
    Advice primed =
        new OrderText()
            .faces("steel-plain", "zinc-plated")
            .set("primer", "primer-solvent")
            .advice();
    assertEquals(Kind.USE_COMPOUND, primed.decision().kind());
  }

  @Test
  void plastics_that_stress_crack_are_never_bonded() {
    List<String> plastics =
        List.of(
            "polycarbonate",
            "abs",
            "pc-abs",
            "san",
            "ppo",
            "acrylic",
            "polystyrene",
            "polysulfone");
    for (String plastic : plastics) {
      Advice advice =
          new OrderText()
              .set("part.material", plastic)
              .set("part.finish", "moulded")
              .set("primer", "primer-solvent")
              .advice();
      assertEquals(Kind.NO_CLASS, advice.decision().kind(), plastic);
      assertTrue(
          advice.decision().because().stream()
              .anyMatch(f -> f.rule().id().equals("stress-cracking-part")),
          plastic);
    }
  }

  @Test
  void copper_alloys_cure_no_slower_than_steel_and_steel_no_slower_than_aluminium() {
    // George et al. 1997: copper most reactive, then steel, then aluminium.
    Duration copper = typical(new OrderText().faces("brass-c360", "ground"), Stage.FULL);
    Duration steel = typical(new OrderText(), Stage.FULL);
    Duration aluminium = typical(new OrderText().faces("aluminium-6061", "ground"), Stage.FULL);
    assertTrue(copper.compareTo(steel) <= 0);
    assertTrue(steel.compareTo(aluminium) < 0);
  }

  @Test
  void two_caliper_readings_can_not_tell_a_gap_of_a_few_hundredths() {
    // DIN 862 error limits: a "0.05 gap" may be anything from 0 to 0.11.
    Advice advice =
        new OrderText()
            .set("bore.instrument", "caliper-150")
            .set("part.instrument", "caliper-150")
            .bore(30.05)
            .advice();
    assertEquals(Kind.MEASURE_AGAIN, advice.decision().kind());
    assertTrue(advice.gap().remedy().orElseThrow().pairs().size() > 0);
  }

  @Test
  void moved_after_it_may_have_grabbed_means_strip_and_redo() {
    Advice late = new OrderText().set("movedAt", "2027-03-11T10:30Z").advice();
    assertEquals(Kind.STRIP_AND_REDO, late.decision().kind());
    assertTrue(late.handBack().isEmpty());
    Advice early = new OrderText().set("movedAt", "2027-03-11T10:01Z").advice();
    assertEquals(Kind.USE_COMPOUND, early.decision().kind());
  }

  @Test
  void an_interference_is_pressed_dry() {
    assertEquals(Kind.PRESS_DRY, new OrderText().radialGapUm(-15).advice().decision().kind());
    assertEquals(Kind.TOO_TIGHT, new OrderText().radialGapUm(-80).advice().decision().kind());
  }

  @Test
  void a_line_to_line_joint_gets_a_film() {
    Advice advice = new OrderText().radialGapUm(1).advice();
    assertEquals("press-film", advice.decision().compound().orElseThrow().id());
  }
}
