package annulus.store;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/**
 * All of a job that somebody can change.
 *
 * @param reference what the shop calls it; never a customer's name
 * @param title what the joint is
 * @param bore name under which the bore's history is kept; empty for none
 * @param order the order as JSON, its start pinned
 * @param advice the answer that was given last, as JSON
 * @param state where it stands
 * @param closedAt when the joint was closed
 * @param promised what the customer was told
 * @param promisedStart the start that the promise was reckoned from
 * @param promiseMoves how often the promise has changed; the calendar entry's sequence
 * @param log identity of the temperature log that the closed joint is judged by
 * @param place the shop's place it cures in, as it was when the joint was closed, as JSON; empty
 *     for an open joint, one that names no place, and jobs of older versions
 */
public record JobContent(
    String reference,
    String title,
    String bore,
    String order,
    String advice,
    JobState state,
    Optional<Instant> closedAt,
    Optional<Instant> promised,
    Optional<Instant> promisedStart,
    int promiseMoves,
    Optional<String> log,
    Optional<String> place) {
  private static final int LONGEST = 100;
  private static final Set<Byte> HIDDEN =
      Set.of(
          Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR);

  /** Some scripts and signs are written with them. */
  private static final Set<Integer> JOINERS = Set.of(0x200C, 0x200D);

  public JobContent {
    Check.text("reference", reference);
    requireShort("reference", reference, 30);
    requireShort("title", title, LONGEST);
    requireShort("bore", bore, LONGEST);
    if (state == JobState.CURED_TO_CHECK) {
      throw new InvalidValue("state", "cured, to check is told by the clock", "curing");
    }
  }

  private static void requireShort(String field, String value, int longest) {
    int length = value.codePointCount(0, value.length());
    if (length > longest) {
      throw new InvalidValue(field, length + " characters", "at most " + longest + " characters");
    }
  }

  /**
   * Requires that a name is all to be seen: control and direction characters let two names look
   * alike and can't be printed. Asked of what is entered only, so that older jobs can be read.
   *
   * @throws InvalidValue when not
   */
  public static void requireVisible(String field, String value) {
    value
        .codePoints()
        .filter(c -> HIDDEN.contains((byte) Character.getType(c)) && !JOINERS.contains(c))
        .findFirst()
        .ifPresent(
            c -> {
              throw new InvalidValue(
                  field,
                  String.format(Locale.ROOT, "holds the character U+%04X", c),
                  "text without control and direction characters");
            });
  }

  /** A job just booked. */
  public static JobContent booked(
      String reference, String title, String bore, String order, String advice) {
    return new JobContent(
        reference,
        title,
        bore,
        order,
        advice,
        JobState.BOOKED,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        0,
        Optional.empty(),
        Optional.empty());
  }

  /** The same job in another state; taken up again, the joint is open. */
  public JobContent in(JobState other) {
    Optional<Instant> closed = other.closed() ? closedAt : Optional.empty();
    return new JobContent(
        reference,
        title,
        bore,
        order,
        advice,
        other,
        closed,
        promised,
        promisedStart,
        promiseMoves,
        other.closed() ? log : Optional.empty(),
        other.closed() ? place : Optional.empty());
  }

  /**
   * The joint closed.
   *
   * @param in the place it cures in
   */
  public JobContent closed(Instant at, String newOrder, String newAdvice, Optional<String> in) {
    return new JobContent(
        reference,
        title,
        bore,
        newOrder,
        newAdvice,
        JobState.CURING,
        Optional.of(at),
        promised,
        promisedStart,
        promiseMoves,
        Optional.empty(),
        in);
  }

  /** Another order with its answer. */
  public JobContent with(String newTitle, String newBore, String newOrder, String newAdvice) {
    return new JobContent(
        reference,
        newTitle,
        newBore,
        newOrder,
        newAdvice,
        state,
        closedAt,
        promised,
        promisedStart,
        promiseMoves,
        log,
        place);
  }

  /** The customer told another time, or none any more. */
  public JobContent promising(Optional<Instant> when, Optional<Instant> reckonedFrom) {
    return new JobContent(
        reference,
        title,
        bore,
        order,
        advice,
        state,
        closedAt,
        when,
        reckonedFrom,
        movesTo(when),
        log,
        place);
  }

  /** How often the promise has moved once it is this one. */
  private int movesTo(Optional<Instant> when) {
    return promiseMoves + (when.equals(promised) ? 0 : 1);
  }

  /**
   * This content put in the place of a later one. A calendar leaves out what has a lower sequence
   * than what it has, so that the count of promises only ever rises.
   */
  JobContent inForceAgain(JobContent later) {
    return new JobContent(
        reference,
        title,
        bore,
        order,
        advice,
        state,
        closedAt,
        promised,
        promisedStart,
        later.movesTo(promised),
        log,
        place);
  }

  /**
   * Judged by a temperature log from now on.
   *
   * @param newLog identity of the log
   */
  public JobContent measured(String newLog, String newAdvice) {
    return new JobContent(
        reference,
        title,
        bore,
        order,
        newAdvice,
        state,
        closedAt,
        promised,
        promisedStart,
        promiseMoves,
        Optional.of(newLog),
        place);
  }

  /**
   * The closed joint cures in another place.
   *
   * @param other the place
   */
  public JobContent curingIn(Optional<String> other) {
    return new JobContent(
        reference,
        title,
        bore,
        order,
        advice,
        state,
        closedAt,
        promised,
        promisedStart,
        promiseMoves,
        log,
        other);
  }
}
