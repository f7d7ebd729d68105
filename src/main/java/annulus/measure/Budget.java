package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An uncertainty budget of uncorrelated components.
 *
 * @param components the lines; never empty
 */
public record Budget(List<Component> components) {
  /** Guards the truncation of degrees of freedom against the last bit of a division. */
  private static final double LAST_BIT = 1e-9;

  public Budget {
    components = List.copyOf(components);
    if (components.isEmpty()) {
      throw new InvalidValue("components", "is empty", "at least one component");
    }
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
    return Math.sqrt(varianceUm2());
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
    double variance = varianceUm2();
    double sum = 0;
    for (Component c : components) {
      // shares first: fourth powers of small figures would vanish
      double share = variance == 0 ? 0 : c.varianceUm2() / variance;
      sum += share * share / c.degreesOfFreedom();
    }
    return sum == 0 ? Double.POSITIVE_INFINITY : 1 / sum;
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
    return new Budget(components.stream().map(c -> c.scaled(factor)).toList());
  }

  /** Both lists of components; no correlation between the two. */
  public Budget combinedWith(Budget other) {
    return new Budget(Stream.concat(components.stream(), other.components.stream()).toList());
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
    return bore.prefixed("bore").combinedWith(part.prefixed("part")).scaled(0.5);
  }

  /** The component of this id, if any. */
  public Optional<Component> component(String id) {
    return components.stream().filter(c -> c.id().equals(id)).findFirst();
  }

  /** Share of the variance that the component of this id has, 0 to 1. */
  public double share(String id) {
    double variance = varianceUm2();
    return component(id).map(c -> variance == 0 ? 0 : c.varianceUm2() / variance).orElse(0.0);
  }

  double wholeDegreesOfFreedom() {
    return Student.whole(effectiveDegreesOfFreedom() + LAST_BIT);
  }

  static void checkLevel(double level) {
    Check.within("level", level, 0.5, 0.99999, "");
  }

  private double varianceUm2() {
    double sum = 0;
    for (Component c : components) {
      sum += c.varianceUm2();
    }
    return sum;
  }

  private Budget prefixed(String prefix) {
    return new Budget(components.stream().map(c -> c.prefixed(prefix)).toList());
  }
}
