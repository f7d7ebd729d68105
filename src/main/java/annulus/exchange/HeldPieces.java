package annulus.exchange;

import annulus.cure.PieceConsumer;
import java.util.ArrayList;
import java.util.List;

/**
 * The pieces of a log, each beginning where the one before ended, held as plain numbers so that
 * they can be given any number of times. Up to a stated number of points; of a longer log none are
 * held.
 */
final class HeldPieces implements PieceConsumer {
  private static final int BLOCK = 8192; // points; a whole block is never copied to a wider one

  private final long most;
  private final List<double[]> blocks = new ArrayList<>();
  private long size;
  private double lastSeconds = Double.NaN;
  private double lastC = Double.NaN;
  private boolean tooLong;

  /**
   * @param most points held, 16 bytes each
   */
  HeldPieces(long most) {
    this.most = most;
  }

  @Override
  public void piece(double startSeconds, double startC, double endSeconds, double endC) {
    if (startSeconds != lastSeconds || startC != lastC) {
      add(startSeconds, startC);
    }
    add(endSeconds, endC);
  }

  private void add(double seconds, double celsius) {
    if (size == most) {
      tooLong = true;
      blocks.clear();
    }
    if (tooLong) {
      return;
    }
    int at = (int) (size % BLOCK) * 2;
    if (at == 0) {
      blocks.add(new double[2 * BLOCK]);
    }
    double[] block = blocks.get(blocks.size() - 1);
    block[at] = seconds;
    block[at + 1] = celsius;
    size++;
    lastSeconds = seconds;
    lastC = celsius;
  }

  /** Whether the log was longer than what is held. */
  boolean tooLong() {
    return tooLong;
  }

  /**
   * Gives the pieces that lie at least in part between two times, as they came in.
   *
   * @param fromSeconds begin, s
   * @param untilSeconds end, s
   */
  void between(double fromSeconds, double untilSeconds, PieceConsumer consumer) {
    for (long end = Math.max(1, firstAfter(fromSeconds)); end < size; end++) {
      double start = seconds(end - 1);
      if (start >= untilSeconds) {
        return;
      }
      if (seconds(end) > start) {
        consumer.piece(start, celsius(end - 1), seconds(end), celsius(end));
      }
    }
  }

  /** The first point after a time; the size when there is none. */
  private long firstAfter(double fromSeconds) {
    long low = 0;
    long high = size;
    while (low < high) {
      long middle = (low + high) >>> 1;
      if (seconds(middle) > fromSeconds) {
        high = middle;
      } else {
        low = middle + 1;
      }
    }
    return low;
  }

  private double seconds(long point) {
    return blocks.get((int) (point / BLOCK))[(int) (point % BLOCK) * 2];
  }

  private double celsius(long point) {
    return blocks.get((int) (point / BLOCK))[(int) (point % BLOCK) * 2 + 1];
  }
}
