package annulus.report;

import java.util.Set;

/** Lines of at most 100 columns, wrapped at spaces; control characters never reach a terminal. */
final class TextLines {
  static final int WIDTH = 100;

  /** Less is no room for a text, columns. */
  private static final int LEAST_ROOM = 12;

  private static final char SOFT_HYPHEN = 0xAD;

  private static final Set<String> UNITS =
      Set.of("%", "µm", "mm", "°C", "K", "N", "N·m", "mL", "min", "h", "d", "s", "±");

  private static final String AFTER_UNIT = ".,;:)";

  private final StringBuilder out = new StringBuilder();

  /** At most so many characters, with a mark where something is left out. */
  static String shortened(String text, int most) {
    return text.codePointCount(0, text.length()) <= most
        ? text
        : text.substring(0, text.offsetByCodePoints(0, most - 1)) + "…";
  }

  /** An empty line; never two in a row. */
  TextLines blank() {
    int end = out.length();
    if (end > 0 && !(out.charAt(end - 1) == '\n' && end > 1 && out.charAt(end - 2) == '\n')) {
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

  /**
   * The first line begins with {@code first}, the others stand under its end; where that leaves too
   * little room, the text begins on a line of its own.
   */
  TextLines hanging(String first, String text) {
    if (columns(first) > WIDTH - LEAST_ROOM) {
      return line(first).hanging(" ".repeat(4), text);
    }
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
    boolean single = columns(text) == text.length();
    int end = single ? room : text.offsetByCodePoints(0, room);
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
    int last = word.length();
    while (last > 0 && AFTER_UNIT.indexOf(word.charAt(last - 1)) >= 0) {
      last--;
    }
    return UNITS.contains(word.substring(0, last));
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
    if (isPlain(text)) {
      return text;
    }
    StringBuilder clean = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
      int c = text.codePointAt(i);
      clean.appendCodePoint(isHidden(c) ? ' ' : c);
    }
    return clean.toString();
  }

  /** Whether it has only letters, digits and signs of the first two hundred, as nearly all has. */
  @SuppressWarnings("LoopOverCharArray") // quicker as long as it is not compiled, as in a start
  private static boolean isPlain(String text) {
    for (char c : text.toCharArray()) {
      boolean plain = (c >= ' ' && c < 0x7F) || (c >= 0xA0 && c <= 0xFF && c != SOFT_HYPHEN);
      if (!plain) {
        return false;
      }
    }
    return true;
  }

  private static boolean isHidden(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          true;
      default -> false;
    };
  }

  @Override
  public String toString() {
    return out.toString();
  }
}
