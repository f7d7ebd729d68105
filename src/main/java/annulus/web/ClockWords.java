package annulus.web;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.Locale;
import java.util.Optional;

/**
 * Clock times as the counter reads them. A time that has to be waited for is rounded up to the
 * minute; the year stands where it is another one than now.
 *
 * @param zone the shop's zone
 * @param clock tells which year it is
 */
record ClockWords(ZoneId zone, Clock clock) {
  private static final DateTimeFormatter DAY = pattern("EEE d MMM");
  private static final DateTimeFormatter DAY_AND_YEAR = pattern("EEE d MMM uuuu");
  private static final DateTimeFormatter HOUR = pattern("HH:mm");
  private static final DateTimeFormatter FIELD = pattern("uuuu-MM-dd'T'HH:mm");
  private static final DateTimeFormatter OFFSET = pattern("xxx");

  private static DateTimeFormatter pattern(String pattern) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ENGLISH);
  }

  private ZonedDateTime up(Instant instant) {
    Instant minute = instant.truncatedTo(ChronoUnit.MINUTES);
    return (minute.equals(instant) ? instant : minute.plus(1, ChronoUnit.MINUTES)).atZone(zone);
  }

  /** {@code today}, {@code Fri 27 Nov, tomorrow}, or with the year where it is another one. */
  String day(Instant instant, Instant now) {
    LocalDate day = up(instant).toLocalDate();
    LocalDate today = now.atZone(zone).toLocalDate();
    if (day.equals(today)) {
      return "today";
    }
    String name = (day.getYear() == today.getYear() ? DAY : DAY_AND_YEAR).format(day);
    return day.equals(today.plusDays(1)) ? name + ", tomorrow" : name;
  }

  /** Whether it is today or was before. */
  boolean byToday(Instant instant, Instant now) {
    return !up(instant).toLocalDate().isAfter(dayOf(now));
  }

  /** The date on the shop's calendar. */
  LocalDate dayOf(Instant instant) {
    return instant.atZone(zone).toLocalDate();
  }

  String hour(Instant instant) {
    return hour(up(instant));
  }

  /**
   * On the night the clock goes back an hour is shown twice; the offset tells which one is meant.
   */
  private static String hour(ZonedDateTime at) {
    boolean twice = at.getZone().getRules().getValidOffsets(at.toLocalDateTime()).size() > 1;
    return HOUR.format(at) + (twice ? " (" + OFFSET.format(at) + ")" : "");
  }

  String full(Instant instant) {
    return full(up(instant));
  }

  /** When something happened: not rounded. */
  String past(Instant instant) {
    return full(instant.atZone(zone));
  }

  private String full(ZonedDateTime at) {
    boolean thisYear = at.getYear() == dayOf(clock.instant()).getYear();
    return (thisYear ? DAY : DAY_AND_YEAR).format(at) + " " + hour(at);
  }

  /** For an input of type datetime-local. */
  String field(Instant instant) {
    return FIELD.format(up(instant));
  }

  /** {@code 3 h 20 min}, never shorter than it is. */
  static String length(Duration duration) {
    long minutes = (duration.toSeconds() + 59) / 60;
    if (minutes < 60) {
      return minutes + " min";
    }
    long hours = minutes / 60;
    if (hours < 24) {
      return hours + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }
    long rounded = (minutes + 59) / 60;
    return rounded / 24 + " d" + (rounded % 24 == 0 ? "" : " " + rounded % 24 + " h");
  }

  String fullOr(Optional<Instant> instant, String otherwise) {
    return instant.map(this::full).orElse(otherwise);
  }
}
