package annulus.handback;

import annulus.handback.Promise.Reason;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.Optional;

/**
 * How a shop turns "ready" into what it tells the customer.
 *
 * @param handOverCheck time for the check before hand-over, made in one go in open hours; 0 to 8 h
 * @param roundUpToMinutes the promise is a multiple of this on the wall clock: a divisor of 60,
 *     such as 5, 15 or 30
 */
public record PromiseRule(Duration handOverCheck, int roundUpToMinutes) {
  /**
   * @throws InvalidValue when out of range
   */
  public PromiseRule {
    if (handOverCheck.isNegative() || handOverCheck.compareTo(Duration.ofHours(8)) > 0) {
      throw new InvalidValue("handOverCheck", handOverCheck + " is out of range", "0 to 8 h");
    }
    Check.within("roundUpToMinutes", roundUpToMinutes, 1, 60, "min");
    if (60 % roundUpToMinutes != 0) {
      throw new InvalidValue(
          "roundUpToMinutes",
          roundUpToMinutes + " min does not divide the hour",
          "1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30 or 60 min");
    }
  }

  /**
   * The promise for a joint.
   *
   * <p>The check starts at the first open instant at or after {@code ready} from which the shop
   * stays open for the whole check, and for which the end of the check, rounded up on the wall
   * clock, is itself an open instant; the promise is that rounded time. So a rounded time at or
   * past closing moves check and promise to the next opening. A later {@code ready} never gives an
   * earlier promise, and the promise is never before {@code ready} plus the check.
   *
   * @param ready when the joint may be used as far as the cure goes
   * @param hours the shop's hours
   * @return empty when the shop is never open long enough within {@link OpeningHours#SEARCH_LIMIT}
   */
  public Optional<Promise> promise(Instant ready, OpeningHours hours) {
    Instant limit = ready.plus(OpeningHours.SEARCH_LIMIT);
    boolean checkFittedAtOnce = false;
    Instant from = ready;
    while (from.isBefore(limit)) {
      Optional<Instant> start = hours.nextOpenFor(from, handOverCheck);
      if (start.isEmpty()) {
        return Optional.empty();
      }
      checkFittedAtOnce |= start.get().equals(ready);
      Instant told = roundedUp(start.get().plus(handOverCheck), hours.zone());
      if (hours.isOpen(told)) {
        Reason reason = reason(ready, start.get(), checkFittedAtOnce, hours);
        return Optional.of(promise(ready, start.get(), told, reason, hours));
      }
      from = told;
    }
    return Optional.empty();
  }

  private static Promise promise(
      Instant ready, Instant checkStart, Instant told, Reason reason, OpeningHours hours) {
    Duration closed = Duration.between(ready, told).minus(hours.openTimeBetween(ready, told));
    return new Promise(ready, checkStart, told, closed, reason);
  }

  private static Reason reason(
      Instant ready, Instant checkStart, boolean checkFittedAtOnce, OpeningHours hours) {
    if (checkStart.equals(ready)) {
      return Reason.READY_WHILE_OPEN;
    }
    if (!hours.isOpen(ready)) {
      return Reason.READY_WHILE_CLOSED;
    }
    return checkFittedAtOnce ? Reason.ROUNDED_PAST_CLOSING : Reason.CHECK_DOES_NOT_FIT;
  }

  /** The first instant at or after this one at which the wall clock shows a multiple. */
  private Instant roundedUp(Instant instant, ZoneId zone) {
    ZoneRules rules = zone.getRules();
    ZoneOffset offset = rules.getOffset(instant);
    LocalDateTime local = LocalDateTime.ofInstant(instant, offset);
    LocalDateTime day = local.truncatedTo(ChronoUnit.DAYS);
    long stepNanos = Duration.ofMinutes(roundUpToMinutes).toNanos();
    long steps = -Math.floorDiv(-local.toLocalTime().toNanoOfDay(), stepNanos);
    Instant rounded = day.plusNanos(steps * stepNanos).toInstant(offset);
    ZoneOffsetTransition change = rules.nextTransition(instant);
    boolean clockChangesFirst = change != null && !rounded.isBefore(change.getInstant());
    return clockChangesFirst ? roundedUp(change.getInstant(), zone) : rounded;
  }
}
