package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.WhenAsked;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** An uncertainty budget of uncorrelated components. */
public final class Budget {
  /** Guards the truncation of degrees of freedom against the last bit of a division. */
  private static final double LAST_BIT = 1e-9;

  /** From an error of a diameter to that of the radial gap. */
  private static final double HALF = 0.5;

  private final List<Component> components;
  private final double varianceUm2;

  /** Sum of {@code (u_i²/u_c²)²/ν_i}: one over the effective degrees of freedom. */
  private final double perFreedom;

  /**
   * @param components the lines; never empty
   */
  public Budget(List<Component> components) {
    this.components = List.copyOf(components);
    if (components.isEmpty()) {
      throw new InvalidValue("components", "is empty", "at least one component");
    }
    Totals totals = new Totals();
    totals.addVariances(this.components, 1);
    totals.addShares(this.components, 1);
    this.varianceUm2 = totals.varianceUm2;
    this.perFreedom = totals.perFreedom;
  }

  private Budget(Totals totals, List<Component> components) {
    this.components = components;
    this.varianceUm2 = totals.varianceUm2;
    this.perFreedom = totals.perFreedom;
  }

  /** Sums over the lines of one budget or of several, in their order. */
  private static final class Totals {
    private double varianceUm2;
    private double perFreedom;

    /**
     * @param squaredFactor what the lines' variances are multiplied by
     */
    void addVariances(List<Component> components, double squaredFactor) {
      for (int i = 0; i < components.size(); i++) { // quicker than an iterator; made by the hundred
        varianceUm2 += squaredFactor * components.get(i).varianceUm2();
      }
    }

    /** After all variances. Shares first: fourth powers of small figures would vanish. */
    void addShares(List<Component> components, double squaredFactor) {
      for (int i = 0; i < components.size(); i++) {
        Component c = components.get(i);
        if (Double.isFinite(c.degreesOfFreedom()) && varianceUm2 > 0) {
          double share = squaredFactor * c.varianceUm2() / varianceUm2;
          perFreedom += share * share / c.degreesOfFreedom();
        }
      }
    }
  }

  /** The lines; never empty. Those of a gap are made when they are first asked for. */
  public List<Component> components() {
    return components;
  }

  /**
   * Combined standard uncertainty.
   *
   * <p>{@code u_c = √Σ u_i²}
   *
   * @return µm
   *     <p>Valid for: uncorrelated components already multiplied by their sensitivities.
   *     <p>Source: JCGM 100:2008, equation (10).
   */
  public double combinedUm() {
    return Math.sqrt(varianceUm2);
  }

  /**
   * Effective degrees of freedom, not rounded.
   *
   * <p>{@code ν_eff = u_c⁴ / Σ (u_i⁴/ν_i)} (Welch-Satterthwaite)
   *
   * @return a number above 0, infinite when no component has finite degrees of freedom
   *     <p>Valid for: uncorrelated components.
   *     <p>Source: JCGM 100:2008, equation (G.2b).
   */
  public double effectiveDegreesOfFreedom() {
    return perFreedom == 0 ? Double.POSITIVE_INFINITY : 1 / perFreedom;
  }

  /**
   * Two-sided coverage factor.
   *
   * <p>{@code k = t_p(ν_eff)}, with ν_eff cut to the next lower whole number; normal when infinite.
   *
   * @param level coverage probability, 0.5 to 0.99999
   * @return k, without unit
   *     <p>Valid for: a combined error close to Student's t. Where one rectangular component rules,
   *     the true factor is smaller (JCGM 101:2008, 9.2.4: 1.68 in place of 1.96); the larger one is
   *     kept on purpose.
   *     <p>Source: JCGM 100:2008, G.3.2 and G.4.1.
   */
  public double coverageFactor(double level) {
    checkLevel(level);
    return Student.quantile((1 + level) / 2, wholeDegreesOfFreedom());
  }

