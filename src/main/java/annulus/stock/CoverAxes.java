package annulus.stock;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.Interval;
import java.util.List;

/**
 * The joints that stand for all others, axis by axis.
 *
 * @param gaps stretches of radial gap
 * @param surfaces pairs of faces
 * @param services highest service temperatures
 */
public record CoverAxes(List<Gaps> gaps, List<Surfaces> surfaces, List<Service> services) {
  public CoverAxes {
    gaps = List.copyOf(gaps);
    surfaces = List.copyOf(surfaces);
    services = List.copyOf(services);
  }

  /**
   * A stretch of gaps.
   *
   * @param id stable name
   * @param name as printed
   * @param radialUm radial gap, µm
   * @param provenance source of this row
   */
  public record Gaps(String id, String name, Interval radialUm, Provenance provenance) {
    public Gaps {
      radialUm.checkedWithin("radialUm", -100, 1000, "µm radial");
    }
  }

  /**
   * A pair of faces.
   *
   * @param id stable name
   * @param name as printed
   * @param bore id of the bore's material
   * @param part id of the part's material
   * @param provenance source of this row
   */
  public record Surfaces(String id, String name, String bore, String part, Provenance provenance) {}

  /**
   * A highest service temperature.
   *
   * @param id stable name
   * @param name as printed
   * @param highC °C
   * @param provenance source of this row
   */
  public record Service(String id, String name, double highC, Provenance provenance) {
    public Service {
      Check.within("highC", highC, -50, 350, "°C");
    }
  }
}
