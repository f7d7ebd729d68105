package annulus.report;

/** Escaping for HTML; nothing typed by a person reaches a page except through here. */
public final class Html {
  private Html() {}

  /**
   * Text for the inside of an element. Escapes {@code & < >}; characters that HTML does not allow
   * become U+FFFD. Not for use inside {@code script} or {@code style}.
   */
  public static String text(String value) {
    return escaped(value, false);
  }

  /** Text for an attribute value between quotes, either kind. */
  public static String attr(String value) {
    return escaped(value, true);
  }

  private static String escaped(String value, boolean inAttribute) {
    int plain = plain(value, 0, inAttribute);
    if (plain == value.length()) {
      return value;
    }
    StringBuilder out = new StringBuilder(value.length() + 16);
    int at = 0;
    while (at < value.length()) {
      out.append(value, at, plain);
      if (plain < value.length()) {
        int c = value.codePointAt(plain);
        append(out, c, inAttribute);
        plain += Character.charCount(c);
      }
      at = plain;
      plain = plain(value, at, inAttribute);
    }
    return out.toString();
  }

  /** Where the stretch of characters that stay as they are, most of all text, ends. */
  private static int plain(String value, int from, boolean inAttribute) {
    int at = from;
    while (at < value.length() && isPlain(value.charAt(at), inAttribute)) {
      at++;
    }
    return at;
  }

  private static boolean isPlain(char c, boolean inAttribute) {
    if (c == '&' || c == '<' || c == '>' || (inAttribute && (c == '"' || c == '\''))) {
      return false;
    }
    return (c >= ' ' && c < 0x7F) || (c >= 0xA0 && c < 0xD800);
  }

  private static void append(StringBuilder out, int c, boolean inAttribute) {
    switch (c) {
      case '&' -> out.append("&amp;");
      case '<' -> out.append("&lt;");
      case '>' -> out.append("&gt;");
      case '"' -> out.append(inAttribute ? "&quot;" : "\"");
      case '\'' -> out.append(inAttribute ? "&#39;" : "'");
      case '\n', '\r', '\t' -> out.append(inAttribute ? "&#" + c + ";" : Character.toString(c));
      default -> out.appendCodePoint(allowed(c) ? c : 0xFFFD);
    }
  }

  /** No controls, no lone surrogates, no noncharacters (WHATWG HTML, preprocessing the input). */
  private static boolean allowed(int c) {
    boolean nonCharacter = (c & 0xFFFE) == 0xFFFE || (c >= 0xFDD0 && c <= 0xFDEF);
    return !Character.isISOControl(c) && !(c >= 0xD800 && c <= 0xDFFF) && !nonCharacter;
  }
}
