package annulus.exchange;

import annulus.catalog.Instrument;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Rows of the instrument table, several of which make one instrument. */
final class InstrumentRows {
  static final List<String> HEADER =
      List.of(
          "instrument",
          "name",
          "use",
          "over_mm",
          "up_to_mm",
          "mpe_um",
          "resolution_um",
          "contacts",
          "jaw_flat_mm",
          "source",
          "confidence");

  private final Problems problems;
  private final Map<String, String> names = new LinkedHashMap<>();
  private final Map<String, List<Instrument.Span>> spans = new LinkedHashMap<>();

  InstrumentRows(Problems problems) {
    this.problems = problems;
  }

  /** Takes one row; spans of one instrument and use must not overlap. */
  void add(Node.Obj row) {
    Fields f = new Fields(row, problems, "");
    int before = problems.count();
    String id = f.requiredText("instrument");
    String name = f.requiredText("name");
    Optional<Instrument.Span> span = Values.build(f, problems, () -> span(f));
    f.done();
    if (span.isEmpty() || problems.count() > before) {
      return;
    }
    if (!names.computeIfAbsent(id, k -> name).equals(name)) {
      problems.add(
          f.placeOf("name"),
          "name",
          Fields.quoted(name) + " is another name of " + Fields.quoted(id),
          Fields.quoted(names.get(id)));
    }
    List<Instrument.Span> known = spans.computeIfAbsent(id, k -> new ArrayList<>());
    if (known.stream().anyMatch(k -> overlap(k, span.get()))) {
      problems.add(
          f.placeOf("over_mm"),
          "over_mm",
          "the span overlaps another of " + Fields.quoted(id),
          "spans of one use that at most touch");
    }
    known.add(span.get());
  }

  private static boolean overlap(Instrument.Span a, Instrument.Span b) {
    return a.use() == b.use()
        && Math.max(a.overMm(), b.overMm()) < Math.min(a.upToMm(), b.upToMm());
  }

  Map<String, Instrument> instruments() {
    Map<String, Instrument> result = new LinkedHashMap<>();
    spans.forEach((id, list) -> result.put(id, new Instrument(id, names.get(id), list)));
    return result;
  }

  private static Instrument.Span span(Fields f) {
    return new Instrument.Span(
        f.requiredChoice("use", Instrument.Use.values()),
        f.requiredNumber("over_mm", 0, 1000, "mm"),
        f.requiredNumber("up_to_mm", 0, 1000, "mm"),
        f.requiredNumber("mpe_um", 0.1, 500, "µm"),
        f.requiredNumber("resolution_um", 0.1, 500, "µm"),
        (int) f.requiredWhole("contacts", 2, 3, ""),
        f.requiredNumber("jaw_flat_mm", 0, 10, "mm"),
        Values.provenance(f));
  }
}
