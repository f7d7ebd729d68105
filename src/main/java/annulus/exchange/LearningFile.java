package annulus.exchange;

import annulus.advice.BenchLearning;
import annulus.advice.LearningRules;
import annulus.advice.Observation;
import annulus.advice.Observation.Joint;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.NamedNumber;
import annulus.catalog.Primer;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.time.Duration;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Reads what a shop saw of its joints, and the policy of learning from it. */
public final class LearningFile {
  private static final String RULES = "learning.csv";

  /** Columns of a file of observations. */
  static final List<String> HEADER =
      List.of(
          "joint",
          "date",
          "class",
          "what",
          "minutes",
          "fixed",
          "force_n",
          "diameter_mm",
          "length_mm",
          "temperature_c",
          "bore_activity",
          "part_activity",
          "radial_gap_um",
          "primer");

  private enum What {
    FIXED,
    PULL
  }

  private enum Answer {
    YES,
    NO
  }

  private final Catalog catalog;
  private final BenchLearning learning;
  private final Problems problems = new Problems();
  private final Map<String, Joint> joints = new LinkedHashMap<>();
  private final Map<String, Double> loose = new HashMap<>();
  private final Map<String, Double> fixed = new HashMap<>();

  private LearningFile(Catalog catalog, LearningRules rules) {
    this.catalog = catalog;
    this.learning = new BenchLearning(catalog, rules);
  }

  /**
   * The policy, a shop's rows over the program's.
   *
   * @throws InputRefused when a row is wrong
   * @throws IOException when a file can't be read
   */
  public static LearningRules rules(DataFiles files) throws IOException {
    Problems problems = new Problems();
    Map<String, NamedNumber> numbers = new LinkedHashMap<>();
    NumberLimits limits = NumberLimits.of(files, RULES);
    for (DataFiles.Layer layer : files.layers(RULES)) {
      Map<String, NamedNumber> known = Map.copyOf(numbers);
      for (Node.Obj row : CsvTable.rows(layer.name(), layer.reader(), NumberRows.HEADER)) {
        Fields f = new Fields(row, problems, "");
        NumberRows.number(f, problems, known, limits).ifPresent(n -> numbers.put(n.id(), n));
        f.done();
      }
    }
    problems.throwIfAny();
    try {
      return new LearningRules(numbers);
    } catch (InvalidValue e) {
      throw new InputRefused(List.of(PlacedProblem.of("data/" + RULES, 0, e)));
    }
  }

  /**
   * Observations in file order.
   *
   * @param file its name, for messages
   * @param reader the text
   * @param catalog classes and primers they may name
   * @param rules what is too far off to be learned from
   * @throws InputRefused with every problem found
   * @throws IOException when the file can't be read
   */
  public static List<Observation> observations(
      String file, Reader reader, Catalog catalog, LearningRules rules) throws IOException {
    LearningFile learning = new LearningFile(catalog, rules);
    List<Observation> seen = new ArrayList<>();
    for (Node.Obj row : CsvTable.rows(file, withCommas(file, reader), HEADER)) {
      learning.row(new Fields(row, learning.problems, "")).ifPresent(seen::add);
    }
    learning.problems.throwIfAny();
    if (seen.isEmpty()) {
      throw new InputRefused(
          List.of(new PlacedProblem(file, 0, 0, "", "has no rows", "one observation per row")));
    }
    return seen;
  }

  /**
   * Refuses tables that hold learned classes: what was learned before must not count twice.
   *
   * @param where the tables come from, for the message
   */
  public static void refuseLearned(String where, Catalog catalog) {
    for (CompoundClass compound : catalog.compounds().values()) {
      String source = compound.provenance().source();
      if (source.startsWith("shop: ") && source.contains(" observations")) {
        throw new InputRefused(
            List.of(
                new PlacedProblem(
                    where,
                    0,
                    0,
                    compound.id(),
                    "was learned before; its observations would count twice",
                    "all observations in one file, and tables without learned classes")));
      }
    }
  }

  /** Spreadsheets of half of Europe write semicolons and decimal commas: the same with ours. */
  private static Reader withCommas(String file, Reader reader) throws IOException {
    String whole = WholeText.of(file, reader, "a file of observations");
    List<String> lines = whole.replaceFirst("^\uFEFF", "").lines().toList();
    Optional<String> header = lines.stream().filter(l -> !l.startsWith("#")).findFirst();
    if (header.isEmpty() || !header.get().contains(";")) {
      return new StringReader(String.join("\n", lines));
    }
    StringBuilder text = new StringBuilder();
    for (String line : lines) {
      String kept = line.startsWith("#") ? line : line.replace(',', '.').replace(';', ',');
      text.append(kept).append('\n');
    }
    return new StringReader(text.toString());
  }

