package annulus.exchange;

import annulus.exchange.LoggerOptions.DateOrder;
import annulus.exchange.LoggerReading.TimeForm;
import java.time.LocalDate;
import java.time.Month;
import java.time.chrono.IsoChronology;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A time as a logger wrote it. Day and month stay in the order written until the order is known.
 *
 * @param form how it is written
 * @param year year; 0 for times counted from 1970
 * @param one first of day and month as written; month for the forms that settle it
 * @param two second of day and month; day for the forms that settle it
 * @param millis milliseconds of the day, or since 1970
 * @param offsetMillis offset from UTC; empty for a local time
 * @param dotted true when dots stand between the numbers, which is written day first
 */
record LoggerStamp(
    TimeForm form,
    int year,
    int one,
    int two,
    long millis,
    OptionalLong offsetMillis,
    boolean dotted) {
  private static final int NO_DIGITS = -100_000;
  private static final long DAY_MILLIS = 86_400_000L;
  private static final List<String> MONTHS =
      List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

  private static final Pattern EPOCH = Pattern.compile("([0-9]{10}|[0-9]{13})(\\.[0-9]{1,6})?");
  private static final Pattern YEAR_FIRST =
      Pattern.compile("([0-9]{4})[-/.]([0-9]{1,2})[-/.]([0-9]{1,2})(?:[T ,]+(.+))?");
  private static final Pattern NUMBERS =
      Pattern.compile("([0-9]{1,2})([-/.])([0-9]{1,2})\\2([0-9]{4}|[0-9]{2})(?:[T ,]+(.+))?");
  private static final Pattern DAY_NAME =
      Pattern.compile("([0-9]{1,2})[-/ .]+([A-Za-z]{3})[a-z]*[-/ .]+([0-9]{4})(?:[T ,]+(.+))?");
  private static final Pattern NAME_DAY =
      Pattern.compile("([A-Za-z]{3})[a-z]*[ .]+([0-9]{1,2}),? +([0-9]{4})(?:[T ,]+(.+))?");
  private static final Pattern CLOCK =
      Pattern.compile(
          "([0-9]{1,2}):([0-9]{2})(?::([0-9]{2})(?:[.,]([0-9]{1,9}))?)?"
              + "(?: ?([AaPp])\\.?[Mm]\\.?)? ?(Z|[+-][0-9]{2}:?[0-9]{2})?");

  /** A date with a time, or a count from 1970, in one text. */
  static Optional<LoggerStamp> parse(String text) {
    if (text.length() < 8) {
      return Optional.empty();
    }
    LoggerStamp plain = plain(text.toCharArray(), 0, text.length());
    return plain == null ? written(text) : Optional.of(plain);
  }

  /**
   * Two digits of day and month and four of the year with the same mark between them, or the year
   * first, then {@code hh:mm} or {@code hh:mm:ss}, as nearly all loggers write; null for any other.
   */
  static LoggerStamp plain(char[] line, int from, int until) {
    boolean minutes = until - from == 16;
    if (!minutes && until - from != 19) {
      return null;
    }
    boolean yearFirst = sameMarks(line, from + 4, from + 7);
    boolean yearLast = sameMarks(line, from + 2, from + 5);
    if (yearFirst == yearLast || !hasClock(line, from + 10, minutes)) {
      return null;
    }
    int year = two(line, from + (yearFirst ? 0 : 6)) * 100 + two(line, from + (yearFirst ? 2 : 8));
    int one = two(line, from + (yearFirst ? 5 : 0));
    int two = two(line, from + (yearFirst ? 8 : 3));
    int hour = two(line, from + 11);
    int minute = two(line, from + 14);
    int second = minutes ? 0 : two(line, from + 17);
    boolean digits = (year | one | two | hour | minute | second) >= 0;
    boolean century = yearLast && year < 100;
    if (!digits || century || hour > 23 || minute > 59 || second > 59) {
      return null;
    }
    return new LoggerStamp(
        yearFirst ? TimeForm.YEAR_MONTH_DAY : TimeForm.DAY_AND_MONTH_AS_NUMBERS,
        year,
        one,
        two,
        ((hour * 60L + minute) * 60 + second) * 1000,
        OptionalLong.empty(),
        yearLast && line[from + 2] == '.');
  }

  private static boolean sameMarks(char[] line, int first, int second) {
    return isMark(line[first]) && line[first] == line[second];
  }

  private static boolean hasClock(char[] line, int at, boolean minutes) {
    boolean between = line[at] == ' ' || line[at] == 'T';
    return between && line[at + 3] == ':' && (minutes || line[at + 6] == ':');
  }

  private static boolean isMark(char c) {
    return c == '-' || c == '/' || c == '.';
  }

  /** The number of two digits; far below 0 when they are none. */
  private static int two(char[] text, int at) {
    int tens = text[at] - '0';
    int ones = text[at + 1] - '0';
    boolean digits = tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9;
    return digits ? tens * 10 + ones : NO_DIGITS;
  }

  /** By the full patterns. */
  static Optional<LoggerStamp> written(String text) {
    Matcher numbers = NUMBERS.matcher(text);
    if (numbers.matches()) {
      int year = Integer.parseInt(numbers.group(4));
      int full = year < 100 ? 2000 + year : year;
      return withClock(
          TimeForm.DAY_AND_MONTH_AS_NUMBERS,
          full,
          Integer.parseInt(numbers.group(1)),
          Integer.parseInt(numbers.group(3)),
          numbers.group(5),
          numbers.group(2).equals("."));
    }
    Matcher iso = YEAR_FIRST.matcher(text);
    if (iso.matches()) {
      return withClock(
          TimeForm.YEAR_MONTH_DAY,
          Integer.parseInt(iso.group(1)),
          Integer.parseInt(iso.group(2)),
          Integer.parseInt(iso.group(3)),
          iso.group(4),
          false);
    }
    Matcher epoch = EPOCH.matcher(text);
    return epoch.matches() ? Optional.of(epoch(epoch)) : named(text);
  }

  private static LoggerStamp epoch(Matcher epoch) {
    boolean seconds = epoch.group(1).length() <= 10;
    double scale = seconds ? 1000 : 1;
    return new LoggerStamp(
        seconds ? TimeForm.EPOCH_SECONDS : TimeForm.EPOCH_MILLISECONDS,
        0,
        0,
        0,
        Math.round(Double.parseDouble(epoch.group()) * scale),
        OptionalLong.of(0),
        false);
  }

  private static Optional<LoggerStamp> named(String text) {
    Matcher dayFirst = DAY_NAME.matcher(text);
    Matcher nameFirst = NAME_DAY.matcher(text);
    boolean isDayFirst = dayFirst.matches();
    if (!isDayFirst && !nameFirst.matches()) {
      return Optional.empty();
    }
    Matcher m = isDayFirst ? dayFirst : nameFirst;
    String name = m.group(isDayFirst ? 2 : 1).toLowerCase(Locale.ROOT);
    int day = Integer.parseInt(m.group(isDayFirst ? 1 : 2));
    return withClock(
        TimeForm.MONTH_BY_NAME,
        Integer.parseInt(m.group(3)),
        MONTHS.indexOf(name) + 1,
        day,
        m.group(4),
        false);
  }

  private static Optional<LoggerStamp> withClock(
      TimeForm form, int year, int one, int two, String clock, boolean dotted) {
    Matcher m = CLOCK.matcher(clock == null ? "" : clock);
    if (!m.matches()) {
      return Optional.empty();
    }
    int hour = hour(Integer.parseInt(m.group(1)), m.group(5));
    int minute = Integer.parseInt(m.group(2));
    int second = m.group(3) == null ? 0 : Integer.parseInt(m.group(3));
    if (hour < 0 || hour > 23 || minute > 59 || second > 59) {
      return Optional.empty();
    }
    String fraction = m.group(4) == null ? "0" : m.group(4);
    long millis = Math.round(Double.parseDouble("0." + fraction) * 1000);
    long ofDay = ((hour * 60L + minute) * 60 + second) * 1000 + millis;
    return Optional.of(new LoggerStamp(form, year, one, two, ofDay, offset(m.group(6)), dotted));
  }

  /** Hour of the day from one of a 12-hour clock; -1 when there is no such hour. */
  private static int hour(int written, String half) {
    if (half == null) {
      return written;
    }
    if (written < 1 || written > 12) {
      return -1;
    }
    boolean afternoon = half.equals("p") || half.equals("P");
    return written % 12 + (afternoon ? 12 : 0);
  }

  private static OptionalLong offset(String text) {
    if (text == null) {
      return OptionalLong.empty();
    }
    if (text.equals("Z")) {
      return OptionalLong.of(0);
    }
    String digits = text.replace(":", "");
    long minutes =
        Integer.parseInt(digits.substring(1, 3)) * 60L + Integer.parseInt(digits.substring(3, 5));
    return OptionalLong.of((digits.charAt(0) == '-' ? -minutes : minutes) * 60_000);
  }

  /** Whether the text gives an instant by itself. */
  boolean absolute() {
    return offsetMillis.isPresent();
  }

  boolean needsOrder() {
    return form == TimeForm.DAY_AND_MONTH_AS_NUMBERS;
  }

  /**
   * Milliseconds since 1970, of UTC when absolute, else of the local clock; empty when there is no
   * such date in the order given.
   */
  OptionalLong millis(DateOrder order) {
    if (form == TimeForm.EPOCH_SECONDS || form == TimeForm.EPOCH_MILLISECONDS) {
      return OptionalLong.of(millis);
    }
    int month = month(order);
    int day = day(order);
    return exists(month, day)
        ? OptionalLong.of(
            LocalDate.of(year, month, day).toEpochDay() * DAY_MILLIS
                + millis
                - offsetMillis.orElse(0))
        : OptionalLong.empty();
  }

  /** The date in the order given, if there is such a one. */
  Optional<LocalDate> date(DateOrder order) {
    int month = month(order);
    int day = day(order);
    return exists(month, day) ? Optional.of(LocalDate.of(year, month, day)) : Optional.empty();
  }

  private int month(DateOrder order) {
    return needsOrder() && order == DateOrder.DAY_FIRST ? two : one;
  }

  private int day(DateOrder order) {
    return needsOrder() && order == DateOrder.DAY_FIRST ? one : two;
  }

  private boolean exists(int month, int day) {
    return month >= 1 && month <= 12 && day >= 1 && (day <= 28 || day <= daysOf(month));
  }

  private int daysOf(int month) {
    return Month.of(month).length(IsoChronology.INSTANCE.isLeapYear(year));
  }
}
