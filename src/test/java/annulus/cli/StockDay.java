package annulus.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.io.TempDir;

/**
 * A day at the stock of the demo workshop: commands one after the other, in a folder of its own.
 */
abstract class StockDay {
  static final String STOCK = "demo-data/stock.csv";

  @TempDir Path folder;
  String out = "";
  String err = "";

  static final Surround SURROUND = at("2026-11-25T10:00:00Z");

  private static Surround at(String instant) {
    Clock clock = Clock.fixed(Instant.parse(instant), ZoneId.of("UTC"));
    return new Surround(clock, ZoneId.of("Europe/Dublin"));
  }

  int run(String... args) {
    return run(SURROUND, args);
  }

  int runOn(String instant, String... args) {
    return run(at(instant), args);
  }

  private int run(Surround surround, String... args) {
    ByteArrayOutputStream to = new ByteArrayOutputStream();
    ByteArrayOutputStream wrong = new ByteArrayOutputStream();
    int code =
        new Cli(
                surround,
                new PrintStream(to, true, StandardCharsets.UTF_8),
                new PrintStream(wrong, true, StandardCharsets.UTF_8))
            .run(args);
    out = to.toString(StandardCharsets.UTF_8);
    err = wrong.toString(StandardCharsets.UTF_8);
    return code;
  }

  String file(String name) {
    return folder.resolve(name).toString();
  }

  /** A ledger opened with what the demo sheet says. */
  String opened(String name) {
    String ledger = file(name);
    run("stock", "receive", "--ledger", ledger, "--from", STOCK, "--who", "Orla");
    return ledger;
  }
}
