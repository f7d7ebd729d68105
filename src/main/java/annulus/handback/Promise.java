package annulus.handback;

import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;

/**
 * The one time the customer is told.
 *
 * @param ready when the joint may be used as far as the cure goes
 * @param checkStart when the shop starts the check before hand-over; not before {@code ready}
 * @param promise when the customer may come: the check is done and the shop is open
 * @param closedWait closed time between {@code ready} and {@code promise}
 * @param reason what decided the time
 */
public record Promise(
    Instant ready, Instant checkStart, Instant promise, Duration closedWait, Reason reason) {
  /**
   * @throws InvalidValue when the times are not in order
   */
  public Promise {
    if (checkStart.isBefore(ready) || promise.isBefore(checkStart)) {
      throw new InvalidValue(
          "promise",
          ready + ", " + checkStart + ", " + promise + " are out of order",
          "ready, then the check, then the promise");
    }
  }

  /** What decided the promise. */
  public enum Reason {
    /** Ready, checked and handed over in the same open hours. */
    READY_WHILE_OPEN,
    /** Ready while closed: checked after the next opening. */
    READY_WHILE_CLOSED,
    /** Ready while open, but too near closing to make the check in one go. */
    CHECK_DOES_NOT_FIT,
    /** The check fits before closing, but the rounded time does not. */
    ROUNDED_PAST_CLOSING
  }
}
