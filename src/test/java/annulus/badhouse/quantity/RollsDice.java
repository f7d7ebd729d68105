package annulus.badhouse.quantity;

/** A pure package gives the same answer twice. */
public final class RollsDice {
  double roll() {
    return Math.random();
  }
}
