package annulus.report;

import java.util.Set;

/** Lines of at most 100 columns, wrapped at spaces; control characters never reach a terminal. */
final class TextLines {
  static final int WIDTH = 100;

  private static final Set<String> UNITS =
      Set.of("%", "µm", "mm", "°C", "K", "N", "N·m", "mL", "min", "h", "d", "s", "±");

  private final StringBuilder out = new StringBuilder();

  /** An empty line; never two in a row. */
  TextLines blank() {
    if (out.length() > 0 && !out.toString().endsWith("\n\n")) {
      out.append('\n');
    }
    return this;
  }

  /** A heading after an empty line. */
  TextLines heading(String text) {
    return blank().line(text);
  }

  TextLines line(String text) {
    return hanging("", text);
  }

  /** The first line begins with {@code first}, the others stand under its end. */
  TextLines hanging(String first, String text) {
    String clean = printable(text);
    String indent = " ".repeat(columns(first));
    String start = first;
    while (columns(start) + columns(clean) > WIDTH) {
      int room = WIDTH - columns(start);
      int cut = cut(clean, room);
      out.append((start + clean.substring(0, cut)).stripTrailing()).append('\n');
      clean = clean.substring(cut).stripLeading();
      start = indent;
    }
    out.append((start + clean).stripTrailing()).append('\n');
    return this;
  }

  /** Where to break: after the last space that leaves the piece short enough, else anywhere. */
  private static int cut(String text, int room) {
    int end = text.offsetByCodePoints(0, room);
    int space = text.lastIndexOf(' ', end);
    while (space > 0 && isUnit(text, space + 1)) {
      space = text.lastIndexOf(' ', space - 1);
    }
    return space > 0 ? space : end;
  }

  /** A unit stays with its number. */
  private static boolean isUnit(String text, int from) {
    int end = text.indexOf(' ', from);
    String word = text.substring(from, end < 0 ? text.length() : end);
    return UNITS.contains(word.replaceAll("[.,;:)]+$", ""));
  }

  /** The cell padded to a width; a longer one gets one space after it. */
  static String cell(String text, int width) {
    String clean = printable(text);
    return clean + " ".repeat(Math.max(1, width - columns(clean)));
  }

  private static int columns(String text) {
    return text.codePointCount(0, text.length());
  }

  /** One line: controls, line breaks and direction marks become spaces. */
  static String printable(String text) {
    StringBuilder clean = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              int type = Character.getType(c);
              boolean hidden =
                  type == Character.CONTROL
                      || type == Character.FORMAT
                      || type == Character.SURROGATE
                      || type == Character.LINE_SEPARATOR
                      || type == Character.PARAGRAPH_SEPARATOR;
              clean.appendCodePoint(hidden ? ' ' : c);
            });
    return clean.toString();
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
