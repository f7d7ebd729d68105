package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Simulated lobed bores r = R + A cos n(θ − φ), computed. */
class FormIndependentTest {
  private static final double RADIUS = 21;
  private static final double AMPLITUDE = 0.015;

  private static double radius(int lobes, double phaseDeg, double angleDeg) {
    return RADIUS + AMPLITUDE * Math.cos(lobes * Math.toRadians(angleDeg - phaseDeg));
  }

  private static double twoPoint(int lobes, double phase, double angle) {
    return radius(lobes, phase, angle) + radius(lobes, phase, angle + 180);
  }

  private static double threePoint(int lobes, double phase, double angle) {
    double sum = 0;
    for (int k = 0; k < 3; k++) {
      sum += radius(lobes, phase, angle + 120 * k);
    }
    return 2 * sum / 3;
  }

  private static List<Reading> around(int lobes, double phase, double... angles) {
    List<Reading> readings = new ArrayList<>();
    for (double a : angles) {
      readings.add(Reading.at(twoPoint(lobes, phase, a), 5, a));
    }
    return readings;
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 5, 7, 9})
  void two_contacts_see_nothing_of_odd_lobes_and_say_so(int lobes) {
    MeasuredDiameter bore =
        Samples.bore(Samples.IDEAL_BORE, around(lobes, 17, 0, 30, 60, 90, 120, 150));
    assertEquals(0, bore.ovalityUm().orElseThrow(), 1e-6);
    assertEquals(2 * RADIUS, bore.meanMm(), 1e-9);
    assertTrue(bore.has(Note.TWO_POINT_BLIND_TO_ODD_LOBES));
  }

  @ParameterizedTest
  @ValueSource(ints = {2, 4, 6})
  void two_contacts_see_even_lobes_in_full(int lobes) {
    double[] angles = new double[180];
    for (int i = 0; i < 180; i++) {
      angles[i] = i;
    }
    MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, around(lobes, 0, angles));
    assertEquals(4000 * AMPLITUDE, bore.ovalityUm().orElseThrow(), 1e-5);
    assertTrue(bore.has(Note.OVAL));
  }

  @Test
  void three_contacts_see_only_multiples_of_three_and_say_so() {
    for (int lobes : new int[] {2, 5, 7}) {
      List<Reading> readings = new ArrayList<>();
      for (double a = 0; a < 120; a += 20) {
        readings.add(Reading.at(threePoint(lobes, 11, a), 5, a));
      }
      MeasuredDiameter bore = Samples.bore(Samples.THREE_POINT, readings);
      assertEquals(0, bore.spreadUm(), 1e-6, "lobes " + lobes);
      assertEquals(OptionalDouble.empty(), bore.ovalityUm());
      assertTrue(bore.has(Note.THREE_POINT_BLIND_TO_OVAL));
    }
    double swing = threePoint(3, 0, 0) - threePoint(3, 0, 60);
    assertEquals(4 * AMPLITUDE, swing, 1e-12);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 7, 22.5, 45, 61, 133})
  void readings_at_0_60_120_give_an_oval_in_full_whatever_its_phase(double phase) {
    MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, around(2, phase, 0, 60, 120));
    assertEquals(4000 * AMPLITUDE, bore.ovalityUm().orElseThrow(), 1e-5);
    assertEquals(2 * RADIUS, bore.meanMm(), 1e-9);
    assertEquals(2 * RADIUS + 2 * AMPLITUDE, bore.largestMm(), 1e-9);
    assertEquals(2 * RADIUS - 2 * AMPLITUDE, bore.smallestMm(), 1e-9);
    assertTrue(bore.spreadUm() <= bore.ovalityUm().orElseThrow() + 1e-6);
  }

  @Test
  void the_pattern_may_start_anywhere_and_go_round_the_clock() {
    for (double[] angles :
        new double[][] {{10.1, 70.1, 130.1}, {0, 120, 240}, {190.1, 70.1, 310.1}}) {
      MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, around(2, 33, angles));
      assertEquals(4000 * AMPLITUDE, bore.ovalityUm().orElseThrow(), 1e-5);
    }
  }

  @Test
  void one_pair_at_right_angles_misses_an_oval_at_45_degrees() {
    MeasuredDiameter missed = Samples.bore(Samples.IDEAL_BORE, around(2, 45, 0, 90));
    assertEquals(0, missed.ovalityUm().orElseThrow(), 1e-6);
    MeasuredDiameter seen = Samples.bore(Samples.IDEAL_BORE, around(2, 0, 0, 90));
    assertEquals(4000 * AMPLITUDE, seen.ovalityUm().orElseThrow(), 1e-6);
  }

  @Test
  void angles_half_a_turn_apart_are_one_place() {
    MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, around(2, 0, 30, 210));
    assertEquals(OptionalDouble.empty(), bore.ovalityUm());
    assertFalse(bore.budget().component("form").isPresent());
  }

  @Test
  void taper_is_the_difference_of_the_depths_means() {
    List<Reading> readings =
        List.of(
            Reading.at(42.00, 2, 0),
            Reading.at(42.02, 2, 90),
            Reading.at(42.03, 9, 0),
            Reading.at(42.05, 9, 90));
    MeasuredDiameter bore = Samples.bore(Samples.DIAL_BORE, readings);
    assertEquals(30, bore.taperUm().orElseThrow());
    assertEquals(20, bore.ovalityUm().orElseThrow());
    assertTrue(bore.has(Note.TAPERED));
    assertFalse(bore.has(Note.OVAL), "20 µm is the limit, not above it");
    assertEquals(42.025, bore.meanMm(), 1e-9);
    assertEquals(42.05, bore.largestMm(), 1e-9);
    assertEquals(42.00, bore.smallestMm(), 1e-9);
  }
}
