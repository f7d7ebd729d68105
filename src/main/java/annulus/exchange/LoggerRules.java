package annulus.exchange;

import annulus.catalog.NamedNumber;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The limits for reading a logger's file, by the ids of {@code data/logger-rules.csv}.
 *
 * @param numbers the rows
 */
public record LoggerRules(Map<String, NamedNumber> numbers) {
  private static final String TABLE = "logger-rules.csv";
  private static final List<String> HEADER =
      List.of("id", "value", "unit", "meaning", "source", "confidence");
  private static final List<String> NEEDED =
      List.of(
          "same-reading",
          "gap-least-s",
          "gap-intervals",
          "gap-longest-s",
          "coldest-c",
          "warmest-c",
          "power-on-c",
          "power-on-jump-k",
          "assumed-celsius-low-c",
          "assumed-celsius-high-c",
          "earliest-year",
          "latest-year",
          "listed-most",
          "newest-first-rows-most",
          "shared-readings-most",
          "backward-most-s",
          "ahead-most-s",
          "together-share",
          "together-most-s",
          "together-differ-k",
          "together-differ-least",
          "logger-plus-minus-c");

  /**
   * @throws InvalidValue when a row is missing or out of range
   */
  public LoggerRules {
    numbers = Map.copyOf(numbers);
    for (String id : NEEDED) {
      if (!numbers.containsKey(id)) {
        throw new InvalidValue(id, "is missing", "a row with this id");
      }
    }
    Check.within("coldest-c", numbers.get("coldest-c").value(), -80, 0, "°C");
    Check.within("warmest-c", numbers.get("warmest-c").value(), 40, 300, "°C");
    Check.positive("gap-least-s", numbers.get("gap-least-s").value(), "s");
    Check.within("listed-most", numbers.get("listed-most").value(), 0, 10_000, "");
    Check.within(
        "newest-first-rows-most",
        numbers.get("newest-first-rows-most").value(),
        2,
        50_000_000,
        "rows");
  }

  /**
   * Reads the rules, a shop's rows over the program's.
   *
   * @throws InputRefused when a row is wrong
   * @throws IOException when a file can't be read
   */
  public static LoggerRules read(DataFiles files) throws IOException {
    return BuiltTables.orRead(files, LoggerRules.class, LoggerRules::readFiles);
  }

  static LoggerRules readFiles(DataFiles files) throws IOException {
    Problems problems = new Problems();
    Map<String, NamedNumber> numbers = new LinkedHashMap<>();
    Map<String, Node.Place> places = new HashMap<>();
    NumberLimits limits = NumberLimits.of(files, TABLE);
    for (DataFiles.Layer layer : files.layers(TABLE)) {
      for (Node.Obj row : CsvTable.rows(layer.name(), layer.reader(), HEADER)) {
        Fields f = new Fields(row, problems, "");
        String id = f.requiredText("id");
        double value = f.requiredNumber("value", -1e9, 1e9, "");
        String unit = f.text("unit").orElse("");
        String meaning = f.requiredText("meaning");
        Values.build(
                f, problems, () -> new NamedNumber(id, value, unit, meaning, Values.provenance(f)))
            .ifPresent(
                number -> {
                  NumberRows.checkLimits(f, problems, number, limits);
                  numbers.put(id, number);
                });
        places.put(id, f.placeOf("value"));
      }
    }
    problems.throwIfAny();
    try {
      return new LoggerRules(numbers);
    } catch (InvalidValue e) {
      Node.Place place = places.getOrDefault(e.field(), new Node.Place("data/" + TABLE, 0, 0));
      throw new InputRefused(List.of(place.problem(e.field(), e.problem(), e.allowed())));
    }
  }

  /** Doubt in a logger's temperatures where it says none, half-width, °C. */
  public double plusMinusC() {
    return value("logger-plus-minus-c");
  }

  double value(String id) {
    return numbers.get(id).value();
  }

  int count(String id) {
    return (int) numbers.get(id).value();
  }

  /** Readings, in the unit of the file or in °C, that stand for a fault. */
  List<Double> faultValues() {
    List<Double> values = new ArrayList<>();
    for (NamedNumber number : numbers.values()) {
      if (number.id().startsWith("fault-value")) {
        values.add(number.value());
      }
    }
    return values;
  }

  /** From how many seconds apart two rows are a gap, at a usual interval, s. */
  double gapLimitSeconds(double intervalSeconds) {
    double usual = Math.max(value("gap-least-s"), value("gap-intervals") * intervalSeconds);
    return Math.min(value("gap-longest-s"), usual);
  }

  /** How far apart two rows are one look at several probes, at a long interval of the file, s. */
  double togetherSeconds(double longIntervalSeconds) {
    return Math.min(value("together-most-s"), value("together-share") * longIntervalSeconds);
  }
}
