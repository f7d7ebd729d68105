package annulus.cli;

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
}
