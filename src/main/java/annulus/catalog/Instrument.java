package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Optional;

/**
 * A measuring instrument as the workshop names it.
 *
 * @param id stable name used in orders
 * @param name what a mechanic calls it
 * @param spans what it can measure, each with its error limit; never empty
 */
public record Instrument(String id, String name, List<Span> spans) {
  public Instrument {
    Check.text("id", id);
    Check.text("name", name);
    spans = List.copyOf(spans);
    if (spans.isEmpty()) {
      throw new InvalidValue("spans", "is empty", "at least one measuring span");
    }
  }

  /** What is measured: the bore from inside or the part from outside. */
  public enum Use {
    INSIDE,
    OUTSIDE
  }

  /**
   * One measuring span.
   *
   * @param use inside or outside measurement
   * @param overMm lower end, mm, excluded unless 0
   * @param upToMm upper end, mm, included
   * @param mpeUm maximum permissible error, ± µm on the diameter (JCGM 100 4.3.7: rectangular)
   * @param resolutionUm smallest step shown, µm
   * @param contacts contact points on the wall: 2 or 3
   * @param jawFlatMm widest flat of inside jaws, mm; 0 where the contact is a ball or a line. Flats
   *     bridge the curve and make a bore read small
   * @param provenance source of this row
   */
  public record Span(
      Use use,
      double overMm,
      double upToMm,
      double mpeUm,
      double resolutionUm,
      int contacts,
      double jawFlatMm,
      Provenance provenance) {
    public Span {
      Check.within("over_mm", overMm, 0, 1000, "mm");
      Check.within("up_to_mm", upToMm, overMm, 1000, "mm");
      Check.within("mpe_um", mpeUm, 0.1, 500, "µm");
      Check.within("resolution_um", resolutionUm, 0.1, 500, "µm");
      Check.within("contacts", contacts, 2, 3, "");
      Check.within("jaw_flat_mm", jawFlatMm, 0, 10, "mm");
    }

    /** Jaws wider than the bore do not go in. */
    boolean covers(Use wanted, double diameterMm) {
      boolean goesIn = use == Use.OUTSIDE || jawFlatMm <= diameterMm;
      boolean within = (diameterMm > overMm || overMm == 0) && diameterMm <= upToMm;
      return use == wanted && within && goesIn;
    }
  }

  /** The span that measures this diameter (mm) in this use, if the instrument can. */
  public Optional<Span> spanFor(Use use, double diameterMm) {
    for (Span span : spans) {
      if (span.covers(use, diameterMm)) {
        return Optional.of(span);
      }
    }
    return Optional.empty();
  }
}