  /**
   * Expanded uncertainty.
   *
   * <p>{@code U = k·u_c}
   *
   * @param level coverage probability, 0.5 to 0.99999
   * @return half-width of the interval, µm
   *     <p>Valid for: as {@link #coverageFactor}.
   *     <p>Source: JCGM 100:2008, 6.2.1.
   */
  public double expandedUm(double level) {
    return coverageFactor(level) * combinedUm();
  }

  /** Every component multiplied by the size of a sensitivity. */
  public Budget scaled(double factor) {
    Check.finite("factor", factor, "");
    List<Component> scaled = new ArrayList<>(components.size());
    for (Component c : components) {
      scaled.add(c.scaled(factor));
    }
    return new Budget(scaled);
  }

  /** Both lists of components; no correlation between the two. */
  public Budget combinedWith(Budget other) {
    List<Component> both = new ArrayList<>(components.size() + other.components.size());
    both.addAll(components);
    both.addAll(other.components());
    return new Budget(both);
  }

  /**
   * Budget of the radial gap of two measured diameters.
   *
   * <p>{@code g = (D − d)/2}, hence {@code u(g) = √(u²(D) + u²(d))/2}
   *
   * @param bore budget of the bore diameter, µm
   * @param part budget of the part diameter, µm
   * @return budget of the radial gap, µm; ids begin with {@code bore.} and {@code part.}
   *     <p>Valid for: errors of bore and part that are uncorrelated or positively correlated.
   *     Inside jaws and outside jaws do not share their error; what two diameters do share (setting
   *     master, thermometer) moves both the same way and drops out of a difference, so leaving the
   *     correlation out is the wide side. {@link Correlated#gapStandardUm} shows by how much.
   *     <p>Source: JCGM 100:2008, 5.1.2 and 5.2.2.
   */
  public static Budget ofGap(Budget bore, Budget part) {
    Totals totals = new Totals();
    totals.addVariances(bore.components(), HALF * HALF);
    totals.addVariances(part.components(), HALF * HALF);
    totals.addShares(bore.components(), HALF * HALF);
    totals.addShares(part.components(), HALF * HALF);
    return new Budget(totals, WhenAsked.list(() -> linesOfGap(bore, part)));
  }

  private static List<Component> linesOfGap(Budget bore, Budget part) {
    List<Component> both = new ArrayList<>(bore.components.size() + part.components.size());
    for (Component c : bore.components()) {
      both.add(c.ofMember("bore", HALF));
    }
    for (Component c : part.components()) {
      both.add(c.ofMember("part", HALF));
    }
    return both;
  }

  /**
   * What is believed of a gap with the budget of {@link #ofGap}, without making that budget: many
   * pairs of instruments are tried for one joint.
   */
  static Belief beliefInGap(double meanUm, Budget bore, Budget part) {
    double variance = bore.varianceUm2 + part.varianceUm2;
    double ofBore = variance == 0 ? 0 : bore.varianceUm2 / variance;
    double ofPart = variance == 0 ? 0 : part.varianceUm2 / variance;
    double sum = ofBore * ofBore * bore.perFreedom + ofPart * ofPart * part.perFreedom;
    double freedom = sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
    return new Belief(meanUm, HALF * Math.sqrt(variance), freedom);
  }

  /** The component of this id, if any. */
  public Optional<Component> component(String id) {
    for (Component c : components) {
      if (c.id().equals(id)) {
        return Optional.of(c);
      }
    }
    return Optional.empty();
  }

  /** Share of the variance that the component of this id has, 0 to 1. */
  public double share(String id) {
    Optional<Component> component = component(id);
    return component.isEmpty() || varianceUm2 == 0
        ? 0
        : component.get().varianceUm2() / varianceUm2;
  }

  double wholeDegreesOfFreedom() {
    return Student.whole(effectiveDegreesOfFreedom() + LAST_BIT);
  }

  static void checkLevel(double level) {
    Check.within("level", level, 0.5, 0.99999, "");
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Budget b && components.equals(b.components());
  }

  @Override
  public int hashCode() {
    return components.hashCode();
  }

  @Override
  public String toString() {
    return "Budget" + components;
  }
}
