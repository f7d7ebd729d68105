package annulus.exchange;

import annulus.advice.JointOrder.PrimerPlan;
import annulus.catalog.Catalog;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads what an order says of a primer. */
final class PrimerReader {
  private final Catalog catalog;
  private final Problems problems;
  private final Measures measures;
  private final Assumptions assumed;

  private enum PrimedFaces {
    BOTH,
    BORE,
    PART
  }

  PrimerReader(Catalog catalog, Problems problems, Measures measures, Assumptions assumed) {
    this.catalog = catalog;
    this.problems = problems;
    this.measures = measures;
    this.assumed = assumed;
  }

  /** The primer of an order; open where nothing is said of it. */
  PrimerPlan read(Fields f) {
    Optional<Node> node = f.node("primer");
    if (node.isEmpty()) {
      return new PrimerPlan.Open();
    }
    if (node.get() instanceof Node.Text t) {
      return t.value().strip().equals("none")
          ? new PrimerPlan.None()
          : used(f, "primer", t.value().strip(), true, true, Duration.ZERO);
    }
    Optional<Fields> object = Fields.of(node.get(), problems, "primer");
    if (object.isEmpty()) {
      return new PrimerPlan.None();
    }
    Fields p = object.get();
    String id = p.requiredText("id");
    PrimedFaces on =
        p.has("on")
            ? p.choice("on", PrimedFaces.values()).orElse(PrimedFaces.BOTH)
            : assumed.make("primer.on", PrimedFaces.BOTH, "not said");
    double minutes =
        p.node("minutesOnPart")
            .map(n -> measures.number(n, "primer.minutesOnPart", 0, 525_600, "min").orElse(0))
            .orElseGet(() -> assumed.make("primer.minutesOnPart", 0.0, "not said: put on now"));
    p.done();
    Duration age = Duration.ofSeconds(Math.round(minutes * 60));
    if (id.isEmpty()) {
      return new PrimerPlan.None();
    }
    return used(p, "id", id, on != PrimedFaces.PART, on != PrimedFaces.BORE, age);
  }

  private PrimerPlan used(
      Fields at, String field, String id, boolean onBore, boolean onPart, Duration age) {
    var primer = catalog.primers().get(id);
    if (primer == null) {
      List<String> known = new ArrayList<>(catalog.primers().keySet());
      known.add("none");
      at.unknown(field, id, known);
      return new PrimerPlan.None();
    }
    return new PrimerPlan.Used(primer, onBore, onPart, age);
  }
}
