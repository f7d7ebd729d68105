package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.hold.LoadCheck;
import annulus.quantity.Estimate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Press fits hot and cold, by Lamé and linear expansion worked out here from the data's figures. */
class PressInServicePublishedTest {
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
    double likely =
        lame(likelyUm, 50, 90, 0, new double[] {72, 0.33}, new double[] {207, 0.292});
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
}
