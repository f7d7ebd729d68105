package annulus.store;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** A real PostgreSQL server for tests, started once in a temporary folder. */
public final class PostgresServer {
  private static final String INSTALL = "apt-get update && apt-get install -y postgresql";
  private static final AtomicInteger NAMES = new AtomicInteger();
  private static String address;

  private PostgresServer() {}

  /** The URL of a new, empty database; the test is skipped where there is no server program. */
  public static synchronized String newDatabase() {
    Path programs = programs();
    assumeTrue(programs != null, "PostgreSQL is missing: " + INSTALL);
    if (address == null) {
      address = start(programs);
    }
    String name = "test" + NAMES.incrementAndGet();
    run(programs.resolve("createdb"), "-h", "127.0.0.1", "-p", address, "-U", "postgres", name);
    return "jdbc:postgresql://127.0.0.1:" + address + "/" + name + "?user=postgres";
  }

  private static Path programs() {
    Path versions = Path.of("/usr/lib/postgresql");
    if (!Files.isDirectory(versions)) {
      return null;
    }
    try (Stream<Path> found = Files.list(versions)) {
      return found
          .map(v -> v.resolve("bin"))
          .filter(b -> Files.isExecutable(b.resolve("initdb")))
          .max(Comparator.naturalOrder())
          .orElse(null);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String start(Path programs) {
    try {
      Path folder = Files.createTempDirectory("annulus-postgres");
      if (isRoot()) {
        run(Path.of("/bin/chown"), true, "postgres", folder.toString());
      }
      String data = folder.resolve("data").toString();
      run(programs.resolve("initdb"), "-D", data, "-U", "postgres", "-A", "trust", "-E", "UTF8");
      String port = Integer.toString(freePort());
      String options = "-p " + port + " -c listen_addresses=127.0.0.1 -k " + folder;
      String log = folder.resolve("log").toString();
      run(programs.resolve("pg_ctl"), "-D", data, "-l", log, "-w", "-o", options, "start");
      Thread stop =
          new Thread(
              () -> run(programs.resolve("pg_ctl"), "-D", data, "-m", "immediate", "-w", "stop"));
      Runtime.getRuntime().addShutdownHook(stop);
      return port;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  private static boolean isRoot() {
    return "root".equals(System.getProperty("user.name"));
  }

  private static void run(Path program, String... words) {
    run(program, false, words);
  }

  /** PostgreSQL refuses to run as root. */
  private static void run(Path program, boolean asRoot, String... words) {
    List<String> command = new ArrayList<>();
    if (isRoot() && !asRoot) {
      command.addAll(List.of("runuser", "-u", "postgres", "--"));
    }
    command.add(program.toString());
    command.addAll(List.of(words));
    try {
      ProcessBuilder builder = new ProcessBuilder(command).directory(new java.io.File("/tmp"));
      builder.redirectErrorStream(true);
      builder.redirectOutput(ProcessBuilder.Redirect.DISCARD);
      int code = builder.start().waitFor();
      if (code != 0) {
        throw new IOException(String.join(" ", command) + " ended with " + code);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
