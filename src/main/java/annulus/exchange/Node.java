package annulus.exchange;

import java.util.List;
import java.util.Map;

/** A JSON value that remembers where it stands. */
sealed interface Node {
  Place place();

  /** File, line and column, from 1. */
  record Place(String file, int line, int column) {
    PlacedProblem problem(String field, String problem, String allowed) {
      return new PlacedProblem(file, line, column, field, problem, allowed);
    }
  }

  /**
   * Members in file order; names are unique. The map is handed over, not copied, as every row of a
   * job list has several: whoever filled it does not touch it again.
   */
  record Obj(Place place, Map<String, Node> members) implements Node {}

  /** Elements in order. */
  record Arr(Place place, List<Node> elements) implements Node {
    public Arr {
      elements = List.copyOf(elements);
    }
  }

  /** A string, as written. */
  record Text(Place place, String value) implements Node {}

  /**
   * A number, as written.
   *
   * @param cell whether it is a cell of a table, where text carries no quotes and may look like
   *     this
   */
  record Num(Place place, String written, boolean cell) implements Node {
    Num(Place place, String written) {
      this(place, written, false);
    }
  }

  /** true or false. */
  record Bool(Place place, boolean value) implements Node {}

  /** null. */
  record Nothing(Place place) implements Node {}
}
