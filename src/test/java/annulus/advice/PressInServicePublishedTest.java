package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.fit.PressAnswer;
import annulus.hold.LoadCheck;
import annulus.quantity.Estimate;
import annulus.report.DecisionTexts;
import annulus.report.RuleTexts;
import annulus.select.Finding;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Press fits hot and cold, by Lamé and linear expansion worked out here from the data's figures.
 */
class PressInServicePublishedTest {
  /** Steel and brass pressed lengthwise, dry: friction.csv has no row, so that of other pairs. */
  private static final double FRICTION_LOW = 0.05;

  /** Cast aluminium, 90 mm outside, around a solid steel pin of 50 mm, both polished. */
  private static OrderText aluminiumOnPin(double radialUm) {
    return PressedJoint.of("aluminium-cast", "steel-plain", 50, radialUm, 0.6)
        .set("bore.outsideDiameterMm", 90)
        .set("part.insideDiameterMm", 0)
        .set("engagementMm", 30)
        .set("serviceLowC", 0)
        .set("serviceHighC", 100);
  }

  private static double smoothing(Advice advice, double share) {
    return share
        * (advice.order().bore().finish().roughnessRzUm().likely()
            + advice.order().part().finish().roughnessRzUm().likely());
  }

  /** Pressure of two rings after Lamé, MPa: interference on the diameter in µm, moduli in GPa. */
  static double lame(
      double um, double d, double outside, double inside, double[] hub, double[] part) {
    double o = (outside * outside + d * d) / (outside * outside - d * d) + hub[1];
    double i = (d * d + inside * inside) / (d * d - inside * inside) - part[1];
    return Math.max(0, um) / d / (o / hub[0] + i / part[0]);
  }

  /** At 100 °C: 50 (23.0 - 11.3) 80 / 2000 = 23.4 µm wider, the doubt of 0.6 µm on top. */
  @Test
  void the_least_hold_is_that_of_the_expansions_that_open_the_fit_most() {
    Advice advice = aluminiumOnPin(-30).advice();
    double um = 2 * (30 - 0.6 - 23.4) - smoothing(advice, 0.8);
    double pressure = lame(um, 50, 90, 0, new double[] {70, 0.33}, new double[] {200, 0.292});
    Estimate least = advice.press().orElseThrow().leastHold().orElseThrow();
    assertEquals(0.05 * pressure * Math.PI * 50 * 30, least.low(), 0.01 * least.low());
    assertEquals(-30 + 23.4, advice.press().orElseThrow().loosestRadialUm(), 1e-9);
    // what is likely goes by the likely expansions: 50 (21.5 - 11.7) 80 / 2000 = 19.6 µm
    double likelyUm = 2 * (30 - 19.6) - smoothing(advice, 0.5);
    double likely = lame(likelyUm, 50, 90, 0, new double[] {72, 0.33}, new double[] {207, 0.292});
    assertEquals(0.095 * likely * Math.PI * 50 * 30, least.likely(), 0.01 * least.likely());
  }

  /** 24 µm less 23.4 µm and the doubt of 0.6 µm is nothing. */
  @Test
  void a_fit_that_may_open_to_nothing_covers_no_load() {
    Advice advice =
        aluminiumOnPin(-24).set("load.axialN", 50).set("load.repeats", "static").advice();
    PressReport press = advice.press().orElseThrow();
    assertEquals(0, press.leastHold().orElseThrow().low());
    assertTrue(press.leastHold().orElseThrow().likely() > 0);
    assertEquals(Optional.of(LoadCheck.Verdict.NOT_COVERED), press.load());
    assertEquals(Optional.empty(), advice.handBack());
  }

  /** A brass bush of 30 and 26 mm in a steel ring of 60 mm, 7 µm tight. */
  private static OrderText brassBush() {
    return PressedJoint.of("steel-plain", "brass-c260", 30, -7, 1)
        .set("bore.outsideDiameterMm", 60)
        .set("part.insideDiameterMm", 26)
        .set("engagementMm", 25)
        .set("serviceLowC", 10)
        .set("serviceHighC", 100)
        .set("load.axialN", 30)
        .set("load.repeats", "static");
  }

