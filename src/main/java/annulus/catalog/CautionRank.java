package annulus.catalog;

import annulus.quantity.Check;
import java.util.Optional;

/**
 * How grave a caution is.
 *
 * @param id of the caution that every answer carries, or of the rule
 * @param severity the worst that follows where it is not heeded
 * @param card short words that always stand on the printed card; empty where it takes its turn
 * @param provenance source of the row
 */
public record CautionRank(
    String id, Severity severity, Optional<String> card, Provenance provenance) {
  public CautionRank {
    Check.text("id", id);
  }
}
