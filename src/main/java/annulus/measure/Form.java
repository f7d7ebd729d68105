package annulus.measure;

import annulus.measure.Places.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

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
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Place p : places.all()) {
      low = Math.min(low, p.smallest());
      high = Math.max(high, p.largest());
    }
    OptionalDouble ovality = OptionalDouble.empty();
    List<List<Place>> depths = byDepth(places);
    for (List<Place> depth : depths) {
      Oval oval = contacts == 2 ? oval(depth) : Oval.NOT_SEEN;
      ovality = larger(ovality, oval.um());
      low = Math.min(low, oval.lowMm());
      high = Math.max(high, oval.highMm());
    }
    return new Form(ovality, taperUm(depths), high, low);
  }

  /** Ovality of one depth, with the ends of the oval fitted to it, if any. */
  private record Oval(OptionalDouble um, double lowMm, double highMm) {
    static final Oval NOT_SEEN = seen(OptionalDouble.empty());

    static Oval seen(OptionalDouble um) {
      return new Oval(um, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    }
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

  private static Oval oval(List<Place> depth) {
    List<Place> known = withAngle(depth);
    if (known.size() < 2) {
      return Oval.NOT_SEEN;
    }
    double[] means = Places.means(known);
    double seen = Places.micrometres(Sample.range(means));
    if (!isThirds(known)) {
      return Oval.seen(OptionalDouble.of(seen));
    }
    double amplitude = ovalAmplitude(means[0], means[1], means[2]);
    double middle = Sample.mean(means);
    double um = Math.max(seen, Places.micrometres(2 * amplitude));
    return new Oval(OptionalDouble.of(um), middle - amplitude, middle + amplitude);
  }

  private static List<Place> withAngle(List<Place> depth) {
    List<Place> known = new ArrayList<>();
    for (Place p : depth) {
      if (p.hasAngle()) {
        known.add(p);
      }
    }
    return known;
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

  private static OptionalDouble taperUm(List<List<Place>> depths) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    int told = 0;
    for (List<Place> depth : depths) {
      if (depth.get(0).depthMm().isPresent()) {
        double mean = Sample.mean(Places.means(depth));
        low = Math.min(low, mean);
        high = Math.max(high, mean);
        told++;
      }
    }
    return told < 2 ? OptionalDouble.empty() : OptionalDouble.of(Places.micrometres(high - low));
  }

  /** The places come sorted by depth. */
  private static List<List<Place>> byDepth(Places places) {
    List<Place> all = places.all();
    List<List<Place>> depths = new ArrayList<>();
    int first = 0;
    for (int end = 1; end <= all.size(); end++) {
      if (end == all.size() || !all.get(end).isAsDeepAs(all.get(first))) {
        depths.add(all.subList(first, end));
        first = end;
      }
    }
    return depths;
  }

  private static OptionalDouble larger(OptionalDouble a, OptionalDouble b) {
    if (a.isEmpty() || b.isEmpty()) {
      return a.isEmpty() ? b : a;
    }
    return OptionalDouble.of(Math.max(a.getAsDouble(), b.getAsDouble()));
  }
}
