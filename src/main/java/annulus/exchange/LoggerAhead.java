package annulus.exchange;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * A log that runs past now: the clock of its logger is wrong, and readings that seem to lie within
 * the cure stand at wrong hours too. Only whoever knows what time it is can tell: a log that is
 * read again later, for a moment that was, is no such log.
 */
public final class LoggerAhead {
  private LoggerAhead() {}

  /**
   * What is wrong with a log read at a moment.
   *
   * @param reading how it was read
   * @param now the moment
   * @param rules how far two clocks may differ
   * @param zone of the times in the words
   * @return empty when the log ends before the moment, or about then
   */
  public static Optional<PlacedProblem> of(
      LoggerReading reading, Instant now, LoggerRules rules, ZoneId zone) {
    if (!reading.last().isAfter(now.plusSeconds(rules.count("ahead-most-s")))) {
      return Optional.empty();
    }
    String problem =
        "its readings run to "
            + ReadingText.clock(reading.last(), zone)
            + ", past now "
            + ReadingText.clock(now, zone)
            + ": the clock of the logger is wrong, and no reading stands at its hour";
    return Optional.of(
        new PlacedProblem(
            reading.file(), 0, 0, "", problem, "a log whose last reading is not after now"));
  }

  /**
   * @throws InputRefused when a log that is read now runs past now
   */
  public static void refuse(LoggerReading reading, Instant now, LoggerRules rules, ZoneId zone) {
    of(reading, now, rules, zone)
        .ifPresent(
            p -> {
              throw new InputRefused(List.of(p));
            });
  }
}
