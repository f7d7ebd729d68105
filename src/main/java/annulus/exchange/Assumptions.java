package annulus.exchange;

import annulus.advice.JointOrder.Assumption;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/** What an order did not say, and what was taken instead. */
final class Assumptions {
  private final List<Assumption> made = new ArrayList<>();

  /** Notes a value that stands in for a field, and gives it back. */
  <T> T make(String field, T value, String why) {
    String text =
        value instanceof Enum<?> e
            ? Fields.word(e)
            : value instanceof Double d ? Numbers.plain(d) : value.toString();
    made.add(new Assumption(field, text, why));
    return value;
  }

  List<Assumption> all() {
    return made;
  }
}
