package annulus.catalog;

import annulus.quantity.Check;

/**
 * A caution that every answer carries.
 *
 * @param id stable name
 * @param text the words
 * @param provenance source of the row
 */
public record StandingCaution(String id, String text, Provenance provenance) {
  public StandingCaution {
    Check.text("id", id);
    Check.text("text", text);
  }
}
