package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.Kind;
import annulus.advice.Advice.StepKind;
import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;
import annulus.report.BatchColumns;
import annulus.report.DecisionTexts;
import annulus.report.JsonReport;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Joints that must not go out, or later than they did, as a shop found them; figures by hand. */
class HeldBackTest {
  private static List<StepKind> kinds(Advice advice) {
    return advice.steps().stream().map(Advice.Step::kind).toList();
  }

  private static List<String> cautions(Advice advice) {
    return advice.cautions().stream().map(f -> f.rule().id()).toList();
  }

  /**
   * Aluminium around steel, 80 mm, 25 µm tight at 20 °C: to 90 °C it opens by 80 (23.6 - 12.5) 1e-6
   * 70 / 2 = 31 µm per side, and 12.5 of them are there to lose.
   */
  private static OrderText opening() {
    return new OrderText()
        .set("bore.material", "aluminium-6061")
        .set("bore.readingsMm", List.of(79.985))
        .set("bore.instrument", "bore-gauge-dial")
        .set("part.material", "steel-bearing")
        .set("part.readingsMm", List.of(80.010))
        .set("serviceHighC", 90);
  }

  @Test
  void a_press_fit_that_falls_loose_is_held_back_whether_or_not_its_grip_can_be_computed() {
    Advice without = opening().advice();
    assertEquals(Kind.PRESS_DRY, without.decision().kind());
    assertTrue(without.press().orElseThrow().loosestRadialUm() > 0);
    assertEquals(Optional.empty(), without.handBack());
    Advice with =
        opening().set("bore.outsideDiameterMm", 120).set("part.insideDiameterMm", 60).advice();
    assertEquals(Optional.empty(), with.handBack());
    assertTrue(opening().set("serviceHighC", 25).advice().handBack().isPresent());
  }

  @Test
  void a_dry_press_over_old_compound_is_measured_bare_before_it_goes_out() {
    OrderText order = new OrderText().radialGapUm(-13).set("bore.state", "old-compound");
    Advice advice = order.advice();
    assertEquals(Kind.PRESS_DRY, advice.decision().kind());
    assertEquals(Optional.empty(), advice.handBack());
    String why = JsonReport.of(advice, OrderText.KNOWLEDGE.catalog());
    assertTrue(why.contains("measure the bare faces first"), why.substring(0, 2000));
  }

  @Test
  void a_bond_over_old_compound_is_measured_bare_before_it_goes_out() {
    for (String side : List.of("bore.state", "part.state")) {
      Advice advice = new OrderText().set(side, "old-compound").advice();
      assertEquals(Kind.USE_COMPOUND, advice.decision().kind());
      assertTrue(kinds(advice).contains(StepKind.REMOVE_OLD_COMPOUND));
      assertEquals(Optional.empty(), advice.handBack());
      assertFalse(advice.isYes());
      String why = JsonReport.of(advice, OrderText.KNOWLEDGE.catalog());
      assertTrue(why.contains("measure the bare faces first"), why.substring(0, 2000));
    }
  }

  @Test
  void a_dry_press_keeps_the_cautions_that_matter_to_it_and_its_measured_face() {
    Advice advice =
        new OrderText()
            .radialGapUm(-13)
            .set("bore.finish", "polished")
            .set("electronicsNear", true)
            .set("consequence", "injury")
            .advice();
    assertEquals(Kind.PRESS_DRY, advice.decision().kind());
    assertTrue(cautions(advice).contains("injury-without-load"), cautions(advice).toString());
    assertTrue(cautions(advice).contains("electronics-near"), cautions(advice).toString());
    assertFalse(kinds(advice).contains(StepKind.ABRADE));
  }

  @Test
  void a_primer_that_is_scraped_off_with_old_compound_is_not_counted() {
    OrderText order =
        new OrderText()
            .set("bore.state", "old-compound")
            .set("primer.id", "primer-solvent")
            .set("primer.minutesOnPart", 10);
    Advice scraped = order.advice();
    assertFalse(scraped.decision().primer().orElseThrow().onBore());
    assertTrue(scraped.decision().primer().orElseThrow().onPart());
    Advice goesOnAfter =
        order.set("bore.state", "old-compound").set("primer.minutesOnPart", 0).advice();
    assertTrue(goesOnAfter.decision().primer().orElseThrow().onBore());
  }

  @Test
  void a_part_that_comes_in_hot_grabs_as_soon_as_in_a_place_as_hot() {
    Duration room = working(new OrderText());
    Duration hot = working(new OrderText().set("part.arrivesAtC", 45));
    assertTrue(hot.compareTo(room) < 0, hot + " " + room);
    assertEquals(working(new OrderText().set("temperatureC", 45)), hot);
    assertEquals(room, working(new OrderText().set("part.arrivesAtC", 5)));
  }

