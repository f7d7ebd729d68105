package annulus.report;

import java.util.List;

/**
 * How much of the A5 card is left for what takes its turn there. Counted for the widest of the
 * fonts that the card may be printed in, so that nothing runs off the paper; lengths are mm.
 */
final class CardRoom {
  /** Inner height of the page, and what is needed in any case: rules, signatures, gaps between. */
  private static final double PAGE = 197;

  private static final double FIXED = 21;

  /** Line of the plain text, 7.4 pt. */
  static final double LINE = 3.14;

  private static final int PAGE_CHARACTERS = 108;
  private static final int STEP_CHARACTERS = 57;
  private static final int CAUTION_CHARACTERS = 57;

  private double left = PAGE - FIXED;

  /** Takes lines of some height over the whole width, of so many characters at most. */
  CardRoom wide(List<String> texts, int characters, double lineHeight) {
    texts.forEach(t -> left -= lines(t, characters) * lineHeight);
    return this;
  }

  /** Takes lines of plain text over the whole width. */
  CardRoom plain(List<String> texts) {
    return wide(texts, PAGE_CHARACTERS, LINE + 0.5);
  }

  CardRoom take(double height) {
    left -= height;
    return this;
  }

  /** Takes a step in its column, beside its box to tick. */
  void step(String text) {
    left -= lines(text, STEP_CHARACTERS) * LINE + 0.6;
  }

  /** Takes a caution in its column. */
  void caution(String text) {
    left -= cautionHeight(text);
  }

  /** Whether a caution fits, and {@code after} it one more line of so many characters. */
  boolean holds(String text, String after) {
    return cautionHeight(text) + cautionHeight(after) <= left;
  }

  private static double cautionHeight(String text) {
    return text.isEmpty() ? 0 : lines(text, CAUTION_CHARACTERS) * LINE;
  }

  /** Lines of a text that is broken at its spaces. */
  static int lines(String text, int characters) {
    int lines = 1;
    int used = 0;
    for (String word : text.split(" ", -1)) {
      int length = word.length();
      if (used > 0 && used + 1 + length > characters) {
        lines++;
        used = 0;
      }
      used += (used > 0 ? 1 : 0) + length;
      lines += Math.max(0, (used - 1) / characters);
      used = used > characters ? (used - 1) % characters + 1 : used;
    }
    return lines;
  }
}
