package annulus.exchange;

import annulus.catalog.NamedNumber;
import annulus.quantity.Interval;
import annulus.quantity.Numbers;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Rows of the tables of named numbers: policy and form limits. */
final class NumberRows {
  static final List<String> HEADER =
      List.of("id", "value", "unit", "meaning", "source", "confidence");
  private static final double FAR = 1e9;

  private NumberRows() {}

  /**
   * One number. A shop can change the program's numbers but not add one that nothing would read: a
   * mistyped id or unit would otherwise leave the old number in force unnoticed.
   *
   * @param known numbers of the layers below; the program's own layer is read while it is empty
   * @param limits how far each may be moved
   */
  static Optional<NamedNumber> number(
      Fields f, Problems problems, Map<String, NamedNumber> known, NumberLimits limits) {
    Optional<NamedNumber> number =
        Values.build(
            f,
            problems,
            () ->
                new NamedNumber(
                    f.requiredText("id"),
                    f.requiredNumber("value", -FAR, FAR, ""),
                    f.text("unit").orElse(""),
                    f.requiredText("meaning"),
                    Values.provenance(f)));
    if (number.isPresent() && !known.isEmpty()) {
      check(f, problems, number.get(), known);
    }
    number.ifPresent(n -> checkLimits(f, problems, n, limits));
    return number;
  }

  private static void check(
      Fields f, Problems problems, NamedNumber number, Map<String, NamedNumber> known) {
    NamedNumber before = known.get(number.id());
    if (before == null) {
      f.unknown("id", number.id(), known.keySet());
    } else if (!before.unit().equals(number.unit())) {
      problems.add(
          f.placeOf("unit"),
          "unit",
          Fields.quoted(number.unit()) + " is another unit",
          before.unit().isEmpty() ? "an empty cell" : before.unit());
    }
  }

  static void checkLimits(Fields f, Problems problems, NamedNumber number, NumberLimits limits) {
    Optional<Interval> most = limits.of(number.id());
    if (most.isPresent() && !most.get().contains(number.value())) {
      String unit = number.unit().isEmpty() ? "" : " " + number.unit();
      problems.add(
          f.placeOf("value"),
          number.id(),
          Numbers.plain(number.value()) + unit + " is out of range",
          Numbers.plain(most.get().low()) + " to " + Numbers.plain(most.get().high()) + unit);
    }
  }
}
