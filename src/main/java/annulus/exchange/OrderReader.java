package annulus.exchange;

import annulus.advice.JointOrder;
import annulus.advice.JointOrder.Assumption;
import annulus.advice.JointOrder.CurePlace;
import annulus.advice.JointOrder.GivenGap;
import annulus.advice.JointOrder.Load;
import annulus.advice.JointOrder.PrimerPlan;
import annulus.advice.JointOrder.Surroundings;
import annulus.advice.Knowledge;
import annulus.advice.Member;
import annulus.advice.ShopPlace;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Consequence;
import annulus.catalog.Policy;
import annulus.measure.Side;
import annulus.quantity.Interval;
import annulus.quantity.Numbers;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads orders: one set of rules for files, command lines and batch rows. */
public final class OrderReader {
  /** Names of a gap that leave open how it is counted. */
  private static final List<String> BARE_GAPS =
      List.of("gap", "clearance", "gapUm", "clearanceUm", "gapMm");

  private static final List<String> BESIDE_A_GAP =
      List.of("radialGapPlusMinusUm", "diametralClearancePlusMinusUm", "diameterMm");

  private final Knowledge knowledge;
  private final Catalog catalog;
  private final Instant now;
  private final ZoneId zone;
  private final Map<String, ShopPlace> places;

  /**
   * @param knowledge what orders may refer to
   * @param now the start of orders that give none
   * @param zone the zone of orders that give none
   */
  public OrderReader(Knowledge knowledge, Instant now, ZoneId zone) {
    this(knowledge, now, zone, List.of());
  }

  /**
   * @param knowledge what orders may refer to
   * @param now the start of orders that give none
   * @param zone the zone of orders that give none
   * @param places the shop's places that orders may name
   */
  public OrderReader(Knowledge knowledge, Instant now, ZoneId zone, List<ShopPlace> places) {
    this.knowledge = knowledge;
    this.catalog = knowledge.catalog();
    this.now = now.truncatedTo(ChronoUnit.SECONDS);
    this.zone = zone;
    this.places = Catalog.index(places, ShopPlace::name);
  }

