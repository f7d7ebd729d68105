package annulus.exchange;

import annulus.quantity.InvalidValue;
import java.util.regex.Pattern;

/**
 * What is wrong with an input, and where.
 *
 * @param file file name, or {@code command line}
 * @param line from 1; 0 where there is no line
 * @param column character in the line for JSON, cell for CSV, word for the command line, from 1; 0
 *     where there is none
 * @param field the field's name or path
 * @param problem what is wrong, with the value
 * @param allowed what would be accepted
 */
public record PlacedProblem(
    String file, int line, int column, String field, String problem, String allowed) {
  private static final int MAX_LENGTH = 2000;

  /** Controls, marks that turn the direction of writing, line and paragraph ends. */
  private static final Pattern HIDDEN = Pattern.compile("[\\p{Cc}\\p{Cf}\\p{Cs}\\p{Zl}\\p{Zp}]");

  /** A value that no part of the program takes, with its place. */
  public static PlacedProblem of(String file, int line, InvalidValue value) {
    return new PlacedProblem(file, line, 0, value.field(), value.problem(), value.allowed());
  }

  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(file);
    if (line > 0) {
      text.append(':').append(line);
    }
    if (column > 0) {
      text.append(':').append(column);
    }
    text.append(": ");
    if (!field.isEmpty()) {
      text.append(field).append(": ");
    }
    text.append(problem);
    if (!allowed.isEmpty()) {
      text.append("; allowed: ").append(allowed);
    }
    return oneLine(text.toString());
  }

  /** Whatever was typed, a problem stays one line of moderate length that a terminal only shows. */
  private static String oneLine(String text) {
    String line = HIDDEN.matcher(text).replaceAll(" ");
    return line.length() > MAX_LENGTH ? line.substring(0, MAX_LENGTH - 1) + "…" : line;
  }
}
