package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Told;
import annulus.catalog.Primer;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/** What parts come in with where an order does not say it. */
class ArrivalPropertyTest {
  private static final List<String> PLACES = List.of("bench", "cupboard", "boiler", "store");

  /** A bench by the clock, a cupboard that is never off or off at night, two rooms. */
  private static Shop shop(int warmC, boolean atNight, int boilerC, int storeC) {
    return DeskData.shop(
        s -> {
          ObjectNode places = s.putObject("places");
          ObjectNode bench = places.putObject("bench").put("plusMinusC", 2);
          ArrayNode profile = bench.putArray("profile");
          profile.addObject().put("at", "06:30").put("c", 10);
          profile.addObject().put("at", "09:00").put("c", 16);
          profile.addObject().put("at", "18:00").put("c", 16);
          profile.addObject().put("at", "22:00").put("c", 11);
          ObjectNode cupboard = places.putObject("cupboard").put("plusMinusC", 2);
          ObjectNode warm = cupboard.putObject("warm").put("celsius", warmC);
          warm.put("offPlace", "bench").put("heatUpMinutes", 30);
          ObjectNode hours = warm.putArray("hours").addObject();
          hours.put("from", atNight ? "08:00" : "00:00").put("to", atNight ? "18:00" : "24:00");
          ArrayNode days = hours.putArray("days");
          for (DayOfWeek day : DayOfWeek.values()) {
            days.add(day.name().toLowerCase(Locale.ROOT));
          }
          places.putObject("boiler").put("constantC", boilerC).put("plusMinusC", 2);
          places.putObject("store").put("constantC", storeC).put("plusMinusC", 1);
        });
  }

  private static JointOrder order(Shop shop, String place, Instant start, Optional<Primer> primer) {
    return DeskData.order(
        shop,
        "2027-03-11T09:30",
        o -> {
          DeskData.place(o, place);
          o.put("start", start.toString());
          ((ObjectNode) o.get("bore")).put("outsideDiameterMm", 70);
          o.remove("primer");
          primer.ifPresentOrElse(
              p -> o.putObject("primer").put("id", p.id()), () -> o.put("primer", "none"));
        });
  }

  @Property(tries = 12)
  void an_option_says_what_the_order_changed_that_way_says(
      @ForAll @IntRange(min = 0, max = 3) int own,
      @ForAll @IntRange(min = 25, max = 45) int warmC,
      @ForAll boolean offAtNight,
      @ForAll @IntRange(min = 8, max = 35) int boilerC,
      @ForAll @IntRange(min = 4, max = 20) int storeC) {
    Shop shop = shop(warmC, offAtNight, boilerC, storeC);
    PromiseDesk desk = DeskData.desk().in(shop);
    Instant from = DeskData.at("2027-03-11T09:30");
    JointOrder order = order(shop, PLACES.get(own), from, Optional.empty());
    Instant before = desk.tell(order).ready().orElse(Instant.MAX);
    for (Option option : desk.options(order, from, Optional.empty())) {
      Instant closed = option.work().plus(option.touch());
      String place = option.place().orElseThrow().name();
      JointOrder changed = order(shop, place, closed, option.primer());
      Told told = desk.tell(OrderChange.compound(changed, option.compound()));
      assertEquals(option.told().ready(), told.ready(), option.compound().id() + " in " + place);
      Statistics.label("sooner")
          .collect(option.told().ready().orElse(Instant.MAX).isBefore(before));
    }
  }

  @Property(tries = 40)
  void a_part_that_does_not_say_where_it_lay_is_never_ready_before_one_from_the_bench(
      @ForAll @IntRange(min = 1, max = 2) int place,
      @ForAll @IntRange(min = 25, max = 45) int warmC,
      @ForAll boolean offAtNight,
      @ForAll @IntRange(min = 0, max = 1_440) int minute) {
    Shop shop = shop(warmC, offAtNight, 30, 12);
    PromiseDesk desk = DeskData.desk().in(shop);
    Instant start = DeskData.at("2027-03-11T00:00").plusSeconds(minute * 60L);
    JointOrder unsaid = order(shop, PLACES.get(place), start, Optional.empty());
    JointOrder fromBench =
        DeskData.order(
            shop,
            "2027-03-11T09:30",
            o -> {
              DeskData.place(o, PLACES.get(place));
              o.put("start", start.toString()).put("primer", "none");
              ((ObjectNode) o.get("bore")).put("outsideDiameterMm", 70).put("arrivesAtC", 10);
              ((ObjectNode) o.get("part")).put("arrivesAtC", 10);
            });
    Instant ready = desk.tell(unsaid).ready().orElse(Instant.MAX);
    assertFalse(ready.isBefore(desk.tell(fromBench).ready().orElse(Instant.MAX)));
  }

