package annulus.exchange;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;

/**
 * Reads the lines of a logger's file on a thread of its own, a few batches ahead of whoever judges
 * them: a week of seconds is long, and one core would read while the other waits. Lines and
 * problems come in the same order as without it.
 */
final class LinesAhead {
  private static final int BATCH_LINES = 1000;
  private static final int MOST_BATCHES = 4;

  private final LoggerLines lines;
  private final LoggerLayout layout;
  private final BlockingQueue<Batch> batches = new ArrayBlockingQueue<>(MOST_BATCHES);
  private List<LoggerLayout.Cells> batch = new ArrayList<>(BATCH_LINES);

  private LinesAhead(LoggerLines lines, LoggerLayout layout) {
    this.lines = lines;
    this.layout = layout;
  }

  /** Takes the lines of the file. */
  interface LineConsumer {
    void line(int number, LoggerLayout.Cells cells);
  }

  /** Lines in order, and how it goes on after them. */
  private record Batch(List<LoggerLayout.Cells> lines, Next next, Throwable failure) {}

  private enum Next {
    MORE,
    END,
    FAILURE
  }

  /**
   * Gives every line to a consumer, which runs on the calling thread.
   *
   * @throws IOException when reading fails, after the lines before that were given
   */
  static void forEach(LoggerLines lines, LoggerLayout layout, LineConsumer consumer)
      throws IOException {
    LinesAhead ahead = new LinesAhead(lines, layout);
    Thread reader = new Thread(ahead::read, "log-reader");
    reader.setDaemon(true);
    reader.start();
    try {
      ahead.give(consumer);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("interrupted while reading a log");
    } finally {
      end(reader);
    }
  }

  /** The file may be closed only when nobody reads it any more. */
  private static void end(Thread reader) {
    reader.interrupt();
    boolean interrupted = false;
    while (reader.isAlive()) {
      try {
        reader.join();
      } catch (InterruptedException e) {
        interrupted = true;
      }
    }
    if (interrupted) {
      Thread.currentThread().interrupt();
    }
  }

  private void give(LineConsumer consumer) throws IOException, InterruptedException {
    int number = 0;
    Batch taken;
    do {
      taken = batches.take();
      for (LoggerLayout.Cells cells : taken.lines()) {
        consumer.line(++number, cells);
      }
    } while (taken.next() == Next.MORE);
    if (taken.next() == Next.FAILURE) {
      fail(taken.failure());
    }
  }

  private static void fail(Throwable failure) throws IOException {
    if (failure instanceof IOException e) {
      throw e;
    }
    if (failure instanceof Error e) {
      throw e;
    }
    throw (RuntimeException) failure;
  }

  private void read() {
    try {
      try {
        for (LoggerLine line = lines.next(); line != null; line = lines.next()) {
          batch.add(layout.cells(line));
          if (batch.size() == BATCH_LINES) {
            hand(Next.MORE, null);
          }
        }
        hand(Next.END, null);
      } catch (IOException | RuntimeException | Error e) {
        hand(Next.FAILURE, e);
      }
    } catch (InterruptedException e) {
      // nobody takes any more lines
      Thread.currentThread().interrupt();
    }
  }

  private void hand(Next next, Throwable failure) throws InterruptedException {
    batches.put(new Batch(batch, next, failure));
    batch = new ArrayList<>(BATCH_LINES);
  }
}
