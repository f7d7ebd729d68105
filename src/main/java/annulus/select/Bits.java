package annulus.select;

/** A set of small whole numbers, such as places in a list. */
final class Bits {
  /** A word holds 2 to this many bits. */
  private static final int SHIFT = 6;

  private final long[] words;

  /**
   * @param size how many numbers there are, from 0
   */
  Bits(int size) {
    this(new long[(size + Long.SIZE - 1) >> SHIFT]);
  }

  private Bits(long[] words) {
    this.words = words;
  }

  Bits copy() {
    return new Bits(words.clone());
  }

  void set(int bit) {
    words[bit >> SHIFT] |= 1L << bit;
  }

  void remove(int bit) {
    words[bit >> SHIFT] &= ~(1L << bit);
  }

  void removeAll(Bits other) {
    for (int i = 0; i < words.length; i++) {
      words[i] &= ~other.words[i];
    }
  }

  void keepOnly(Bits other) {
    for (int i = 0; i < words.length; i++) {
      words[i] &= other.words[i];
    }
  }

  boolean holds(int bit) {
    return (words[bit >> SHIFT] & 1L << bit) != 0;
  }

  boolean holdsAny(Bits other) {
    for (int i = 0; i < words.length; i++) {
      if ((other.words[i] & words[i]) != 0) {
        return true;
      }
    }
    return false;
  }

  /** How many of these are in the other, too. */
  int common(Bits other) {
    int count = 0;
    for (int i = 0; i < words.length; i++) {
      count += Long.bitCount(words[i] & other.words[i]);
    }
    return count;
  }

  int count() {
    return common(this);
  }

  /** The least number that is not below this one; -1 when there is none. */
  int next(int from) {
    long out = -1L << from; // of the first word only
    for (int i = from >> SHIFT; i < words.length; i++) {
      long rest = words[i] & out;
      if (rest != 0) {
        return (i << SHIFT) + Long.numberOfTrailingZeros(rest);
      }
      out = -1L;
    }
    return -1;
  }
}