  /** Loads what reading any order needs, so that another thread can do it beforehand. */
  public static void prepare(ZoneId zone) {
    Node.Place nowhere = new Node.Place("", 0, 0);
    new Measures(new Problems()).celsius(new Node.Text(nowhere, "18 C"), "", 0, 30);
    String time = OffsetDateTime.parse("2000-01-01T00:00Z").atZoneSameInstant(zone).toString();
    try {
      JsonNodes.read("", new StringReader("{\"start\": \"" + time + "\"}"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * Reads one order from a JSON document.
   *
   * @throws InputRefused with every problem found
   * @throws IOException when the document can't be read
   */
  public JointOrder json(String file, Reader reader) throws IOException {
    return read(JsonNodes.read(file, reader), true);
  }

  JointOrder read(Node node, boolean formatNeeded) {
    Problems problems = new Problems();
    Optional<JointOrder> order =
        Fields.of(node, problems, "").flatMap(f -> new OneOrder(problems, f).order(formatNeeded));
    problems.throwIfAny();
    return order.orElseThrow();
  }

  /** The reading of one order. */
  private final class OneOrder {
    private final Problems problems;
    private final Fields f;
    private final Measures measures;
    private final ClockTimes clock;
    private final Policy policy = catalog.policy();
    private final List<Assumption> assumed = new ArrayList<>();

    OneOrder(Problems problems, Fields f) {
      this.problems = problems;
      this.f = f;
      this.measures = new Measures(problems);
      this.clock = new ClockTimes(problems);
    }

    Optional<JointOrder> order(boolean formatNeeded) {
      if (formatNeeded) {
        f.requiredNumber("format", 1, 1, "");
      } else {
        f.allow("format");
      }
      refuseBareGap();
      String job = f.text("job").orElse("");
      String title = f.text("title").orElse("");
      MemberReader members = new MemberReader(knowledge, problems, measures, assumed);
      Optional<GivenGap> gap = givenGap();
      Optional<Member> bore = members.read(f, "bore", Side.BORE, gap.isPresent());
      Optional<Member> part = members.read(f, "part", Side.PART, gap.isPresent());
      double engagement =
          f.required("engagementMm")
              .map(n -> measures.lengthMm(n, f.path("engagementMm"), 0.5, 500).orElse(1))
              .orElse(1.0);
      PrimerPlan primer = primer();
      Interval service = service();
      Optional<Load> load = load();
      Consequence consequence =
          f.choice("consequence", Consequence.values())
              .orElseGet(() -> assume("consequence", Consequence.INJURY, "not said: the worst"));
      Surroundings around = surroundings();
      ZoneId orderZone = f.has("zone") ? clock.zone(f, "zone").orElse(zone) : machineZone();
      Instant start = start(orderZone);
      CurePlace cure = curePlace(start, orderZone);
      double confidence =
          number("confidence", 0.8, 0.999, "").orElse(policy.value("wanted-confidence"));
      Optional<CompoundClass> compound = compound();
      Optional<Instant> movedAt = movedAt(start, orderZone);
      f.done();
      if (!problems.none() || bore.isEmpty() || part.isEmpty()) {
        return Optional.empty();
      }
      slips(bore.get(), part.get(), gap);
      return Values.build(
          f,
          problems,
          () ->
              new JointOrder(
                  job,
                  title,
                  bore.get(),
                  part.get(),
                  gap,
                  engagement,
                  cure,
                  primer,
                  service,
                  load,
                  consequence,
                  around,
                  start,
                  orderZone,
                  confidence,
                  compound,
                  movedAt,
                  assumed));
    }

    private <T> T assume(String field, T value, String why) {
      String text =
          value instanceof Enum<?> e
              ? Fields.word(e)
              : value instanceof Double d ? Numbers.plain(d) : value.toString();
      assumed.add(new Assumption(field, text, why));
      return value;
    }

    private OptionalDouble number(String name, double low, double high, String unit) {
      Optional<Node> node = f.node(name);
      return node.isPresent()
          ? measures.number(node.get(), f.path(name), low, high, unit)
          : OptionalDouble.empty();
    }

    private void refuseBareGap() {
      for (String bare : BARE_GAPS) {
        if (f.stands(bare)) {
          f.allow(bare);
          problems.add(
              f.placeOf(bare),
              bare,
              "does not say whether it is per side or across the diameter",
              "radialGapUm (per side) or diametralClearanceUm (across the diameter)");
        }
      }
    }

    private Optional<GivenGap> givenGap() {
      boolean radial = f.has("radialGapUm");
      boolean diametral = f.has("diametralClearanceUm");
      if (!radial && !diametral) {
        refuseLoneGapFields();
        return Optional.empty();
      }
      if (radial && diametral) {
        problems.add(
            f.placeOf("diametralClearanceUm"),
            "diametralClearanceUm",
            "stands beside radialGapUm",
            "one of the two");
        return Optional.empty();
      }
      String name = radial ? "radialGapUm" : "diametralClearanceUm";
      String plusMinus = radial ? "radialGapPlusMinusUm" : "diametralClearancePlusMinusUm";
      double share = radial ? 1 : 0.5;
      double limit = policy.value("entry-gap-limit-um") / share;
      OptionalDouble value = number(name, -limit, limit, "µm");
      f.required(plusMinus);
      OptionalDouble doubt = number(plusMinus, 0.1 / share, 500 / share, "µm");
      OptionalDouble nominal =
          f.required("diameterMm")
              .map(n -> measures.lengthMm(n, "diameterMm", 0.5, 500))
              .orElse(OptionalDouble.empty());
      if (value.isEmpty() || doubt.isEmpty() || nominal.isEmpty()) {
        return Optional.of(new GivenGap(10, 0, 1));
      }
      return Optional.of(
          new GivenGap(
              nominal.getAsDouble(), value.getAsDouble() * share, doubt.getAsDouble() * share));
    }

    /** Fields that say something about a given gap, where none is given. */
    private void refuseLoneGapFields() {
      for (String lone : BESIDE_A_GAP) {
        if (f.has(lone)) {
          problems.add(
              f.placeOf(lone),
              lone,
              "stands without a given gap",
              "beside radialGapUm or diametralClearanceUm only");
        }
      }
    }

    private void slips(Member bore, Member part, Optional<GivenGap> gap) {
      EntrySlips slips = new EntrySlips(problems, policy);
      if (gap.isEmpty()) {
        slips.pair(f.placeOf("bore"), "bore", mean(bore), mean(part));
      }
      slips.wall(f, bore, gap.map(GivenGap::nominalMm).orElseGet(() -> mean(bore)));
      slips.wall(f, part, gap.map(GivenGap::nominalMm).orElseGet(() -> mean(part)));
    }

    private double mean(Member member) {
      return MemberReader.meanMm(member.readings());
    }

    private CurePlace curePlace(Instant start, ZoneId orderZone) {
      double doubt = policy.value("cure-temperature-plus-minus-c");
      if (!f.has("cure")) {
        return constantPlace();
      }
      if (f.has("temperatureC") || f.has("temperaturePlusMinusC")) {
        problems.add(
            f.placeOf("cure"),
            "cure",
            "a place to cure stands beside a temperature",
            "one of the two: empty the other");
      }
      return f.object("cure")
          .flatMap(c -> new CurePlaceReader(problems).ofOrder(c, start, orderZone, places, doubt))
          .orElse(CurePlace.constant(0, 0, "none"));
    }

    private CurePlace constantPlace() {
      double celsius =
          f.node("temperatureC")
              .map(n -> measures.celsius(n, "temperatureC", -20, 50).orElse(20))
              .orElseGet(
                  () ->
                      assume(
                          "temperatureC",
                          policy.value("default-bench-c"),
                          "not said: a cool workshop"));
      double plusMinus =
          number("temperaturePlusMinusC", 0, 20, "°C")
              .orElseGet(
                  () ->
                      assume(
                          "temperaturePlusMinusC",
                          policy.value("cure-temperature-plus-minus-c"),
                          "not said"));
      String text =
          "planned " + Numbers.plain(celsius) + " ± " + Numbers.plain(plusMinus) + " °C throughout";
      return CurePlace.constant(celsius, plusMinus, text);
    }

    private PrimerPlan primer() {
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
              : assume("primer.on", PrimedFaces.BOTH, "not said");
      double minutes =
          p.node("minutesOnPart")
              .map(n -> measures.number(n, "primer.minutesOnPart", 0, 525_600, "min").orElse(0))
              .orElseGet(() -> assume("primer.minutesOnPart", 0.0, "not said: put on now"));
      p.done();
      Duration age = Duration.ofSeconds(Math.round(minutes * 60));
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

    private Interval service() {
      OptionalDouble low = celsius("serviceLowC", "service-low-c", "not said: outdoors");
      OptionalDouble high = celsius("serviceHighC", "service-high-c", "not said: in the sun");
      if (low.isEmpty() || high.isEmpty()) {
        return new Interval(0, 0);
      }
      if (low.getAsDouble() > high.getAsDouble()) {
        String said = f.has("serviceLowC") ? "serviceLowC" : "serviceHighC";
        problems.add(
            f.placeOf(said),
            said,
            range("serviceLowC", low) + " is above " + range("serviceHighC", high),
            "serviceLowC at or below serviceHighC");
        return new Interval(0, 0);
      }
      return new Interval(low.getAsDouble(), high.getAsDouble());
    }

    private String range(String name, OptionalDouble celsius) {
      String assumedHere = f.has(name) ? "" : " (assumed)";
      return name + " " + Numbers.plain(celsius.getAsDouble()) + " °C" + assumedHere;
    }

    private OptionalDouble celsius(String name, String standIn, String why) {
      Optional<Node> node = f.node(name);
      return node.isPresent()
          ? measures.celsius(node.get(), name, -100, 350)
          : OptionalDouble.of(assume(name, policy.value(standIn), why));
    }

    private Optional<Load> load() {
      return f.object("load")
          .flatMap(l -> new LoadReader(knowledge, problems, measures, assumed).read(l));
    }

    private Surroundings surroundings() {
      return new Surroundings(
          f.flag("comesApartLater").orElse(false),
          f.flag("sealNear").orElse(false),
          f.flag("electronicsNear").orElse(false),
          f.flag("warranty").orElse(false));
    }

    private Instant start(ZoneId orderZone) {
      if (!f.has("start")) {
        assumed.add(
            new Assumption("start", now.atZone(orderZone).toOffsetDateTime().toString(), "now"));
        return now;
      }
      Instant start = clock.instant(f, "start", orderZone).orElse(now);
      return near("start", start) ? start : now;
    }

    private Optional<Instant> movedAt(Instant start, ZoneId orderZone) {
      Optional<Instant> moved = clock.instant(f, "movedAt", orderZone);
      if (moved.isPresent() && near("movedAt", moved.get()) && moved.get().isBefore(start)) {
        problems.add(
            f.placeOf("movedAt"),
            "movedAt",
            moved.get().atZone(orderZone).toLocalDateTime() + " is before the start",
            "a time after " + start.atZone(orderZone).toLocalDateTime());
      }
      return moved;
    }

    /** A far time is a slip of the pen, and may be one that no calendar holds. */
    private boolean near(String field, Instant at) {
      long days = (long) policy.value("start-horizon-days");
      boolean near = Duration.between(now, at).abs().toDays() <= days;
      if (!near) {
        problems.add(
            f.placeOf(field),
            field,
            at.toString().replaceFirst("T.*", "") + " is more than " + days + " days from now",
            "a time within " + days + " days of " + now.toString().replaceFirst("T.*", ""));
      }
      return near;
    }

    private ZoneId machineZone() {
      assumed.add(new Assumption("zone", zone.getId(), "not said: that of this machine"));
      return zone;
    }

    private Optional<CompoundClass> compound() {
      Optional<String> id = f.text("class");
      if (id.isPresent() && !catalog.compounds().containsKey(id.get())) {
        f.unknown("class", id.get(), catalog.compounds().keySet());
        return Optional.empty();
      }
      return id.map(catalog.compounds()::get);
    }
  }

  private enum PrimedFaces {
    BOTH,
    BORE,
    PART
  }
}
