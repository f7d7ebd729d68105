package annulus.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A running board and its empty neighbour, with the collector that the launcher chooses. */
final class BoardProcess implements AutoCloseable {
  private final Process process;
  private final String[] ports;

  BoardProcess(Path database) throws IOException {
    process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin/java").toString(),
                "-Xmx256m",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                "annulus.web.BoardToMeasure",
                "jdbc:sqlite:" + database)
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    BufferedReader out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    String line = out.readLine();
    if (line == null) {
      throw new IOException("the board did not start");
    }
    ports = line.split(" ");
  }

  URI page(String path) {
    return URI.create("http://127.0.0.1:" + ports[0] + path);
  }

  URI empty() {
    return URI.create("http://127.0.0.1:" + ports[1] + "/empty");
  }

  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    try {
      if (!process.waitFor(20, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
