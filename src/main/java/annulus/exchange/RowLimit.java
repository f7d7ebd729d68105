package annulus.exchange;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;
import java.util.List;

/**
 * Lets a long file pass row by row, but no single row without end: a quote that is never closed
 * would otherwise take the rest of the file into one cell.
 */
final class RowLimit extends FilterReader {
  private static final int MOST_CHARACTERS = 200_000;

  private final String file;
  private int since;

  RowLimit(String file, Reader in) {
    super(in);
    this.file = file;
  }

  /** A row was told; counting begins anew. */
  void nextRow() {
    since = 0;
  }

  @Override
  public int read() throws IOException {
    char[] one = new char[1];
    return read(one, 0, 1) < 0 ? -1 : one[0];
  }

  /**
   * @throws InputRefused when a row is longer than any row of a person
   */
  @Override
  public int read(char[] buffer, int offset, int length) throws IOException {
    int n = super.read(buffer, offset, length);
    since += Math.max(0, n);
    if (since > MOST_CHARACTERS) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(
                  file,
                  0,
                  0,
                  "",
                  "has a row without end; it and all after it are not read",
                  "rows of at most " + MOST_CHARACTERS + " characters, each quote closed")));
    }
    return n;
  }
}
