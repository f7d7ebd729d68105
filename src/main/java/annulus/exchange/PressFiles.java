package annulus.exchange;

import annulus.fit.FrictionTable;
import annulus.fit.PressFactors;
import annulus.quantity.InvalidValue;
import java.io.Reader;
import java.util.List;

/** Reads {@code friction.csv} and {@code press-factors.csv}. */
public final class PressFiles {
  private static final List<String> FRICTION_COLUMNS =
      List.of("pair", "method", "state", "low", "likely", "high", "source", "confidence");
  private static final List<String> FRICTION_KEY = List.of("pair", "method", "state");
  private static final List<String> FACTOR_COLUMNS =
      List.of("factor", "unit", "low", "likely", "high", "source", "confidence");

  private PressFiles() {}

  /**
   * Reads the friction table.
   *
   * @throws InputRefused with file, line, cell and what is allowed
   */
  public static FrictionTable friction(String file, Reader reader) {
    return friction(List.of(new LaidRows.Text(file, reader)));
  }

  static FrictionTable friction(List<LaidRows.Text> layers) {
    List<FrictionTable.Row> rows =
        PlacedRows.read(layers, FRICTION_COLUMNS, FRICTION_KEY, PressFiles::frictionRow);
    return PlacedRows.together(LaidRows.fileOf(layers), () -> new FrictionTable(rows));
  }

  /**
   * Reads the factors.
   *
   * @throws InputRefused with file, line, cell and what is allowed, or the missing factor
   */
  public static PressFactors factors(String file, Reader reader) {
    return factors(List.of(new LaidRows.Text(file, reader)));
  }

  static PressFactors factors(List<LaidRows.Text> layers) {
    List<Named> rows =
        PlacedRows.read(layers, FACTOR_COLUMNS, List.of("factor"), PressFiles::factor);
    return PlacedRows.together(
        LaidRows.fileOf(layers),
        () ->
            new PressFactors(
                one(rows, "smoothing-loss", "1"),
                one(rows, "slip-clearance", "um/mm"),
                one(rows, "bearing-clearance-loss", "1")));
  }

  private record Named(String factor, String unit, PressFactors.Sourced sourced) {}

  private static FrictionTable.Row frictionRow(PlacedRows.Cells cells) {
    return new FrictionTable.Row(
        cells.word("pair", FrictionTable.Pair.class),
        cells.word("method", FrictionTable.Method.class),
        cells.word("state", FrictionTable.State.class),
        cells.estimate(),
        cells.provenance());
  }

  private static Named factor(PlacedRows.Cells cells) {
    return new Named(
        cells.text("factor"),
        cells.text("unit"),
        new PressFactors.Sourced(cells.estimate(), cells.provenance()));
  }

  private static PressFactors.Sourced one(List<Named> rows, String factor, String unit) {
    List<Named> found =
        rows.stream().filter(r -> r.factor().equals(factor) && r.unit().equals(unit)).toList();
    if (found.size() != 1) {
      throw new InvalidValue(
          "factor",
          factor + " in " + unit + " has " + found.size() + " rows",
          "one row each of smoothing-loss (1), slip-clearance (um/mm), bearing-clearance-loss (1)");
    }
    return found.get(0).sourced();
  }
}
