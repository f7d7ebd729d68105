package annulus.hold;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Factors on a bond's hold, from data.
 *
 * @param gap factor over the radial gap, µm
 * @param engagement factor over length divided by diameter
 * @param surfaces factor by face
 * @param dynamics factor by kind of load
 * @param pressureMaxMPa highest contact pressure at which bond and friction add, MPa
 * @param shearMinMPa weakest compound for which they add, MPa on its specimen
 * @param wettingFilmUm radial film that wets the faces of a tight fit, µm
 */
public record HoldTables(
    FactorCurve gap,
    FactorCurve engagement,
    Map<String, Named> surfaces,
    Map<String, Named> dynamics,
    Named pressureMaxMPa,
    Named shearMinMPa,
    Named wettingFilmUm) {

  /**
   * A value with its source.
   *
   * @param value the value
   * @param provenance where it comes from
   */
  public record Named(Estimate value, Provenance provenance) {}

  public HoldTables {
    surfaces = sorted(surfaces);
    dynamics = sorted(dynamics);
    for (Map<String, Named> factors : List.of(surfaces, dynamics)) {
      factors.values().forEach(f -> f.value().checkedWithin("factor", 0, 1, ""));
    }
    pressureMaxMPa.value().checkedWithin("pressure-max", 0, 1000, "MPa");
    shearMinMPa.value().checkedWithin("shear-min", 0, 100, "MPa");
    wettingFilmUm.value().checkedWithin("wetting-film", 0, 50, "µm");
  }

  /** Within these limits bond and friction may be added. */
  public HybridHold.Limits limits() {
    return new HybridHold.Limits(pressureMaxMPa.value().likely(), shearMinMPa.value().likely());
  }

  /** Factor for a radial gap, µm (interference counts as 0); empty where no cure is assumed. */
  public Optional<HoldFactor> gapFactor(double radialGapUm) {
    return gapFactor(radialGapUm, radialGapUm);
  }

  /**
   * Factor for radial gaps between two, µm, low end by the worst of them: bonds are weaker in a
   * very thin film than in a thin one, so the widest gap alone is not the worst. Empty where no
   * cure is assumed.
   */
  public Optional<HoldFactor> gapFactor(double fromUm, double toUm) {
    return gap.between(Math.max(0, fromUm), Math.max(0, toUm))
        .map(v -> new HoldFactor(HoldFactor.Kind.GAP, v));
  }

  /**
   * Factor for length over diameter. Beyond the table's last point it falls so that more length
   * adds no hold.
   */
  public HoldFactor engagementFactor(double lengthMm, double diameterMm) {
    Check.positive("lengthMm", lengthMm, "mm");
    Check.positive("diameterMm", diameterMm, "mm");
    double ratio = lengthMm / diameterMm;
    FactorCurve.Point last = engagement.last();
    Estimate value =
        engagement.at(ratio).orElseGet(() -> Estimates.times(last.value(), last.at() / ratio));
    return new HoldFactor(HoldFactor.Kind.ENGAGEMENT, value);
  }

  /** Factor of the weaker of two faces, by the low ends. */
  public HoldFactor surfaceFactor(String oneFace, String otherFace) {
    Estimate one = find("surface", surfaces, oneFace);
    Estimate other = find("surface", surfaces, otherFace);
    return new HoldFactor(HoldFactor.Kind.SURFACE, Estimates.lesser(one, other));
  }

  /** The kind of load that takes the most off a bond: what a load not described is taken for. */
  public String roughest() {
    return Collections.min(
        dynamics.keySet(), Comparator.comparingDouble(kind -> dynamics.get(kind).value().low()));
  }

  /** Knock-down for a load that repeats. */
  public HoldFactor dynamicFactor(String kind) {
    return new HoldFactor(HoldFactor.Kind.DYNAMIC, find("dynamic", dynamics, kind));
  }

  /** Copied in the order of the alphabet: the same on every run. */
  private static Map<String, Named> sorted(Map<String, Named> rows) {
    return Collections.unmodifiableMap(new TreeMap<>(rows));
  }

  private static Estimate find(String field, Map<String, Named> rows, String key) {
    Named row = rows.get(key);
    if (row == null) {
      throw new InvalidValue(field, "\"" + key + "\" is unknown", String.join(", ", rows.keySet()));
    }
    return row.value();
  }
}
