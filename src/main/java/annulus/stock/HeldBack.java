package annulus.stock;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;

/**
 * Why a lot must not be used until somebody clears it: recalled by its maker, found frozen, its
 * seal broken, or in doubt.
 *
 * @param id of the movement that held it back; empty where only a stock sheet says so
 * @param day since when
 * @param who who held it back; empty where only a stock sheet says so
 * @param reason why, 1 to 200 characters
 */
public record HeldBack(String id, LocalDate day, String who, String reason) {
  public HeldBack {
    Check.text("held_back", reason);
    reason = reason.strip();
    if (reason.length() > Movement.LONGEST) {
      throw new InvalidValue(
          "held_back",
          reason.length() + " characters",
          "at most " + Movement.LONGEST + " characters on why");
    }
  }

  /** As a stock sheet tells it. */
  public static HeldBack inSheet(LocalDate day, String reason) {
    return new HeldBack("", day, "", reason);
  }

  /**
   * The movement that brings what a sheet says into a ledger; the same sheet read by two tills
   * makes the same one.
   */
  public Movement ofSheet(Lot lot, Instant at, String by) {
    String name = String.join("\n", lot.lot(), day.toString(), reason);
    UUID made = UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    return Movement.holdBack("sheet-" + made, at, day, by, lot.lot(), lot.item(), reason);
  }

  static HeldBack by(Movement m) {
    return new HeldBack(m.id(), m.day(), m.who(), m.reason());
  }

  /** Whether a stock sheet alone says so. */
  public boolean isOfSheet() {
    return id.isEmpty();
  }

  /** Whether two sources tell of the same: a sheet names neither movement nor person. */
  public boolean isSame(HeldBack other) {
    return day.equals(other.day) && reason.equals(other.reason);
  }

  /**
   * Whether a movement must not be recorded because of this. A use up to the day it was held back
   * took place and a recall must find it: with a reason it is recorded.
   */
  public boolean stops(Movement movement) {
    boolean after = movement.day().isAfter(day);
    return movement.kind() == Movement.Kind.USE && (after || movement.reason().isBlank());
  }

  /** Since when, by whom and why. */
  public String words() {
    return "held back since "
        + day
        + (isOfSheet() ? " in the stock sheet" : " by " + who)
        + ": "
        + reason;
  }
}
