package annulus.fit.iso286;

import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.List;

/** Refuses tables that answer one question twice. */
final class TableChecks {
  private TableChecks() {}

  static void noGradeTwice(List<GradeRow> rows) {
    for (int i = 0; i < rows.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (rows.get(i).collides(rows.get(j))) {
          throw twice(rows.get(i).grade().name(), rows.get(i).band());
        }
      }
    }
  }

  static void noDeviationTwice(List<DeviationRow> rows) {
    for (int i = 0; i < rows.size(); i++) {
      for (int j = 0; j < i; j++) {
        if (rows.get(i).collides(rows.get(j))) {
          throw twice(rows.get(i).letters(), rows.get(i).band());
        }
      }
    }
  }

  private static InvalidValue twice(String what, SizeBand band) {
    return new InvalidValue(
        "table",
        what
            + " is given twice within "
            + Numbers.plain(band.overMm())
            + " to "
            + Numbers.plain(band.upToMm())
            + " mm",
        "each size and grade once");
  }
}
