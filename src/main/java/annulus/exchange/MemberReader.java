package annulus.exchange;

import annulus.advice.Knowledge;
import annulus.advice.Member;
import annulus.catalog.Catalog;
import annulus.catalog.Finish;
import annulus.catalog.Instrument;
import annulus.catalog.Material;
import annulus.catalog.Policy;
import annulus.measure.Reading;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads one member of an order. */
final class MemberReader {
  private final Knowledge knowledge;
  private final Catalog catalog;
  private final Problems problems;
  private final Measures measures;
  private final Assumptions assumed;

  MemberReader(Knowledge knowledge, Problems problems, Measures measures, Assumptions assumed) {
    this.knowledge = knowledge;
    this.catalog = knowledge.catalog();
    this.problems = problems;
    this.measures = measures;
    this.assumed = assumed;
  }

  Optional<Member> read(Fields order, String name, Side side, boolean gapGiven) {
    Optional<Fields> object = order.requiredObject(name);
    if (object.isEmpty()) {
      return Optional.empty();
    }
    Fields f = object.get();
    Policy policy = catalog.policy();
    String called = f.text("name").orElse("");
    Optional<Material> material = reference(f, "material", catalog.materials());
    if (material.isEmpty() && !f.has("material")) {
      f.required("material");
    }
    Optional<Finish> finish =
        f.has("finish")
            ? reference(f, "finish", catalog.finishes())
            : material.map(m -> assumedFinish(name, m));
    Optional<BearingStandIn> bearing = bearing(f, side, gapGiven);
    List<Reading> readings =
        bearing.map(b -> List.of(b.reading())).orElseGet(() -> readings(f, gapGiven));
    Optional<Instrument> instrument =
        bearing.isPresent()
            ? bearing.map(BearingStandIn::instrument)
            : instrument(f, side, readings, gapGiven);
    double measuredAt =
        f.node("temperatureC")
            .map(n -> measures.celsius(n, f.path("temperatureC"), -30, 60).orElse(20))
            .orElseGet(() -> assumedTemperature(f, gapGiven));
    double doubt =
        f.node("temperaturePlusMinusC")
            .map(n -> measures.number(n, f.path("temperaturePlusMinusC"), 0, 20, "°C").orElse(0))
            .orElse(policy.value("bore-temperature-plus-minus-c"));
    OptionalDouble arrives =
        f.node("arrivesAtC").isPresent()
            ? measures.celsius(f.node("arrivesAtC").get(), f.path("arrivesAtC"), -40, 60)
            : OptionalDouble.empty();
    Member.FaceState state =
        f.choice("state", Member.FaceState.values()).orElse(Member.FaceState.UNKNOWN);
    String otherName = side == Side.BORE ? "outsideDiameterMm" : "insideDiameterMm";
    OptionalDouble other =
        f.node(otherName).isPresent()
            ? measures.lengthMm(f.node(otherName).get(), f.path(otherName), 0, 2000)
            : OptionalDouble.empty();
    f.done();
    if (material.isEmpty() || finish.isEmpty()) {
      return Optional.empty();
    }
    return Values.build(
        f,
        problems,
        () ->
            new Member(
                side,
                called,
                material.get(),
                finish.get(),
                readings,
                instrument,
                measuredAt,
                doubt,
                arrives,
                state,
                other));
  }

  /**
   * A bearing that was not measured, named by its boundary diameter: the middle of its tolerance,
   * with the tolerance as the error limit.
   */
  private Optional<BearingStandIn> bearing(Fields f, Side side, boolean gapGiven) {
    Optional<Node> node = f.node("bearingMm");
    if (node.isEmpty()) {
      return Optional.empty();
    }
    String path = f.path("bearingMm");
    f.allow("instrument");
    if (f.has("readingsMm") || gapGiven) {
      problems.add(node.get().place(), path, "stands beside readings or a gap", "one of them");
      return Optional.empty();
    }
    OptionalDouble nominal = measures.lengthMm(node.get(), path, 0.5, 500);
    if (nominal.isEmpty()) {
      return Optional.empty();
    }
    Optional<BearingStandIn> standIn =
        Optional.ofNullable(
            problems.place(
                node.get().place(),
                path,
                () -> BearingStandIn.of(knowledge.bearings(), side, nominal.getAsDouble())));
    standIn.ifPresent(b -> assumed.make(path, b.words(), "not measured: ISO 492"));
    return standIn;
  }

