package annulus.bench;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.select.ClassVerdict;
import annulus.select.Finding;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** One whole advice beside the plain arithmetic of the same figures. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class AdviceBench {
  /** Typical readings; a joint with a load. */
  @Param({"01", "12"})
  public String order;

  private Advisor advisor;
  private JointOrder joint;
  private PlainJoint plain;
  private final PlainKernel kernel = new PlainKernel();

  /** Reads the order and holds the kernel to the advice. */
  @Setup
  public void setUp() throws IOException {
    Knowledge knowledge = DemoJoint.knowledge();
    advisor = new Advisor(knowledge);
    joint = DemoJoint.order(knowledge, order);
    plain = new PlainJoint(joint, knowledge);
    kernel.run(plain);
    PlainCheck.check(advisor.advise(joint), knowledge, kernel);
  }

  /** The public entry, and all that it makes only when it is looked at. */
  @Benchmark
  public int advice() {
    Advice advice = advisor.advise(joint);
    int looked = advice.steps().size() + advice.figures().size();
    looked += advice.cure().map(c -> c.curve().size()).orElse(0);
    looked += advice.holds().size() + advice.gap().remedies().size();
    for (Finding finding : advice.cautions()) {
      looked += finding.figures().size();
    }
    for (ClassVerdict verdict : advice.table()) {
      for (Finding finding : verdict.findings()) {
        looked += finding.figures().size();
      }
    }
    return looked;
  }

  /** The floor. */
  @Benchmark
  public PlainKernel plain() {
    kernel.run(plain);
    return kernel;
  }
}
