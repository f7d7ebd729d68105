package annulus.bench;

import annulus.advice.Advice;
import annulus.advice.Knowledge;
import annulus.catalog.Stage;
import annulus.hold.Removal;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Note;
import annulus.select.ClassVerdict;
import java.time.Duration;
import java.util.List;

/** Holds the plain kernel to the advice, figure by figure, before anything is timed. */
final class PlainCheck {
  private static final double SAME = 1e-9;

  private PlainCheck() {}

  static void check(Advice advice, Knowledge knowledge, PlainKernel k) {
    Rules.check(knowledge.rules());
    same("mean gap", advice.gap().gap().meanUm(), k.gapMean);
    same("largest gap", advice.gap().gap().largestUm(), k.gapLargest);
    same("smallest gap", advice.gap().gap().smallestUm(), k.gapSmallest);
    double level = advice.gap().level();
    same("uncertainty", advice.gap().gap().extremeBudget().expandedUm(level), k.gapUncertainty);
    same("mean's uncertainty", advice.gap().gap().budget().combinedUm(), k.meanStandard);
    same("mean's freedom", advice.gap().gap().budget().effectiveDegreesOfFreedom(), k.meanFreedom);
    same("gap at assembly", advice.gap().atAssemblyUm(), k.atAssembly);
    same("gap when cold", advice.gap().inService().atLowUm(), k.atLow);
    same("gap when hot", advice.gap().inService().atHighUm(), k.atHigh);
    same("growth", advice.gap().inService().growthUm(), k.growth);
    same("tightest", advice.gap().inService().tightestUm(), k.tightest);
    same("bore notes", notes(advice.gap().bore().orElseThrow()), k.boreNotes());
    same("part notes", notes(advice.gap().part().orElseThrow()), k.partNotes());
    table(advice, k);
    same(
        "kind", advice.decision().kind() == Advice.Kind.USE_COMPOUND ? 1 : 0, k.chosen < 0 ? 0 : 1);
    if (k.chosen >= 0) {
      cure(advice, k);
      hold(advice, k);
    }
    long at = advice.handBack().map(h -> h.at().getEpochSecond()).orElse(-1L);
    same("hand-back", (double) at, (double) k.handBackSecond);
  }

  private static double notes(MeasuredDiameter measured) {
    int bits = 0;
    for (Note note : measured.notes()) {
      bits |= 1 << note.ordinal();
    }
    return bits;
  }

  private static void table(Advice advice, PlainKernel k) {
    for (int i = 0; i < advice.table().size(); i++) {
      ClassVerdict verdict = advice.table().get(i);
      String id = verdict.compound().id();
      same(id + " covers", verdict.covers(), k.covers[i]);
      if (Rules.of(verdict.findings()) != k.rules[i]) {
        throw new IllegalStateException(
            id
                + " rules differ: "
                + Long.toBinaryString(Rules.of(verdict.findings()) ^ k.rules[i]));
      }
      int standing =
          switch (verdict.standing()) {
            case CHOSEN -> PlainKernel.CHOSEN;
            case SUITABLE -> PlainKernel.SUITABLE;
            case NEEDS_PRIMER -> PlainKernel.NEEDS_PRIMER;
            case EXCLUDED -> PlainKernel.EXCLUDED;
          };
      same(id + " standing", standing, k.standing[i]);
    }
  }

  private static void cure(Advice advice, PlainKernel k) {
    Advice.CureTimes cure = advice.cure().orElseThrow();
    for (Stage stage : Stage.values()) {
      Advice.StageTime time = cure.at(stage);
      second(stage + " typical", time.typical().orElseThrow(), k.typicalS[stage.ordinal()]);
      second(stage + " sure", time.sure().orElseThrow(), k.sureS[stage.ordinal()]);
    }
    second("slow practice", cure.slowPracticeFull().orElseThrow(), k.slowPracticeS);
    second("working time", cure.workingTime(), k.workingS);
    List<Advice.CurvePoint> curve = cure.curve();
    same("points", curve.size(), PlainKernel.POINTS);
    for (int i = 0; i < curve.size(); i++) {
      second("point " + i, curve.get(i).after(), k.pointS[i]);
      close("typical at " + i, curve.get(i).typical(), k.pointTypical[i], 1e-4);
      close("sure at " + i, curve.get(i).sure(), k.pointSure[i], 1e-4);
    }
  }

  private static void hold(Advice advice, PlainKernel k) {
    var held = advice.hold().orElseThrow();
    same("cold low", held.bondCold().low(), k.coldLow);
    same("cold", held.bondCold().likely(), k.cold);
    same("cold high", held.bondCold().high(), k.coldHigh);
    same("hot low", held.bondHot().low(), k.hotLow);
    same("hot", held.bondHot().likely(), k.hot);
    same("hot high", held.bondHot().high(), k.hotHigh);
    same("hot torque", held.torqueHot().likely(), k.torqueHot);
    same("break loose", held.breakLoose().likely(), k.breakLoose);
    same("break loose high", held.breakLoose().high(), k.breakLooseHigh);
    same("break torque", held.breakLooseTorque().likely(), k.breakTorque);
    same("wanted", held.wantedN().orElse(0), k.wanted);
    same("fraction wanted", held.fractionWanted().orElse(Double.NaN), k.fractionWanted);
    int ways = 0;
    int[] order = {0, 1, 3};
    for (int i = 0; i < order.length; i++) {
      Removal.Outcome outcome = held.ways().get(order[i]).outcome();
      int code =
          switch (outcome) {
            case NOT_ENOUGH -> 0;
            case DOUBTFUL -> 1;
            case ENOUGH -> 2;
            case REFUSED -> 3;
          };
      ways += code << (2 * i);
    }
    same("ways", ways, k.ways);
    close("held at hand-back", held.atHandBack().orElseThrow().likely(), k.heldAtHandBack, 1e-6);
  }

  /** A whole second, give or take one on the edge of rounding. */
  private static void second(String what, Duration expected, double got) {
    if (Math.abs(expected.toSeconds() - got) > 1) {
      throw new IllegalStateException(what + ": " + expected.toSeconds() + " s, kernel " + got);
    }
  }

  private static void same(String what, double expected, double got) {
    close(what, expected, got, SAME * Math.max(1, Math.abs(expected)));
  }

  private static void close(String what, double expected, double got, double by) {
    boolean equal = Double.compare(expected, got) == 0 || Math.abs(expected - got) <= by;
    if (!equal) {
      throw new IllegalStateException(what + ": " + expected + ", kernel " + got);
    }
  }
}
