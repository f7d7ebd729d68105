package annulus.catalog;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;

/**
 * What must not be done with a joint between its hand-back and full cure.
 *
 * @param until stage at which the limit ends; full cure alone
 * @param notAllowed the words, at most 60 characters
 * @param provenance source of the row
 */
public record LimitedUse(Stage until, String notAllowed, Provenance provenance) {
  private static final int LONGEST = 60;

  /**
   * @throws InvalidValue when the words are missing or too long, or another stage is named
   */
  public LimitedUse {
    Check.text("not_allowed", notAllowed);
    int length = notAllowed.codePointCount(0, notAllowed.length());
    if (length > LONGEST) {
      throw new InvalidValue(
          "not_allowed",
          length + " characters do not fit on a tag",
          "at most " + LONGEST + " characters");
    }
    if (until != Stage.FULL) {
      throw new InvalidValue("until", "is no stage that ends the limit", "full");
    }
  }
}
