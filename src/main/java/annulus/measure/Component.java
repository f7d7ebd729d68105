package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;

/**
 * One line of an uncertainty budget.
 *
 * @param id stable name, such as {@code repeatability}
 * @param name what a mechanic calls it
 * @param standardUm standard uncertainty, µm, not negative
 * @param degreesOfFreedom more than 0; {@link Double#POSITIVE_INFINITY} where the limits are taken
 *     as known
 * @param shape the distribution assumed
 * @param why where the figure comes from
 */
public record Component(
    String id, String name, double standardUm, double degreesOfFreedom, Shape shape, String why) {

  /** Distribution of the error. */
  public enum Shape {
    NORMAL,
    /** Seen in a few readings: Student's t with the component's degrees of freedom. */
    T,
    RECTANGULAR
  }

  public Component {
    Check.text("id", id);
    Check.text("name", name);
    Check.within("standardUm", standardUm, 0, Double.MAX_VALUE, "µm");
    if (!(degreesOfFreedom > 0)) {
      throw new InvalidValue(
          "degreesOfFreedom",
          Numbers.plain(degreesOfFreedom) + " is not above zero",
          "more than 0, or infinite");
    }
    if (shape == null) {
      throw new InvalidValue("shape", "is missing", "NORMAL, T or RECTANGULAR");
    }
    Check.text("why", why);
  }

  /**
   * An error known only to lie within limits.
   *
   * <p>{@code u = a/√3}
   *
   * @param halfWidthUm half-width a of the limits, µm
   * @return a component with infinite degrees of freedom, µm
   *     <p>Valid for: limits without a preferred place between them.
   *     <p>Source: JCGM 100:2008, 4.3.7.
   */
  public static Component rectangular(String id, String name, double halfWidthUm, String why) {
    return new Component(
        id, name, halfWidthUm / Math.sqrt(3), Double.POSITIVE_INFINITY, Shape.RECTANGULAR, why);
  }

  /** The variance, µm². */
  public double varianceUm2() {
    return standardUm * standardUm;
  }

  Component scaled(double factor) {
    return new Component(id, name, standardUm * Math.abs(factor), degreesOfFreedom, shape, why);
  }

  Component prefixed(String prefix) {
    return new Component(
        prefix + "." + id, prefix + ": " + name, standardUm, degreesOfFreedom, shape, why);
  }
}
