package annulus.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The command line for tests of other packages. */
public final class CommandLine {
  private CommandLine() {}

  /** What it prints on standard output at 09:30 UTC on 2027-03-11. */
  public static String prints(String... args) {
    CliRun run = CliRun.of(args);
    if (run.code() > 1) {
      throw new IllegalArgumentException(run.err());
    }
    return run.out();
  }

  /** Its standard output. */
  public static String output(String... words) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    PrintStream printer = new PrintStream(out, true, StandardCharsets.UTF_8);
    PrintStream errors = new PrintStream(err, true, StandardCharsets.UTF_8);
    new Cli(Surround.ofThisMachine(), printer, errors).run(words);
    return out.toString(StandardCharsets.UTF_8);
  }
}
