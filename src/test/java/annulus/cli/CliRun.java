package annulus.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;

/** One call of the command line at a fixed time, with what it printed. */
record CliRun(int code, String out, String err) {
  static final Surround SURROUND =
      new Surround(
          Clock.fixed(Instant.parse("2027-03-11T09:30:00Z"), ZoneId.of("UTC")),
          ZoneId.of("Europe/Dublin"));

  static CliRun of(String... args) {
    return of(SURROUND, args);
  }

  static CliRun of(Surround surround, String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    int code = new Cli(surround, printer(out), printer(err)).run(args);
    CliRun run =
        new CliRun(
            code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    String said = run.out + run.err;
    if (said.matches("(?s).*\\R\\s*at [a-z]+\\..*") || (code < 3 && said.contains("Exception"))) {
      throw new AssertionError("a stack trace or an exception's name is shown: " + run);
    }
    return run;
  }

  private static PrintStream printer(ByteArrayOutputStream bytes) {
    return new PrintStream(bytes, true, StandardCharsets.UTF_8);
  }
}
