package annulus.exchange;

import java.io.IOException;
import java.io.PushbackReader;
import java.io.Reader;

/** The mark that some programs put before the first character of a text file. */
final class ByteOrderMark {
  private static final int MARK = 0xFEFF;

  private ByteOrderMark() {}

  /** The same text without the mark. */
  static Reader skipped(Reader reader) throws IOException {
    PushbackReader pushback = new PushbackReader(reader, 1);
    int first = pushback.read();
    if (first >= 0 && first != MARK) {
      pushback.unread(first);
    }
    return pushback;
  }
}
