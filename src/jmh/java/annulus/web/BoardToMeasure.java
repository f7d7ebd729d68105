package annulus.web;

import io.javalin.Javalin;
import java.io.IOException;
import java.net.InetAddress;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Optional;

/** A board in a process of its own, and beside it the same server with one empty answer. */
public final class BoardToMeasure {
  private BoardToMeasure() {}

  /** {@code DATABASE-URL}: prints both ports and runs until its input ends. */
  public static void main(String[] args) throws IOException {
    ServeOptions options =
        new ServeOptions(
            InetAddress.getLoopbackAddress(),
            0,
            args[0],
            Optional.empty(),
            Optional.of(Path.of("demo-data/shop.json")),
            Optional.of(Path.of("demo-data/stock.csv")),
            Optional.empty(),
            Optional.empty());
    try (BoardServer board =
        BoardServer.start(options, Clock.systemUTC(), ZoneId.of("Europe/Vienna"))) {
      Javalin empty =
          Javalin.create(
              config -> {
                config.showJavalinBanner = false;
                config.startupWatcherEnabled = false;
              });
      empty.get("/empty", ctx -> ctx.result(""));
      empty.start("127.0.0.1", 0);
      System.out.println(board.port() + " " + empty.port());
      System.out.flush();
      while (System.in.read() >= 0) {
        // runs on
      }
      empty.stop();
    }
  }
}
