package annulus.store;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/**
 * Who does something and when.
 *
 * @param who a name or initials; never empty
 * @param at to the millisecond
 */
public record Stamp(String who, Instant at) {
  private static final int LONGEST = 40;

  public Stamp {
    Check.text("who", who);
    who = who.strip();
    if (who.codePointCount(0, who.length()) > LONGEST) {
      throw new InvalidValue("who", "is too long", "at most " + LONGEST + " characters");
    }
    at = at.truncatedTo(ChronoUnit.MILLIS);
  }
}
