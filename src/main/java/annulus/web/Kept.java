package annulus.web;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/** What was read last, by the whole text that it was read from; never an answer. */
final class Kept<T> {
  private final Map<String, T> kept;

  /**
   * @param most how many are kept
   */
  Kept(int most) {
    kept =
        Collections.synchronizedMap(
            new LinkedHashMap<>(16, 0.75f, true) {
              private static final long serialVersionUID = 1L;

              @Override
              protected boolean removeEldestEntry(Map.Entry<String, T> eldest) {
                return size() > most;
              }
            });
  }

  T get(String text, Supplier<T> reading) {
    T known = kept.get(text);
    if (known == null) {
      known = reading.get();
      kept.put(text, known);
    }
    return known;
  }
}