  @Example
  void a_cupboard_that_is_never_off_does_not_warm_a_part_at_once() {
    Shop shop = shop(40, false, 30, 12);
    PromiseDesk desk = DeskData.desk().in(shop);
    JointOrder order = order(shop, "cupboard", DeskData.at("2027-03-11T09:50"), Optional.empty());
    JointOrder felt = desk.tell(order).advice().order();
    assertEquals(10, felt.cure().history().celsiusAt(0), 1e-9);
    assertTrue(
        felt.cure().describedAs().endsWith("40 ± 2 °C warm hours, parts coming in at 10 °C"));
  }

  /** In a place that is too cold most of the day the cure takes longer than parts are followed. */
  @Property(tries = 25)
  void a_later_start_never_ends_sooner_however_long_the_cure(
      @ForAll @IntRange(min = 0, max = 20_000) int minutes,
      @ForAll @IntRange(min = 1, max = 2_000) int later,
      @ForAll @IntRange(min = 7, max = 24) int warmHours) {
    Shop shop =
        DeskData.shop(
            s -> {
              ObjectNode warm = s.putObject("places").putObject("box").put("plusMinusC", 2);
              warm = warm.putObject("warm").put("celsius", 20).put("offC", 2);
              ObjectNode hours = warm.put("heatUpMinutes", 60).putArray("hours").addObject();
              hours.put("from", "06:00").put("to", warmHours == 24 ? "24:00" : hour(warmHours));
              hours.putArray("days").add("monday").add("thursday");
            });
    PromiseDesk desk = DeskData.desk().in(shop);
    JointOrder order =
        order(
            shop,
            "box",
            DeskData.at("2027-05-11T09:30").plusSeconds(minutes * 60L),
            Optional.empty());
    Optional<ShopPlace> box = Optional.of(shop.places().get(0));
    Told one = desk.tellAt(order, box, order.start());
    Told two = desk.tellAt(order, box, order.start().plusSeconds(later * 60L));
    Instant first = one.ready().orElse(Instant.MAX);
    Statistics.label("over 14 days")
        .collect(first.isAfter(order.start().plus(Duration.ofDays(14))) && one.ready().isPresent());
    Statistics.label("over 14 days").coverage(c -> c.check(true).percentage(p -> p > 20));
    // the part is followed in steps of 10 min on its cold side
    Duration allowed = Duration.ofMinutes(10);
    assertFalse(
        two.ready().orElse(Instant.MAX.minus(allowed)).plus(allowed).isBefore(first),
        () -> first + " and " + two.ready());
  }

  private static String hour(int hour) {
    return String.format(Locale.ROOT, "%02d:00", hour);
  }

  @Property(tries = 30)
  void advice_and_promise_agree_however_cold_the_parts_come_in(
      @ForAll @IntRange(min = -20, max = 30) int boreC,
      @ForAll @IntRange(min = -20, max = 30) int partC,
      @ForAll @IntRange(min = 8, max = 35) int roomC) {
    JointOrder order =
        DeskData.order(
            "2027-03-11T15:30",
            o -> {
              o.put("temperatureC", roomC);
              ((ObjectNode) o.get("bore")).put("arrivesAtC", boreC);
              ((ObjectNode) o.get("part")).put("arrivesAtC", partC);
            });
    Advice advice = new Advisor(DeskData.KNOWLEDGE).advise(order);
    Told told = DeskData.desk().tell(order);
    assertEquals(told.ready(), advice.handBack().map(Advice.HandBack::at));
    assertEquals(told.advice().decision(), advice.decision());
    boolean cold = Math.min(boreC, partC) < roomC;
    Statistics.label("comes in cold").collect(cold);
    boolean bonds = advice.decision().kind() == Advice.Kind.USE_COMPOUND;
    boolean warmedFirst =
        advice.steps().stream().anyMatch(s -> s.kind() == Advice.StepKind.WARM_UP);
    assertEquals(cold && bonds, warmedFirst && bonds);
  }
}
