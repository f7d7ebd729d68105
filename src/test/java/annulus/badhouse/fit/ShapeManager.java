package annulus.badhouse.fit;

/** The one class, with a name that says nothing. */
public record ShapeManager(double area, double length) implements Shape {}
