package annulus.exchange;

import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CautionRank;
import annulus.catalog.CompoundClass;
import annulus.catalog.Consequence;
import annulus.catalog.Finish;
import annulus.catalog.Instrument;
import annulus.catalog.LimitedUse;
import annulus.catalog.Material;
import annulus.catalog.NamedNumber;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.catalog.ReleaseRule;
import annulus.catalog.Severity;
import annulus.catalog.Stage;
import annulus.catalog.StandingCaution;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Reads {@code data/} into a {@link Catalog}; a wrong row points at its file, line and cell. */
public final class CatalogFiles {
  private final DataFiles files;
  private final Problems problems = new Problems();

  private CatalogFiles(DataFiles files) {
    this.files = files;
  }

  /** The two words of a flag in a table. */
  private enum YesNo {
    TRUE,
    FALSE
  }

  /**
   * Reads everything.
   *
   * @throws InputRefused with all problems of all tables
   * @throws IOException when a file can't be read
   */
  public static Catalog read(DataFiles files) throws IOException {
    return new CatalogFiles(files).read();
  }

  private Catalog read() throws IOException {
    Map<String, Material> materials =
        csv("materials.csv", MaterialRows.HEADER, "id", this::material);
    Map<String, Finish> finishes =
        csv("finishes.csv", MaterialRows.FINISH_HEADER, "id", this::finish);
    Map<String, Activity> activities =
        csv("activities.csv", MaterialRows.ACTIVITY_HEADER, "level", this::activity);
    Map<String, Instrument> instruments = instruments();
    Map<String, NamedNumber> numbers = numbers("policy.csv");
    numbers.putAll(numbers("form-limits.csv"));
    Map<String, ReleaseRule> release =
        csv("consequences.csv", MaterialRows.RELEASE_HEADER, "consequence", this::release);
    Map<String, StandingCaution> cautions =
        csv("cautions.csv", MaterialRows.CAUTION_HEADER, "id", this::caution);
    Map<String, CautionRank> ranks =
        csv("caution-ranks.csv", MaterialRows.RANK_HEADER, "id", this::rank);
    Map<String, LimitedUse> limits =
        csv("limited-use.csv", MaterialRows.LIMIT_HEADER, "until", this::limitedUse);
    Map<String, CompoundClass> compounds = json("compounds.json", "classes", this::compound);
    Map<String, Primer> primers = json("primers.json", "primers", this::primer);
    problems.throwIfAny();
    try {
      return new Catalog(
          files.version(),
          materials,
          finishes,
          Catalog.index(List.copyOf(activities.values()), Activity::level),
          compounds,
          primers,
          instruments,
          Catalog.index(List.copyOf(release.values()), ReleaseRule::consequence),
          cautions,
          ranks,
          limits.get("full"),
          new Policy(numbers));
    } catch (InvalidValue e) {
      throw new InputRefused(List.of(PlacedProblem.of("data", 0, e)));
    }
  }

  private <T> Map<String, T> csv(
      String table, List<String> header, String key, Function<Fields, Optional<T>> read)
      throws IOException {
    Map<String, T> result = new LinkedHashMap<>();
    for (DataFiles.Layer layer : files.layers(table)) {
      result.putAll(csv(layer, header, key, read));
    }
    return result;
  }

  private <T> Map<String, T> csv(
      DataFiles.Layer layer, List<String> header, String key, Function<Fields, Optional<T>> read)
      throws IOException {
    Map<String, T> own = new LinkedHashMap<>();
    for (Node.Obj row : CsvTable.rows(layer.name(), layer.reader(), header)) {
      Fields fields = new Fields(row, problems, "");
      String id = fields.requiredText(key);
      Optional<T> value = read.apply(fields);
      fields.done();
      if (value.isPresent() && own.put(id, value.get()) != null) {
        problems.add(fields.placeOf(key), key, Fields.quoted(id) + " stands twice", "each once");
      }
    }
    return own;
  }

  private <T> Map<String, T> json(String table, String list, Function<Fields, Optional<T>> read)
      throws IOException {
    Map<String, T> result = new LinkedHashMap<>();
    for (DataFiles.Layer layer : files.layers(table)) {
      Optional<Fields> root = Fields.of(JsonNodes.read(layer.name(), layer.reader()), problems, "");
      if (root.isEmpty()) {
        continue;
      }
      root.get().requiredNumber("format", 1, 1, "");
      List.of("title", "source", "transcribed", "version").forEach(root.get()::allow);
      Map<String, T> own = new LinkedHashMap<>();
      root.get()
          .requiredList(
              list,
              node -> {
                Optional<Fields> fields = Fields.of(node, problems, list);
                fields.ifPresent(f -> put(own, f, read));
                return Optional.empty();
              });
      root.get().done();
      result.putAll(own);
    }
    return result;
  }

