package annulus.advice;

import annulus.catalog.Policy;
import annulus.fit.Gap;
import annulus.measure.Belief;

/**
 * How the parts stand to each other, as far as the measurement tells.
 *
 * @param kind interference only where it is sure; near zero is line to line
 * @param largest what is believed of the largest centred gap
 * @param readsDry whether the best estimate is narrow enough for a dry press, sure or not
 * @param dry probability that the gap is narrow enough for a dry press, 0 to 1
 */
record FitBelief(Kind kind, Belief largest, boolean readsDry, double dry) {
  /** How the parts stand to each other. */
  enum Kind {
    CLEAR,
    LINE_TO_LINE,
    INTERFERENCE
  }

  static FitBelief of(Gap gap, Policy policy, double confidence) {
    Belief largest = gap.largest();
    double dryFrom = policy.value("dry-press-from-um");
    double dry = largest.within(Double.NEGATIVE_INFINITY, dryFrom);
    Kind notSurely =
        gap.meanUm() <= policy.value("line-to-line-um") ? Kind.LINE_TO_LINE : Kind.CLEAR;
    return new FitBelief(
        dry >= confidence ? Kind.INTERFERENCE : notSurely,
        largest,
        gap.largestUm() <= dryFrom,
        dry);
  }
}
