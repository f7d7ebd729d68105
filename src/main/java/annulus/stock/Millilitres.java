package annulus.stock;

import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;

/**
 * An amount to the microlitre, so that sums do not depend on their order.
 *
 * @param microlitres thousandths of a millilitre; at most a hundred litres either way
 */
public record Millilitres(long microlitres) implements Comparable<Millilitres> {
  private static final long MOST = 100_000_000L;

  /** Nothing. */
  public static final Millilitres NONE = new Millilitres(0);

  public Millilitres {
    if (Math.abs(microlitres) > MOST) {
      throw new InvalidValue(
          "ml",
          Numbers.plain(microlitres / 1000.0) + " mL is out of range",
          "-100000 to 100000 mL");
    }
  }

  /** A sum, which is at most a hundred litres either way: more was never in one container. */
  static Millilitres sum(long microlitres) {
    return new Millilitres(Math.max(-MOST, Math.min(MOST, microlitres)));
  }

  /** The nearest microlitre. */
  public static Millilitres of(double ml) {
    if (!(Math.abs(ml) <= MOST)) {
      throw new InvalidValue(
          "ml", Numbers.plain(ml) + " mL is out of range", "-100000 to 100000 mL");
    }
    return new Millilitres(Math.round(ml * 1000));
  }

  /** The next microlitre up: what a joint takes is never rounded away. */
  public static Millilitres up(double ml) {
    return new Millilitres((long) Math.ceil(ml * 1000 - 1e-6));
  }

  public Millilitres plus(Millilitres other) {
    return new Millilitres(microlitres + other.microlitres);
  }

  public Millilitres minus(Millilitres other) {
    return new Millilitres(microlitres - other.microlitres);
  }

  public Millilitres atMost(Millilitres other) {
    return compareTo(other) <= 0 ? this : other;
  }

  public boolean isPositive() {
    return microlitres > 0;
  }

  public double value() {
    return microlitres / 1000.0;
  }

  @Override
  public int compareTo(Millilitres other) {
    return Long.compare(microlitres, other.microlitres);
  }

  /** The plain number, without unit. */
  @Override
  public String toString() {
    return Numbers.plain(value());
  }
}
