package annulus.bench;

import annulus.advice.Advice;
import annulus.advice.Advisor;
import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.RuleInputs;
import java.io.IOException;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** The same joint in a spreadsheet engine, one reading changed each time. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class SheetBench {
  private static final double STEP_MM = 0.001;

  private JointSheet sheet;
  private double reading;
  private int turn;

  /** Holds the sheet's figures to the advice. */
  @Setup
  public void setUp() throws IOException {
    Knowledge knowledge = DemoJoint.knowledge();
    JointOrder order = DemoJoint.order(knowledge, "01");
    Advice advice = new Advisor(knowledge).advise(order);
    PlainJoint plain = new PlainJoint(order, knowledge);
    PlainKernel kernel = new PlainKernel();
    kernel.run(plain);
    sheet =
        new JointSheet(plain, knowledge.rules(), RuleInputs.of(advice, knowledge).joint().all())
            .ready();
    reading = plain.bore.mm[0];
    sheet.recalculate(reading + STEP_MM);
    sheet.recalculate(reading);
    same("largest gap", kernel.gapLargest, sheet.value("gap.largest"));
    same("uncertainty", kernel.gapUncertainty, sheet.value("U"));
    same("class", kernel.chosen + 1.0, sheet.value("chosen"));
    for (int s = 0; s < 4; s++) {
      same("typical " + s, kernel.typicalS[s], sheet.value("typical" + s));
      same("sure " + s, kernel.sureS[s], sheet.value("sure" + s));
    }
    same("curve", kernel.pointSure[30], sheet.value("t30.sure"));
    same("hot hold", kernel.hot, sheet.value("hot.likely"));
    same("hold low", kernel.hotLow, sheet.value("hot.low"));
    same(
        "hand-back",
        advice.handBack().orElseThrow().after().toSeconds() / 60.0,
        sheet.value("after"));
    System.out.println("# formulas in the sheet: " + sheet.formulas());
  }

  private static void same(String what, double expected, double got) {
    if (!(Math.abs(expected - got) <= 1e-5 * Math.max(1, Math.abs(expected)))) {
      throw new IllegalStateException(what + ": " + expected + ", sheet " + got);
    }
  }

  /** One changed reading. */
  @Benchmark
  public double sheet() {
    turn = 1 - turn;
    return sheet.recalculate(reading + turn * STEP_MM);
  }
}
