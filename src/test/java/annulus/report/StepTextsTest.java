package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.Advice.Kind;
import annulus.advice.OrderText;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the mechanic is told to do, in the words that stand on card, page and screen. */
class StepTextsTest {
  private static final String GLOVES = "Gloves on throughout, fresh air. No flame or spark: ";

  private static AnswerWords words(Advice advice) {
    return new AnswerWords(advice, OrderText.KNOWLEDGE.catalog());
  }

  private static List<String> steps(OrderText order) {
    return words(order.advice()).steps();
  }

  private static String all(OrderText order) {
    return String.join("\n", steps(order));
  }

  private static String text(OrderText order) {
    return TextReport.of(order.advice(), OrderText.KNOWLEDGE.catalog(), true)
        .replaceAll("\\s+", " ");
  }

  private static OrderText pressed() {
    return new OrderText()
        .radialGapUm(-13)
        .set("bore.outsideDiameterMm", 60)
        .set("part.insideDiameterMm", 0);
  }

  private static OrderText inert() {
    return new OrderText().faces("aluminium-6061", "anodised");
  }

  private static OrderText moved() {
    return new OrderText().set("movedAt", "2027-03-11T10:40Z");
  }

  private static OrderText primed(String on, double minutes) {
    return new OrderText()
        .set("primer", null)
        .set("primer.id", "primer-solvent")
        .set("primer.on", on)
        .set("primer.minutesOnPart", minutes);
  }

  @Test
  void gloves_and_no_flame_come_before_cleaner_primer_and_compound_in_every_answer() {
    List<OrderText> orders =
        List.of(
            new OrderText(),
            new OrderText().set("bore.state", "old-compound"),
            inert(),
            inert().set("primer", null),
            primed("both", 10),
            primed("both", 8 * 1440).faces("aluminium-6061", "anodised"),
            moved());
    for (OrderText order : orders) {
      List<String> steps = steps(order);
      assertEquals(GLOVES + "cleaner and primer burn.", steps.get(0), steps.toString());
    }
    assertEquals(GLOVES + "cleaner burns.", steps(pressed()).get(0));
    assertTrue(words(moved().advice()).decision().startsWith("STRIP"));
  }

  @Test
  void the_cleaner_is_called_flammable_where_no_primer_is_used() {
    assertTrue(
        words(new OrderText().advice())
            .cautions()
            .contains(
                "Ventilate; cleaner and primer burn and their vapour is heavy: no flame, no"
                    + " sparks."));
  }

  @Test
  void each_face_is_scraped_as_it_bears_it_and_named() {
    OrderText order = new OrderText().set("bore.state", "old-compound");
    assertTrue(all(order).contains("Scrape all compound off the bore down to bare material."));
    order.set("part.state", "old-compound").set("part.material", "carbon-epoxy");
    order.set("part.finish", "abraded").set("primer", null);
    String both = all(order);
    assertTrue(both.contains("Scrape all compound off the bore down to bare material.\n"), both);
    assertTrue(
        both.contains(
            "Take all compound off the part with a plastic scraper, the rest by hand with fine"
                + " abrasive, wet, dust mask on. Never cut fibres."),
        both);
    order.set("part.material", "steel-plain").set("part.finish", "zinc-plated");
    assertTrue(
        all(order)
            .contains("off the part with a plastic scraper, without cutting its plating or film"));
    order.set("part.finish", "ground");
    assertTrue(all(order).contains("Scrape all compound off bore and part down"), all(order));
  }

  @Test
  void cadmium_is_not_scraped_or_sanded() {
    for (OrderText order :
        List.of(new OrderText().set("bore.state", "old-compound").set("primer", null), moved())) {
      order.set("bore.finish", "cadmium-plated");
      String steps = all(order);
      assertTrue(
          steps.contains(
              "Do not scrape, sand or brush the bore: cadmium dust is poisonous. Ask the part's"
                  + " maker"),
          steps);
      assertFalse(steps.contains("Scrape all compound off the bore"), steps);
    }
  }

