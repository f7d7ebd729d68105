package annulus.cli;

/** What the exit code says. */
final class ExitCode {
  /** An answer was given. */
  static final int ANSWER = 0;

  /** An answer was given, and it is no. */
  static final int ANSWER_IS_NO = 1;

  /** The input can't be used. */
  static final int BAD_INPUT = 2;

  /** A fault of the program. */
  static final int INTERNAL = 3;

  private ExitCode() {}
}
