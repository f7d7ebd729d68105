package annulus.stock;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

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
 * @param amount what moved; below zero only for a correction and what is taken back, none where a
 *     lot is held back or cleared
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
  static final int LONGEST = 200;

  /** A clearing is named after what it clears: whoever clears the same tells of the same. */
  private static final String CLEARED = "cleared-";

  /** What is taken back is named after what did not take place: it can be only once. */
  private static final String TAKEN_BACK = "taken-back-";

  /** What happened to the lot. */
  public enum Kind {
    RECEIVE(1),
    USE(-1),
    DISCARD(-1),
    /** The count was wrong; the amount says by how much it changes. */
    CORRECT(1),
    /** It must not be used until that is cleared; nothing moves. */
    HOLD_BACK(0),
    /** What held it back is settled; nothing moves. */
    CLEAR(0),
    /** A movement that was recorded and did not take place; the amount undoes it. */
    TAKE_BACK(1);

    private final int sign;

    Kind(int sign) {
      this.sign = sign;
    }

    /** Whether it changes what is left. */
    public boolean moves() {
      return sign != 0;
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
    requireAmount(kind, amount);
    boolean obvious = kind == Kind.RECEIVE || kind == Kind.USE || kind == Kind.TAKE_BACK;
    if (!obvious && reason.isBlank()) {
      throw new InvalidValue("reason", "is empty", "a few words on why");
    }
    if (kind == Kind.HOLD_BACK && id.length() > LONGEST - CLEARED.length()) {
      throw new InvalidValue(
          "movement",
          id.length() + " characters",
          "at most " + (LONGEST - CLEARED.length()) + " characters");
    }
    if (kind == Kind.CLEAR && !id.startsWith(CLEARED)) {
      throw new InvalidValue("movement", id + " clears nothing", CLEARED + " and what it clears");
    }
    if (kind == Kind.TAKE_BACK && !id.startsWith(TAKEN_BACK)) {
      throw new InvalidValue(
          "movement", id + " takes nothing back", TAKEN_BACK + " and what it takes back");
    }
  }

  private static void requireAmount(Kind kind, Millilitres amount) {
    switch (kind) {
      case CORRECT, TAKE_BACK -> require(amount.microlitres() != 0, amount, "not 0 mL");
      case HOLD_BACK, CLEAR -> require(amount.microlitres() == 0, amount, "0 mL: nothing moves");
      default -> require(amount.isPositive(), amount, "more than 0 mL");
    }
  }

  private static void require(boolean right, Millilitres amount, String allowed) {
    if (!right) {
      throw new InvalidValue("ml", amount + " mL", allowed);
    }
  }

  /** Holds a lot back. */
  public static Movement holdBack(
      String id, Instant at, LocalDate day, String who, String lot, String item, String reason) {
    return new Movement(
        id, at, day, Kind.HOLD_BACK, who, "", lot, item, Millilitres.NONE, reason, "");
  }

  /** Clears what held a lot back. */
  public static Movement clear(
      HeldBack held,
      Instant at,
      LocalDate day,
      String who,
      String lot,
      String item,
      String reason) {
    return new Movement(
        CLEARED + held.id(), at, day, Kind.CLEAR, who, "", lot, item, Millilitres.NONE, reason, "");
  }

  /** The id of what it clears; empty for any other kind. */
  public Optional<String> clears() {
    return kind == Kind.CLEAR ? Optional.of(id.substring(CLEARED.length())) : Optional.empty();
  }

  /**
   * Takes a movement back that did not take place: the lot has what it had before, and a container
   * that it would have opened is sealed.
   *
   * @param reason why; may be empty
   */
  public static Movement takeBack(
      Movement taken, Instant at, LocalDate day, String who, String reason) {
    return new Movement(
        TAKEN_BACK + taken.id(),
        at,
        day,
        Kind.TAKE_BACK,
        who,
        taken.job(),
        taken.lot(),
        taken.item(),
        taken.undone(),
        reason,
        "");
  }

  /** The amount that undoes it. */
  Millilitres undone() {
    return new Millilitres(-change().microlitres());
  }

  /** The id of what it takes back; empty for any other kind. */
  public Optional<String> takesBack() {
    return kind == Kind.TAKE_BACK
        ? Optional.of(id.substring(TAKEN_BACK.length()))
        : Optional.empty();
  }

  /** How a sheet's amount is told apart from a bottle that came. */
  public static final String OPENING = "opening balance from the sheet";

  /** Whether it is the first delivery of a lot, entered by itself and not out of a sheet. */
  public boolean isDelivery() {
    return kind == Kind.RECEIVE && id.equals("received-" + lot) && !reason.equals(OPENING);
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
