package annulus.fit;

import annulus.catalog.Provenance;
import annulus.fit.iso286.LimitsOfSize;
import annulus.fit.iso286.SizeBand;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;
import java.util.stream.Stream;

/**
 * Default limits of a metric rolling bearing that is named by its boundary dimensions only, taken
 * as tolerance class Normal.
 *
 * @param rows the table
 */
public record BearingLimits(List<Row> rows) {
  public BearingLimits {
    rows = List.copyOf(rows);
    for (int i = 0; i < rows.size(); i++) {
      for (int j = 0; j < i; j++) {
        requireApart(rows.get(i), rows.get(j));
      }
    }
  }

  /**
   * One cell of the table.
   *
   * @param ring fitted surface
   * @param band nominal diameters it holds for
   * @param lowerUm lower deviation of the mean diameter, µm, not above 0; the upper is 0
   * @param provenance source of the row
   */
  public record Row(BearingRing ring, SizeBand band, double lowerUm, Provenance provenance) {
    public Row {
      Check.within("lower_um", lowerUm, -200, 0, "µm");
    }
  }

  /**
   * Limits of the mean diameter of a ring.
   *
   * @param ring bore or outside
   * @param nominalMm nominal diameter, mm
   * @return limits, µm on the diameter; the upper one is 0
   *     <p>Valid for: metric radial bearings of class Normal, as far as the rows go.
   *     <p>Source: ISO 492, class Normal.
   * @throws InvalidValue when not tabulated here
   */
  public LimitsOfSize limits(BearingRing ring, double nominalMm) {
    return new LimitsOfSize(nominalMm, row(ring, nominalMm).lowerUm(), 0);
  }

  /** The row the limits come from. */
  public Row row(BearingRing ring, double nominalMm) {
    Check.positive("nominalMm", nominalMm, "mm");
    return rows.stream()
        .filter(r -> r.ring() == ring && r.band().contains(nominalMm))
        .findFirst()
        .orElseThrow(() -> notTabulated(ring, nominalMm));
  }

  private InvalidValue notTabulated(BearingRing ring, double nominalMm) {
    double from = edges(ring).map(b -> b.overMm()).min(Double::compare).orElse(0.0);
    double to = edges(ring).map(b -> b.upToMm()).max(Double::compare).orElse(0.0);
    return new InvalidValue(
        "nominalMm",
        Numbers.plain(nominalMm) + " mm is not tabulated here for class Normal",
        "over " + Numbers.plain(from) + " to " + Numbers.plain(to) + " mm");
  }

  private Stream<SizeBand> edges(BearingRing ring) {
    return rows.stream().filter(r -> r.ring() == ring).map(Row::band);
  }

  private static void requireApart(Row a, Row b) {
    if (a.ring() == b.ring()
        && a.band().overMm() < b.band().upToMm()
        && b.band().overMm() < a.band().upToMm()) {
      throw new InvalidValue(
          "table",
          "size " + Numbers.plain(a.band().upToMm()) + " mm is given twice",
          "each size once");
    }
  }
}