  private Optional<Observation> row(Fields f) {
    Optional<Joint> joint = joint(f);
    double minutes = f.requiredNumber("minutes", 0.1, 525_600, "min");
    What what = f.requiredChoice("what", What.values());
    f.allow("fixed");
    List.of("force_n", "diameter_mm", "length_mm").forEach(f::allow);
    Duration after = Duration.ofMillis(Math.round(minutes * 60_000));
    if (joint.isEmpty()) {
      return Optional.empty();
    }
    if (what == What.FIXED) {
      Answer answer = f.requiredChoice("fixed", Answer.values());
      f.done();
      inOrder(f, joint.get().id(), minutes, answer);
      return believed(f, () -> new Observation.Fixed(joint.get(), after, answer == Answer.YES));
    }
    double force = f.requiredNumber("force_n", 1, 1e7, "N");
    double diameter = f.requiredNumber("diameter_mm", 1, 500, "mm");
    double length = f.requiredNumber("length_mm", 1, 500, "mm");
    f.done();
    return believed(f, () -> new Observation.Pull(joint.get(), after, force, diameter, length));
  }

  /** Nothing is asked of a row that has a problem already. */
  private Optional<Observation> believed(Fields f, Supplier<Observation> made) {
    return Values.build(f, problems, made)
        .filter(o -> catalog.compounds().containsKey(o.joint().compoundId()))
        .flatMap(o -> Values.build(f, problems, () -> learning.believed(o)));
  }

  private Optional<Joint> joint(Fields f) {
    String id = f.requiredText("joint");
    LocalDate date = date(f);
    String compound = f.requiredText("class");
    if (!compound.isEmpty() && !catalog.compounds().containsKey(compound)) {
      f.unknown("class", compound, catalog.compounds().keySet());
    }
    double celsius = f.requiredNumber("temperature_c", -20, 60, "°C");
    Activity.Level bore = f.requiredChoice("bore_activity", Activity.Level.values());
    Activity.Level part = f.requiredChoice("part_activity", Activity.Level.values());
    double gap = f.requiredNumber("radial_gap_um", 0, 760, "µm radial");
    Optional<Primer> primer = primer(f);
    Optional<Joint> joint =
        Values.build(
            f, problems, () -> new Joint(id, date, compound, celsius, bore, part, gap, primer));
    joint.ifPresent(j -> same(f, j));
    return joint;
  }

  private void same(Fields f, Joint joint) {
    Joint before = joints.putIfAbsent(joint.id(), joint);
    if (before != null && !before.equals(joint)) {
      problems.add(
          f.placeOf("joint"),
          "joint",
          Fields.quoted(joint.id()) + " stands in another row with other values",
          "the same date, class, temperature, faces, gap and primer in all rows of a joint");
    }
  }

  /** A joint holds from some time on: what was seen fixed is never seen loose later. */
  private void inOrder(Fields f, String id, double minutes, Answer answer) {
    if (answer == Answer.NO) {
      loose.merge(id, minutes, Math::max);
    } else {
      fixed.merge(id, minutes, Math::min);
    }
    Double held = fixed.get(id);
    Double notYet = loose.get(id);
    if (held != null && notYet != null && held <= notYet) {
      problems.add(
          f.placeOf("minutes"),
          "minutes",
          Fields.quoted(id)
              + " was seen fixed after "
              + Numbers.plain(held)
              + " min and not fixed after "
              + Numbers.plain(notYet)
              + " min",
          "not fixed first, then fixed");
    }
  }

  private Optional<Primer> primer(Fields f) {
    Optional<String> id = f.text("primer").filter(p -> !p.equals("none"));
    if (id.isPresent() && !catalog.primers().containsKey(id.get())) {
      List<String> known = new ArrayList<>(catalog.primers().keySet());
      known.add("none");
      f.unknown("primer", id.get(), known);
    }
    return id.map(catalog.primers()::get);
  }

  private LocalDate date(Fields f) {
    String text = f.requiredText("date");
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      if (!text.isEmpty()) {
        problems.add(f.placeOf("date"), "date", Fields.quoted(text) + " is no date", "YYYY-MM-DD");
      }
      return LocalDate.EPOCH;
    }
  }
}