  /**
   * 6.3 MPa at 20 °C, and 30 (19.9 - 11.7) 80 / 1000 = 19.7 µm tighter at 100 °C; the bush yields
   * where its hoop stress, twice the pressure over (1 - (26/30)²), reaches 75 MPa.
   */
  @Test
  void a_bush_that_yields_when_it_is_hot_is_not_pressed() {
    Advice advice = brassBush().advice();
    PressReport press = advice.press().orElseThrow();
    double cold = 2 * 7 - smoothing(advice, 0.5);
    double atRest = brassInSteel(cold);
    double hot = brassInSteel(cold + 30 * (19.9 - 11.7) * 80 / 1000);
    double yields = 75 * (1 - (26.0 / 30) * (26.0 / 30)) / 2;
    assertTrue(atRest < yields && yields < hot, atRest + " " + yields + " " + hot);
    assertEquals(atRest, pressure(press.answer()).likely(), 0.01 * atRest);
    assertEquals(hot, pressure(press.tightest()).likely(), 0.01 * hot);
    assertEquals(PressReport.Standing.EXCEEDS, press.standing());
    assertEquals(Advice.Kind.TOO_TIGHT, advice.decision().kind());
    assertEquals(Optional.empty(), advice.handBack());
    assertEquals(0, press.leastHold().orElseThrow().low());
    double perK = brassInSteel(cold + 30 * (19.9 - 11.7) / 1000) - atRest;
    double yieldsAt = 20 + (yields - atRest) / perK;
    assertEquals(yieldsAt, press.standsSoAtC(), 0.5);
    Finding why =
        advice.decision().because().stream()
            .filter(f -> f.rule().id().equals("press-too-high"))
            .findFirst()
            .orElseThrow();
    String told = RuleTexts.reason(why);
    assertTrue(told.startsWith("At "), told);
    assertEquals(yieldsAt, Double.parseDouble(told.split(" ", 3)[1]), 0.5);
  }

  private static double brassInSteel(double um) {
    return lame(um, 30, 60, 26, new double[] {207, 0.292}, new double[] {110, 0.324});
  }

  private static Estimate pressure(Optional<PressAnswer> answer) {
    return ((PressAnswer.Pressed) answer.orElseThrow()).pressureMPa();
  }

  @Test
  void the_same_bush_is_pressed_where_it_stays_cool() {
    Advice advice = brassBush().set("serviceHighC", 25).advice();
    assertEquals(PressReport.Standing.WITHIN, advice.press().orElseThrow().standing());
    assertEquals(Advice.Kind.PRESS_DRY, advice.decision().kind());
    assertTrue(advice.handBack().isPresent());
  }

  @ParameterizedTest
  @CsvSource({
    "steel-plain, bronze-bearing, 30, -9, 60, 27, 25, -20, 110",
    "magnesium-az91, steel-plain, 20, -20, 24, 0, 20, -40, 40"
  })
  void other_joints_that_yield_hot_or_cold_are_not_pressed(
      String bore,
      String part,
      double diameter,
      double um,
      double outside,
      double inside,
      double length,
      int low,
      int high) {
    Advice advice =
        PressedJoint.of(bore, part, diameter, um, 1)
            .set("bore.outsideDiameterMm", outside)
            .set("part.insideDiameterMm", inside)
            .set("engagementMm", length)
            .set("serviceLowC", low)
            .set("serviceHighC", high)
            .set("load.axialN", 20)
            .set("load.repeats", "static")
            .advice();
    assertEquals(Optional.empty(), advice.handBack());
    assertEquals(Advice.Kind.TOO_TIGHT, advice.decision().kind());
    double at = advice.press().orElseThrow().standsSoAtC();
    assertTrue(low <= at && at <= high, at + " °C");
  }

