package annulus.badhouse.fit;

/** An interface for one class only. */
public interface Shape {
  /** Something. */
  double area();

  /** Something else. */
  double length();
}
