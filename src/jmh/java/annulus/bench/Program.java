package annulus.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Another process, timed from its start to its end. */
final class Program {
  private static final String JAVA =
      Path.of(System.getProperty("java.home"), "bin/java").toString();

  private final List<String> command;
  private final int rightExit;

  private Program(List<String> command, int rightExit) {
    this.command = List.copyOf(command);
    this.rightExit = rightExit;
  }

  static Program of(String... command) {
    return new Program(Arrays.asList(command), 0);
  }

  static Program java(String... rest) {
    List<String> all = new ArrayList<>(List.of(JAVA));
    all.addAll(Arrays.asList(rest));
    return new Program(all, 0);
  }

  /** The same with an exit code that stands for an answer. */
  Program exits(int code) {
    return new Program(command, code);
  }

  /** The same on some cores only, such as {@code 0} or {@code 0,1}. */
  Program on(String cores) {
    if (!Files.isExecutable(Path.of("/usr/bin/taskset"))) {
      return this;
    }
    List<String> all = new ArrayList<>(List.of("/usr/bin/taskset", "-c", cores));
    all.addAll(command);
    return new Program(all, rightExit);
  }

  /** Wall time, ms. */
  double wallMs() throws IOException {
    long start = System.nanoTime();
    Process process = start();
    finish(process);
    return (System.nanoTime() - start) / 1e6;
  }

  /** The most memory it ever held, MB, as the system counts it; NaN where that can't be read. */
  double mostMb() throws IOException {
    Process process = start();
    Path status = Path.of("/proc/" + process.pid() + "/status");
    double most = Double.NaN;
    while (process.isAlive()) {
      double now = highWaterMb(status);
      most = Double.isNaN(now) ? most : now;
    }
    finish(process);
    return most;
  }

  private static double highWaterMb(Path status) {
    try {
      for (String line : Files.readAllLines(status)) {
        if (line.startsWith("VmHWM:")) {
          return Integer.parseInt(line.replaceAll("[^0-9]", "")) / 1024.0;
        }
      }
    } catch (IOException e) {
      return Double.NaN; // it ended while we read
    }
    return Double.NaN;
  }

  private Process start() throws IOException {
    return new ProcessBuilder(command)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .redirectError(ProcessBuilder.Redirect.DISCARD)
        .start();
  }

  private void finish(Process process) throws IOException {
    try {
      int exit = process.waitFor();
      if (exit != rightExit) {
        throw new IOException(String.join(" ", command) + " ended with " + exit);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("interrupted", e);
    }
  }
}
