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
 * @param toldReady whether the customer was told that it is ready, which was taken back since, and
 *     nobody has called
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
    Optional<String> place,
    boolean toldReady) {
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
        Optional.empty(),
        false);
  }

  /**
   * The same job in another state; taken up again, the joint is open. What the customer was told
   * does not go away with it.
   */
  public JobContent in(JobState other) {
    Copy copy = new Copy(this);
    copy.state = other;
    boolean told = toldReady || state == JobState.CUSTOMER_TOLD;
    copy.toldReady = told && other.compareTo(JobState.CUSTOMER_TOLD) < 0;
    copy.closedAt = other.closed() ? closedAt : Optional.empty();
    copy.log = other.closed() ? log : Optional.empty();
    copy.place = other.closed() ? place : Optional.empty();
    return copy.made();
  }

  /**
   * The joint closed.
   *
   * @param in the place it cures in
   */
  public JobContent closed(Instant at, String newOrder, String newAdvice, Optional<String> in) {
    Copy copy = new Copy(this);
    copy.order = newOrder;
    copy.advice = newAdvice;
    copy.state = JobState.CURING;
    copy.closedAt = Optional.of(at);
    copy.log = Optional.empty();
    copy.place = in;
    return copy.made();
  }

  /** Another order with its answer. */
  public JobContent with(String newTitle, String newBore, String newOrder, String newAdvice) {
    Copy copy = new Copy(this);
    copy.title = newTitle;
    copy.bore = newBore;
    copy.order = newOrder;
    copy.advice = newAdvice;
    return copy.made();
  }

  /** The customer told another time, or none any more. */
  public JobContent promising(Optional<Instant> when, Optional<Instant> reckonedFrom) {
    Copy copy = new Copy(this);
    copy.promised = when;
    copy.promisedStart = reckonedFrom;
    copy.promiseMoves = movesTo(when);
    copy.toldReady = toldReady && when.isEmpty();
    return copy.made();
  }

  /** The customer knows by a call that it is not ready after all. */
  public JobContent customerCalled() {
    Copy copy = new Copy(this);
    copy.toldReady = false;
    return copy.made();
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
    Copy copy = new Copy(this);
    copy.promiseMoves = later.movesTo(promised);
    return copy.made();
  }

  /** The same with another order; its answer is still that of the one before. */
  public JobContent ordered(String newOrder) {
    Copy copy = new Copy(this);
    copy.order = newOrder;
    return copy.made();
  }

  /** The same with its answer told otherwise. */
  public JobContent answered(String newAdvice) {
    Copy copy = new Copy(this);
    copy.advice = newAdvice;
    return copy.made();
  }

  /**
   * Judged by a temperature log from now on.
   *
   * @param newLog identity of the log
   */
  public JobContent measured(String newLog, String newAdvice) {
    Copy copy = new Copy(this);
    copy.advice = newAdvice;
    copy.log = Optional.of(newLog);
    return copy.made();
  }

  /**
   * The closed joint cures in another place.
   *
   * @param other the place
   */
  public JobContent curingIn(Optional<String> other) {
    Copy copy = new Copy(this);
    copy.place = other;
    return copy.made();
  }

  /** All that a change may make another; a change says only what it changes. */
  private static final class Copy {
    private final String reference;
    private String title;
    private String bore;
    private String order;
    private String advice;
    private JobState state;
    private Optional<Instant> closedAt;
    private Optional<Instant> promised;
    private Optional<Instant> promisedStart;
    private int promiseMoves;
    private Optional<String> log;
    private Optional<String> place;
    private boolean toldReady;

    Copy(JobContent of) {
      reference = of.reference;
      title = of.title;
      bore = of.bore;
      order = of.order;
      advice = of.advice;
      state = of.state;
      closedAt = of.closedAt;
      promised = of.promised;
      promisedStart = of.promisedStart;
      promiseMoves = of.promiseMoves;
      log = of.log;
      place = of.place;
      toldReady = of.toldReady;
    }

    JobContent made() {
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
          place,
          toldReady);
    }
  }
}
