package annulus.bench;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.openjdk.jmh.runner.RunnerException;

/** Runs the benchmarks and prints one table; called by {@code src/jmh/measure}. */
public final class Measure {
  private static final int MOST_ROWS = 1_000_000;
  private static final int MOST_JOBS = 10_000;

  private Measure() {}

  /** Words: any of advice, shell, batch, logger, board (none: all); rows=N, rounds=N. */
  public static void main(String[] args) throws IOException, RunnerException {
    Set<String> words = Set.of(args);
    int rows = number(args, "rows=", MOST_ROWS);
    int rounds = number(args, "rounds=", 0);
    boolean all = words.stream().allMatch(w -> w.contains("="));
    Path folder = Files.createTempDirectory("annulus-bench");
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    List<Line> lines = new ArrayList<>();
    try {
      if (all || words.contains("shell")) {
        lines.addAll(said(out, Commands.oneOrder(rounds > 0 ? rounds : 21)));
      }
      if (all || words.contains("advice")) {
        lines.addAll(said(out, InProcess.advice(rounds > 0 ? rounds : 3)));
      }
      if (all || words.contains("logger")) {
        lines.addAll(said(out, Commands.logger(folder, rounds > 0 ? rounds : 7)));
      }
      if (all || words.contains("batch")) {
        lines.addAll(said(out, Commands.batch(folder, rows, rounds > 0 ? rounds : 1)));
      }
      if (all || words.contains("board")) {
        lines.addAll(said(out, BoardLoad.run(folder, number(args, "jobs=", MOST_JOBS))));
      }
    } finally {
      clear(folder);
    }
    table(out, lines);
  }

  /** Each part is told as soon as it is there. */
  private static List<Line> said(PrintStream out, List<Line> lines) {
    lines.forEach(l -> out.println(l.markdown()));
    return lines;
  }

  private static int number(String[] args, String start, int otherwise) {
    for (String arg : args) {
      if (arg.startsWith(start)) {
        return Integer.parseInt(arg.substring(start.length()));
      }
    }
    return otherwise;
  }

  private static void table(PrintStream out, List<Line> lines) {
    out.println();
    out.println(
        Runtime.getRuntime().availableProcessors()
            + " cores, "
            + System.getProperty("java.vm.name")
            + " "
            + System.getProperty("java.version")
            + ", "
            + System.getProperty("os.name")
            + " "
            + System.getProperty("os.arch"));
    out.println();
    out.println("| work | took | compared with | took | ratio | wanted | met |");
    out.println("|---|---|---|---|---|---|---|");
    lines.forEach(l -> out.println(l.markdown()));
  }

  private static void clear(Path folder) throws IOException {
    try (var files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}
