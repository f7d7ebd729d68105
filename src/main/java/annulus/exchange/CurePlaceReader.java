package annulus.exchange;

import annulus.advice.JointOrder.CurePlace;
import annulus.advice.ShopPlace;
import annulus.handback.ClockClimate;
import annulus.handback.OpenSpan;
import annulus.quantity.Numbers;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads where joints cure: a shop's places, and the {@code cure} object of an order. */
final class CurePlaceReader {
  private final Problems problems;
  private final Measures measures;

  CurePlaceReader(Problems problems) {
    this.problems = problems;
    this.measures = new Measures(problems);
  }

  private enum Air {
    STILL,
    FAN
  }

  /**
   * The places of a shop, in file order. Parts may have lain in the coldest of them, and those that
   * come into a warm one on a bench that the file does not name.
   *
   * @param benchC temperature of a bench that nothing is known of, °C
   */
  List<ShopPlace> places(Fields shop, ZoneId zone, Duration touch, double benchC) {
    Map<String, ShopPlace> places = new LinkedHashMap<>();
    Optional<Fields> object = shop.object("places");
    if (object.isEmpty()) {
      return List.of();
    }
    for (String name : object.get().names()) {
      object
          .get()
          .object(name)
          .flatMap(f -> place(f, name, zone, touch, places))
          .ifPresent(p -> places.put(name, p));
    }
    double coldest = places.values().stream().mapToDouble(ShopPlace::unsaidC).min().orElse(benchC);
    return places.values().stream()
        .map(p -> p.withUnsaid(p.warm() ? Math.min(coldest, benchC) : coldest))
        .toList();
  }

  private Optional<ShopPlace> place(
      Fields f, String name, ZoneId zone, Duration touch, Map<String, ShopPlace> before) {
    double plusMinus = f.requiredNumber("plusMinusC", 0, 20, "°C");
    double minutes = f.number("touchMinutes", 0, 480, "min").orElse((double) touch.toMinutes());
    Air air = f.choice("air", Air.values()).orElse(Air.STILL);
    boolean warm = f.has("warm");
    Optional<Warmth> climate =
        warm
            ? f.object("warm").flatMap(w -> warmed(w, zone, before))
            : climate(f, zone).map(c -> new Warmth(c, c));
    f.done();
    return climate.flatMap(
        c ->
            Values.build(
                f,
                problems,
                () ->
                    new ShopPlace(
                        name,
                        c.climate(),
                        plusMinus,
                        Duration.ofSeconds(Math.round(minutes * 60)),
                        warm,
                        air == Air.FAN,
                        c.off().range().low(),
                        name + ", planned " + described(f, c.climate(), plusMinus))));
  }

  /**
   * How warm a place is.
   *
   * @param climate as it is used
   * @param off switched off
   */
  private record Warmth(ClockClimate climate, ClockClimate off) {}

  private static String described(Fields f, ClockClimate climate, double plusMinus) {
    String low = tenths(climate.range().low());
    String high = tenths(climate.range().high());
    String range = low.equals(high) ? low : low + " to " + high;
    String kind = f.has("warm") ? "warm hours" : low.equals(high) ? "throughout" : "by the clock";
    return range + " ± " + Numbers.plain(plusMinus) + " °C " + kind;
  }

  private static String tenths(double celsius) {
    return Numbers.plain(Math.rint(celsius * 10) / 10);
  }

  /** One of {@code constantC} and {@code profile}. */
  private Optional<ClockClimate> climate(Fields f, ZoneId zone) {
    boolean constant = f.has("constantC");
    if (constant == f.has("profile")) {
      problems.add(
          f.place(),
          f.path("constantC"),
          constant ? "stands beside profile" : "and profile are both missing",
          "one of constantC, profile (or warm, for a place of the shop)");
      return Optional.empty();
    }
    if (constant) {
      var celsius =
          measures.celsius(f.node("constantC").orElseThrow(), f.path("constantC"), -20, 50);
      return celsius.isPresent()
          ? Optional.of(ClockClimate.constant(zone, celsius.getAsDouble()))
          : Optional.empty();
    }
    List<ClockClimate.Point> points = f.list("profile", n -> point(n, f.path("profile")));
    return Values.build(f, problems, () -> ClockClimate.daily(zone, points));
  }

