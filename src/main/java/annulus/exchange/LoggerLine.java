package annulus.exchange;

/**
 * One line of a logger's file where it was read: a text of its own is made only of what is not
 * plain.
 */
final class LoggerLine {
  private final char[] chars;
  private final int from;
  private final int until;

  /**
   * @param chars holds the line
   * @param from where it begins
   * @param until where it ends, without its line end
   */
  LoggerLine(char[] chars, int from, int until) {
    this.chars = chars;
    this.from = from;
    this.until = until;
  }

  static LoggerLine of(String text) {
    return new LoggerLine(text.toCharArray(), 0, text.length());
  }

  char[] chars() {
    return chars;
  }

  int from() {
    return from;
  }

  int until() {
    return until;
  }

  String text() {
    return new String(chars, from, until - from);
  }

  boolean isBlank() {
    boolean seen = from < until && chars[from] > ' ' && chars[from] < 0x7F;
    return !seen && text().isBlank();
  }

  /** Where a character stands from a place on; where the line ends when there is none. */
  int find(char wanted, int start) {
    int at = start;
    while (at < until && chars[at] != wanted) {
      at++;
    }
    return at;
  }
}
