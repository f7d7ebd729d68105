package annulus.measure;

import annulus.quantity.Check;

/** Does a measured value lie in a range, and how sure is that? */
public final class Conformity {
  private Conformity() {}

  /**
   * Probability that the true value lies in a range.
   *
   * <p>{@code p = F((high − y)/u) − F((low − y)/u)}, F normal, or Student's t for finite ν
   *
   * @param valueUm measured value y, µm
   * @param standardUm standard uncertainty u, µm; 0 means exact
   * @param degreesOfFreedom ν, more than 0 or infinite
   * @param lowUm lower end, µm, or minus infinity
   * @param highUm upper end, µm, or plus infinity
   * @return probability, 0 to 1
   *     <p>Valid for: no knowledge but the measurement itself. Where a rectangular error rules, the
   *     bell-shaped tail is kept as the wide side.
   *     <p>Source: JCGM 106:2012, 7.2 to 7.4.
   */
  public static double probabilityWithin(
      double valueUm, double standardUm, double degreesOfFreedom, double lowUm, double highUm) {
    return new Belief(valueUm, standardUm, degreesOfFreedom).within(lowUm, highUm);
  }

  /**
   * What the measurement proves.
   *
   * <p>{@code U = t_level(ν)·u} (one-sided); inside when {@code low + U <= y <= high − U}, outside
   * when {@code y < low − U} or {@code y > high + U}, else not decided
   *
   * @param valueUm measured value y, µm
   * @param standardUm standard uncertainty u, µm
   * @param degreesOfFreedom ν, more than 0 or infinite; cut to the next lower whole number
   * @param lowUm lower end, µm, or minus infinity
   * @param highUm upper end, µm, or plus infinity
   * @param level confidence wanted, 0.5 to 0.99999
   * @return the verdict
   *     <p>Valid for: ranges wider than U; narrower ones are never proved.
   *     <p>Source: ISO 14253-1 decision rule with the one-sided guard of 1.65·u at 95 %.
   */
  public static Verdict decide(
      double valueUm,
      double standardUm,
      double degreesOfFreedom,
      double lowUm,
      double highUm,
      double level) {
    check(valueUm, standardUm, degreesOfFreedom, lowUm, highUm);
    Budget.checkLevel(level);
    double guard = Student.quantile(level, Student.whole(degreesOfFreedom)) * standardUm;
    if (valueUm >= lowUm + guard && valueUm <= highUm - guard) {
      return Verdict.INSIDE;
    }
    boolean outside = valueUm < lowUm - guard || valueUm > highUm + guard;
    return outside ? Verdict.OUTSIDE : Verdict.NOT_DECIDED;
  }

  private static void check(double value, double standard, double dof, double low, double high) {
    Check.finite("valueUm", value, "µm");
    Check.within("standardUm", standard, 0, Double.MAX_VALUE, "µm");
    Belief.checkFreedom(dof);
    Belief.checkRange(low, high);
  }
}