  private Optional<ClockClimate.Point> point(Node node, String path) {
    return Fields.of(node, problems, path)
        .flatMap(
            f -> {
              String at = f.requiredText("at");
              double celsius =
                  f.required("c")
                      .map(n -> measures.celsius(n, f.path("c"), -20, 50).orElse(0))
                      .orElse(0.0);
              f.done();
              return Values.build(
                  f,
                  problems,
                  () -> new ClockClimate.Point(ShopFile.minuteOfDay("at", at), celsius));
            });
  }

  private Optional<Warmth> warmed(Fields f, ZoneId zone, Map<String, ShopPlace> before) {
    double celsius =
        f.required("celsius")
            .map(n -> measures.celsius(n, f.path("celsius"), 15, 60).orElse(20))
            .orElse(20.0);
    double heatUp = f.number("heatUpMinutes", 0, 600, "min").orElse(60);
    Map<DayOfWeek, List<OpenSpan>> hours = new EnumMap<>(DayOfWeek.class);
    f.required("hours");
    f.list("hours", n -> hours(n, f.path("hours"), hours));
    Optional<ClockClimate> around = around(f, zone, before);
    f.done();
    return around.flatMap(
        a ->
            Values.build(
                f,
                problems,
                () ->
                    new Warmth(
                        a.warmed(celsius, hours, Duration.ofMinutes((long) Math.ceil(heatUp))),
                        a)));
  }

  private Optional<ClockClimate> around(Fields f, ZoneId zone, Map<String, ShopPlace> before) {
    boolean byName = f.has("offPlace");
    if (byName == f.has("offC")) {
      problems.add(
          f.place(),
          f.path("offC"),
          byName ? "stands beside offPlace" : "and offPlace are both missing",
          "one of the two: how warm it is when switched off");
      return Optional.empty();
    }
    if (byName) {
      String name = f.requiredText("offPlace");
      if (!before.containsKey(name)) {
        f.unknown("offPlace", name, before.keySet());
      }
      return Optional.ofNullable(before.get(name)).map(ShopPlace::climate);
    }
    double off = measures.celsius(f.node("offC").orElseThrow(), f.path("offC"), -20, 50).orElse(0);
    return Optional.of(ClockClimate.constant(zone, off));
  }

  private Optional<OpenSpan> hours(Node node, String path, Map<DayOfWeek, List<OpenSpan>> into) {
    Optional<Fields> object = Fields.of(node, problems, path);
    if (object.isEmpty()) {
      return Optional.empty();
    }
    Fields f = object.get();
    String from = f.requiredText("from");
    String to = f.requiredText("to");
    f.required("days");
    List<DayOfWeek> days = f.list("days", n -> day(n, f));
    f.done();
    Optional<OpenSpan> span = Values.build(f, problems, () -> OpenSpan.of(from, to));
    span.ifPresent(s -> days.forEach(d -> into.computeIfAbsent(d, k -> new ArrayList<>()).add(s)));
    return span;
  }

  private Optional<DayOfWeek> day(Node node, Fields f) {
    String text = node instanceof Node.Text t ? t.value().strip() : "";
    Optional<DayOfWeek> day =
        Arrays.stream(DayOfWeek.values()).filter(d -> Fields.word(d).equals(text)).findFirst();
    if (day.isEmpty()) {
      problems.add(
          node.place(),
          f.path("days"),
          "is " + Fields.kind(node),
          Nearest.allowed(text, Fields.words(DayOfWeek.values())));
    }
    return day;
  }

  /**
   * The {@code cure} object of an order.
   *
   * @param f the object
   * @param start when the joint is closed
   * @param zone the order's zone
   * @param places the shop's places by name; empty without a shop
   * @param doubt half-width taken where the order says none, °C
   */
  Optional<CurePlace> ofOrder(
      Fields f, Instant start, ZoneId zone, Map<String, ShopPlace> places, double doubt) {
    if (f.has("place")) {
      String name = f.requiredText("place");
      f.done();
      if (places.isEmpty()) {
        problems.add(
            f.placeOf("place"),
            f.path("place"),
            Fields.quoted(name) + " needs a shop that has such a place",
            "a shop file with places (promise --shop), or constantC or profile here");
      } else if (!places.containsKey(name)) {
        f.unknown("place", name, places.keySet());
      }
      return Optional.ofNullable(places.get(name)).map(p -> p.from(start));
    }
    double plusMinus = f.number("plusMinusC", 0, 20, "°C").orElse(doubt);
    Optional<ClockClimate> climate = climate(f, zone);
    f.done();
    return climate.flatMap(
        c ->
            Values.build(
                f,
                problems,
                () ->
                    new CurePlace(
                        c.from(start), plusMinus, "planned " + described(f, c, plusMinus))));
  }
}
