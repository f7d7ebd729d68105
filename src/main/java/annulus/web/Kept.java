package annulus.web;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * What was read last, by all that it was read from; never an answer.
 *
 * @param <K> what it was read from
 * @param <T> what was read
 */
final class Kept<K, T> {
  private final Map<K, T> kept;

  /**
   * @param most how many are kept
   */
  Kept(int most) {
    kept =
        Collections.synchronizedMap(
            new LinkedHashMap<>(16, 0.75f, true) {
              private static final long serialVersionUID = 1L;

              @Override
              protected boolean removeEldestEntry(Map.Entry<K, T> eldest) {
                return size() > most;
              }
            });
  }

  T get(K source, Supplier<T> reading) {
    T known = kept.get(source);
    if (known == null) {
      known = reading.get();
      kept.put(source, known);
    }
    return known;
  }
}
