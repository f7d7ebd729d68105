package annulus.cli;

import annulus.exchange.CommandWords.Word;
import java.io.PrintStream;
import java.util.List;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.spi.ToolProvider;

/**
 * {@code serve}: the board. It is looked up by its name, so that the command line knows nothing of
 * the server and other commands load nothing of it.
 */
final class ServeCommand {
  private static final String NAME = "annulus-serve";
  private static final Set<String> OPTIONS =
      Set.of(
          "--port",
          "--listen",
          "--database",
          "--shop",
          "--stock",
          "--passcode-file",
          "--address",
          "--data");

  private final PrintStream out;
  private final PrintStream err;

  ServeCommand(PrintStream out, PrintStream err) {
    this.out = out;
    this.err = err;
  }

  int run(String[] args) {
    Words words = new Words(args, OPTIONS, Set.of());
    if (!words.rest().isEmpty()) {
      throw Words.refused(1, words.rest().get(0), "is one word too many", "options (see help)");
    }
    for (Word read : words.among(List.of("--shop", "--stock", "--passcode-file"))) {
      InputFile.of(read.value());
    }
    Optional<ToolProvider> server =
        ServiceLoader.load(ToolProvider.class).stream()
            .filter(p -> p.type().getName().startsWith("annulus."))
            .map(ServiceLoader.Provider::get)
            .filter(p -> p.name().equals(NAME))
            .findFirst();
    if (server.isEmpty()) {
      throw Words.refused(
          0, "serve", "the server is not part of this program", "the whole annulus.jar");
    }
    return server.get().run(out, err, args);
  }
}
