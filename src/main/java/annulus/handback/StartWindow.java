package annulus.handback;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;

/**
 * The whole minutes in a range at which work of some length may start: the shop stays open for all
 * of it. Numbered from 0 in order of time.
 */
final class StartWindow {
  private final List<Run> runs = new ArrayList<>();
  private long size;

  /** Start minutes {@code first} to {@code last}, both included, minutes since the epoch. */
  private record Run(long first, long last, long number) {}

  /**
   * @param from earliest start
   * @param to latest start, included
   * @param touch time the start needs, 0 or more
   */
  StartWindow(OpeningHours hours, Instant from, Instant to, Duration touch) {
    OpenStretches stretches = hours.stretches(from, to.plus(touch).plusSeconds(60));
    Instant start = null;
    Instant end = null;
    while (stretches.hasNext()) {
      OpenStretch piece = stretches.next();
      if (!piece.start().equals(end)) {
        add(start, end, to, touch);
        start = piece.start();
      }
      end = piece.end();
    }
    add(start, end, to, touch);
  }

  long size() {
    return size;
  }

  Instant at(long number) {
    for (int i = runs.size() - 1; i >= 0; i--) {
      Run run = runs.get(i);
      if (number >= run.number()) {
        return Instant.ofEpochSecond((run.first() + number - run.number()) * 60);
      }
    }
    throw new IndexOutOfBoundsException(number);
  }

  private void add(Instant start, Instant end, Instant to, Duration touch) {
    if (start == null) {
      return;
    }
    long first = Math.floorDiv(minuteAtOrAfter(start).getEpochSecond(), 60L);
    long lastFitting = Math.floorDiv(end.minus(touch).getEpochSecond(), 60L);
    // the closing minute itself is not open, also for work that takes no time
    long lastOpen = -Math.floorDiv(-end.getEpochSecond(), 60L) - 1;
    long last = Math.min(Math.min(lastFitting, lastOpen), Math.floorDiv(to.getEpochSecond(), 60L));
    if (first <= last) {
      runs.add(new Run(first, last, size));
      size += last - first + 1;
    }
  }

  static Instant minuteAtOrAfter(Instant instant) {
    Instant minute = instant.truncatedTo(ChronoUnit.MINUTES);
    return minute.equals(instant) ? instant : minute.plus(1, ChronoUnit.MINUTES);
  }
}
