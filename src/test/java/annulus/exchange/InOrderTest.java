package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Whoever works on them, things come out once, in the order in which they came. */
class InOrderTest {
  private static final Executor NOBODY = task -> {};

  private static List<Integer> twice(int count, Executor others, int threads) {
    List<Integer> out = new ArrayList<>();
    InOrder<Integer, Integer> work = new InOrder<>(i -> 2 * i, out::add, others, threads);
    IntStream.range(0, count).forEach(work::add);
    work.finish();
    return out;
  }

  private static List<Integer> expected(int count) {
    return IntStream.range(0, count).map(i -> 2 * i).boxed().toList();
  }

  @Property(tries = 300)
  void all_come_out_in_order_with_helpers_that_never_come_or_come_at_once(
      @ForAll @IntRange(max = 2000) int count, @ForAll @IntRange(min = 1, max = 9) int threads) {
    assertEquals(expected(count), twice(count, NOBODY, threads));
    assertEquals(expected(count), twice(count, Runnable::run, threads));
  }

  @Property(tries = 50)
  void all_come_out_in_order_with_helpers_that_work_beside(
      @ForAll @IntRange(max = 20_000) int count, @ForAll @IntRange(min = 2, max = 5) int threads) {
    ExecutorService others = Executors.newFixedThreadPool(threads - 1);
    try {
      assertEquals(expected(count), twice(count, others, threads));
    } finally {
      others.shutdownNow();
    }
  }

  /** A list of any length needs no more memory than a short one. */
  @Test
  void few_are_held_at_a_time() {
    List<Integer> out = new ArrayList<>();
    InOrder<Integer, Integer> work = new InOrder<>(i -> i, out::add, NOBODY, 4);
    int most = 0;
    for (int i = 0; i < 100_000; i++) {
      work.add(i);
      most = Math.max(most, i + 1 - out.size());
    }
    work.finish();
    assertEquals(100_000, out.size());
    assertTrue(most <= 4 * 3 * 32, most + " held");
  }

  @Test
  void what_the_work_throws_comes_to_who_brings_the_things() {
    for (Throwable thrown : List.of(new IllegalStateException("row"), new StackOverflowError())) {
      List<Integer> out = new ArrayList<>();
      Function<Integer, Integer> fails =
          i -> {
            if (i == 100) {
              throw thrown instanceof Error e ? sneaked(e) : (RuntimeException) thrown;
            }
            return i;
          };
      InOrder<Integer, Integer> work = new InOrder<>(fails, out::add, NOBODY, 2);
      Throwable caught =
          assertThrows(
              Throwable.class,
              () -> {
                IntStream.range(0, 1000).forEach(work::add);
                work.finish();
              });
      assertSame(thrown, caught);
      assertEquals(IntStream.range(0, 96).boxed().toList(), out, "whole blocks before it");
    }
  }

  private static RuntimeException sneaked(Error error) {
    throw error;
  }
}
