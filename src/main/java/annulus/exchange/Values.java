package annulus.exchange;

import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.Optional;
import java.util.function.Supplier;

/** The value types that many records share, read from fields. */
final class Values {
  private static final double FAR = 1e9;

  private Values() {}

  /**
   * Builds a record from fields. Nothing is built when reading the fields already found a problem,
   * so that stand-ins for missing values never reach a record.
   */
  static <T> Optional<T> build(Fields fields, Problems problems, Supplier<T> build) {
    int before = problems.count();
    try {
      T value = build.get();
      return problems.count() == before ? Optional.ofNullable(value) : Optional.empty();
    } catch (InvalidValue e) {
      if (problems.count() == before) {
        problems.add(
            fields.placeOfPart(e.field()), fields.path(e.field()), e.problem(), e.allowed());
      }
      return Optional.empty();
    }
  }

  static Provenance provenance(Fields f) {
    String source = f.requiredText("source");
    Confidence confidence = f.requiredChoice("confidence", Confidence.values());
    return new Provenance(source.isEmpty() ? "?" : source, confidence);
  }

  /** An object with low, likely and high. */
  static Estimate estimate(Fields f, Problems problems, String name, String unit) {
    return f.requiredObject(name).map(o -> estimate(o, problems, unit)).orElse(Estimate.exactly(0));
  }

  private static Estimate estimate(Fields o, Problems problems, String unit) {
    double low = o.requiredNumber("low", -FAR, FAR, unit);
    double likely = o.requiredNumber("likely", -FAR, FAR, unit);
    double high = o.requiredNumber("high", -FAR, FAR, unit);
    o.done();
    return ordered(o.place(), problems, o.path(), low, likely, high);
  }

  /** Three cells name_low, name_likely, name_high of a CSV row. */
  static Estimate rowEstimate(Fields f, Problems problems, String name, String unit) {
    double low = f.requiredNumber(name + "_low", -FAR, FAR, unit);
    double likely = f.requiredNumber(name + "_likely", -FAR, FAR, unit);
    double high = f.requiredNumber(name + "_high", -FAR, FAR, unit);
    return ordered(f.placeOf(name + "_low"), problems, name, low, likely, high);
  }

  private static Estimate ordered(
      Node.Place place, Problems problems, String path, double low, double likely, double high) {
    if (Double.isNaN(low) || Double.isNaN(likely) || Double.isNaN(high)) {
      return Estimate.exactly(0);
    }
    Estimate estimate = problems.place(place, path, () -> new Estimate(low, likely, high));
    return estimate == null ? Estimate.exactly(0) : estimate;
  }

  /** An object with low and high. */
  static Interval interval(Fields f, Problems problems, String name, String unit) {
    Interval none = new Interval(0, 0);
    Optional<Fields> object = f.requiredObject(name);
    if (object.isEmpty()) {
      return none;
    }
    double low = object.get().requiredNumber("low", -FAR, FAR, unit);
    double high = object.get().requiredNumber("high", -FAR, FAR, unit);
    object.get().done();
    if (Double.isNaN(low) || Double.isNaN(high)) {
      return none;
    }
    Interval value =
        problems.place(object.get().place(), object.get().path(), () -> new Interval(low, high));
    return value == null ? none : value;
  }
}
