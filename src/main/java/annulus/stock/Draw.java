package annulus.stock;

import annulus.hold.BondVolume;
import annulus.quantity.Check;

/** How much a joint draws from the cabinet. */
public final class Draw {
  private static final double LEAST_MM = 0.5;

  private Draw() {}

  /**
   * Compound drawn for a joint, rounded up to the microlitre.
   *
   * <p>{@code V = w pi/4 (D^2 - (D - 2h)^2) L, h = max(g, f)}
   *
   * @param diameterMm bore diameter D, mm
   * @param gapUm largest radial gap g to be counted on, µm
   * @param filmUm film f that wets the faces where the gap is less, µm radial, 0 to 50
   * @param engagementMm length L, mm
   * @param wasteFactor drawn over left in the gap, w; 1 to 20
   * @param leastMl least that is drawn, mL
   * @return amount
   *     <p>Valid for: one joint, gap filled all round.
   *     <p>Source: geometry; film and waste from data.
   */
  public static Millilitres compound(
      double diameterMm,
      double gapUm,
      double filmUm,
      double engagementMm,
      double wasteFactor,
      double leastMl) {
    Check.within("filmUm", filmUm, 0, 50, "µm");
    Check.within("wasteFactor", wasteFactor, 1, 20, "");
    double partMm = Math.max(LEAST_MM, diameterMm - 2 * Math.max(filmUm, gapUm) / 1000);
    double net = BondVolume.netMm3(Math.max(LEAST_MM, diameterMm), partMm, engagementMm) / 1000;
    return Millilitres.up(Math.max(leastMl, net * wasteFactor));
  }

  /**
   * Primer drawn for a joint, rounded up to the microlitre.
   *
   * <p>{@code V = n pi D L c}
   *
   * @param diameterMm diameter D, mm
   * @param engagementMm length L, mm
   * @param faces primed faces n, 0 to 2
   * @param mlPerM2 drawn for a square metre c, mL/m²
   * @return amount
   *     <p>Valid for: gaps that are small beside the diameter.
   *     <p>Source: geometry; coverage from data.
   */
  public static Millilitres primer(
      double diameterMm, double engagementMm, int faces, double mlPerM2) {
    Check.within("faces", faces, 0, 2, "");
    return Millilitres.up(faces * Math.PI * diameterMm * engagementMm * 1e-6 * mlPerM2);
  }
}