  /**
   * Where the bush may yield hot, it keeps its yield pressure there and loses what the joint opens
   * after, down to -20 °C, by the widest expansions and the highest moduli.
   */
  @Test
  void what_is_left_after_a_member_may_have_yielded_is_what_is_counted_on() {
    Advice advice =
        brassBush()
            .set("radialGapPlusMinusUm", 0.2)
            .set("serviceLowC", -20)
            .set("serviceHighC", 45)
            .set("load", null)
            .advice();
    PressReport press = advice.press().orElseThrow();
    assertEquals(PressReport.Standing.MAY_EXCEED, press.standing());
    double opens = 30 * (20.3 - 11.3) * (45 + 20) / 1000;
    double per = lame(opens, 30, 60, 26, new double[] {212, 0.292}, new double[] {115, 0.324});
    double left = 75 * (1 - (26.0 / 30) * (26.0 / 30)) / 2 - per;
    double elastic =
        lame(
            2 * (7 - 0.2) - smoothing(advice, 0.8) - 30 * (20.3 - 11.3) * 40 / 1000,
            30,
            60,
            26,
            new double[] {200, 0.292},
            new double[] {105, 0.324});
    double newtons = FRICTION_LOW * Math.min(left, elastic) * Math.PI * 30 * 25;
    double least = press.leastHold().orElseThrow().low();
    assertEquals(newtons, least, 0.01 * newtons);
    assertTrue(left < elastic, left + " " + elastic);
  }

  /** A worn bush that reads 7.1 µm tight: how surely, must not decide whether it goes out. */
  private static OrderText wornBush(double plusMinusUm) {
    return PressedJoint.of("aluminium-cast", "brass-c260", 47.48, -7.1, plusMinusUm)
        .set("bore.finish", "as-machined")
        .set("part.finish", "as-machined")
        .set("bore.outsideDiameterMm", 76)
        .set("part.insideDiameterMm", 23.7)
        .set("engagementMm", 32.5)
        .set("serviceLowC", -10)
        .set("serviceHighC", 60)
        .set("consequence", "stranding")
        .set("load.axialN", 132)
        .set("load.repeats", "light-repeated");
  }

  /** The film is of 3 to 10 MPa, weaker than what was tested: bond or grip, whichever is less. */
  @Test
  void a_film_between_parts_that_press_counts_no_more_than_their_grip() {
    Advice sure = wornBush(3.6).advice();
    assertEquals(Advice.Kind.PRESS_DRY, sure.decision().kind());
    assertEquals(Optional.empty(), sure.handBack());
    Advice doubtful = wornBush(4).advice();
    assertEquals(Advice.Kind.USE_COMPOUND, doubtful.decision().kind());
    assertEquals(Optional.empty(), doubtful.handBack());
    double perSide = 47.48 * (23.0 - 19.5) * 40 / 2000; // 3.3 µm wider at 60 °C
    double left = 2 * (7.1 - 4 - perSide) - smoothing(doubtful, 0.8);
    assertTrue(left < 0, left + " µm");
    assertEquals(0, doubtful.hold().orElseThrow().bondHot().low());
    assertEquals("DO NOT HAND OVER", DecisionTexts.of(doubtful).command());
  }

  @Test
  void without_a_load_what_goes_loose_as_a_press_fit_is_held_back_as_a_film_too() {
    OrderText hot =
        PressedJoint.of("aluminium-cast", "steel-plain", 60, -6, 3)
            .set("bore.outsideDiameterMm", 90)
            .set("part.insideDiameterMm", 0)
            .set("serviceHighC", 80)
            .set("primer", "primer-dry");
    Advice advice = hot.advice();
    assertEquals(Advice.Kind.USE_COMPOUND, advice.decision().kind());
    assertEquals(Optional.empty(), advice.handBack());
    assertTrue(advice.press().orElseThrow().leastHold().orElseThrow().likely() == 0);
    assertTrue(hot.set("radialGapUm", -2).advice().handBack().isPresent(), "a film's own joint");
  }
}
