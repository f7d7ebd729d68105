package annulus.fit;

import annulus.measure.Belief;
import annulus.measure.Budget;
import annulus.measure.Component;
import annulus.measure.MeasuredDiameter;
import annulus.quantity.Check;
import java.util.List;

/**
 * The gap between part and bore at 20 °C. All gaps are radial, µm; negative is interference.
 *
 * @param nominalMm diameter of the joint, mm
 * @param meanUm mean gap {@code (D̄ − d̄)/2}
 * @param largestUm largest centred gap {@code (Dmax − dmin)/2}: for class and cure
 * @param smallestUm smallest centred gap {@code (Dmin − dmax)/2}: for assembly
 * @param budget uncertainty of the mean gap, radial µm
 * @param extremeBudget uncertainty of the largest and smallest gap, radial µm
 */
public record Gap(
    double nominalMm,
    double meanUm,
    double largestUm,
    double smallestUm,
    Budget budget,
    Budget extremeBudget) {

  /**
   * Gap of two measured diameters.
   *
   * <p>{@code g = (D − d)/2}
   *
   * @param bore the bore at 20 °C, mm
   * @param part the part at 20 °C, mm
   * @return radial gaps, µm
   *     <p>Valid for: both diameters corrected to 20 °C.
   *     <p>Source: geometry; uncertainty JCGM 100:2008, 5.1.2.
   */
  public static Gap of(MeasuredDiameter bore, MeasuredDiameter part) {
    return new Gap(
        bore.meanMm(),
        (bore.meanMm() - part.meanMm()) * 500,
        (bore.largestMm() - part.smallestMm()) * 500,
        (bore.smallestMm() - part.largestMm()) * 500,
        Budget.ofGap(bore.budget(), part.budget()),
        Budget.ofGap(bore.extremeBudget(), part.extremeBudget()));
  }

  /**
   * A gap stated by the shop with its expanded uncertainty.
   *
   * @param nominalMm diameter of the joint, mm
   * @param radialUm radial gap, µm
   * @param radialPlusMinusUm expanded uncertainty at 95 %, radial µm, above 0
   * @param coverageFactor the factor that made it expanded, such as 1.96
   */
  public static Gap stated(
      double nominalMm, double radialUm, double radialPlusMinusUm, double coverageFactor) {
    Check.positive("coverageFactor", coverageFactor, "");
    Budget budget =
        new Budget(
            List.of(
                new Component(
                    "stated",
                    "gap as stated",
                    radialPlusMinusUm / coverageFactor,
                    Double.POSITIVE_INFINITY,
                    Component.Shape.NORMAL,
                    "stated with the order, taken as 95 %")));
    return new Gap(nominalMm, radialUm, radialUm, radialUm, budget, budget);
  }

  /**
   * Limits of the centred gap at one level, radial µm.
   *
   * @param lowerUm lower limit of the smallest gap
   * @param upperUm upper limit of the largest gap
   */
  public record Limits(double lowerUm, double upperUm) {
    /** As {@link Gap#oneSidedUm}. */
    public double oneSidedUm() {
      return Math.max(0, 2 * upperUm);
    }
  }

  /** Both limits at a two-sided level. */
  public Limits limits(double level) {
    double expanded = extremeBudget.expandedUm(level);
    return new Limits(smallestUm - expanded, largestUm + expanded);
  }

  /** Upper limit of the largest centred gap at a two-sided level, radial µm. */
  public double upperUm(double level) {
    return limits(level).upperUm();
  }

  /** Lower limit of the smallest centred gap at a two-sided level, radial µm. */
  public double lowerUm(double level) {
    return limits(level).lowerUm();
  }

  /**
   * Widest distance between the faces when the part rests on one side: the whole diametral
   * clearance, upper limit, µm; 0 for interference.
   */
  public double oneSidedUm(double level) {
    return limits(level).oneSidedUm();
  }

  /** What is believed of the largest centred gap, radial µm. */
  public Belief largest() {
    return new Belief(
        largestUm, extremeBudget.combinedUm(), extremeBudget.effectiveDegreesOfFreedom());
  }

  /** Probability that the largest centred gap lies within limits, radial µm (JCGM 106). */
  public double probabilityWithin(double lowUm, double highUm) {
    return largest().within(lowUm, highUm);
  }
}
