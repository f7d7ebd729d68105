package annulus.store;

import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.time.Instant;

/**
 * A temperature log as it was read out for a job.
 *
 * @param id its identity
 * @param name name of the file
 * @param text all of it
 * @param dateOrder {@code day-first} or {@code month-first} as declared; empty when not
 * @param unit {@code C} or {@code F} as declared; empty when not
 * @param column header of the column to read as declared; empty when not
 * @param readAt the job is judged by it until this moment
 */
public record TemperatureLog(
    String id,
    String name,
    String text,
    String dateOrder,
    String unit,
    String column,
    Instant readAt) {
  /** Longest text, characters. */
  public static final int LONGEST = 4_000_000;

  /** The line that {@link Seal} adds where it is kept. */
  private static final int SEAL = 14;

  private static final int LONGEST_NAME = 100;

  public TemperatureLog {
    Check.text("name", name);
    requireShort("name", name, LONGEST_NAME);
    requireShort("column", column, LONGEST_NAME);
    requireShort("log", text, LONGEST + SEAL);
    if (text.indexOf('\0') >= 0) {
      throw new InvalidValue("log", "is not text", "the CSV file of the logger");
    }
  }

  private static void requireShort(String field, String value, int longest) {
    if (value.length() > longest) {
      throw new InvalidValue(
          field, value.length() + " characters", "at most " + longest + " characters");
    }
  }
}
