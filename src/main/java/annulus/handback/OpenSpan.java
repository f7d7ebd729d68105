package annulus.handback;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;

/**
 * One stretch of local wall-clock time within one day, the start included, the end not: at closing
 * time the shop is closed.
 *
 * @param fromMinute start, minutes after 00:00 on the wall clock, 0 to 1439
 * @param toMinute end, minutes after 00:00 on the wall clock, 1 to 1440; 1440 is 24:00
 */
public record OpenSpan(int fromMinute, int toMinute) {
  private static final int DAY_MINUTES = 24 * 60;

  /**
   * @throws InvalidValue when outside the day or not in order
   */
  public OpenSpan {
    Check.within("from", fromMinute, 0, DAY_MINUTES - 1, "min");
    Check.within("to", toMinute, 1, DAY_MINUTES, "min");
    if (fromMinute >= toMinute) {
      throw new InvalidValue(
          "to",
          hhmm(toMinute) + " is not after " + hhmm(fromMinute),
          "a later time of the same day, 24:00 at most; write a span past midnight as two, one on"
              + " each day");
    }
  }

  /**
   * Reads both ends as {@code HH:MM}, 24-hour clock; the end may be {@code 24:00}.
   *
   * @throws InvalidValue when not such a time or not in order
   */
  public static OpenSpan of(String from, String to) {
    return new OpenSpan(minuteOfDay("from", from), minuteOfDay("to", to));
  }

  /** The span as {@code 08:00-12:30}. */
  public String text() {
    return hhmm(fromMinute) + "-" + hhmm(toMinute);
  }

  boolean contains(int secondOfDay) {
    return secondOfDay >= fromMinute * 60 && secondOfDay < toMinute * 60;
  }

  boolean overlaps(OpenSpan other) {
    return fromMinute < other.toMinute && other.fromMinute < toMinute;
  }

  private static int minuteOfDay(String field, String text) {
    if (text == null || !text.matches("([01][0-9]|2[0-3]):[0-5][0-9]|24:00")) {
      throw new InvalidValue(
          field,
          "\"" + text + "\" is not a time of day",
          "HH:MM on the 24-hour clock, such as 08:30");
    }
    return Integer.parseInt(text.substring(0, 2)) * 60 + Integer.parseInt(text.substring(3));
  }

  private static String hhmm(int minute) {
    return twoDigits(minute / 60) + ":" + twoDigits(minute % 60);
  }

  private static String twoDigits(int number) {
    return number < 10 ? "0" + number : Integer.toString(number);
  }
}
