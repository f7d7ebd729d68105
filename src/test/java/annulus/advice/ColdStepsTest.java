package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.TemperatureHistory;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import org.junit.jupiter.api.Test;

class ColdStepsTest {
  @Property(tries = 200)
  void steps_are_never_above_what_came_in(
      @ForAll @LongRange(min = 0, max = 100_000) long seed,
      @ForAll @IntRange(min = 20, max = 900) int step) {
    Random random = new Random(seed);
    ColdSteps steps = new ColdSteps(1000, 9000, step);
    double[] at = new double[61];
    double[] celsius = new double[61];
    at[0] = 1000;
    celsius[0] = 20;
    for (int i = 1; i <= 60; i++) {
      at[i] = at[i - 1] + 1 + random.nextInt(300);
      celsius[i] = 10 + 20 * random.nextDouble();
      steps.piece(at[i - 1], celsius[i - 1], at[i], celsius[i]);
    }
    TemperatureHistory history = steps.history(20);
    for (double s = 1000; s < Math.min(9000, at[60]) - 1; s += 3.7) {
      int i = 1;
      while (at[i] <= s) {
        i++;
      }
      double exact =
          celsius[i - 1] + (celsius[i] - celsius[i - 1]) * (s - at[i - 1]) / (at[i] - at[i - 1]);
      assertTrue(history.celsiusAt(s - 1000) <= exact + 1e-9, "at " + s);
    }
  }

  @Test
  void five_days_of_seconds_stay_small() {
    ColdSteps steps = new ColdSteps(0, 432_000, 60);
    for (int s = 0; s < 432_000; s++) {
      steps.piece(s, 18 + s % 7 * 0.01, s + 1, 18 + (s + 1) % 7 * 0.01);
    }
    List<TemperatureHistory.Point> points = steps.points();
    assertEquals(2 * 432_000 / 60, points.size());
    assertEquals(432_000, points.get(points.size() - 1).seconds());
  }

  @Test
  void what_lies_before_the_first_piece_is_as_cold_as_said() {
    ColdSteps steps = new ColdSteps(0, 1000, 60);
    steps.piece(500, 18, 900, 19);
    assertEquals(7, steps.history(7).celsiusAt(100), 1e-9);
    assertEquals(18, steps.history(30).celsiusAt(100), 1e-9);
  }

  @Test
  void nothing_in_the_time_asked_for_is_refused() {
    ColdSteps steps = new ColdSteps(0, 1000, 60);
    steps.piece(2000, 18, 2900, 19);
    assertTrue(steps.isEmpty());
    assertThrows(InvalidValue.class, () -> steps.history(7));
  }
}