  /**
   * By Arrhenius, R = 8.314 J/(mol K), each temperature at its warm end; whole seconds are told.
   */
  @Test
  void a_part_hotter_than_the_data_covers_grabs_still_sooner() {
    Advice room = new OrderText().advice();
    double doubt = room.order().cure().plusMinusC();
    double joules = room.decision().compound().orElseThrow().cure().activationKJ().high() * 1000;
    double inverse = 1 / (273.15 + 40 + doubt) - 1 / (273.15 + 60 + doubt);
    double warm = working(new OrderText().set("part.arrivesAtC", 40)).toSeconds();
    double hot = working(new OrderText().set("part.arrivesAtC", 60)).toSeconds();
    assertEquals(warm / Math.exp(joules / 8.314 * inverse), hot, 1.01);
  }

  private static Duration working(OrderText order) {
    return order.advice().cure().orElseThrow().workingTime();
  }

  /**
   * Steel around aluminium, 100 mm, at 8 °C: 100 (23.6 - 11.7) 1e-6 12 / 2 = 7 µm wider. Times grow
   * with the power n of the gap as closed: of gaps g and g + w they are as (g + 2 w) and (g + w).
   */
  @Test
  void a_gap_that_is_wider_in_a_cold_place_cures_as_a_gap_that_wide() {
    Advice narrow = wideAround(60);
    double wider = narrow.gap().widerInColdUm();
    assertEquals(7.1, wider, 0.5);
    Advice wide = wideAround(60 + wider);
    CompoundClass compound = narrow.decision().compound().orElseThrow();
    assertEquals(compound, wide.decision().compound().orElseThrow());
    assertTrue(compound.cure().referenceGapUm() < 60, "the gap counts");
    double ratio = (60 + 2 * wider) / (60 + wider);
    assertEquals(
        Math.pow(ratio, compound.cure().gapExponent().likely()),
        fixture(wide) / fixture(narrow),
        1e-3);
  }

  @Test
  void a_joint_closed_at_the_warmest_hour_of_a_cold_week_is_not_ready_sooner_for_that() {
    Advice cold = curing("8", "8");
    Advice closedWarm = curing("20", "8");
    assertEquals(cold.gap().closedUpperUm(), closedWarm.gap().closedUpperUm(), 1e-9);
    assertEquals(cold.gap().widerInColdUm(), closedWarm.gap().widerInColdUm(), 1e-9);
    assertTrue(closedWarm.gap().atAssemblyUm() < cold.gap().atAssemblyUm());
    double sooner = fixture(cold) - fixture(closedWarm);
    assertTrue(sooner >= 0 && sooner < 2 * 3600, sooner + " s: what one warm hour does");
  }

  /** Steel around aluminium; closed at noon in a place that has another temperature for an hour. */
  private static Advice curing(String noonC, String elseC) {
    return new OrderText()
        .set("bore.readingsMm", List.of(100.12))
        .set("bore.instrument", "bore-gauge-dial")
        .set("part.readingsMm", List.of(100.000))
        .set("part.material", "aluminium-6061")
        .set("start", "2027-03-12T12:00")
        .set("temperatureC", null)
        .set("temperaturePlusMinusC", null)
        .set(
            "cure",
            Map.of(
                "profile",
                List.of(
                    Map.of("at", "00:00", "c", Double.parseDouble(elseC)),
                    Map.of("at", "12:00", "c", Double.parseDouble(noonC)),
                    Map.of("at", "13:00", "c", Double.parseDouble(elseC)))))
        .advice();
  }

  private static Advice wideAround(double radialUm) {
    return new OrderText()
        .set("bore.readingsMm", List.of(100 + 2 * radialUm / 1000))
        .set("bore.instrument", "bore-gauge-dial")
        .set("part.readingsMm", List.of(100.000))
        .set("part.material", "aluminium-6061")
        .set("temperatureC", 8)
        .advice();
  }

  private static double fixture(Advice advice) {
    return advice.cure().orElseThrow().at(Stage.FIXTURE).typical().orElseThrow().toSeconds();
  }

  @Test
  void parts_that_press_on_each_other_somewhere_get_a_caution() {
    Advice closing =
        new OrderText()
            .set("bore.material", "cast-iron-grey")
            .set("bore.readingsMm", List.of(80.040, 80.041))
            .set("part.material", "aluminium-6061")
            .set("part.readingsMm", List.of(79.990, 79.991))
            .set("serviceHighC", 110)
            .advice();
    assertTrue(closing.gap().inService().tightestUm() < 0);
    assertTrue(cautions(closing).contains("closes-up"), cautions(closing).toString());
    assertFalse(cautions(new OrderText().radialGapUm(30).advice()).contains("closes-up"));
  }

  @Test
  void what_may_not_be_handed_over_is_no_yes_in_any_form() {
    Advice advice = new OrderText().set("load.axialN", 900_000).advice();
    assertEquals(Kind.USE_COMPOUND, advice.decision().kind());
    assertFalse(advice.isYes());
    assertEquals("DO NOT HAND OVER", DecisionTexts.of(advice).command());
    assertTrue(JsonReport.of(advice, OrderText.KNOWLEDGE.catalog()).contains("\"yes\": false"));
    assertTrue(BatchColumns.row(advice).contains("do-not-hand-over"));
  }
}
