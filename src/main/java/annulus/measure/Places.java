package annulus.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;

/**
 * The readings of one member grouped by place: one depth and one angle. Differences inside a place
 * are noise (or, where the angle is unknown, noise or form); differences between places are form.
 */
final class Places {
  /** Stands for a depth or an angle that nobody has told; sorts before all others. */
  private static final double NOT_TOLD = -1;

  private final List<Place> all;
  private final boolean angleMissing;

  private Places(List<Place> all) {
    this.all = List.copyOf(all);
    boolean missing = false;
    for (Place place : all) {
      missing |= !place.hasAngle();
    }
    this.angleMissing = missing;
  }

  /** One place; the angle is folded into the period of the instrument's contacts. */
  static final class Place {
    private final double depth;
    private final double angle;
    private final double[] mm;
    private final double mean;

    private Place(double depth, double angle, double[] mm) {
      this.depth = depth;
      this.angle = angle;
      this.mm = mm;
      this.mean = Sample.mean(mm);
    }

    OptionalDouble depthMm() {
      return depth == NOT_TOLD ? OptionalDouble.empty() : OptionalDouble.of(depth);
    }

    OptionalDouble angleDeg() {
      return angle == NOT_TOLD ? OptionalDouble.empty() : OptionalDouble.of(angle);
    }

    boolean hasAngle() {
      return angle != NOT_TOLD;
    }

    boolean isAsDeepAs(Place other) {
      return depth == other.depth;
    }

    double mean() {
      return mean;
    }

    double smallest() {
      return mm[0];
    }

    double largest() {
      return mm[mm.length - 1];
    }
  }

  /** A reading with its place. */
  private record Placed(double depth, double angle, double mm) implements Comparable<Placed> {
    static Placed of(Reading r, double period) {
      double angle = r.angleDeg().orElse(NOT_TOLD);
      double folded = angle == NOT_TOLD ? angle : folded(angle, period);
      return new Placed(r.depthMm().orElse(NOT_TOLD) + 0.0, folded, r.mm());
    }

    /** What is left over whole periods, in whole millionths; {@code %} is the same, and slow. */
    private static double folded(double angle, double period) {
      double rest = angle;
      while (rest >= period) {
        rest -= period;
      }
      return Math.rint(rest * 1e6) / 1e6 + 0.0;
    }

    boolean isWhere(Placed other) {
      return depth == other.depth && angle == other.angle;
    }

    @Override
    public int compareTo(Placed other) {
      int byDepth = Double.compare(depth, other.depth);
      int byAngle = byDepth != 0 ? byDepth : Double.compare(angle, other.angle);
      return byAngle != 0 ? byAngle : Double.compare(mm, other.mm);
    }
  }

  /** Two contacts read the same at 0 and 180 degrees, three at 0, 120 and 240. */
  static Places of(Collection<Reading> readings, int contacts) {
    double period = contacts == 3 ? 120 : 180;
    Placed[] sorted = new Placed[readings.size()];
    int count = 0;
    for (Reading r : readings) {
      sorted[count++] = Placed.of(r, period);
    }
    Arrays.sort(sorted);
    List<Place> places = new ArrayList<>();
    int first = 0;
    for (int end = 1; end <= count; end++) {
      if (end == count || !sorted[end].isWhere(sorted[first])) {
        places.add(place(sorted, first, end));
        first = end;
      }
    }
    return new Places(places);
  }

  private static Place place(Placed[] sorted, int first, int end) {
    double[] mm = new double[end - first];
    for (int i = 0; i < mm.length; i++) {
      mm[i] = sorted[first + i].mm();
    }
    return new Place(sorted[first].depth(), sorted[first].angle(), mm);
  }

  /** By depth, then by angle; what is not told comes first. */
  List<Place> all() {
    return all;
  }

  /** Mean of the places' means: ten readings at one angle do not outvote one at another. */
  double meanMm() {
    return Sample.mean(means(all));
  }

  /** Factor from one reading's repeatability to that of {@link #meanMm}. */
  double meanFactor() {
    double sum = 0;
    for (Place p : all) {
      sum += 1.0 / p.mm.length;
    }
    return Math.sqrt(sum) / all.size();
  }

  /** Scatter of one reading about its place's mean, µm, pooled over the places. */
  double pooledUm(boolean knownAnglesOnly) {
    double squares = 0;
    for (Place p : all) {
      if (p.hasAngle() || !knownAnglesOnly) {
        squares += Sample.squares(p.mm);
      }
    }
    int freedom = pooledFreedom(knownAnglesOnly);
    return freedom == 0 ? 0 : 1000 * Math.sqrt(squares / freedom);
  }

  int pooledFreedom(boolean knownAnglesOnly) {
    int freedom = 0;
    for (Place p : all) {
      freedom += p.hasAngle() || !knownAnglesOnly ? p.mm.length - 1 : 0;
    }
    return freedom;
  }

  /** Standard deviation of one reading, µm, and its degrees of freedom. */
  record Scatter(double um, int freedom) {}

  /**
   * Scatter of one reading as if all were taken at one angle of their depth, or at one place where
   * some depth is not told; 0 without repeats.
   */
  Scatter scatterAtOneAngle() {
    boolean depthMissing = all.get(0).depth == NOT_TOLD;
    double squares = 0;
    int freedom = 0;
    int first = 0;
    for (int end = 1; end <= all.size(); end++) {
      if (end == all.size() || !(depthMissing || all.get(end).isAsDeepAs(all.get(first)))) {
        double[] mm = readings(all.subList(first, end));
        squares += Sample.squares(mm);
        freedom += mm.length - 1;
        first = end;
      }
    }
    return new Scatter(freedom == 0 ? 0 : 1000 * Math.sqrt(squares / freedom), freedom);
  }

  private static double[] readings(List<Place> places) {
    return places.stream().flatMapToDouble(p -> Arrays.stream(p.mm)).toArray();
  }

  /** Standard deviation of the places' means, µm; 0 for one place. */
  double betweenUm() {
    return 1000 * Sample.standardDeviation(means(all));
  }

  boolean angleMissing() {
    return angleMissing;
  }

  /** Largest disagreement of readings at one place of known angle, µm. */
  double worstRepeatUm() {
    double worst = 0;
    for (Place p : all) {
      worst = p.hasAngle() ? Math.max(worst, micrometres(Sample.range(p.mm))) : worst;
    }
    return worst;
  }

  /** Whole millionths of a micrometre, so that 41.99 − 41.97 mm is 20 µm and not a bit more. */
  static double micrometres(double mm) {
    return Math.rint(mm * 1e9) / 1e6;
  }

  static double[] means(List<Place> places) {
    double[] means = new double[places.size()];
    for (int i = 0; i < means.length; i++) {
      means[i] = places.get(i).mean();
    }
    return means;
  }
}
