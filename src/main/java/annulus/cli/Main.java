package annulus.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** The way in. */
public final class Main {
  private Main() {}

  public static void main(String[] args) {
    PrintStream out = utf8(FileDescriptor.out);
    PrintStream err = utf8(FileDescriptor.err);
    int code = new Cli(Surround.ofThisMachine(), out, err).run(args);
    out.flush();
    err.flush();
    System.exit(code);
  }

  private static PrintStream utf8(FileDescriptor descriptor) {
    return new PrintStream(new FileOutputStream(descriptor), false, StandardCharsets.UTF_8);
  }
}
