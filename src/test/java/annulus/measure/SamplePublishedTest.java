package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** NIST Statistical Reference Datasets, univariate summary statistics (certified values). */
class SamplePublishedTest {
  /** Michelson's speed of light, 1879, last three digits of 299 xxx km/s; data Michelso. */
  private static final int[] MICHELSON = {
    850, 740, 900, 1070, 930, 850, 950, 980, 980, 880, 1000, 980, 930, 650, 760, 810, 1000, 1000,
    960, 960, 960, 940, 960, 940, 880, 800, 850, 880, 900, 840, 830, 790, 810, 880, 880, 830, 800,
    790, 760, 800, 880, 880, 880, 860, 720, 720, 620, 860, 970, 950, 880, 910, 850, 870, 840, 840,
    850, 840, 840, 840, 890, 810, 810, 820, 800, 770, 760, 740, 750, 760, 910, 920, 890, 860, 880,
    720, 840, 850, 850, 780, 890, 840, 780, 810, 760, 810, 790, 810, 820, 850, 870, 870, 810, 740,
    810, 940, 950, 800, 810, 870
  };

  @Test
  void michelson_agrees_with_the_certified_values() {
    List<Double> values = new ArrayList<>();
    for (int m : MICHELSON) {
      values.add((299_000 + m) / 1000.0);
    }
    assertEquals(100, values.size());
    assertEquals(299.8524, Sample.mean(Samples.array(values)), 1e-11);
    assertEquals(0.0790105478190518, Sample.standardDeviation(Samples.array(values)), 1e-13);
  }

  @Test
  void num_acc_1_agrees_with_the_certified_values() {
    List<Double> values = List.of(10000001.0, 10000003.0, 10000002.0);
    assertEquals(10000002, Sample.mean(Samples.array(values)));
    assertEquals(1, Sample.standardDeviation(Samples.array(values)));
  }

  @Test
  void num_acc_4_agrees_with_the_certified_values() {
    List<Double> values = new ArrayList<>(List.of(10000000.2));
    for (int i = 0; i < 500; i++) {
      values.add(10000000.1);
      values.add(10000000.3);
    }
    assertEquals(10000000.2, Sample.mean(Samples.array(values)), 1e-8);
    // the inputs themselves are only good to 1e-9 as doubles
    assertEquals(0.1, Sample.standardDeviation(Samples.array(values)), 1e-8);
  }
}
