package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.Kind;
import annulus.advice.PressReport.Standing;
import annulus.report.JsonReport;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A press fit is not handed back on what nobody knows of its members. */
class PressUnknownTest {
  private static OrderText pressed(String bore, double radialUm) {
    return PressedJoint.of(bore, "steel-plain", 28, radialUm, 0.5)
        .set("bore.outsideDiameterMm", 38)
        .set("part.insideDiameterMm", 0)
        .set("engagementMm", 30)
        .set("consequence", "injury");
  }

  private static String why(Advice advice) {
    return JsonReport.of(advice, OrderText.KNOWLEDGE.catalog());
  }

  /**
   * Grey iron 28/38 mm around solid steel, 70 µm across: hoop stress at the bore by Lamé 150 to 215
   * MPa, more than the weaker classes bear (about 150 MPa, from memory).
   */
  @Test
  void a_grey_iron_hub_that_may_crack_is_not_pressed() {
    Advice advice = pressed("cast-iron-grey", -35).advice();
    assertEquals(Optional.empty(), advice.handBack());
    assertFalse(advice.isYes());
    assertEquals(Kind.TOO_TIGHT, advice.decision().kind());
    assertTrue(pressed("cast-iron-grey", -8).advice().isYes());
  }

  @Test
  void a_diameter_left_out_never_releases_what_it_could_hold_back() {
    Advice known = pressed("steel-plain", -70).set("bore.outsideDiameterMm", 30).advice();
    assertFalse(known.isYes());
    for (String left : new String[] {"bore.outsideDiameterMm", "part.insideDiameterMm"}) {
      Advice unknown =
          pressed("steel-plain", -70).set("bore.outsideDiameterMm", 30).set(left, null).advice();
      assertEquals(Standing.DIAMETER_MISSING, unknown.press().orElseThrow().standing());
      assertEquals(Optional.empty(), unknown.handBack(), left);
      assertTrue(why(unknown).contains("give the outside diameter around the bore"), why(unknown));
    }
  }

  /** 4 µm per side on 28 mm strain steel by 2.9e-4, 60 to 170 MPa at worst: any wall bears that. */
  @Test
  void a_light_press_fit_needs_no_diameter() {
    OrderText light =
        pressed("steel-plain", -4)
            .set("bore.outsideDiameterMm", null)
            .set("part.insideDiameterMm", null)
            .set("serviceLowC", 15)
            .set("serviceHighC", 25);
    assertTrue(light.advice().press().orElseThrow().borneWhateverDiameters());
    assertTrue(light.advice().isYes());
  }

  @ParameterizedTest
  @CsvSource({"nuisance, true", "stranding, false", "injury, false"})
  void a_laminate_whose_maker_alone_knows_what_it_bears_goes_out_as_a_nuisance_only(
      String consequence, boolean released) {
    Advice advice =
        pressed("carbon-epoxy", -12)
            .set("consequence", consequence)
            .set("serviceLowC", 15)
            .set("serviceHighC", 25)
            .advice();
    assertEquals(Standing.NO_HONEST_FIGURE, advice.press().orElseThrow().standing());
    assertEquals(released, advice.isYes());
    assertEquals(!released, why(advice).contains("only its maker can say"), why(advice));
  }

  @Property(tries = 400)
  void leaving_out_a_diameter_is_never_earlier(@ForAll long seed) {
    Random random = new Random(seed);
    String[] metals = {"steel-plain", "aluminium-cast", "cast-iron-grey", "brass-c260"};
    double joint = 10 + random.nextInt(60);
    OrderText order =
        PressedJoint.of(
                metals[random.nextInt(4)],
                metals[random.nextInt(4)],
                joint,
                -random.nextInt(40),
                0.5)
            .set("bore.outsideDiameterMm", joint + 1 + random.nextInt(60))
            .set("part.insideDiameterMm", (int) (joint * random.nextInt(9) / 10))
            .set("serviceLowC", 10)
            .set("serviceHighC", 40)
            .set("load", null);
    boolean known = order.advice().handBack().isPresent();
    boolean outside = random.nextBoolean();
    if (outside || random.nextBoolean()) {
      order.set("bore.outsideDiameterMm", null);
    }
    if (!outside) {
      order.set("part.insideDiameterMm", null);
    }
    boolean unknown = order.advice().handBack().isPresent();
    Statistics.label("known, not known").collect(known, unknown);
    assertTrue(known || !unknown, "seed " + seed);
  }
}
