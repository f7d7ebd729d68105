package annulus.exchange;

import annulus.catalog.Activity;
import annulus.stock.ShopLabel;
import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Labels of lots: a table with one label a row, or the same columns as words. */
public final class LabelSheet {
  /** All columns. */
  public static final List<String> COLUMNS =
      List.of(
          "class",
          "name",
          "like",
          "gap_basis",
          "largest_gap_um",
          "smallest_gap_um",
          "fixture_minutes",
          "full_hours",
          "at_c",
          "surface",
          "at_gap_um",
          "strength_mpa",
          "service_low_c",
          "service_high_c",
          "least_cure_c",
          "open_months",
          "shelf_months");

  /** Columns that may be left out. */
  public static final Set<String> OPTIONAL = Set.of("smallest_gap_um", "shelf_months");

  private static final Set<String> TEXTS = Set.of("class", "name", "like", "gap_basis", "surface");

  private static final Map<String, String> QUESTIONS = questions();

  private LabelSheet() {}

  private static Map<String, String> questions() {
    Map<String, String> q = new LinkedHashMap<>();
    q.put("class", "An id for it, small letters and dashes, such as shop-blend");
    q.put("name", "What the shop calls it");
    q.put("like", "Which class is it most like (such as medium-lasting)");
    q.put("gap_basis", "Does the label count gaps per side (radial) or across (diametral)");
    q.put("largest_gap_um", "Largest gap, µm on that basis");
    q.put("smallest_gap_um", "Smallest gap, µm on that basis (empty if it does not say)");
    q.put("fixture_minutes", "Minutes to fixture");
    q.put("full_hours", "Hours to full cure");
    q.put("at_c", "At which temperature, °C");
    q.put("surface", "On which faces: active (steel, brass) or slow (stainless, aluminium)");
    q.put("at_gap_um", "At which gap, µm on that basis");
    q.put("strength_mpa", "Shear strength on steel pin and collar, MPa (N/mm²)");
    q.put("service_low_c", "Lowest service temperature, °C");
    q.put("service_high_c", "Highest service temperature, °C");
    q.put("least_cure_c", "Least temperature it cures at, °C");
    q.put("open_months", "Months it keeps once opened");
    q.put("shelf_months", "Months it keeps unopened (empty if it does not say)");
    return q;
  }

  /** What is asked for a column, in words. */
  public static String question(String column) {
    return QUESTIONS.get(column);
  }

  /**
   * A label and where it stands.
   *
   * @param file file name
   * @param line its line
   * @param label the label
   */
  public record Placed(String file, int line, ShopLabel label) {}

  /**
   * Reads a table of labels.
   *
   * @throws InputRefused with every problem found
   * @throws IOException when it can't be read
   */
  public static List<Placed> read(String file, Reader in) throws IOException {
    SheetTable table = SheetTable.read(file, in, COLUMNS, needed());
    Problems problems = new Problems();
    List<Placed> labels = new ArrayList<>();
    for (SheetTable.Row row : table.rows()) {
      if (!row.isBlank()) {
        Node.Obj object = table.object(row, numbers());
        label(object, problems).ifPresent(l -> labels.add(new Placed(file, row.line(), l)));
      }
    }
    problems.throwIfAny();
    return labels;
  }

  /**
   * Reads one label from words.
   *
   * @param words column name to value, with the position of the word
   * @throws InputRefused with every problem found
   */
  public static ShopLabel words(Map<String, CommandWords.Word> words) {
    Problems problems = new Problems();
    Map<String, Node> members = new LinkedHashMap<>();
    words.forEach((name, word) -> members.put(name, node(name, word)));
    Node.Place place = new Node.Place("command line", 0, 0);
    Optional<ShopLabel> label = label(new Node.Obj(place, members), problems);
    problems.throwIfAny();
    return label.orElseThrow();
  }

  private static Node node(String column, CommandWords.Word word) {
    Node.Place place = new Node.Place("command line", 0, word.position());
    boolean number =
        !TEXTS.contains(column) && word.value().strip().matches("[+-]?[0-9]{1,9}(\\.[0-9]{1,9})?");
    return number ? new Node.Num(place, word.value().strip()) : new Node.Text(place, word.value());
  }

  private static Set<String> needed() {
    return Set.copyOf(COLUMNS.stream().filter(c -> !OPTIONAL.contains(c)).toList());
  }

  private static Set<String> numbers() {
    return Set.copyOf(COLUMNS.stream().filter(c -> !TEXTS.contains(c)).toList());
  }

  private static Optional<ShopLabel> label(Node.Obj object, Problems problems) {
    Fields f = new Fields(object, problems, "");
    String id = f.requiredText("class");
    String name = f.requiredText("name");
    String like = f.requiredText("like");
    ShopLabel.Basis basis = basis(f, problems);
    double largest = f.requiredNumber("largest_gap_um", -5000, 5000, "µm");
    OptionalDouble smallest = f.number("smallest_gap_um", -5000, 5000, "µm");
    double fixture = f.requiredNumber("fixture_minutes", 0, 100_000, "min");
    double full = f.requiredNumber("full_hours", 0, 10_000, "h");
    double at = f.requiredNumber("at_c", -50, 200, "°C");
    Activity.Level surface = f.requiredChoice("surface", Activity.Level.values());
    double atGap = f.requiredNumber("at_gap_um", 0, 5000, "µm");
    double strength = f.requiredNumber("strength_mpa", 0, 100_000, "MPa");
    double low = f.requiredNumber("service_low_c", -300, 1000, "°C");
    double high = f.requiredNumber("service_high_c", -300, 1000, "°C");
    double least = f.requiredNumber("least_cure_c", -300, 1000, "°C");
    double open = f.requiredNumber("open_months", 0, 1000, "months");
    OptionalDouble shelf = f.number("shelf_months", 0, 1000, "months");
    f.done();
    if (!problems.none()) {
      return Optional.empty();
    }
    return Values.build(
        f,
        problems,
        () ->
            new ShopLabel(
                id, name, like, basis, largest, smallest, fixture, full, at, surface, atGap,
                strength, low, high, least, open, shelf));
  }

  /** The classic trap: a gap without its basis is refused with its own words. */
  private static ShopLabel.Basis basis(Fields f, Problems problems) {
    if (!f.has("gap_basis")) {
      problems.add(
          f.place(),
          "gap_basis",
          "is missing: does the label count the gap per side or across the diameter?",
          "radial (per side) or diametral (across the diameter)");
      return ShopLabel.Basis.RADIAL;
    }
    return f.choice("gap_basis", ShopLabel.Basis.values()).orElse(ShopLabel.Basis.RADIAL);
  }
}
