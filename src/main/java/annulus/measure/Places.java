package annulus.measure;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The readings of one member grouped by place: one depth and one angle. Differences inside a place
 * are noise (or, where the angle is unknown, noise or form); differences between places are form.
 */
record Places(List<Place> all) {

  /** One place; the angle is folded into the period of the instrument's contacts. */
  record Place(OptionalDouble depthMm, OptionalDouble angleDeg, List<Double> mm) {
    double mean() {
      return Sample.mean(mm);
    }
  }

  private record Key(double depth, double angle) {
    static final Comparator<Key> ORDER =
        Comparator.comparingDouble(Key::depth).thenComparingDouble(Key::angle);
  }

  Places {
    all = List.copyOf(all);
  }

  /** Two contacts read the same at 0 and 180 degrees, three at 0, 120 and 240. */
  static Places of(Collection<Reading> readings, int contacts) {
    double period = contacts == 3 ? 120 : 180;
    TreeMap<Key, Place> byKey = new TreeMap<>(Key.ORDER);
    for (Reading r : readings.stream().sorted(Reading.ORDER).toList()) {
      OptionalDouble angle =
          r.angleDeg().stream().map(a -> Math.rint(a % period * 1e6) / 1e6 + 0.0).findFirst();
      Key key = new Key(r.depthMm().orElse(-1) + 0.0, angle.orElse(-1));
      byKey
          .computeIfAbsent(key, k -> new Place(r.depthMm(), angle, new ArrayList<>()))
          .mm()
          .add(r.mm());
    }
    byKey.values().forEach(p -> p.mm().sort(null));
    return new Places(new ArrayList<>(byKey.values()));
  }

  /** Mean of the places' means: ten readings at one angle do not outvote one at another. */
  double meanMm() {
    return Sample.mean(means());
  }

  /** Factor from one reading's repeatability to that of {@link #meanMm}. */
  double meanFactor() {
    double sum = 0;
    for (Place p : all) {
      sum += 1.0 / p.mm().size();
    }
    return Math.sqrt(sum) / all.size();
  }

  /** Scatter of one reading about its place's mean, µm, pooled over the places. */
  double pooledUm(boolean knownAnglesOnly) {
    double squares = 0;
    for (Place p : pooled(knownAnglesOnly)) {
      squares += Sample.squares(p.mm());
    }
    int freedom = pooledFreedom(knownAnglesOnly);
    return freedom == 0 ? 0 : 1000 * Math.sqrt(squares / freedom);
  }

  int pooledFreedom(boolean knownAnglesOnly) {
    int freedom = 0;
    for (Place p : pooled(knownAnglesOnly)) {
      freedom += p.mm().size() - 1;
    }
    return freedom;
  }

  /** Standard deviation of the places' means, µm; 0 for one place. */
  double betweenUm() {
    return 1000 * Sample.standardDeviation(means());
  }

  boolean angleMissing() {
    return all.stream().anyMatch(p -> p.angleDeg().isEmpty());
  }

  /** Largest disagreement of readings at one place of known angle, µm. */
  double worstRepeatUm() {
    return pooled(true).stream()
        .mapToDouble(p -> micrometres(Sample.range(p.mm())))
        .max()
        .orElse(0);
  }

  /** Whole millionths of a micrometre, so that 41.99 − 41.97 mm is 20 µm and not a bit more. */
  static double micrometres(double mm) {
    return Math.rint(mm * 1e9) / 1e6;
  }

  private List<Place> pooled(boolean knownAnglesOnly) {
    List<Place> pooled = new ArrayList<>();
    for (Place p : all) {
      if (!knownAnglesOnly || p.angleDeg().isPresent()) {
        pooled.add(p);
      }
    }
    return pooled;
  }

  private List<Double> means() {
    return all.stream().map(Place::mean).toList();
  }
}
