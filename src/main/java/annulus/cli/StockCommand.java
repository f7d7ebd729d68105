package annulus.cli;

import annulus.exchange.Nearest;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.util.LinkedHashMap;
import java.util.Map;

/** {@code stock}: the cabinet, its ledger, its labels. */
final class StockCommand {
  private final Map<String, Cli.Command> commands = new LinkedHashMap<>();

  StockCommand(Surround surround, PrintStream out, PrintStream err) {
    this(surround, System.in, out, err);
  }

  StockCommand(Surround surround, InputStream in, PrintStream out, PrintStream err) {
    commands.put("check", args -> new StockCheckCommand(surround, out, err).run(args));
    commands.put("plan", args -> new StockPlanCommand(surround, out, err).run(args));
    commands.put("cover", args -> new StockCoverCommand(surround, out, err).run(args));
    StockMoveCommand move = new StockMoveCommand(surround, out, err);
    for (String name : new String[] {"receive", "use", "discard", "correct"}) {
      commands.put(name, move::run);
    }
    StockHeldCommand held = new StockHeldCommand(surround, out, err);
    commands.put("hold-back", held::holdBack);
    commands.put("clear", held::clear);
    commands.put("take-back", args -> new StockTakeBackCommand(surround, out, err).run(args));
    commands.put("import", args -> new StockLedgerCommand(surround, out, err).merge(args));
    commands.put("recall", args -> new StockLedgerCommand(surround, out, err).recall(args));
    commands.put("export", args -> new StockLedgerCommand(surround, out, err).export(args));
    commands.put("label", args -> new StockLabelCommand(surround, in, out, err).run(args));
    commands.put("tag", args -> new StockTagCommand(surround, out, err).run(args));
  }

  int run(String[] args) throws IOException {
    String name = args.length > 1 ? args[1] : "";
    Cli.Command command = commands.get(name);
    if (command == null) {
      throw Words.refused(
          2,
          "stock",
          name.isEmpty() ? "needs a second word" : "\"" + name + "\" is unknown",
          Nearest.allowed(name, commands.keySet()));
    }
    return command.run(args);
  }
}
