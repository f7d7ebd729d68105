package annulus.report;

import java.time.ZonedDateTime;
import java.util.Map;

/**
 * Writes a clock time piece by piece. A formatter says the same, but takes long to load and long
 * for each line of a job list.
 */
final class ClockDigits {
  private static final int LAST_SHORT_YEAR = 9999;

  /** Spelt out, as the JVM needs long to look up what it calls the days. */
  private static final Map<Integer, String> DAYS =
      Map.of(1, "Mon", 2, "Tue", 3, "Wed", 4, "Thu", 5, "Fri", 6, "Sat", 7, "Sun");

  private final ZonedDateTime at;
  private final StringBuilder text = new StringBuilder(25);

  private ClockDigits(ZonedDateTime at) {
    this.at = at;
  }

  /** {@code Tue 2027-03-16 06:00}. */
  static String brief(ZonedDateTime at) {
    ClockDigits digits = new ClockDigits(at);
    digits.text.append(DAYS.get(at.getDayOfWeek().getValue())).append(' ');
    digits.date();
    digits.text.append(' ');
    digits.hourAndMinute();
    return digits.text.toString();
  }

  /** ISO 8601 to the second, with the offset in hours and minutes. */
  static String iso(ZonedDateTime at) {
    ClockDigits digits = new ClockDigits(at);
    digits.date();
    digits.text.append('T');
    digits.hourAndMinute();
    digits.text.append(':');
    digits.two(at.getSecond());
    digits.offset();
    return digits.text.toString();
  }

  /** {@code 06:00}. */
  static String hourAndMinute(ZonedDateTime at) {
    ClockDigits digits = new ClockDigits(at);
    digits.hourAndMinute();
    return digits.text.toString();
  }

  /** {@code +01:00}; a part of a minute is left out. */
  static String offset(ZonedDateTime at) {
    ClockDigits digits = new ClockDigits(at);
    digits.offset();
    return digits.text.toString();
  }

  private void date() {
    int year = at.getYear();
    if (year < 0 || year > LAST_SHORT_YEAR) {
      text.append(at.toLocalDate());
      return;
    }
    two(year / 100);
    two(year % 100);
    text.append('-');
    two(at.getMonthValue());
    text.append('-');
    two(at.getDayOfMonth());
  }

  private void hourAndMinute() {
    two(at.getHour());
    text.append(':');
    two(at.getMinute());
  }

  private void offset() {
    int minutes = at.getOffset().getTotalSeconds() / 60;
    text.append(minutes < 0 ? '-' : '+');
    two(Math.abs(minutes) / 60);
    text.append(':');
    two(Math.abs(minutes) % 60);
  }

  private void two(int number) {
    text.append((char) ('0' + number / 10)).append((char) ('0' + number % 10));
  }
}
