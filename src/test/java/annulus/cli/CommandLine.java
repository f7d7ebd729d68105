package annulus.cli;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** What a command prints, for tests that hold another face against it. */
public final class CommandLine {
  private CommandLine() {}

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
