package annulus.exchange;

import java.io.Closeable;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;

/** The lines of a logger's file, one at a time, of bounded length. */
final class LoggerLines implements Closeable {
  private static final int LONGEST = 4096;
  private static final int BLOCK = 8192;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final String file;
  private final Reader reader;
  private char[] block = new char[0];
  private int from;
  private int until;
  private int line;
  private boolean afterReturn;

  LoggerLines(String file, Reader reader) {
    this.file = file;
    this.reader = reader;
  }

  /** Number of the line last given, from 1. */
  int number() {
    return line;
  }

  /** The next line without its end, or null at the end of the file. */
  LoggerLine next() throws IOException {
    if (afterReturn && more() && block[from] == '\n') {
      from++;
    }
    afterReturn = false;
    if (!more()) {
      return null;
    }
    line++;
    LoggerLine rest = rest();
    boolean marked =
        line == 1 && rest.from() < rest.until() && rest.chars()[rest.from()] == BYTE_ORDER_MARK;
    return marked ? new LoggerLine(rest.chars(), rest.from() + 1, rest.until()) : rest;
  }

  /** Whether there is a character; a block that is used up still holds the lines given. */
  private boolean more() throws IOException {
    while (from == until) {
      block = new char[BLOCK];
      int read = reader.read(block, 0, BLOCK);
      if (read < 0) {
        return false;
      }
      from = 0;
      until = read;
    }
    return true;
  }

  /** What is left of the line, which may begin in one block and end in another. */
  private LoggerLine rest() throws IOException {
    StringBuilder whole = null;
    while (more()) {
      int end = from;
      while (end < until && block[end] != '\n' && block[end] != '\r') {
        end++;
      }
      checkLength(end - from + (whole == null ? 0 : whole.length()));
      boolean ends = end < until;
      if (ends && whole == null) {
        LoggerLine here = new LoggerLine(block, from, end);
        past(end);
        return here;
      }
      whole = whole == null ? new StringBuilder() : whole;
      whole.append(block, from, end - from);
      from = end;
      if (ends) {
        past(end);
        break;
      }
    }
    return LoggerLine.of(whole == null ? "" : whole.toString());
  }

  private void past(int end) {
    afterReturn = block[end] == '\r';
    from = end + 1;
  }

  private void checkLength(int length) {
    if (length > LONGEST) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  file,
                  line,
                  0,
                  "",
                  "the line is too long for a logger's file",
                  "4096 characters")));
    }
  }

  /** Splits a line; a cell may stand in double quotes, a doubled quote in it is one. */
  static List<String> cells(String text, char delimiter) {
    List<String> cells = new ArrayList<>();
    StringBuilder cell = new StringBuilder();
    boolean quoted = false;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '"') {
        boolean doubled = quoted && i + 1 < text.length() && text.charAt(i + 1) == '"';
        if (doubled) {
          cell.append('"');
          i++;
        } else {
          quoted = !quoted;
        }
      } else if (c == delimiter && !quoted) {
        cells.add(cell.toString().strip());
        cell.setLength(0);
      } else {
        cell.append(c);
      }
    }
    cells.add(cell.toString().strip());
    return cells;
  }

  @Override
  public void close() throws IOException {
    reader.close();
  }
}
