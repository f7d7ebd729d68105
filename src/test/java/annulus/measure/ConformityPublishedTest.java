package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** JCGM 106:2012 examples and the ISO 14253-1 rule. */
class ConformityPublishedTest {
  private static final double INFINITE = Double.POSITIVE_INFINITY;

  private static double within(double y, double u, double low, double high) {
    return Conformity.probabilityWithin(y, u, INFINITE, low, high);
  }

  @Test
  void a_two_sided_class_agrees_with_jcgm_106() {
    // JCGM 106 7.4, from memory
    assertEquals(0.66262979, within(13.6, 1.8, 12.5, 16.3), 5e-9);
  }

  @Test
  void one_sided_limits_agree_with_jcgm_106() {
    // JCGM 106 7.3, from memory
    assertEquals(0.91924334, within(-5.47, 0.05, -INFINITE, -5.40), 5e-9);
    assertEquals(0.98900955, within(509.7, 8.6, 490, INFINITE), 5e-9);
  }

  @Test
  void normal_tails_agree_with_printed_values() {
    assertEquals(0.012419330652, 1 - within(10, 0.4, 9, 11), 1e-12);
    assertEquals(0.9937903347, within(12, 0.4, 11, INFINITE), 5e-11);
    // computed: 1 − Φ(10) = 7.61985302416e-24, whichever side it lies on
    assertEquals(7.61985302416e-24, within(0, 1, 10, INFINITE), 1e-33);
    assertEquals(7.61985302416e-24, within(0, 1, -INFINITE, -10), 1e-33);
  }

  @Test
  void the_guard_at_95_percent_is_1_65_standard_uncertainties() {
    // ISO 14253-1: one-sided guard 1.65 u
    double u = 10;
    assertEquals(Verdict.INSIDE, decide(16.5, u));
    assertEquals(Verdict.NOT_DECIDED, decide(16.4, u));
    assertEquals(Verdict.NOT_DECIDED, decide(-16.4, u));
    assertEquals(Verdict.OUTSIDE, decide(-16.5, u));
    assertEquals(Verdict.INSIDE, decide(83.5, u));
    assertEquals(Verdict.NOT_DECIDED, decide(83.6, u));
    assertEquals(Verdict.NOT_DECIDED, decide(116.4, u));
    assertEquals(Verdict.OUTSIDE, decide(116.5, u));
  }

  @Test
  void exactly_on_the_end_without_uncertainty_is_inside() {
    assertEquals(Verdict.INSIDE, decide(0, 0));
    assertEquals(Verdict.INSIDE, decide(100, 0));
    assertEquals(Verdict.OUTSIDE, decide(Math.nextDown(0.0), 0));
    assertEquals(Verdict.OUTSIDE, decide(Math.nextUp(100.0), 0));
    assertEquals(1, within(0, 0, 0, 100));
    assertEquals(0, within(Math.nextUp(100.0), 0, 0, 100));
  }

  @Test
  void few_degrees_of_freedom_widen_the_guard() {
    // t at 95 % one-sided: ν 2 2.920 (Student t table)
    assertEquals(Verdict.NOT_DECIDED, Conformity.decide(29.1, 10, 2.9, 0, 100, 0.95));
    assertEquals(Verdict.INSIDE, Conformity.decide(29.3, 10, 2.9, 0, 100, 0.95));
  }

  private static Verdict decide(double y, double u) {
    return Conformity.decide(y, u, INFINITE, 0, 100, 0.95);
  }
}
