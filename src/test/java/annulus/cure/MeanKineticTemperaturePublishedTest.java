package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import annulus.cure.TemperatureHistory.Point;
import annulus.quantity.InvalidValue;
import java.util.List;
import org.junit.jupiter.api.Test;

/** USP ⟨1160⟩ with ΔH/R = 10 000 K; values computed to many digits. */
class MeanKineticTemperaturePublishedTest {
  @Test
  void the_mean_kinetic_temperatures_are_those_computed() {
    assertEquals(25, MeanKineticTemperature.ofReadings(10_000, 25), 1e-9);
    assertEquals(26.2598869160, MeanKineticTemperature.ofReadings(10_000, 20, 30), 1e-9);
    assertEquals(25.8582084281, MeanKineticTemperature.ofReadings(10_000, 20, 25, 30), 1e-9);
    double year =
        MeanKineticTemperature.ofReadings(10_000, 15, 16, 18, 20, 23, 26, 29, 30, 27, 23, 19, 16);
    assertEquals(23.2022555259, year, 1e-9);
  }

  @Test
  void a_history_of_equal_steps_agrees_with_its_readings() {
    TemperatureHistory steps =
        TemperatureHistory.holdingLast(
            List.of(new Point(0, 20), new Point(50, 20), new Point(50, 30), new Point(100, 30)));
    assertEquals(26.2598869160, MeanKineticTemperature.of(10_000, steps, 100), 1e-9);
  }

  @Test
  void no_reading_is_refused() {
    assertThrows(InvalidValue.class, () -> MeanKineticTemperature.ofReadings(10_000));
  }
}
