package annulus.bench;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** The benchmarks of one advice, in turn, each round in fresh processes. */
final class InProcess {
  private InProcess() {}

  static List<Line> advice(int rounds) throws RunnerException {
    Map<String, List<Double>> all = new HashMap<>();
    for (int i = 0; i < rounds; i++) {
      for (RunResult result : round()) {
        String order = result.getParams().getParam("order");
        String name = result.getPrimaryResult().getLabel() + (order == null ? "" : order);
        all.computeIfAbsent(name, k -> new ArrayList<>()).add(result.getPrimaryResult().getScore());
      }
    }
    Map<String, Double> us = new HashMap<>();
    all.forEach(
        (name, values) ->
            us.put(name, Line.median(values.stream().mapToDouble(Double::doubleValue).toArray())));
    return List.of(
        Line.most(
            "one advice, demo order 01",
            us.get("advice01"),
            "plain arithmetic of the same figures",
            us.get("plain01"),
            5,
            "us"),
        Line.most(
            "one advice, demo order 12 (with load)",
            us.get("advice12"),
            "plain arithmetic of the same figures",
            us.get("plain12"),
            5,
            "us"),
        Line.least(
            "one advice, demo order 01",
            us.get("advice01"),
            "spreadsheet engine, one reading changed",
            us.get("sheet"),
            100,
            "us"),
        Line.least(
            "selection: 64 rules on 9 classes",
            us.get("select"),
            "rules engine, same rules",
            us.get("engine"),
            20,
            "us"),
        Line.least(
            "cure: 4 stages through days and nights",
            us.get("integral"),
            "ODE integrator, same error",
            us.get("integrator"),
            50,
            "us"));
  }

  private static Iterable<RunResult> round() throws RunnerException {
    return new Runner(
            new OptionsBuilder()
                .include("annulus.bench.*Bench")
                .forks(1)
                .warmupIterations(4)
                .warmupTime(TimeValue.seconds(1))
                .measurementIterations(3)
                .measurementTime(TimeValue.seconds(1))
                .jvmArgsAppend("-XX:+UseSerialGC", "-Xms256m", "-Xmx256m")
                .verbosity(VerboseMode.SILENT)
                .build())
        .run();
  }
}