  private <T> void put(Map<String, T> own, Fields fields, Function<Fields, Optional<T>> read) {
    String id = fields.requiredText("id");
    Optional<T> value = read.apply(fields);
    fields.done();
    if (value.isPresent() && own.put(id, value.get()) != null) {
      problems.add(fields.placeOf("id"), "id", Fields.quoted(id) + " stands twice", "each once");
    }
  }

  private Map<String, NamedNumber> numbers(String table) throws IOException {
    Map<String, NamedNumber> known = new LinkedHashMap<>();
    NumberLimits limits = NumberLimits.of(files, table);
    for (DataFiles.Layer layer : files.layers(table)) {
      Map<String, NamedNumber> below = Map.copyOf(known);
      known.putAll(
          csv(layer, NumberRows.HEADER, "id", f -> NumberRows.number(f, problems, below, limits)));
    }
    return known;
  }

  private Map<String, Instrument> instruments() throws IOException {
    Map<String, Instrument> result = new LinkedHashMap<>();
    for (DataFiles.Layer layer : files.layers("instruments.csv")) {
      InstrumentRows rows = new InstrumentRows(problems);
      CsvTable.rows(layer.name(), layer.reader(), InstrumentRows.HEADER).forEach(rows::add);
      result.putAll(rows.instruments());
    }
    return result;
  }

  private Optional<Material> material(Fields f) {
    return Values.build(f, problems, () -> MaterialRows.material(f, problems));
  }

  private Optional<Finish> finish(Fields f) {
    return Values.build(f, problems, () -> MaterialRows.finish(f, problems));
  }

  private Optional<Activity> activity(Fields f) {
    return Values.build(
        f,
        problems,
        () ->
            new Activity(
                f.requiredChoice("level", Activity.Level.values()),
                Values.rowEstimate(f, problems, "rate", ""),
                Values.provenance(f)));
  }

  private Optional<ReleaseRule> release(Fields f) {
    return Values.build(
        f,
        problems,
        () ->
            new ReleaseRule(
                f.requiredChoice("consequence", Consequence.values()),
                f.requiredChoice("stage", Stage.values()),
                f.requiredChoice("slow_practice", YesNo.values()) == YesNo.TRUE,
                f.requiredNumber("safety_factor", 1, 20, ""),
                Values.provenance(f)));
  }

  private Optional<StandingCaution> caution(Fields f) {
    return Values.build(
        f,
        problems,
        () ->
            new StandingCaution(
                f.requiredText("id"), f.requiredText("text"), Values.provenance(f)));
  }

  private Optional<CautionRank> rank(Fields f) {
    return Values.build(
        f,
        problems,
        () ->
            new CautionRank(
                f.requiredText("id"),
                f.requiredChoice("severity", Severity.values()),
                f.text("card"),
                Values.provenance(f)));
  }

  private Optional<LimitedUse> limitedUse(Fields f) {
    return Values.build(
        f,
        problems,
        () ->
            new LimitedUse(
                f.requiredChoice("until", Stage.values()),
                f.requiredText("not_allowed"),
                Values.provenance(f)));
  }

  private Optional<CompoundClass> compound(Fields f) {
    return Values.build(f, problems, () -> CompoundRows.compound(f, problems));
  }

  private Optional<Primer> primer(Fields f) {
    return Values.build(
        f,
        problems,
        () ->
            new Primer(
                f.requiredText("id"),
                f.requiredText("name"),
                f.choice("application", Primer.Application.values())
                    .orElse(Primer.Application.AS_LABELLED),
                Values.estimate(f, problems, "rate", ""),
                Values.estimate(f, problems, "strengthFactor", ""),
                Values.estimate(f, problems, "flashOffMinutes", "min"),
                Values.estimate(f, problems, "onPartDays", "days"),
                Values.estimate(f, problems, "workingTimeFactor", ""),
                f.requiredNumber("slowFullHours", 1, 2000, "h"),
                Values.provenance(f)));
  }
}
