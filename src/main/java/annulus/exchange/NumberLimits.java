package annulus.exchange;

import annulus.quantity.Interval;
import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How far a shop may move the numbers of one table, from the program's own {@code
 * number-limits.csv}: a slip of the pen in a shop's file must not let a joint go early.
 */
final class NumberLimits {
  private static final String TABLE = "number-limits.csv";
  private static final List<String> HEADER =
      List.of("table", "id", "least", "most", "source", "confidence");
  private static final double FAR = 1e9;

  private final Map<String, Interval> limits;

  private NumberLimits(Map<String, Interval> limits) {
    this.limits = limits;
  }

  /**
   * The limits of a table's numbers.
   *
   * @param table such as {@code policy.csv}
   * @throws IOException when they can't be read
   */
  static NumberLimits of(DataFiles files, String table) throws IOException {
    Problems problems = new Problems();
    Map<String, Interval> limits = new HashMap<>();
    DataFiles.Layer layer = files.own(TABLE);
    for (Node.Obj row : CsvTable.rows(layer.name(), layer.reader(), HEADER)) {
      Fields f = new Fields(row, problems, "");
      if (f.requiredText("table").equals(table)) {
        limits.put(
            f.requiredText("id"),
            new Interval(
                f.requiredNumber("least", -FAR, FAR, ""), f.requiredNumber("most", -FAR, FAR, "")));
      }
    }
    problems.throwIfAny();
    return new NumberLimits(limits);
  }

  Optional<Interval> of(String id) {
    return Optional.ofNullable(limits.get(id));
  }
}