  private <T> Optional<T> reference(Fields f, String name, Map<String, T> known) {
    Optional<String> id = f.text(name);
    if (id.isPresent() && !known.containsKey(id.get())) {
      f.unknown(name, id.get(), known.keySet());
    }
    return id.map(known::get);
  }

  private double assumedTemperature(Fields f, boolean gapGiven) {
    double celsius = catalog.policy().value("default-temperature-c");
    return gapGiven
        ? celsius
        : assumed.make(f.path("temperatureC"), celsius, "not said: as it was measured");
  }

  private Finish assumedFinish(String member, Material material) {
    String id = material.isMetal() ? "as-machined" : "moulded";
    return catalog.finishes().get(assumed.make(member + ".finish", id, "not said"));
  }

  private List<Reading> readings(Fields f, boolean gapGiven) {
    if (gapGiven) {
      if (f.has("readingsMm")) {
        problems.add(
            f.placeOf("readingsMm"),
            f.path("readingsMm"),
            "stands beside a given gap",
            "readings or a given gap, not both");
      }
      return List.of();
    }
    List<Reading> readings = f.requiredList("readingsMm", n -> reading(n, f));
    new EntrySlips(problems, catalog.policy())
        .sameMember(f.placeOf("readingsMm"), f.path("readingsMm"), readings);
    return readings;
  }

  private Optional<Reading> reading(Node node, Fields member) {
    String path = member.path("readingsMm");
    if (!(node instanceof Node.Obj object)) {
      OptionalDouble mm = measures.lengthMm(node, path, 0.5, 500);
      return mm.isPresent() ? Optional.of(Reading.of(mm.getAsDouble())) : Optional.empty();
    }
    Fields r = new Fields(object, problems, path);
    OptionalDouble mm =
        r.required("mm")
            .map(n -> measures.lengthMm(n, path + ".mm", 0.5, 500))
            .orElse(OptionalDouble.empty());
    OptionalDouble depth = measures.number(r, "depthMm", 0, 1000, "mm");
    OptionalDouble angle = measures.number(r, "angleDeg", 0, 360, "°");
    r.done();
    return mm.isPresent()
        ? Values.build(r, problems, () -> new Reading(mm.getAsDouble(), depth, angle))
        : Optional.empty();
  }

  private Optional<Instrument> instrument(
      Fields f, Side side, List<Reading> readings, boolean gapGiven) {
    if (gapGiven) {
      f.allow("instrument");
      return Optional.empty();
    }
    Optional<Instrument> instrument = reference(f, "instrument", catalog.instruments());
    if (instrument.isEmpty() && !f.has("instrument")) {
      String id =
          assumed.make(
              f.path("instrument"),
              "caliper-150",
              "not said: the least sure of the usual instruments");
      instrument = Optional.ofNullable(catalog.instruments().get(id));
    }
    if (instrument.isPresent() && !readings.isEmpty()) {
      checkSpan(f, side, readings, instrument.get());
    }
    return instrument;
  }

  /** The mean of the readings, mm; 0 without any. */
  static double meanMm(List<Reading> readings) {
    DoubleSummaryStatistics sum = new DoubleSummaryStatistics();
    for (Reading reading : readings) {
      sum.accept(reading.mm());
    }
    return sum.getAverage();
  }

  private void checkSpan(Fields f, Side side, List<Reading> readings, Instrument instrument) {
    double mean = meanMm(readings);
    Instrument.Use use = side == Side.BORE ? Instrument.Use.INSIDE : Instrument.Use.OUTSIDE;
    if (instrument.spanFor(use, mean).isEmpty()) {
      List<String> able =
          catalog.instruments().values().stream()
              .filter(i -> i.spanFor(use, mean).isPresent())
              .map(Instrument::id)
              .toList();
      problems.add(
          f.placeOf("instrument"),
          f.path("instrument"),
          instrument.id()
              + " can't measure "
              + Fields.word(use)
              + " diameters of "
              + Numbers.fixed(mean, 2)
              + " mm",
          able.isEmpty() ? "no instrument in the data does" : String.join(", ", able));
    }
  }
}