  @Test
  void a_glossy_laminate_is_dulled_wet_without_cutting_fibres_whatever_the_other_face() {
    for (String finish : List.of("as-machined", "anodised")) {
      OrderText order = new OrderText().radialGapUm(30).set("primer", null);
      order.set("bore.material", "carbon-epoxy").set("bore.finish", "moulded");
      order.set("part.material", "aluminium-6061").set("part.finish", finish);
      String steps = all(order);
      assertTrue(
          steps.contains(
              "Rub the gloss of the bore dull by hand with fine abrasive, wet, dust mask on."
                  + " Never cut fibres."),
          steps);
      assertFalse(steps.contains("of the part dull"), steps);
      assertFalse(steps.contains("on scrap"), "of a laminate the caution says it");
    }
  }

  @Test
  void cleaner_and_primer_are_tried_on_plastic_too() {
    OrderText order = new OrderText().radialGapUm(30).set("primer", null);
    order.set("bore.material", "nylon-66").set("bore.finish", "moulded");
    String steps = all(order);
    assertTrue(
        steps.contains("Try cleaner, primer and compound on scrap of the bore first"), steps);
    assertTrue(steps.indexOf("Try cleaner") < steps.indexOf("Clean bore"), steps);
    assertTrue(
        String.join("\n", words(order.advice()).cautions())
            .contains("try cleaner, primer and compound on a scrap"));
    OrderText dry = pressed().set("bore.material", "polycarbonate").set("bore.finish", "moulded");
    assertTrue(all(dry).contains("Try the cleaner on scrap of the bore first"));
  }

  @Test
  void a_primer_goes_on_as_its_kind_allows() {
    OrderText wiped = primed("both", 0).set("primer.id", "primer-dry");
    String steps = all(wiped);
    assertTrue(steps.contains("Wipe solvent-free wiped-on primer on both faces, one"), steps);
    assertTrue(steps.contains("one thin coat. Good for 1 d, then clean and prime again."), steps);
    assertTrue(all(primed("both", 0)).contains("Wipe or spray copper-salt primer in solvent on"));
  }

  @ParameterizedTest
  @CsvSource({
    "titanium-6al4v, as-machined, titanium-6al4v, as-machined, Titanium in titanium",
    "stainless-304, as-machined, stainless-316, passivated, Stainless in stainless",
    "stainless-304, as-machined, titanium-6al4v, as-machined, ''",
    "stainless-304, as-machined, stainless-304, chrome-plated, ''",
    "steel-plain, ground, steel-plain, ground, ''"
  })
  void like_in_like_that_galls_is_told_where_it_is_pressed_dry(
      String bore, String boreFinish, String part, String partFinish, String galls) {
    OrderText order = pressed().set("bore.material", bore).set("part.material", part);
    order.set("bore.finish", boreFinish).set("part.finish", partFinish);
    assertEquals(Kind.PRESS_DRY, order.advice().decision().kind());
    assertEquals(!galls.isEmpty(), all(order).contains("galls"), all(order));
    assertTrue(galls.isEmpty() || all(order).contains(galls + " galls and can seize"));
  }

  @Test
  void a_hot_member_is_named_and_cools_first_and_a_time_too_short_is_no_time_to_work_by() {
    OrderText hot = new OrderText().set("bore.arrivesAtC", 58);
    List<String> steps = steps(hot);
    assertEquals(
        "Let the bore cool to room temperature first: hot, the compound grabs at once.",
        steps.get(0));
    assertTrue(steps.get(1).startsWith("STOP: as it stands it may grab within "), steps.get(1));
    assertTrue(steps.get(1).endsWith("push it home. Work cooler, then ask again."), steps.get(1));
    assertFalse(all(hot).contains("in one go, within"), all(hot));
    assertTrue(text(hot).contains("too quick for anybody, see the steps."), text(hot));
    OrderText warm = new OrderText().set("part.arrivesAtC", 25);
    assertTrue(steps(warm).get(0).startsWith("Let the part cool"), all(warm));
    assertTrue(all(warm).contains("in one go, within"), all(warm));
    assertFalse(all(warm).contains("STOP"), all(warm));
    assertFalse(all(new OrderText()).contains("cool"), "nothing is warm");
    assertFalse(all(pressed().set("bore.arrivesAtC", 58)).contains("cool"), "nothing grabs");
  }

