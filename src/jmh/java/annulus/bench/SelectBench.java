package annulus.bench;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.Knowledge;
import annulus.advice.RuleInputs;
import annulus.select.ClassVerdict;
import annulus.select.Selection;
import java.io.IOException;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The declared rules over the classes beside a general rules engine. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class SelectBench {
  private Knowledge knowledge;
  private RuleInputs inputs;
  private RuleEngine engine;

  /** Holds both to the same findings. */
  @Setup
  public void setUp() throws IOException, ReflectiveOperationException {
    knowledge = DemoJoint.knowledge();
    Advice advice = new Advisor(knowledge).advise(DemoJoint.order(knowledge, "01"));
    inputs = RuleInputs.of(advice, knowledge);
    engine = new RuleEngine(knowledge.rules(), inputs);
    Map<String, Long> spoken = engine.select();
    for (ClassVerdict verdict : select().table()) {
      String id = verdict.compound().id();
      if (spoken.get(id) != engine.bits(verdict.findings())) {
        throw new IllegalStateException("rules differ on " + id);
      }
    }
  }

  /** Ours: which rules spoke on which class, the standings and the choice. */
  @Benchmark
  public Selection select() {
    return Selection.of(
        knowledge.rules(),
        knowledge.catalog().compounds().values(),
        inputs.joint(),
        inputs.classes()::get,
        false,
        Optional.empty());
  }

  /** The engine: which rules spoke on which class. */
  @Benchmark
  public Map<String, Long> engine() {
    return engine.select();
  }
}
