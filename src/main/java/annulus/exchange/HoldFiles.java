package annulus.exchange;

import annulus.hold.DutyCase;
import annulus.hold.FactorCurve;
import annulus.hold.HoldTables;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.Reader;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Reads {@code hold-factors.csv} and {@code duty-cases.csv}. */
public final class HoldFiles {
  private static final List<String> FACTOR_COLUMNS =
      List.of("factor", "key", "at", "unit", "low", "likely", "high", "source", "confidence");
  private static final List<String> FACTOR_KEY = List.of("factor", "key", "at");
  private static final List<String> DUTY_COLUMNS =
      List.of(
          "duty",
          "name",
          "axial_low",
          "axial_likely",
          "axial_high",
          "torque_low",
          "torque_likely",
          "torque_high",
          "dynamic",
          "could_hurt",
          "source",
          "confidence");
  private static final Map<String, String> UNITS =
      Map.of(
          "gap", "um",
          "engagement", "1",
          "surface", "1",
          "dynamic", "1",
          "hybrid", "MPa",
          "volume", "um");

  private HoldFiles() {}

  private record Row(String factor, String key, double at, HoldTables.Named named) {}

  /**
   * Reads the factors.
   *
   * @throws InputRefused with file, line, cell and what is allowed, or the missing factor
   */
  public static HoldTables factors(String file, Reader reader) {
    return factors(List.of(new LaidRows.Text(file, reader)));
  }

  static HoldTables factors(List<LaidRows.Text> layers) {
    List<Row> rows = PlacedRows.read(layers, FACTOR_COLUMNS, FACTOR_KEY, HoldFiles::row);
    return PlacedRows.together(LaidRows.fileOf(layers), () -> tables(rows));
  }

  private static HoldTables tables(List<Row> rows) {
    return new HoldTables(
        curve(rows, "gap"),
        curve(rows, "engagement"),
        named(rows, "surface"),
        named(rows, "dynamic"),
        one(rows, "hybrid", "pressure-max"),
        one(rows, "hybrid", "shear-min"),
        one(rows, "volume", "wetting-film"));
  }

  /**
   * Reads the duty cases; each must name a knock-down of the tables.
   *
   * @throws InputRefused with file, line, cell and what is allowed
   */
  public static List<DutyCase> duties(String file, Reader reader, HoldTables tables) {
    return duties(List.of(new LaidRows.Text(file, reader)), tables);
  }

  static List<DutyCase> duties(List<LaidRows.Text> layers, HoldTables tables) {
    Set<String> seen = new HashSet<>();
    return List.copyOf(
        PlacedRows.read(layers, DUTY_COLUMNS, List.of("duty"), cells -> duty(cells, tables, seen)));
  }

  private static Row row(PlacedRows.Cells cells) {
    String factor = cells.text("factor");
    String wanted = UNITS.get(factor);
    if (wanted == null) {
      throw new InvalidValue(
          "factor",
          "\"" + factor + "\" is unknown",
          "gap, engagement, surface, dynamic, hybrid, volume");
    }
    if (!wanted.equals(cells.text("unit"))) {
      throw new InvalidValue("unit", "\"" + cells.text("unit") + "\" does not fit", wanted);
    }
    return new Row(
        factor,
        cells.text("key"),
        cells.number("at"),
        new HoldTables.Named(cells.estimate(), cells.provenance()));
  }

  /** A shop's points stand behind those of the program, whatever lies between. */
  private static FactorCurve curve(List<Row> rows, String factor) {
    return new FactorCurve(
        rows.stream()
            .filter(r -> r.factor().equals(factor))
            .sorted(Comparator.comparingDouble(Row::at))
            .map(r -> new FactorCurve.Point(r.at(), r.named().value(), r.named().provenance()))
            .toList());
  }

  private static Map<String, HoldTables.Named> named(List<Row> rows, String factor) {
    Map<String, HoldTables.Named> found = new LinkedHashMap<>();
    for (Row row : rows) {
      if (row.factor().equals(factor) && found.put(row.key(), row.named()) != null) {
        throw new InvalidValue(factor, row.key() + " is given twice", "once");
      }
    }
    return found;
  }

  private static HoldTables.Named one(List<Row> rows, String factor, String key) {
    HoldTables.Named named = named(rows, factor).get(key);
    if (named == null) {
      throw new InvalidValue(factor, key + " is missing", "one row " + key);
    }
    return named;
  }

  private static DutyCase duty(PlacedRows.Cells cells, HoldTables tables, Set<String> seen) {
    String id = cells.text("duty");
    if (!seen.add(id)) {
      throw new InvalidValue("duty", "\"" + id + "\" is given twice", "each duty once");
    }
    tables.dynamicFactor(cells.text("dynamic"));
    return new DutyCase(
        id,
        cells.text("name"),
        estimate(cells, "axial"),
        estimate(cells, "torque"),
        cells.text("dynamic"),
        yes(cells),
        cells.provenance());
  }

  private static Estimate estimate(PlacedRows.Cells cells, String name) {
    return new Estimate(
        cells.number(name + "_low"), cells.number(name + "_likely"), cells.number(name + "_high"));
  }

  private static boolean yes(PlacedRows.Cells cells) {
    String text = cells.text("could_hurt");
    if (!text.equals("yes") && !text.equals("no")) {
      throw new InvalidValue("could_hurt", "\"" + text + "\" is unknown", "yes, no");
    }
    return text.equals("yes");
  }
}
