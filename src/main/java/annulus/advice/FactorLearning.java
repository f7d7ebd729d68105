package annulus.advice;

import annulus.advice.FactorPosterior.Limits;
import annulus.advice.FactorPosterior.Scatter;
import annulus.cure.Spread;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;

/**
 * What a class's joints make of a factor, where more is worse: longer or weaker.
 *
 * <p>They are taken from the best to the worst. A joint that is worse than what the better ones say
 * never makes the factor or its spread less than without it: bad joints are no evidence for good
 * times, however many joints they make it.
 */
final class FactorLearning {
  /** From the best to the worst; equal ones are equal, so that the order of rows says nothing. */
  static final Comparator<Limits> WORST_LAST =
      Comparator.comparingDouble(Limits::lowLn)
          .thenComparingDouble(Limits::highLn)
          .thenComparingDouble(Limits::sigmaLn);

  private static final double MOST_SPREAD = 2;

  private FactorLearning() {}

  /**
   * What is used of a class.
   *
   * @param centreLn ln(factor) of half of all joints
   * @param spreadLn standard deviation of ln(factor) of the next joint
   */
  record Answer(double centreLn, double spreadLn) {
    /** What 95 % of all joints keep. */
    double sureLn() {
      return centreLn + Spread.LIMIT_Z * spreadLn;
    }

    private Answer orWorse(Answer other) {
      return new Answer(Math.max(centreLn, other.centreLn), Math.max(spreadLn, other.spreadLn));
    }
  }

  /**
   * How good the answer may be on so much evidence.
   *
   * @param centreLn least ln(factor)
   * @param spreadLn least spread
   */
  record Best(double centreLn, double spreadLn) {}

  /**
   * The outcome.
   *
   * @param posterior of all joints
   * @param answer to use
   * @param bestLn least median ln(factor) that the best joints alone gave, at most 0
   * @param contradicting whether some joint fits neither the better ones nor what was shipped
   */
  record Outcome(FactorPosterior posterior, Answer answer, double bestLn, boolean contradicting) {}

  /**
   * Learns from joints.
   *
   * @param shippedSpreadLn the spread used without any, about a factor of 1
   * @param priorSigmaLn what is known of the factor beforehand, ln
   * @param scatter what is known of the scatter between joints
   * @param joints in the order of {@link #WORST_LAST}
   * @param best how good the answer may be on the first so many
   */
  static Outcome of(
      double shippedSpreadLn,
      double priorSigmaLn,
      Scatter scatter,
      List<Limits> joints,
      IntFunction<Best> best) {
    FactorGrid grid = new FactorGrid(priorSigmaLn, scatter, joints);
    FactorPosterior posterior = grid.posterior();
    Answer answer = new Answer(0, shippedSpreadLn);
    double bestLn = 0;
    boolean contradicting = false;
    for (int i = 0; i < joints.size(); i++) {
      double lowLn = joints.get(i).lowLn();
      grid.add(joints.get(i));
      posterior = grid.posterior();
      double centreLn = Math.log(posterior.factor(0.5));
      double spreadLn = posterior.nextSigmaLn();
      bestLn = Math.min(bestLn, centreLn);
      contradicting |= lowLn > answer.sureLn() && spreadLn > shippedSpreadLn;
      Best allowed = best.apply(i + 1);
      double leastCentre = contradicting ? Math.max(0, allowed.centreLn()) : allowed.centreLn();
      double leastSpread =
          contradicting ? Math.max(shippedSpreadLn, allowed.spreadLn()) : allowed.spreadLn();
      Answer next =
          reaching(Math.max(centreLn, leastCentre), Math.max(spreadLn, leastSpread), lowLn);
      answer = lowLn > answer.centreLn() ? answer.orWorse(next) : next;
    }
    return new Outcome(posterior, answer, bestLn, contradicting);
  }

  /** What was seen is never called surely impossible: 95 % reach at least the worst joint. */
  private static Answer reaching(double centreLn, double spreadLn, double worstLn) {
    double needed = (worstLn - centreLn) / Spread.LIMIT_Z;
    double spread = Math.min(MOST_SPREAD, Math.max(spreadLn, needed));
    return new Answer(Math.max(centreLn, worstLn - Spread.LIMIT_Z * spread), spread);
  }
}
