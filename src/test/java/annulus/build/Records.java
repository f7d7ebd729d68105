package annulus.build;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;

/** Records with fields of every type, compared with each other. */
public final class Records implements Supplier<String> {
  record Empty() {}

  record Every(
      boolean z,
      byte b,
      char c,
      short s,
      int i,
      long l,
      float f,
      double d,
      Object o,
      List<Double> all) {}

  record Small(Object o) {}

  @Override
  public String get() {
    List<String> said = new ArrayList<>();
    List<Object> all = all();
    for (Object one : all) {
      said.add("" + one.hashCode());
      for (Object other : all) {
        said.add("" + one.equals(other));
      }
      said.add("" + one.equals(nothing()) + one.equals("text"));
    }
    return String.join("\n", said);
  }

  private static Object nothing() {
    return null;
  }

  private static List<Object> all() {
    List<Double> list = List.of(0.0);
    List<Object> all = new ArrayList<>();
    all.add(new Empty());
    all.add(new Empty());
    all.add(new Small(null));
    all.add(new Small("a"));
    all.add(new Small("ba".substring(1)));
    for (double d : new double[] {0.0, -0.0, Double.NaN, 1.5}) {
      all.add(new Every(true, (byte) 1, 'c', (short) 3, 4, 5L, 6f, d, "o", list));
      all.add(new Every(true, (byte) 1, 'c', (short) 3, 4, 5L, (float) d, 7, null, list));
    }
    for (int turned = 0; turned < 7; turned++) {
      all.add(
          new Every(
              turned != 0,
              (byte) (turned == 1 ? -1 : 1),
              turned == 2 ? 'd' : 'c',
              (short) (turned == 3 ? -3 : 3),
              turned == 4 ? -4 : 4,
              turned == 5 ? -5L : 5L,
              turned == 6 ? -6f : 6f,
              7,
              "o",
              list));
    }
    return all;
  }
}