  @Test
  void a_cold_member_is_named() {
    OrderText cold = new OrderText().set("bore.arrivesAtC", 2);
    assertTrue(steps(cold).get(0).startsWith("Let the bore come to room"), all(cold));
    assertTrue(text(cold).contains("as it comes in, by up to 20 K: the bore."), text(cold));
    cold.set("part.arrivesAtC", 12);
    assertTrue(steps(cold).get(0).startsWith("Let bore and part come to room"), all(cold));
    assertTrue(text(cold).contains("by up to 20 K: the bore and part."), text(cold));
  }

  @Test
  void a_wide_or_long_seat_is_coated_on_both_faces_and_a_wide_one_centred() {
    String near = all(new OrderText().radialGapUm(30));
    assertTrue(near.contains("Put a ring of it round the mouth of the bore."), near);
    assertFalse(near.contains("Centre it"), near);
    String wide = all(new OrderText().radialGapUm(60));
    assertTrue(wide.contains("Centre it with a jig, shims or a V-block until it is"), wide);
    assertTrue(wide.contains("it can sit up to 60 µm off centre."), wide);
    assertTrue(wide.contains("Put a ring of it"), wide);
    String wider = all(new OrderText().radialGapUm(110));
    assertTrue(wider.contains("Coat both faces all over with it."), wider);
    String longer = all(new OrderText().radialGapUm(30).set("engagementMm", 40));
    assertTrue(longer.contains("Coat both faces all over with it."), longer);
  }

  @Test
  void nothing_is_put_into_a_bearing_that_slides_over_a_shaft() {
    OrderText order = new OrderText().radialGapUm(30).set("sealNear", true);
    order.set("bore.material", "steel-bearing");
    assertTrue(all(order).contains("Put a ring of it round the part, where the bore will sit."));
    order.set("engagementMm", 40);
    assertTrue(
        all(order).contains("Coat the part all over with it, where the bore will sit; none"));
    String cautions = String.join("\n", words(order.advice()).cautions());
    assertFalse(cautions.contains("outer member"), cautions);
    assertFalse(cautions.contains("a drop or two"), cautions);
    assertTrue(cautions.contains("put on no more than the steps say, away from the seal"));
  }

  @Test
  void where_primer_would_do_the_steps_say_on_which_face_and_how() {
    OrderText two = inert();
    assertTrue(all(two).contains("Wipe or spray copper-salt primer in solvent on both faces"));
    assertTrue(words(two.advice()).instead().get(0).startsWith("Put primer on as the steps say"));
    OrderText one = new OrderText().set("part.finish", "zinc-plated").set("temperatureC", 13);
    assertEquals(Kind.NO_CLASS, one.advice().decision().kind());
    assertTrue(all(one).contains("primer in solvent on the part, one thin coat"), all(one));
    String because = String.join("\n", words(one.advice()).because());
    assertTrue(because.contains("The part is inert and it may be only 13 °C: prime"), because);
    assertFalse(because.contains("inert face"), because);
  }

  /** The bore is slow and primed, the inert part is not: only that one is primed. */
  @Test
  void a_face_that_is_primed_already_is_left_alone_when_the_other_is_primed() {
    OrderText order =
        primed("bore", 10).set("bore.material", "stainless-304").set("part.finish", "zinc-plated");
    assertEquals(Kind.NO_CLASS, order.advice().decision().kind());
    List<String> steps = steps(order);
    assertTrue(steps.get(1).startsWith("Clean the part until"), steps.toString());
    assertTrue(steps.get(1).contains("Primer is on the bore: do not wipe or touch it."));
    assertTrue(steps.get(2).contains("on the part, one thin coat"), steps.toString());
    assertTrue(words(order.advice()).because().get(0).endsWith("Prime the part."));
  }

