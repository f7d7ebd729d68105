package annulus.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The way in. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    new Ahead().start();
    PrintStream out = utf8(FileDescriptor.out);
    PrintStream err = utf8(FileDescriptor.err);
    int code = new Cli(Surround.ofThisMachine(), out, err).run(args);
    System.exit(toldInFull(out, err) ? code : ExitCode.INTERNAL);
  }

  /** An answer that broke off must not pass for one: its cautions stand at its end. */
  private static boolean toldInFull(PrintStream out, PrintStream err) {
    boolean whole = !out.checkError();
    if (!whole) {
      err.println("the answer could not be written in full; allowed: a disk or pipe with room");
    }
    err.flush();
    return whole;
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
  }
}
