package annulus.stock;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * One line of the ledger.
 *
 * @param id made by whoever records it; the same id is the same movement
 * @param at when it was recorded, to the second
 * @param day the shop's calendar day
 * @param kind what happened
 * @param who who did it
 * @param job the job it went to; empty if none
 * @param lot which lot
 * @param item id of the class or primer in it; empty if not known
 * @param amount what moved; below zero only for a correction
 * @param reason why; empty where it goes without saying
 * @param witness the test pair that stood for a lot used against its use-by; empty if none
 */
public record Movement(
    String id,
    Instant at,
    LocalDate day,
    Kind kind,
    String who,
    String job,
    String lot,
    String item,
    Millilitres amount,
    String reason,
    String witness) {
  private static final int LONGEST = 200;

  /** What happened to the lot. */
  public enum Kind {
    RECEIVE(1),
    USE(-1),
    DISCARD(-1),
    /** The count was wrong; the amount says by how much it changes. */
    CORRECT(1);

    private final int sign;

    Kind(int sign) {
      this.sign = sign;
    }
  }

  public Movement {
    Check.text("movement", id);
    Check.text("who", who);
    Check.text("lot", lot);
    for (String text : new String[] {id, who, job, lot, item, reason, witness}) {
      if (text.length() > LONGEST) {
        throw new InvalidValue(
            "text", text.length() + " characters", "at most " + LONGEST + " characters");
      }
    }
    at = at.truncatedTo(ChronoUnit.SECONDS);
    boolean right = kind == Kind.CORRECT ? amount.microlitres() != 0 : amount.isPositive();
    if (!right) {
      throw new InvalidValue(
          "ml", amount + " mL", kind == Kind.CORRECT ? "not 0 mL" : "more than 0 mL");
    }
    if ((kind == Kind.DISCARD || kind == Kind.CORRECT) && reason.isBlank()) {
      throw new InvalidValue("reason", "is empty", "a few words on why");
    }
  }

  /** Whether it says what was in a lot when its count began: a sheet's amount, a first delivery. */
  public boolean isOpening() {
    boolean named = id.equals("opening-" + lot) || id.equals("received-" + lot);
    return kind == Kind.RECEIVE && named;
  }

  /** What it does to the amount left. */
  public Millilitres change() {
    return new Millilitres(kind.sign * amount.microlitres());
  }
}
