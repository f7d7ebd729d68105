package annulus.report;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Clock times and durations as the shop reads them. Safe times are rounded up, time that runs out
 * is rounded down.
 *
 * @param zone the shop's zone
 * @param start when the joint is closed
 */
record ShopTime(ZoneId zone, Instant start) {
  /** Weekday, date, 24 h time and offset. */
  String full(Instant instant) {
    return ClockDigits.brief(at(instant)) + " (" + offset(instant) + ")";
  }

  /**
   * As {@link #full}, with the offset only where it is not that of the start or the hour repeats.
   */
  String brief(Instant instant) {
    ZonedDateTime at = at(instant);
    boolean same = at.getOffset().equals(at(start).getOffset());
    return same && whichOfTwo(instant).isEmpty() ? ClockDigits.brief(at) : full(instant);
  }

  /** What the shop's wall clock shows, with the offset only where it shows that twice. */
  String wall(Instant instant) {
    return whichOfTwo(instant).isEmpty() ? ClockDigits.brief(at(instant)) : full(instant);
  }

  /**
   * On the night the clock goes back an hour is shown twice: {@code the first 02:30 (clock goes
   * back)}; empty at all other times.
   */
  Optional<String> whichOfTwo(Instant instant) {
    ZonedDateTime at = at(instant);
    List<ZoneOffset> offsets = zone.getRules().getValidOffsets(at.toLocalDateTime());
    if (offsets.size() < 2) {
      return Optional.empty();
    }
    String which = at.getOffset().equals(offsets.get(0)) ? "the first " : "the second ";
    return Optional.of(which + ClockDigits.hourAndMinute(at) + " (clock goes back)");
  }

  /** Any pattern, in English, at the shop's clock. */
  String format(Instant instant, String pattern) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH).format(at(instant));
  }

  /** {@code Friday 12 March 2027, 13:45}, with which of two where the hour repeats. */
  String longDay(Instant instant) {
    String which = whichOfTwo(instant).map(w -> ", " + w).orElse("");
    return format(instant, "EEEE d MMMM uuuu, HH:mm") + which;
  }

  /** ISO 8601 with offset, to the second. */
  String iso(Instant instant) {
    return ClockDigits.iso(instant.atZone(zone));
  }

  String offset(Instant instant) {
    return ClockDigits.offset(at(instant));
  }

  /** The clock time so long after the start, rounded up to the minute. */
  Instant after(Duration duration) {
    return wholeMinute(start.plus(duration));
  }

  private ZonedDateTime at(Instant instant) {
    return wholeMinute(instant).atZone(zone);
  }

  private static Instant wholeMinute(Instant instant) {
    Instant minute = instant.truncatedTo(ChronoUnit.MINUTES);
    return minute.equals(instant) ? instant : minute.plus(1, ChronoUnit.MINUTES);
  }

  /** Whole minutes, rounded up. */
  static long minutesUp(Duration duration) {
    long minutes = duration.toMinutes();
    return Duration.ofMinutes(minutes).equals(duration) ? minutes : minutes + 1;
  }

  /** {@code 35 min}, {@code 2 h 10 min}, {@code 3 d 9 h}; never shorter than it is. */
  static String up(Duration duration) {
    long minutes = minutesUp(duration);
    if (minutes < 60) {
      return minutes + " min";
    }
    if (minutes < 24 * 60) {
      return two(minutes / 60, "h", minutes % 60, "min");
    }
    long hours = (minutes + 59) / 60;
    return two(hours / 24, "d", hours % 24, "h");
  }

  /** As {@link #up}, never longer than it is; in seconds below two minutes. */
  static String down(Duration duration) {
    if (duration.toMinutes() < 2) {
      return duration.toSeconds() + " s";
    }
    if (duration.toHours() < 1) {
      return duration.toMinutes() + " min";
    }
    if (duration.toDays() < 1) {
      return two(duration.toHours(), "h", duration.toMinutesPart(), "min");
    }
    return two(duration.toDays(), "d", duration.toHoursPart(), "h");
  }

  private static String two(long large, String unit, long small, String smallUnit) {
    String first = large + " " + unit;
    return small == 0 ? first : first + " " + small + " " + smallUnit;
  }
}
