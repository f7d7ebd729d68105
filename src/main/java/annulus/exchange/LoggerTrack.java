package annulus.exchange;

import java.util.Arrays;
import java.util.OptionalLong;

/** How the times of a file run when its dates are read in one order. */
final class LoggerTrack {
  private static final int INTERVALS_KEPT = 1001;
  private static final long DAY_MILLIS = 86_400_000L;

  private final double longestSeconds;
  private final double earliestYear;
  private final double latestYear;
  private final long[] intervals = new long[INTERVALS_KEPT];
  private int kept;
  private int impossible;
  private int firstImpossibleLine;
  private int midnights;
  private int forward;
  private int backward;
  private long before;
  private long latest;
  private long earliest;
  private boolean started;
  private long worstBack;
  private int worstBackLine;
  private long worstForward;
  private int worstForwardLine;

  LoggerTrack(LoggerRules rules) {
    this.longestSeconds = rules.value("gap-longest-s");
    this.earliestYear = rules.value("earliest-year");
    this.latestYear = rules.value("latest-year");
  }

  /** Takes the next time; empty when there is no such date in this order. */
  void add(int line, OptionalLong time, int year) {
    if (time.isEmpty()) {
      impossible++;
      firstImpossibleLine = firstImpossibleLine == 0 ? line : firstImpossibleLine;
      return;
    }
    if (year != 0 && (year < earliestYear || year > latestYear)) {
      return;
    }
    long millis = time.getAsLong();
    if (started) {
      step(line, millis);
    } else {
      latest = millis;
      earliest = millis;
      started = true;
    }
    before = millis;
  }

  private void step(int line, long millis) {
    long step = millis - before;
    forward += step > 0 ? 1 : 0;
    backward += step < 0 ? 1 : 0;
    if (step != 0 && kept < INTERVALS_KEPT) {
      intervals[kept++] = Math.abs(step);
    }
    boolean newDay = Math.floorDiv(millis, DAY_MILLIS) != Math.floorDiv(before, DAY_MILLIS);
    midnights += newDay && Math.abs(step) <= longestSeconds * 1000 ? 1 : 0;
    if (latest - millis > worstBack) {
      worstBack = latest - millis;
      worstBackLine = line;
    }
    if (millis - earliest > worstForward) {
      worstForward = millis - earliest;
      worstForwardLine = line;
    }
    latest = Math.max(latest, millis);
    earliest = Math.min(earliest, millis);
  }

  /** Dates that do not exist in this order. */
  int impossible() {
    return impossible;
  }

  int firstImpossibleLine() {
    return firstImpossibleLine;
  }

  /** Changes of day within a usual interval. */
  int midnights() {
    return midnights;
  }

  boolean newestFirst() {
    return backward > forward;
  }

  /** How far a row falls behind the furthest one before it, in the file's direction, s. */
  double worstBackSeconds() {
    return (newestFirst() ? worstForward : worstBack) / 1000.0;
  }

  int worstBackLine() {
    return newestFirst() ? worstForwardLine : worstBackLine;
  }

  /** Median of the first intervals, s; 0 when there is none. */
  double usualIntervalSeconds() {
    return intervalSeconds(0.5);
  }

  /**
   * What nine tenths of the first intervals do not pass, s; 0 when there is none. Where several
   * probes are written one shortly after the other, the median is the time between two probes.
   */
  double longIntervalSeconds() {
    return intervalSeconds(0.9);
  }

  private double intervalSeconds(double share) {
    long[] sorted = Arrays.copyOf(intervals, kept);
    Arrays.sort(sorted);
    return kept == 0 ? 0 : sorted[(int) (kept * share)] / 1000.0;
  }
}
