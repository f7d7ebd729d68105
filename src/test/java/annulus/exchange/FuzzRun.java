package annulus.exchange;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Gives one reader harmed files from fixed seeds. Each is read, or refused with a reason; any other
 * exception, a case that never ends and one that needs more memory than there is are failures. What
 * was done is printed and kept in {@code target/fuzz.txt}.
 */
public final class FuzzRun {
  /** Added to each seed, so that another run of the profile {@code fuzz} tries other cases. */
  private static final long SEED = Long.getLong("annulus.fuzz.seed", 0);

  /** A guard against a hang, not a measure of speed: far more than a slow machine needs. */
  private static final long HANGS_AFTER_MS = 300_000;

  private static final AtomicLong TOTAL = new AtomicLong();

  private final String name;
  private final long cases;
  private final long seed;
  private final AtomicLong began = new AtomicLong();
  private volatile long current;
  private volatile Thread owner;
  private long read;
  private long refused;
  private long slowestMs;

  private FuzzRun(String name, long cases, long seed) {
    this.name = name;
    this.cases = cases;
    this.seed = (seed + SEED) * 1_000_000_007L;
  }

  /** One reader under test. */
  @FunctionalInterface
  public interface Take {
    /** Reads it, or throws {@link InputRefused}. */
    void read(byte[] bytes) throws IOException;
  }

  /** All cases run by this machine so far. */
  static long total() {
    return TOTAL.get();
  }

  /**
   * Runs the cases.
   *
   * @param name what is read
   * @param cases how many in the normal build
   * @param seed of its own
   * @param good files that are harmed
   */
  public static void over(String name, int cases, long seed, List<byte[]> good, Take take) {
    over(name, (long) cases * Damage.TIMES, seed, good, take);
  }

  /** Runs so many cases whatever the profile says. */
  public static void over(String name, long cases, long seed, List<byte[]> good, Take take) {
    FuzzRun run = new FuzzRun(name, cases, seed);
    Thread watch = new Thread(run::watch, "hang");
    watch.setDaemon(true);
    watch.start();
    try {
      run.all(good, take, Thread.currentThread());
    } finally {
      watch.interrupt();
    }
  }

  private void all(List<byte[]> good, Take take, Thread worker) {
    owner = worker;
    for (long i = 0; i < cases; i++) {
      current = seed + i;
      byte[] bytes = Damage.done(good, new Random(current));
      long from = System.nanoTime();
      began.set(from);
      one(bytes, take);
      slowestMs = Math.max(slowestMs, (System.nanoTime() - from) / 1_000_000);
    }
    began.set(0);
    TOTAL.addAndGet(cases);
    told();
    assertTrue(refused > cases / 20, refused + " of " + cases + " were refused");
    assertTrue(read > 0, name + ": none was read");
  }

  private void one(byte[] bytes, Take take) {
    try {
      take.read(bytes);
      read++;
    } catch (InputRefused e) {
      clear(e);
      refused++;
    } catch (IOException | RuntimeException | StackOverflowError | OutOfMemoryError e) {
      fail(name + ", case " + current + ":\n" + shown(bytes), e);
    }
  }

  private void clear(InputRefused e) {
    String where = name + ", case " + current + ": ";
    assertFalse(e.problems().isEmpty(), where);
    for (PlacedProblem problem : e.problems()) {
      String text = problem.toString();
      assertFalse(problem.file().isBlank() || problem.problem().isBlank(), where + text);
      assertFalse(problem.allowed().isBlank(), where + text);
      assertTrue(text.length() <= 2000, where + text.length());
      assertTrue(text.codePoints().noneMatch(FuzzRun::harmsATerminal), where + text);
      assertFalse(text.contains("Exception") || text.contains("annulus."), where + text);
    }
  }

  /** Control characters, line ends and marks that turn the direction of writing. */
  static boolean harmsATerminal(int c) {
    int type = Character.getType(c);
    return Character.isISOControl(c)
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR
        || (c >= 0x202A && c <= 0x202E)
        || (c >= 0x2066 && c <= 0x2069);
  }

  private void watch() {
    try {
      while (true) {
        Thread.sleep(1000);
        long since = began.get();
        if (since != 0 && System.nanoTime() - since > HANGS_AFTER_MS * 1_000_000) {
          System.out.println("HANGS: " + name + ", case " + current);
          for (StackTraceElement at : owner.getStackTrace()) {
            System.out.println("  " + at);
          }
          Runtime.getRuntime().halt(9);
        }
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private void told() {
    String line =
        String.format(
            Locale.ROOT,
            "fuzz %s: %d cases from seed %d, %d read, %d refused, longest %d ms",
            name,
            cases,
            seed,
            read,
            refused,
            slowestMs);
    System.out.println(line);
    try {
      Files.writeString(
          Files.createDirectories(Path.of("target")).resolve("fuzz.txt"),
          line + "\n",
          StandardOpenOption.CREATE,
          StandardOpenOption.APPEND);
    } catch (IOException e) {
      fail(e);
    }
  }

  private static String shown(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    return text.substring(0, Math.min(3000, text.length()));
  }
}
