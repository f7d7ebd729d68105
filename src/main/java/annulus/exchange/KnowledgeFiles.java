package annulus.exchange;

import annulus.advice.Knowledge;
import annulus.catalog.Catalog;
import annulus.hold.HoldTables;
import annulus.quantity.InvalidValue;
import annulus.select.Rule;
import annulus.select.RuleBook;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/** Reads everything an answer is judged by. */
public final class KnowledgeFiles {
  private KnowledgeFiles() {}

  /**
   * Reads all tables.
   *
   * @throws InputRefused with the problems of the first table that has any
   * @throws IOException when a file can't be read
   */
  public static Knowledge read(DataFiles files) throws IOException {
    return BuiltTables.orRead(files, Knowledge.class, KnowledgeFiles::readFiles);
  }

  /** As {@link #read}, always from the files themselves. */
  static Knowledge readFiles(DataFiles files) throws IOException {
    HoldTables hold = table(files, "hold-factors.csv", HoldFiles::factors);
    var duties = table(files, "duty-cases.csv", layers -> HoldFiles.duties(layers, hold));
    var friction = table(files, "friction.csv", PressFiles::friction);
    var press = table(files, "press-factors.csv", PressFiles::factors);
    var bearings = table(files, "bearing-normal.csv", Iso286Files::bearings);
    RuleBook rules = RuleFile.read(files);
    Catalog catalog = CatalogFiles.read(files);
    requireRanksOfCautions(catalog, rules);
    return new Knowledge(
        catalog,
        rules,
        hold,
        friction,
        press,
        bearings,
        Knowledge.byId(duties),
        WarmUpFile.read(files));
  }

  /** A rank under a misspelt id would leave its caution unranked, and nobody would be told. */
  private static void requireRanksOfCautions(Catalog catalog, RuleBook rules) {
    Set<String> known = new LinkedHashSet<>(catalog.cautions().keySet());
    for (Rule rule : rules.rules()) {
      if (rule.verdict() == Rule.Verdict.CAUTION) {
        known.add(rule.id());
      }
    }
    List<PlacedProblem> problems = new ArrayList<>();
    for (String id : catalog.ranks().keySet()) {
      if (!known.contains(id)) {
        problems.add(
            new PlacedProblem(
                "caution-ranks.csv",
                0,
                0,
                "id",
                Fields.quoted(id) + " is no caution",
                Nearest.allowed(id, List.copyOf(known))));
      }
    }
    if (!problems.isEmpty()) {
      throw new InputRefused(problems);
    }
  }

  private static <T> T table(DataFiles files, String name, Function<List<LaidRows.Text>, T> read)
      throws IOException {
    List<LaidRows.Text> layers = LaidRows.layers(files, name);
    String last = LaidRows.fileOf(layers);
    try {
      return read.apply(layers);
    } catch (InvalidValue e) {
      String place = e.field().startsWith(last) ? e.field() : last + ": " + e.field();
      throw new InputRefused(List.of(new PlacedProblem(place, 0, 0, "", e.problem(), e.allowed())));
    } catch (UncheckedIOException e) {
      throw new InputRefused(
          List.of(
              new PlacedProblem(last, 0, 0, "", "is not readable CSV", "CSV (RFC 4180), UTF-8")));
    }
  }
}
