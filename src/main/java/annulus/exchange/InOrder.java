package annulus.exchange;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executor;
import java.util.concurrent.FutureTask;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * Work on many things shared by several threads, given out in the order in which the things came.
 * Few are held at a time, so that they are gone again before the collector has to move them. The
 * thread that brings the things works too while there is work that nobody has begun.
 *
 * @param <A> what comes
 * @param <B> what is made of it
 */
final class InOrder<A, B> {
  /** So many are taken at once: handing over costs little beside the work, and few wait. */
  private static final int BLOCK = 32;

  private static final int BLOCKS_PER_THREAD = 3;

  private final Function<A, B> work;
  private final Consumer<B> out;
  private final Executor others;
  private final int most;
  private final Deque<FutureTask<List<B>>> waiting = new ArrayDeque<>();
  private List<A> coming = new ArrayList<>(BLOCK);

  /**
   * @param work made of each thing; called by several threads at once
   * @param out takes what was made, in order, on the thread that brings the things
   * @param others threads that work besides that one
   * @param threads how many work in all
   */
  InOrder(Function<A, B> work, Consumer<B> out, Executor others, int threads) {
    this.work = work;
    this.out = out;
    this.others = others;
    this.most = threads * BLOCKS_PER_THREAD;
  }

  /** Takes one more thing. */
  void add(A thing) {
    coming.add(thing);
    if (coming.size() == BLOCK) {
      send();
    }
  }

  private void send() {
    List<A> block = coming;
    coming = new ArrayList<>(BLOCK);
    FutureTask<List<B>> task = new FutureTask<>(() -> made(block));
    waiting.add(task);
    others.execute(task);
    if (waiting.size() == most) {
      giveOut();
    }
  }

  private List<B> made(List<A> block) {
    List<B> made = new ArrayList<>(block.size());
    for (A thing : block) {
      made.add(work.apply(thing));
    }
    return made;
  }

  /** Gives out all that is left. */
  void finish() {
    send();
    while (!waiting.isEmpty()) {
      giveOut();
    }
  }

  /** Gives out the oldest block; until it is done, works on what nobody has begun. */
  private void giveOut() {
    FutureTask<List<B>> oldest = waiting.remove();
    oldest.run(); // does nothing when somebody else has begun it
    for (FutureTask<List<B>> other : waiting) {
      if (oldest.isDone()) {
        break;
      }
      other.run();
    }
    try {
      oldest.get().forEach(out);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    } catch (ExecutionException e) {
      throw unchecked(e.getCause());
    }
  }

  /** What the work threw, as it would have come without other threads: it declares nothing. */
  private static RuntimeException unchecked(Throwable thrown) {
    if (thrown instanceof Error error) {
      throw error;
    }
    return thrown instanceof RuntimeException e ? e : new IllegalStateException(thrown);
  }
}
