package annulus.quantity;

import java.util.AbstractList;
import java.util.List;
import java.util.function.Supplier;

/**
 * An unchangeable list that is made when somebody first looks into it: the curve, the steps and the
 * sources of an answer are long, and a job list prints none of them. Whoever makes it must always
 * make the same list.
 *
 * @param <T> what it holds
 */
public final class WhenAsked<T> extends AbstractList<T> {
  private final Supplier<List<T>> made;
  private volatile List<T> list;

  private WhenAsked(Supplier<List<T>> made) {
    this.made = made;
  }

  /** A list that is made when it is first looked into. */
  public static <T> List<T> list(Supplier<List<T>> made) {
    return new WhenAsked<>(made);
  }

  /** An unchangeable list of the same, without looking into one that is not made yet. */
  public static <T> List<T> copyOf(List<T> list) {
    return list instanceof WhenAsked ? list : List.copyOf(list);
  }

  private List<T> list() {
    List<T> known = list;
    if (known == null) {
      known = List.copyOf(made.get());
      list = known;
    }
    return known;
  }

  @Override
  public T get(int index) {
    return list().get(index);
  }

  @Override
  public int size() {
    return list().size();
  }
}
