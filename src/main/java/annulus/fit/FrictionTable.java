package annulus.fit;

import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.Optional;

/**
 * Coefficients of friction of press fits, by pair, method and state of the faces.
 *
 * @param rows the table
 */
public record FrictionTable(List<Row> rows) {

  /** The two metals, in either order. */
  public enum Pair {
    STEEL_STEEL,
    STEEL_CAST_IRON,
    STEEL_LIGHT_ALLOY,
    STEEL_BRASS,
    OTHER
  }

  /** How the joint is made. */
  public enum Method {
    /** Pressed in cold: the peaks are wiped. */
    LENGTHWISE,
    /** Slipped by heat or cold, then gripping. */
    TRANSVERSE
  }

  /** State of the faces. */
  public enum State {
    DRY,
    LUBRICATED
  }

  /**
   * One row.
   *
   * @param pair metals
   * @param method lengthwise or transverse
   * @param state dry or lubricated
   * @param friction coefficient
   * @param provenance source of the row
   */
  public record Row(
      Pair pair, Method method, State state, Estimate friction, Provenance provenance) {
    public Row {
      friction.checkedWithin("friction", 0, 0.5, "");
    }

    private boolean answers(Pair wanted, Method how, State faces) {
      return pair == wanted && method == how && state == faces;
    }
  }

  public FrictionTable {
    rows = List.copyOf(rows);
    for (int i = 0; i < rows.size(); i++) {
      Row row = rows.get(i);
      if (first(rows.subList(0, i), row.pair, row.method, row.state).isPresent()) {
        throw new InvalidValue(
            "table", row.pair + " " + row.method + " " + row.state + " is given twice", "once");
      }
    }
  }

  /**
   * The row for a pair; pairs without one of their own take the wide row of {@link Pair#OTHER}.
   *
   * @throws InvalidValue when there is neither
   */
  public Row row(Pair pair, Method method, State state) {
    return first(rows, pair, method, state)
        .or(() -> first(rows, Pair.OTHER, method, state))
        .orElseThrow(
            () ->
                new InvalidValue(
                    "friction",
                    pair + " " + method + " " + state + " is not tabulated here",
                    "a pair with a row, or a row OTHER"));
  }

  private static Optional<Row> first(List<Row> rows, Pair pair, Method method, State state) {
    for (Row row : rows) {
      if (row.answers(pair, method, state)) {
        return Optional.of(row);
      }
    }
    return Optional.empty();
  }
}
