package annulus.web;

import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.spi.ToolProvider;

/**
 * {@code serve}: found by its name when it is asked for, so that no other command has to load the
 * server.
 */
public final class Serve implements ToolProvider {
  @Override
  public String name() {
    return "annulus-serve";
  }

  @Override
  public int run(PrintWriter out, PrintWriter err, String... args) {
    ServeOptions options = ServeOptions.of(args, Serve::passcode);
    CountDownLatch closed = new CountDownLatch(1);
    try (BoardServer server =
        BoardServer.start(options, Clock.systemUTC(), ZoneId.systemDefault())) {
      String host =
          options.listen().isAnyLocalAddress() ? "127.0.0.1" : options.listen().getHostAddress();
      String shown = host.contains(":") ? "[" + host + "]" : host;
      out.println("The board is at http://" + shown + ":" + server.port() + "/");
      out.println(
          "Jobs are kept in " + options.database().replaceAll("password=[^&]*", "password=…"));
      if (options.shop().isEmpty()) {
        out.println("No --shop given: promises take no account of opening hours.");
      }
      server.notes().forEach(n -> out.println("note: " + n));
      out.println("Stop it with Ctrl-C.");
      out.flush();
      untilStopped(closed);
      return 0;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } finally {
      closed.countDown();
    }
  }

  @Override
  public int run(PrintStream out, PrintStream err, String... args) {
    return run(utf8(out), utf8(err), args);
  }

  private static PrintWriter utf8(PrintStream stream) {
    return new PrintWriter(new OutputStreamWriter(stream, StandardCharsets.UTF_8), true);
  }

  /** Waits for the end of the process, and lets it end only when the server is closed. */
  private static void untilStopped(CountDownLatch closed) {
    CountDownLatch stopped = new CountDownLatch(1);
    Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(stopped, closed), "stop"));
    try {
      stopped.await();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static void stop(CountDownLatch stopped, CountDownLatch closed) {
    stopped.countDown();
    try {
      boolean inTime = closed.await(3, TimeUnit.SECONDS);
      if (!inTime) {
        System.err.println("the board did not close in time");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static String passcode(Path file) {
    try {
      return Files.readString(file).strip();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
