package annulus.report;

import annulus.quantity.InvalidValue;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** The content lines of RFC 5545 section 3.1: folded at 75 octets of UTF-8, ended by CRLF. */
final class ContentLines {
  private static final int LONGEST = 75;
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final StringBuilder out = new StringBuilder();

  /** A line whose value needs no escaping. */
  ContentLines line(String name, String value) {
    fold(name + ":" + value);
    return this;
  }

  /** A line with a value of type TEXT (section 3.3.11). */
  ContentLines text(String name, String value) {
    return line(name, escaped(name, value));
  }

  /** A line with an instant in UTC (section 3.3.5, form 2), rounded up to the second. */
  ContentLines instant(String name, Instant value) {
    Instant second =
        value.getNano() == 0 ? value : Instant.ofEpochSecond(value.getEpochSecond() + 1);
    return line(name, UTC.format(second));
  }

  /** Lines written before, with their ends. */
  void written(String lines) {
    out.append(lines);
  }

  @Override
  public String toString() {
    return out.toString();
  }

  /** The space that opens a continuation line counts as one of its octets. */
  private void fold(String line) {
    int octets = 0;
    for (int i = 0; i < line.length(); ) {
      String character = Character.toString(line.codePointAt(i));
      int size = character.getBytes(StandardCharsets.UTF_8).length;
      if (octets + size > LONGEST) {
        out.append("\r\n ");
        octets = 1;
      }
      out.append(character);
      octets += size;
      i += character.length();
    }
    out.append("\r\n");
  }

  private static String escaped(String name, String value) {
    String lines = value.replace("\r\n", "\n").replace('\r', '\n');
    StringBuilder text = new StringBuilder();
    lines.codePoints().forEach(c -> append(text, name, c));
    return text.toString();
  }

  private static void append(StringBuilder text, String name, int c) {
    switch (c) {
      case '\\', ';', ',' -> text.append('\\').appendCodePoint(c);
      case '\n' -> text.append("\\n");
      default -> text.appendCodePoint(allowed(name, c));
    }
  }

  private static int allowed(String name, int c) {
    if ((Character.isISOControl(c) && c != '\t') || (c >= 0xD800 && c <= 0xDFFF)) {
      throw new InvalidValue(
          name,
          String.format(Locale.ROOT, "character U+%04X cannot be written", c),
          "text without control characters");
    }
    return c;
  }
}
