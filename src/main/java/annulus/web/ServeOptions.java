package annulus.web;

import annulus.quantity.InvalidValue;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How the board is served.
 *
 * @param listen address to listen on
 * @param port 0 for any free one
 * @param database JDBC URL
 * @param data folder with the shop's own tables
 * @param shop file with the shop's hours and places
 * @param stock sheet whose lots are taken in at the start
 * @param passcode what other machines must give; needed to listen beyond this machine
 * @param address how other machines reach the board, for the code on the card
 */
record ServeOptions(
    InetAddress listen,
    int port,
    String database,
    Optional<Path> data,
    Optional<Path> shop,
    Optional<Path> stock,
    Optional<String> passcode,
    Optional<String> address) {
  private static final int SHORTEST_PASSCODE = 8;

  ServeOptions {
    if (passcode.isPresent() && passcode.get().length() < SHORTEST_PASSCODE) {
      throw new InvalidValue(
          "passcode", "is too short", "at least " + SHORTEST_PASSCODE + " characters");
    }
    if (!listen.isLoopbackAddress() && passcode.isEmpty()) {
      throw new InvalidValue(
          "--listen",
          listen.getHostAddress() + " is reached from other machines, and there is no passcode",
          "--passcode-file FILE beside it, or 127.0.0.1");
    }
  }

  /** From words that the command line has checked already: names and values by turns. */
  static ServeOptions of(String[] args, PasscodeFile passcodes) {
    Map<String, String> said = new LinkedHashMap<>();
    for (int i = 1; i < args.length; i++) {
      int equals = args[i].indexOf('=');
      if (equals > 0) {
        said.put(args[i].substring(0, equals), args[i].substring(equals + 1));
      } else if (i + 1 < args.length) {
        said.put(args[i], args[++i]);
      }
    }
    return new ServeOptions(
        address(said.getOrDefault("--listen", "127.0.0.1")),
        port(said.getOrDefault("--port", "7407")),
        said.getOrDefault("--database", "jdbc:sqlite:annulus.db"),
        Optional.ofNullable(said.get("--data")).map(Path::of),
        Optional.ofNullable(said.get("--shop")).map(Path::of),
        Optional.ofNullable(said.get("--stock")).map(Path::of),
        Optional.ofNullable(said.get("--passcode-file")).map(f -> passcodes.read(Path.of(f))),
        Optional.ofNullable(said.get("--address")));
  }

  /** Reads a passcode, so that it stands on no command line. */
  @FunctionalInterface
  interface PasscodeFile {
    String read(Path file);
  }

  private static InetAddress address(String text) {
    try {
      return InetAddress.getByName(text);
    } catch (UnknownHostException e) {
      throw new InvalidValue("--listen", text + " is no address", "such as 127.0.0.1");
    }
  }

  private static int port(String text) {
    if (!text.matches("[0-9]{1,5}") || Integer.parseInt(text) > 65_535) {
      throw new InvalidValue("--port", text + " is no port", "0 to 65535");
    }
    return Integer.parseInt(text);
  }
}
