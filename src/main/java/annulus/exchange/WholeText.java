package annulus.exchange;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.CharacterCodingException;
import java.util.List;

/** A text that must be held as a whole, of bounded length. */
final class WholeText {
  /** Far above what a person keeps in one table, far below what fills a small machine. */
  static final int MOST_CHARACTERS = 2_000_000;

  private WholeText() {}

  /**
   * Reads to the end.
   *
   * @param file its name, for messages
   * @param what such as {@code a stock sheet}
   * @throws InputRefused when it is too long or not UTF-8
   */
  static String of(String file, Reader in, String what) throws IOException {
    StringBuilder text = new StringBuilder();
    char[] buffer = new char[8192];
    try {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        text.append(buffer, 0, n);
        if (text.length() > MOST_CHARACTERS) {
          throw refused(file, "is larger than 2 MB", what);
        }
      }
    } catch (CharacterCodingException e) {
      throw refused(file, "is not UTF-8 text", "UTF-8, with or without byte order mark");
    }
    return text.toString();
  }

  private static InputRefused refused(String file, String problem, String allowed) {
    return new InputRefused(List.of(new PlacedProblem(file, 0, 0, "", problem, allowed)));
  }
}
