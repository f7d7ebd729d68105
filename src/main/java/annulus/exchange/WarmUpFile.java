package annulus.exchange;

import annulus.advice.WarmUpTable;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads {@code warm-up.csv} and {@code warm-up-families.csv}, a shop's rows over the program's. */
public final class WarmUpFile {
  private static final String TABLE = "warm-up.csv";
  private static final String FAMILIES = "warm-up-families.csv";
  private static final List<String> HEADER =
      List.of("quantity", "subject", "low", "likely", "high", "unit", "source", "confidence");
  private static final List<String> FAMILY_HEADER =
      List.of("material", "family", "source", "confidence");

  private WarmUpFile() {}

  private enum Quantity {
    TRANSFER,
    SPECIFIC_HEAT,
    DENSITY,
    WALL
  }

  /**
   * Reads both tables.
   *
   * @throws InputRefused when a row is wrong or missing
   * @throws IOException when a file can't be read
   */
  public static WarmUpTable read(DataFiles files) throws IOException {
    Problems problems = new Problems();
    Map<Quantity, Map<String, Estimate>> rows = new LinkedHashMap<>();
    for (Quantity quantity : Quantity.values()) {
      rows.put(quantity, new LinkedHashMap<>());
    }
    for (DataFiles.Layer layer : files.layers(TABLE)) {
      for (Node.Obj row : rows(layer, HEADER)) {
        Fields f = new Fields(row, problems, "");
        Quantity quantity = f.requiredChoice("quantity", Quantity.values());
        String subject = f.requiredText("subject");
        f.text("unit");
        double low = f.requiredNumber("low", 0, 1e5, "");
        double likely = f.requiredNumber("likely", 0, 1e5, "");
        double high = f.requiredNumber("high", 0, 1e5, "");
        Values.provenance(f);
        f.done();
        Values.build(f, problems, () -> new Estimate(low, likely, high))
            .ifPresent(e -> rows.get(quantity).put(subject, e));
      }
    }
    Map<String, String> families = families(files, problems);
    problems.throwIfAny();
    try {
      return new WarmUpTable(
          rows.get(Quantity.TRANSFER),
          rows.get(Quantity.SPECIFIC_HEAT),
          rows.get(Quantity.DENSITY),
          rows.get(Quantity.WALL),
          families);
    } catch (InvalidValue e) {
      throw new InputRefused(List.of(PlacedProblem.of("data/" + TABLE, 0, e)));
    }
  }

  private static Map<String, String> families(DataFiles files, Problems problems)
      throws IOException {
    Map<String, String> families = new LinkedHashMap<>();
    for (DataFiles.Layer layer : files.layers(FAMILIES)) {
      for (Node.Obj row : rows(layer, FAMILY_HEADER)) {
        Fields f = new Fields(row, problems, "");
        families.put(f.requiredText("material"), f.requiredText("family"));
        Values.provenance(f);
        f.done();
      }
    }
    return families;
  }

  private static List<Node.Obj> rows(DataFiles.Layer layer, List<String> header)
      throws IOException {
    try {
      return CsvTable.rows(layer.name(), layer.reader(), header);
    } catch (CharacterCodingException e) {
      throw new InputRefused(
          List.of(new PlacedProblem(layer.name(), 0, 0, "", "is not UTF-8 text", "UTF-8")));
    }
  }
}
