package annulus.cli;

import annulus.exchange.CommandWords.Word;
import annulus.exchange.InputRefused;
import annulus.exchange.LabelSheet;
import annulus.exchange.PlacedProblem;
import annulus.exchange.ShopClassFile;
import annulus.quantity.InvalidValue;
import annulus.report.LabelReport;
import annulus.stock.ShopClass;
import annulus.stock.ShopLabel;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** {@code stock label}: what a lot's own label says becomes a class of the shop. */
final class StockLabelCommand {
  private final Surround surround;
  private final InputStream in;
  private final PrintStream out;
  private final PrintStream err;

  StockLabelCommand(Surround surround, InputStream in, PrintStream out, PrintStream err) {
    this.surround = surround;
    this.in = in;
    this.out = out;
    this.err = err;
  }

  private static String option(String column) {
    return "--" + column.replace('_', '-');
  }

  int run(String[] args) throws IOException {
    Set<String> withValue = new HashSet<>(Set.of("--from", "--data", "--picture"));
    LabelSheet.COLUMNS.forEach(c -> withValue.add(option(c)));
    Words words = new Words(args, withValue, Set.of());
    Path folder = Path.of(StockTables.needed(words, "--data"));
    Files.createDirectories(folder);
    StockTables tables = StockTables.of(words);
    List<ShopClass> made = made(words, tables);
    Map<ShopClass, Path> pictures = pictures(words, made, folder);
    for (ShopClass change : made) {
      Path table = ShopClassFile.put(folder, change.after(), surround.today());
      out.print(new LabelReport(change).text());
      out.println("  written to " + table + "; use it with --data " + folder);
      if (pictures.containsKey(change)) {
        OutputFile.write(pictures.get(change), new LabelReport(change).svg());
        out.println("  picture written to " + pictures.get(change));
      }
    }
    err.flush();
    return ExitCode.ANSWER;
  }

  /** The picture of each class, if they are asked for; told to be wrong before a table is. */
  private static Map<ShopClass, Path> pictures(Words words, List<ShopClass> made, Path folder)
      throws IOException {
    Map<ShopClass, Path> pictures = new HashMap<>();
    if (words.has("--picture")) {
      String name = words.value("--picture").orElseThrow();
      String base = name.replaceFirst("\\.svg$", "");
      for (ShopClass change : made) {
        Path file = Path.of(made.size() > 1 ? base + "-" + change.after().id() + ".svg" : name);
        OutputFile.check(words, "--picture", file, ".svg", List.of());
        OutputFile.requireApart(
            List.of(Map.entry("--data", ShopClassFile.in(folder)), Map.entry("--picture", file)));
        pictures.put(change, file);
      }
    }
    return pictures;
  }

  /** All labels are judged before the first is written. */
  private List<ShopClass> made(Words words, StockTables tables) throws IOException {
    Map<String, Word> said = said(words);
    if (words.has("--from")) {
      if (!said.isEmpty()) {
        throw Words.refused(0, "--from", "stands beside a label in words", "one of the two");
      }
      return fromFile(words.value("--from").orElseThrow(), tables);
    }
    if (said.isEmpty()) {
      ShopClass asked =
          new LabelQuestions(in, out)
              .ask(answers -> one("typed in", 0, LabelSheet.words(answers), tables));
      return List.of(asked);
    }
    return List.of(one("command line", 0, LabelSheet.words(said), tables));
  }

  private static Map<String, Word> said(Words words) {
    Map<String, Word> said = new LinkedHashMap<>();
    for (String column : LabelSheet.COLUMNS) {
      words.among(List.of(option(column))).forEach(w -> said.put(column, w));
    }
    return said;
  }

  private static List<ShopClass> fromFile(String file, StockTables tables) throws IOException {
    List<LabelSheet.Placed> labels;
    try (Reader reader = InputFile.text(InputFile.of(file))) {
      labels = LabelSheet.read(file, reader);
    }
    List<ShopClass> made = new ArrayList<>();
    List<PlacedProblem> problems = new ArrayList<>();
    Set<String> ids = new HashSet<>();
    for (LabelSheet.Placed placed : labels) {
      try {
        made.add(one(file, placed.line(), placed.label(), tables));
      } catch (InputRefused e) {
        problems.addAll(e.problems());
      }
      if (!ids.add(placed.label().id())) {
        problems.add(
            new PlacedProblem(
                file, placed.line(), 0, "class", placed.label().id() + " stands twice", "once"));
      }
    }
    if (!problems.isEmpty()) {
      throw new InputRefused(problems);
    }
    return made;
  }

  private static ShopClass one(String file, int line, ShopLabel label, StockTables tables) {
    try {
      return ShopClass.of(label, tables.knowledge().catalog(), tables.policy());
    } catch (InvalidValue e) {
      throw new InputRefused(List.of(PlacedProblem.of(file, line, e)));
    }
  }
}
