package annulus.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;

/** Keeps cells that a spreadsheet would run as a formula from doing so. */
public final class SpreadsheetCells {
  /** What begins a formula, full-width forms too, and what a spreadsheet skips before it. */
  private static final String STARTS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

  private static final Pattern PLAIN_NUMBER = Pattern.compile("[+-][0-9]+(\\.[0-9]+)?");

  private SpreadsheetCells() {}

  /**
   * The cell, with an apostrophe before it when it begins like a formula and is not a plain number.
   */
  public static String safe(String cell) {
    if (cell.isEmpty() || STARTS.indexOf(cell.charAt(0)) < 0) {
      return cell;
    }
    return PLAIN_NUMBER.matcher(cell).matches() ? cell : "'" + cell;
  }

  /** All cells made safe. */
  public static List<String> safe(List<String> cells) {
    List<String> safe = new ArrayList<>(cells);
    safe.replaceAll(SpreadsheetCells::safe);
    return safe;
  }
}
