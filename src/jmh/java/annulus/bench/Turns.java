package annulus.bench;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Programs run in turn, so that a busy moment of the machine falls on all of them. */
final class Turns {
  private final Map<String, Program> programs = new LinkedHashMap<>();

  Turns and(String name, Program program) {
    programs.put(name, program);
    return this;
  }

  /** Median wall time of each, ms. */
  Map<String, Double> wallMs(int rounds) throws IOException {
    return medians(rounds, true);
  }

  /** Median of the most memory of each, MB. */
  Map<String, Double> mostMb(int rounds) throws IOException {
    return medians(rounds, false);
  }

  private Map<String, Double> medians(int rounds, boolean wall) throws IOException {
    Map<String, List<Double>> all = new LinkedHashMap<>();
    for (int i = 0; i < rounds; i++) {
      for (Map.Entry<String, Program> entry : programs.entrySet()) {
        double value = wall ? entry.getValue().wallMs() : entry.getValue().mostMb();
        all.computeIfAbsent(entry.getKey(), k -> new ArrayList<>()).add(value);
      }
    }
    Map<String, Double> medians = new LinkedHashMap<>();
    all.forEach(
        (name, values) ->
            medians.put(
                name, Line.median(values.stream().mapToDouble(Double::doubleValue).toArray())));
    return medians;
  }
}
