package annulus.exchange;

import java.util.List;

/**
 * Cells that are safe to open in a spreadsheet: none starts a formula. A cell that would, and is no
 * plain number, gets an apostrophe before it, which reading takes off again; one that already has
 * such an apostrophe gets a second, so that nothing is lost.
 */
final class SheetCells {
  private static final String STARTS_FORMULA = "=+-@\t\r\n";

  /** What a decoder puts in the place of bytes that are no character. */
  static final char NO_CHARACTER = '\uFFFD';

  /** The byte order mark, when it stands elsewhere than first. */
  private static final char MARK = '\uFEFF';

  private SheetCells() {}

  /** Whether a cell holds what nobody types: a character that is none, or a control. */
  static boolean isBroken(String cell) {
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      boolean control = Character.isISOControl(c) && c != '\t' && c != '\n' && c != '\r';
      if (control || c == NO_CHARACTER || c == MARK) {
        return true;
      }
    }
    return false;
  }

  static String guarded(String value) {
    boolean formula = formulaAfterApostrophes(value) >= 0;
    return formula && !value.matches("[+-][0-9]+([.,][0-9]+)?") ? "'" + value : value;
  }

  static String unguarded(String cell) {
    return formulaAfterApostrophes(cell) >= 1 ? cell.substring(1) : cell;
  }

  /** Number of leading apostrophes before a character that starts a formula; -1: none such. */
  private static int formulaAfterApostrophes(String value) {
    int i = 0;
    while (i < value.length() && value.charAt(i) == '\'') {
      i++;
    }
    return i < value.length() && STARTS_FORMULA.indexOf(value.charAt(i)) >= 0 ? i : -1;
  }

  /** One line of a table, guarded and quoted. */
  static String line(List<String> values, SheetShape shape) {
    StringBuilder line = new StringBuilder();
    for (int i = 0; i < values.size(); i++) {
      if (i > 0) {
        line.append(shape.delimiter());
      }
      line.append(quoted(guarded(values.get(i)), shape));
    }
    return line.append(shape.lineEnd()).toString();
  }

  /** Quotes whatever any spreadsheet might take apart, whichever delimiter it expects. */
  private static String quoted(String cell, SheetShape shape) {
    boolean decimal = shape.delimiter() != ',' && cell.matches("[+-]?[0-9]+,[0-9]+");
    boolean plain =
        cell.chars().noneMatch(c -> c == ',' || c == ';' || c == '\t' || c == '"' || c < ' ')
            && cell.equals(cell.strip())
            && !cell.startsWith("#");
    return plain || decimal ? cell : "\"" + cell.replace("\"", "\"\"") + "\"";
  }
}
