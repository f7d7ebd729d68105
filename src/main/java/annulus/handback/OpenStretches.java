package annulus.handback;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Optional;

/**
 * Walks the open stretches of the time line in order. Between two changes of the zone's offset the
 * wall clock runs evenly, so each step stays inside one such piece and one local date: a wall-clock
 * time that a change skips is never met, one that it repeats is met twice. A stretch is cut at
 * midnight and at a change of offset; the next one then starts where it ends.
 */
final class OpenStretches implements Iterator<OpenStretch> {
  private final OpeningHours hours;
  private final ZoneRules rules;
  private final Instant until;
  private Instant cursor;
  private ZoneOffset offset;
  private Instant offsetEnd;
  private Optional<OpenStretch> next;

  /**
   * @param from the first stretch starts here or later; a stretch running at {@code from} is cut to
   *     start there
   * @param until no stretch that starts at or after this is met
   */
  OpenStretches(OpeningHours hours, Instant from, Instant until) {
    this.hours = hours;
    this.rules = hours.zone().getRules();
    this.until = until;
    moveTo(from);
    this.next = find();
  }

  @Override
  public boolean hasNext() {
    return next.isPresent();
  }

  @Override
  public OpenStretch next() {
    OpenStretch found = next.orElseThrow(NoSuchElementException::new);
    moveTo(found.end());
    next = find();
    return found;
  }

  private void moveTo(Instant instant) {
    cursor = instant;
    if (offsetEnd == null || !instant.isBefore(offsetEnd)) {
      offset = rules.getOffset(instant);
      ZoneOffsetTransition change = rules.nextTransition(instant);
      offsetEnd = change == null ? Instant.MAX : change.getInstant();
    }
  }

  private Optional<OpenStretch> find() {
    while (cursor.isBefore(until)) {
      LocalDate date = LocalDateTime.ofInstant(cursor, offset).toLocalDate();
      Optional<OpenStretch> found = restOf(date);
      if (found.isPresent()) {
        return found.filter(s -> s.start().isBefore(until));
      }
      moveTo(earlier(at(date.plusDays(1), 0), offsetEnd));
    }
    return Optional.empty();
  }

  private Optional<OpenStretch> restOf(LocalDate date) {
    for (OpenSpan span : hours.spansOn(date)) {
      Instant start = at(date, span.fromMinute());
      Instant end = earlier(at(date, span.toMinute()), offsetEnd);
      Instant from = start.isBefore(cursor) ? cursor : start;
      if (from.isBefore(end)) {
        return Optional.of(new OpenStretch(from, end));
      }
    }
    return Optional.empty();
  }

  private Instant at(LocalDate date, int minute) {
    return date.atStartOfDay().plusMinutes(minute).toInstant(offset);
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }
}
