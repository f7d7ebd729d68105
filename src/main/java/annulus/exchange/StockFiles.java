package annulus.exchange;

import annulus.catalog.NamedNumber;
import annulus.catalog.Policy;
import annulus.quantity.Interval;
import annulus.stock.CoverAxes;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Reads the data tables of the stock; a shop's rows lie over those of the program. */
public final class StockFiles {
  private StockFiles() {}

  /**
   * The numbers that the cabinet goes by.
   *
   * @throws InputRefused with every problem found
   * @throws IOException when a table can't be read
   */
  public static Policy policy(DataFiles files) throws IOException {
    Problems problems = new Problems();
    Map<String, NamedNumber> numbers = new LinkedHashMap<>();
    NumberLimits limits = NumberLimits.of(files, "stock-policy.csv");
    for (DataFiles.Layer layer : files.layers("stock-policy.csv")) {
      Map<String, NamedNumber> own = new LinkedHashMap<>();
      for (Node.Obj row : rows(layer, NumberRows.HEADER)) {
        Fields f = new Fields(row, problems, "");
        NumberRows.number(f, problems, numbers, limits).ifPresent(n -> put(own, n, f, problems));
        f.done();
      }
      numbers.putAll(own);
    }
    problems.throwIfAny();
    return new Policy(numbers);
  }

  private static void put(
      Map<String, NamedNumber> own, NamedNumber number, Fields f, Problems problems) {
    if (own.putIfAbsent(number.id(), number) != null) {
      problems.add(f.placeOf("id"), "id", number.id() + " stands twice", "each once");
    }
  }

  /**
   * The joints of the coverage picture.
   *
   * @throws InputRefused with every problem found
   * @throws IOException when a table can't be read
   */
  public static CoverAxes cover(DataFiles files) throws IOException {
    Problems problems = new Problems();
    List<CoverAxes.Gaps> gaps = new ArrayList<>();
    List<CoverAxes.Surfaces> surfaces = new ArrayList<>();
    List<CoverAxes.Service> services = new ArrayList<>();
    List<String> header =
        List.of("axis", "id", "name", "low", "high", "bore", "part", "source", "confidence");
    for (Node.Obj row :
        LaidRows.read(LaidRows.layers(files, "stock-cover.csv"), header, List.of("axis", "id"))) {
      Fields f = new Fields(row, problems, "");
      header.forEach(f::allow);
      switch (f.requiredChoice("axis", Axis.values())) {
        case GAP -> Values.build(f, problems, () -> gaps(f)).ifPresent(gaps::add);
        case SURFACES -> Values.build(f, problems, () -> surfaces(f)).ifPresent(surfaces::add);
        case SERVICE -> Values.build(f, problems, () -> service(f)).ifPresent(services::add);
      }
    }
    problems.throwIfAny();
    return new CoverAxes(gaps, surfaces, services);
  }

  private enum Axis {
    GAP,
    SURFACES,
    SERVICE
  }

  private static CoverAxes.Gaps gaps(Fields f) {
    Interval um =
        new Interval(
            f.requiredNumber("low", -100, 1000, "µm"), f.requiredNumber("high", -100, 1000, "µm"));
    return new CoverAxes.Gaps(
        f.requiredText("id"), f.requiredText("name"), um, Values.provenance(f));
  }

  private static CoverAxes.Surfaces surfaces(Fields f) {
    return new CoverAxes.Surfaces(
        f.requiredText("id"),
        f.requiredText("name"),
        f.requiredText("bore"),
        f.requiredText("part"),
        Values.provenance(f));
  }

  private static CoverAxes.Service service(Fields f) {
    return new CoverAxes.Service(
        f.requiredText("id"),
        f.requiredText("name"),
        f.requiredNumber("high", -50, 350, "°C"),
        Values.provenance(f));
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