  @Test
  void a_reason_tells_at_which_temperature_and_when() {
    OrderText loose =
        pressed().set("bore.material", "aluminium-6061").set("serviceHighC", 120).radialGapUm(-8);
    assertTrue(text(loose).contains("At 120 °C the fit stands at"), text(loose));
    OrderText inUse = new OrderText().radialGapUm(20).set("bore.material", "nylon-66");
    inUse.set("bore.finish", "abraded").set("primer", null).set("serviceLowC", -20);
    assertTrue(text(inUse).contains("press on each other, only in use: "), text(inUse));
    assertTrue(text(inUse).contains("µm at -20 °C (below"), text(inUse));
    assertFalse(text(inUse).contains("with some give"), text(inUse));
    OrderText atOnce = new OrderText().bore(30.02, 29.999);
    atOnce.set("bore.instrument", "inside-micrometer");
    assertFalse(text(atOnce).contains("only in use"), text(atOnce));
  }

  @Test
  void a_bearing_that_nobody_read_was_not_read_once() {
    OrderText order = new OrderText().bore(30.06, 30.06, 30.061);
    order.set("part.readingsMm", null).set("part.instrument", null).set("part.bearingMm", 30);
    order.set("part.material", "steel-bearing");
    assertFalse(text(order).contains("Read only once"), text(order));
    order.bore(30.06);
    assertTrue(text(order).contains("Read only once: the bore. Ovality"), text(order));
  }

  @Test
  void depths_that_were_entered_are_not_asked_for() {
    String tapered =
        new OrderText()
            .bore(30.05)
            .json()
            .replace(
                "30.05",
                "{\"mm\": 30.03, \"depthMm\": 3, \"angleDeg\": 0},"
                    + "{\"mm\": 30.11, \"depthMm\": 18, \"angleDeg\": 0}");
    Advice advice = OrderText.ADVISOR.advise(OrderText.read(tapered));
    String cautions = String.join("\n", words(advice).cautions());
    assertTrue(cautions.contains("Taper is 40 µm per side"), cautions);
    assertFalse(cautions.contains("Enter depth"), cautions);
  }

  private static OrderText loaded(double axialN, String repeats) {
    return new OrderText()
        .set("consequence", "nuisance")
        .set("load.axialN", axialN)
        .set("load.repeats", repeats);
  }

  @ParameterizedTest
  @ValueSource(strings = {"static", "reversing"})
  void a_hold_under_a_load_that_repeats_says_so(String repeats) {
    String text = text(loaded(100, repeats));
    String card = JobCard.of(loaded(100, repeats).advice(), OrderText.KNOWLEDGE.catalog());
    boolean said = repeats.equals("reversing");
    assertEquals(said, text.contains("counted for a load that repeats (reversing): one"), text);
    assertEquals(said, card.contains("hot, repeated load: at least"));
  }

  /** The hand-back waits until the hold just covers the load: three digits of each would cross. */
  @Test
  void a_load_just_covered_is_told_in_three_digits_and_does_not_read_as_more_than_the_hold() {
    int near = 0;
    double most = loaded(1, "static").advice().hold().orElseThrow().bondHot().low();
    for (int i = 0; i < 20; i++) {
      double newton = most * (0.9 + i / 200.0);
      String text = text(loaded(newton, "static").set("load.safetyFactor", 1));
      assertFalse(text.matches(".* at least \\d{4}\\.\\d.*"), text);
      assertFalse(
          text.matches(".*\\b(at least|just under|along the bore:) \\d\\d\\d[1-9] N.*"), text);
      near += text.contains("N, only just covered") ? 1 : 0;
    }
    assertTrue(near > 0, "some load was just covered");
  }
}
