package annulus.exchange;

import annulus.advice.JointOrder;
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
import annulus.hold.DutyCase;
import annulus.measure.Side;
import annulus.quantity.Interval;
import annulus.quantity.Numbers;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;

/** Reads orders: one set of rules for files, command lines and batch rows. */
public final class OrderReader {
  private final Knowledge knowledge;
  private final Catalog catalog;
  private final Instant now;
  private final Supplier<ZoneId> zone;
  private final Map<String, ShopPlace> places;
  private final int longestJob;

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
    this(knowledge, now, () -> zone, Catalog.index(places, ShopPlace::name), Integer.MAX_VALUE);
  }

  /**
   * @param knowledge what orders may refer to
   * @param now the start of orders that give none
   * @param zone finds the zone of orders that give none; asked for those only
   */
  public OrderReader(Knowledge knowledge, Instant now, Supplier<ZoneId> zone) {
    this(knowledge, now, zone, Map.of(), Integer.MAX_VALUE);
  }

  private OrderReader(
      Knowledge knowledge,
      Instant now,
      Supplier<ZoneId> zone,
      Map<String, ShopPlace> places,
      int longestJob) {
    this.knowledge = knowledge;
    this.catalog = knowledge.catalog();
    this.now = now.truncatedTo(ChronoUnit.SECONDS);
    this.zone = zone;
    this.places = places;
    this.longestJob = longestJob;
  }

  /** The same for orders whose job reference must have at most so many characters. */
  public OrderReader withJobOfAtMost(int characters) {
    return new OrderReader(knowledge, now, zone, places, characters);
  }

  /** Loads what reading any order needs, so that another thread can do it beforehand. */
  public static void prepare() {
    // the first zone of all takes the time, and so does the first that has summer time
    Instant later = Instant.ofEpochSecond(4_000_000_000L);
    ZoneOffset offset = ZoneId.of("CET").getRules().getOffset(later);
    try {
      JsonNodes.read("", new StringReader("{\"any\": [1.5, \"" + offset + "\"]}"));
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
    private final Assumptions assumed = new Assumptions();

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
      GivenGapReader gaps = new GivenGapReader(problems, measures, policy);
      gaps.refuseBare(f);
      String job = f.text("job").orElse("");
      if (job.length() > longestJob) {
        problems.add(
            f.placeOf("job"),
            "job",
            job.length() + " characters do not fit on a tag",
            "at most " + longestJob + " characters");
      }
      String title = f.text("title").orElse("");
      MemberReader members = new MemberReader(knowledge, problems, measures, assumed);
      Optional<GivenGap> gap = gaps.read(f);
      Optional<Member> bore = members.read(f, "bore", Side.BORE, gap.isPresent());
      Optional<Member> part = members.read(f, "part", Side.PART, gap.isPresent());
      double engagement =
          f.required("engagementMm")
              .map(n -> measures.lengthMm(n, f.path("engagementMm"), 0.5, 500).orElse(1))
              .orElse(1.0);
      PrimerPlan primer = new PrimerReader(catalog, problems, measures, assumed).read(f);
      Interval service = service();
      Optional<Load> load = load();
      Consequence consequence = consequence();
      Surroundings around = surroundings();
      ZoneId orderZone = f.has("zone") ? clock.zone(f, "zone").orElseGet(zone) : machineZone();
      Instant start = start(orderZone);
      CurePlace cure = curePlace(start, orderZone);
      double confidence =
          measures
              .number(f, "confidence", 0.8, 0.999, "")
              .orElse(policy.value("wanted-confidence"));
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
                  assumed.all()));
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
                      assumed.make(
                          "temperatureC",
                          policy.value("default-bench-c"),
                          "not said: a cool workshop"));
      double plusMinus =
          measures
              .number(f, "temperaturePlusMinusC", 0, 20, "°C")
              .orElseGet(
                  () ->
                      assumed.make(
                          "temperaturePlusMinusC",
                          policy.value("cure-temperature-plus-minus-c"),
                          "not said"));
      String text =
          "planned " + Numbers.plain(celsius) + " ± " + Numbers.plain(plusMinus) + " °C throughout";
      return CurePlace.constant(celsius, plusMinus, text);
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
          : OptionalDouble.of(assumed.make(name, policy.value(standIn), why));
    }

    private Optional<Load> load() {
      return f.object("load")
          .flatMap(l -> new LoadReader(knowledge, problems, measures, assumed).read(l));
    }

    private Consequence consequence() {
      Optional<Consequence> said = f.choice("consequence", Consequence.values());
      if (said.isEmpty()) {
        return assumed.make("consequence", Consequence.INJURY, "not said: the worst");
      }
      if (problems.none() && said.get() != Consequence.INJURY) {
        f.object("load")
            .flatMap(l -> l.text("duty"))
            .map(knowledge.duties()::get)
            .filter(DutyCase::couldHurt)
            .ifPresent(d -> assumed.make("consequence", said.get(), couldHurt(d)));
      }
      return said.get();
    }

    private static String couldHurt(DutyCase duty) {
      return "as the order says; but where the load is that of a "
          + duty.name()
          + ", a failure could hurt someone: enter injury unless you know better";
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
        assumed.make("start", now.atZone(orderZone).toOffsetDateTime(), "now");
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
      ZoneId machine = zone.get();
      assumed.make("zone", machine.getId(), "not said: that of this machine");
      return machine;
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
}
