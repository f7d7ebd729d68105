package annulus.measure;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;

/** One line of an uncertainty budget. Its words are made when they are asked for. */
public final class Component {
  private final Line line;
  private final double standardUm;
  private final double degreesOfFreedom;
  private final Shape shape;

  /** Distribution of the error. */
  public enum Shape {
    NORMAL,
    /** Seen in a few readings: Student's t with the component's degrees of freedom. */
    T,
    RECTANGULAR
  }

  /**
   * @param id stable name, such as {@code repeatability}
   * @param name what a mechanic calls it
   * @param standardUm standard uncertainty, µm, not negative
   * @param degreesOfFreedom more than 0; {@link Double#POSITIVE_INFINITY} where the limits are
   *     taken as known
   * @param shape the distribution assumed
   * @param why where the figure comes from
   */
  public Component(
      String id, String name, double standardUm, double degreesOfFreedom, Shape shape, String why) {
    this(Line.checked(id, name, () -> why), standardUm, degreesOfFreedom, shape);
    Check.text("why", why);
  }

  Component(Line line, double standardUm, double degreesOfFreedom, Shape shape) {
    this.line = line;
    this.standardUm = Check.within("standardUm", standardUm, 0, Double.MAX_VALUE, "µm");
    if (!(degreesOfFreedom > 0)) {
      throw new InvalidValue(
          "degreesOfFreedom",
          Numbers.plain(degreesOfFreedom) + " is not above zero",
          "more than 0, or infinite");
    }
    this.degreesOfFreedom = degreesOfFreedom;
    if (shape == null) {
      throw new InvalidValue("shape", "is missing", "NORMAL, T or RECTANGULAR");
    }
    this.shape = shape;
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
    Check.text("why", why);
    return rectangular(Line.checked(id, name, () -> why), halfWidthUm);
  }

  static Component rectangular(Line line, double halfWidthUm) {
    return new Component(
        line, halfWidthUm / Math.sqrt(3), Double.POSITIVE_INFINITY, Shape.RECTANGULAR);
  }

  /** Stable name, such as {@code repeatability}. */
  public String id() {
    return line.id();
  }

  /** What a mechanic calls it. */
  public String name() {
    return line.name();
  }

  /** Standard uncertainty, µm, not negative. */
  public double standardUm() {
    return standardUm;
  }

  /** More than 0, or infinite. */
  public double degreesOfFreedom() {
    return degreesOfFreedom;
  }

  /** The distribution assumed. */
  public Shape shape() {
    return shape;
  }

  /** Where the figure comes from. */
  public String why() {
    return line.reason().get();
  }

  /** The variance, µm². */
  public double varianceUm2() {
    return standardUm * standardUm;
  }

  Component scaled(double factor) {
    return new Component(line, standardUm * Math.abs(factor), degreesOfFreedom, shape);
  }

  /** The same in the budget of a gap, multiplied by the size of a sensitivity. */
  Component ofMember(String member, double factor) {
    return new Component(
        line.ofMember(member), standardUm * Math.abs(factor), degreesOfFreedom, shape);
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Component c && parts().equals(c.parts());
  }

  @Override
  public int hashCode() {
    return parts().hashCode();
  }

  @Override
  public String toString() {
    return "Component" + parts();
  }

  private List<Object> parts() {
    return List.of(id(), name(), standardUm, degreesOfFreedom, shape, why());
  }
}
