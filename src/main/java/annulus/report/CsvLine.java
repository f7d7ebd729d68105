package annulus.report;

import java.util.List;

/**
 * One line of a CSV table with commas (RFC 4180), ended by a line feed. Quotes stand where a reader
 * could otherwise go wrong.
 */
final class CsvLine {
  private CsvLine() {}

  static String of(List<String> cells) {
    StringBuilder line = new StringBuilder(256);
    for (int i = 0; i < cells.size(); i++) {
      String cell = cells.get(i);
      if (i > 0) {
        line.append(',');
      }
      if (cell.isEmpty() ? i == 0 : needsQuotes(cell)) {
        line.append('"').append(cell.replace("\"", "\"\"")).append('"');
      } else {
        line.append(cell);
      }
    }
    return line.append('\n').toString();
  }

  /** Also where it begins like a comment or with a blank, or ends with one. */
  private static boolean needsQuotes(String cell) {
    if (cell.charAt(0) <= '#' || cell.charAt(cell.length() - 1) <= ' ') {
      return true;
    }
    for (int i = 0; i < cell.length(); i++) {
      char c = cell.charAt(i);
      if (c == ',' || c == '"' || c == '\n' || c == '\r') {
        return true;
      }
    }
    return false;
  }
}
