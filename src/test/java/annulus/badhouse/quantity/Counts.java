package annulus.badhouse.quantity;

import java.util.ArrayList;

/** A pure package remembers nothing. */
public final class Counts {
  static int calls;
  static final ArrayList<String> SEEN = new ArrayList<>();

  private Counts() {}

  static void call(String name) {
    calls++;
    SEEN.add(name);
  }
}
