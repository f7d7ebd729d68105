package annulus.measure;

import annulus.measure.Places.Place;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeMap;

/**
 * The form that the readings show.
 *
 * @param ovalityUm largest less smallest diameter at one depth, the worst depth, µm; empty when it
 *     cannot be seen
 * @param taperUm largest less smallest mean diameter of the depths, µm; empty for one depth
 * @param largestMm largest diameter, read or fitted, mm
 * @param smallestMm smallest diameter, read or fitted, mm
 */
record Form(OptionalDouble ovalityUm, OptionalDouble taperUm, double largestMm, double smallestMm) {

  /** Angles closer than this are the same angle, degrees: only the last bits differ. */
  private static final double SAME_ANGLE = 1e-9;

  static Form of(Places places, int contacts) {
    List<Double> extremes = new ArrayList<>();
    places.all().forEach(p -> extremes.addAll(p.mm()));
    OptionalDouble ovality = OptionalDouble.empty();
    if (contacts == 2) {
      for (List<Place> depth : byDepth(places)) {
        ovality = larger(ovality, ovalityUm(depth, extremes));
      }
    }
    double high = extremes.stream().mapToDouble(d -> d).max().orElseThrow();
    double low = extremes.stream().mapToDouble(d -> d).min().orElseThrow();
    return new Form(ovality, taperUm(places), high, low);
  }

  /**
   * Amplitude of an oval from diameters at 0, 60 and 120 degrees.
   *
   * <p>{@code a = (2/3)·|D0 + D60·e^(i120°) + D120·e^(i240°)|}
   *
   * @param d0 diameter at the first angle, mm
   * @param d60 diameter 60 degrees further, mm
   * @param d120 diameter 120 degrees further, mm
   * @return half of the largest less the smallest diameter, mm
   *     <p>Valid for: form that is purely oval (two lobes).
   *     <p>Source: discrete Fourier sum of three points, exact.
   */
  static double ovalAmplitude(double d0, double d60, double d120) {
    double real = d0 - 0.5 * d60 - 0.5 * d120;
    double imaginary = Math.sqrt(0.75) * (d60 - d120);
    return 2.0 / 3 * Math.hypot(real, imaginary);
  }

  private static OptionalDouble ovalityUm(List<Place> depth, List<Double> extremes) {
    List<Place> known = depth.stream().filter(p -> p.angleDeg().isPresent()).toList();
    if (known.size() < 2) {
      return OptionalDouble.empty();
    }
    List<Double> means = known.stream().map(Place::mean).toList();
    double seen = Places.micrometres(Sample.range(means));
    if (!isThirds(known)) {
      return OptionalDouble.of(seen);
    }
    double amplitude = ovalAmplitude(means.get(0), means.get(1), means.get(2));
    double middle = Sample.mean(means);
    extremes.add(middle + amplitude);
    extremes.add(middle - amplitude);
    return OptionalDouble.of(Math.max(seen, Places.micrometres(2 * amplitude)));
  }

  private static boolean isThirds(List<Place> known) {
    if (known.size() != 3) {
      return false;
    }
    double first = known.get(0).angleDeg().orElseThrow();
    double second = known.get(1).angleDeg().orElseThrow();
    double third = known.get(2).angleDeg().orElseThrow();
    return Math.abs(second - first - 60) < SAME_ANGLE && Math.abs(third - second - 60) < SAME_ANGLE;
  }

  private static OptionalDouble taperUm(Places places) {
    List<Double> means = new ArrayList<>();
    for (List<Place> depth : byDepth(places)) {
      if (depth.get(0).depthMm().isPresent()) {
        means.add(Sample.mean(depth.stream().map(Place::mean).toList()));
      }
    }
    return means.size() < 2
        ? OptionalDouble.empty()
        : OptionalDouble.of(Places.micrometres(Sample.range(means)));
  }

  private static Collection<List<Place>> byDepth(Places places) {
    TreeMap<Double, List<Place>> map = new TreeMap<>();
    for (Place p : places.all()) {
      map.computeIfAbsent(p.depthMm().orElse(-1) + 0.0, d -> new ArrayList<>()).add(p);
    }
    return map.values();
  }

  private static OptionalDouble larger(OptionalDouble a, OptionalDouble b) {
    if (a.isEmpty() || b.isEmpty()) {
      return a.isEmpty() ? b : a;
    }
    return OptionalDouble.of(Math.max(a.getAsDouble(), b.getAsDouble()));
  }
}
