package annulus.handback;

import annulus.quantity.InvalidValue;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;

/**
 * The last minute at which work may start so that a wanted pickup is still met, or why there is
 * none.
 */
public sealed interface LatestStart {

  /**
   * There is one.
   *
   * @param start the latest start, a whole minute in open hours
   * @param promise what is promised for that start; at or before the wanted pickup
   * @param limit what stops a start one minute later
   */
  record Found(Instant start, Instant promise, Limit limit) implements LatestStart {}

  /**
   * There is none.
   *
   * @param reason why
   * @param firstStart the first whole minute in open hours at or after the earliest start asked for
   * @param promise what would be promised for {@code firstStart}
   */
  record None(Reason reason, Optional<Instant> firstStart, Optional<Instant> promise)
      implements LatestStart {}

  /** What stops a start one minute later than the latest. */
  enum Limit {
    /** One minute later misses the wanted pickup. */
    PICKUP,
    /** One minute later the shop is closed, or closes before the work is done. */
    CLOSING
  }

  /** Why no start meets the wanted pickup. */
  enum Reason {
    /** The shop is not open long enough between the earliest start and the wanted pickup. */
    NOT_OPEN_BEFORE_PICKUP,
    /** Even the first start is promised too late. */
    FIRST_START_TOO_LATE,
    /** The joint never gets ready from the first start. */
    NEVER_READY
  }

  /**
   * Finds the latest start, exact to the minute: it meets {@code wanted} and a start one minute
   * later does not, or is not possible.
   *
   * <p>Tries whole minutes at which the shop stays open for all of {@code touch}, by bisection.
   * This needs {@code readyForStart} to be monotone over them: a later start never gets an earlier
   * promise, once it is empty it stays empty, and no promise is before its start. Cure at a
   * temperature that depends on the clock alone has this property, and so has {@link PromiseRule}.
   *
   * @param wanted the pickup asked for
   * @param earliestStart no start before this, such as now
   * @param touch hands-on time that must fit in open hours without a break, 0 or more
   * @param hours the shop's hours
   * @param readyForStart start to promise; empty when it never gets ready
   * @throws InvalidValue when {@code touch} is negative or the range is longer than {@link
   *     OpeningHours#SEARCH_LIMIT}
   */
  static LatestStart find(
      Instant wanted,
      Instant earliestStart,
      Duration touch,
      OpeningHours hours,
      Function<Instant, Optional<Instant>> readyForStart) {
    requireBounded(wanted, earliestStart, touch);
    StartWindow window = new StartWindow(hours, earliestStart, wanted, touch);
    if (window.size() == 0) {
      Optional<Instant> first =
          hours.nextOpenFor(StartWindow.minuteAtOrAfter(earliestStart), touch);
      return new None(Reason.NOT_OPEN_BEFORE_PICKUP, first, first.flatMap(readyForStart));
    }
    Optional<Instant> first = readyForStart.apply(window.at(0));
    if (!meets(wanted, first)) {
      Reason reason = first.isEmpty() ? Reason.NEVER_READY : Reason.FIRST_START_TOO_LATE;
      return new None(reason, Optional.of(window.at(0)), first);
    }
    Instant start = lastMeeting(wanted, window, readyForStart);
    return new Found(start, readyForStart.apply(start).orElseThrow(), limit(start, touch, hours));
  }

  private static Instant lastMeeting(
      Instant wanted, StartWindow window, Function<Instant, Optional<Instant>> readyForStart) {
    long met = 0;
    long missed = window.size();
    while (missed - met > 1) {
      long middle = met + (missed - met) / 2;
      if (meets(wanted, readyForStart.apply(window.at(middle)))) {
        met = middle;
      } else {
        missed = middle;
      }
    }
    return window.at(met);
  }

  private static boolean meets(Instant wanted, Optional<Instant> promise) {
    return promise.filter(p -> !p.isAfter(wanted)).isPresent();
  }

  private static Limit limit(Instant start, Duration touch, OpeningHours hours) {
    Instant later = start.plusSeconds(60);
    boolean possible = hours.nextOpenFor(later, touch).filter(later::equals).isPresent();
    return possible ? Limit.PICKUP : Limit.CLOSING;
  }

  private static void requireBounded(Instant wanted, Instant earliestStart, Duration touch) {
    if (touch.isNegative()) {
      throw new InvalidValue("touch", touch + " is negative", "0 or more");
    }
    if (Duration.between(earliestStart, wanted).compareTo(OpeningHours.SEARCH_LIMIT) > 0) {
      throw new InvalidValue(
          "wanted",
          wanted + " is too far after the earliest start " + earliestStart,
          "at most " + OpeningHours.SEARCH_LIMIT.toDays() + " days later");
    }
  }
}
