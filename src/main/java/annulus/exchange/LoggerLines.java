package annulus.exchange;

import java.io.BufferedReader;
import java.io.Closeable;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;

/** The lines of a logger's file, one at a time, of bounded length. */
final class LoggerLines implements Closeable {
  private static final int LONGEST = 4096;
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final String file;
  private final Reader reader;
  private int line;
  private boolean afterReturn;

  LoggerLines(String file, Reader reader) {
    this.file = file;
    this.reader = reader instanceof BufferedReader ? reader : new BufferedReader(reader);
  }

  /** Number of the line last given, from 1. */
  int number() {
    return line;
  }

  /** The next line without its end, or null at the end of the file. */
  String next() throws IOException {
    StringBuilder text = new StringBuilder();
    int c = reader.read();
    if (c == '\n' && afterReturn) {
      c = reader.read();
    }
    afterReturn = false;
    if (c < 0) {
      return null;
    }
    line++;
    while (c >= 0 && c != '\n' && c != '\r') {
      text.append((char) c);
      checkLength(text);
      c = reader.read();
    }
    afterReturn = c == '\r';
    boolean marked = line == 1 && text.length() > 0 && text.charAt(0) == BYTE_ORDER_MARK;
    return marked ? text.substring(1) : text.toString();
  }

  private void checkLength(StringBuilder text) {
    if (text.length() > LONGEST) {
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
