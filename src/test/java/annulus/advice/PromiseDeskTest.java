package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Shift;
import annulus.advice.PromiseDesk.Told;
import annulus.handback.LatestStart;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class PromiseDeskTest {
  private static final PromiseDesk DESK = DeskData.desk();
  private static final JointOrder BENCH = DeskData.in("bench", "2027-03-11T15:30");

  @Test
  void every_way_is_a_usable_class_with_and_without_primer_in_every_place() {
    List<Option> options = DESK.options(BENCH, BENCH.start(), Optional.empty());
    Set<String> ways = new HashSet<>();
    for (Option o : options) {
      assertTrue(
          ways.add(o.compound().id() + o.primer().map(p -> p.id()) + o.place().map(p -> p.name())));
      assertTrue(o.told().advice().decision().kind() == Advice.Kind.USE_COMPOUND);
    }
    for (String place : List.of("bench", "cupboard", "cellar")) {
      for (String primer : List.of("Optional.empty", "Optional[primer-dry]")) {
        assertTrue(
            ways.contains("thin-lasting" + primer + "Optional[" + place + "]"), ways.toString());
      }
    }
  }

  @Test
  void ways_stand_in_order_of_their_earliest_safe_hand_back() {
    List<Option> options = DESK.options(BENCH, BENCH.start(), Optional.empty());
    for (int i = 1; i < options.size(); i++) {
      Instant before = options.get(i - 1).told().ready().orElse(Instant.MAX);
      assertFalse(options.get(i).told().ready().orElse(Instant.MAX).isBefore(before));
    }
  }

  @Test
  void the_warm_cupboard_is_quicker_than_the_bench_and_the_bench_than_the_cellar() {
    Instant cupboard = ready(DESK.tell(DeskData.in("cupboard", "2027-03-11T15:30")));
    Instant bench = ready(DESK.tell(BENCH));
    Instant cellar = ready(DESK.tell(DeskData.in("cellar", "2027-03-11T15:30")));
    assertTrue(cupboard.isBefore(bench));
    assertTrue(bench.isBefore(cellar));
  }

  private static Instant ready(Told told) {
    return told.ready().orElseThrow();
  }

  @Test
  void a_primer_costs_strength_and_working_time_and_takes_its_flash_off_as_touch_time() {
    List<Option> options = DESK.options(BENCH, BENCH.start(), Optional.empty());
    Option bare = find(options, "none", "bench");
    Option primed = find(options, "primer-solvent", "bench");
    assertTrue(primed.strengthMPa() < bare.strengthMPa());
    assertTrue(primed.workingTime().compareTo(bare.workingTime()) < 0);
    // flash-off of the solvent primer: at most 5 min by data/primers.json
    assertEquals(Duration.ofMinutes(5), primed.touch().minus(bare.touch()));
    assertFalse(bare.noBetter() && primed.noBetter());
  }

  private static Option find(List<Option> options, String primer, String place) {
    return options.stream()
        .filter(o -> o.compound().id().equals("thin-lasting"))
        .filter(o -> o.primer().map(p -> p.id()).orElse("none").equals(primer))
        .filter(o -> o.place().map(p -> p.name()).orElse("").equals(place))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void the_latest_start_meets_the_pickup_and_one_minute_later_does_not() {
    Instant wanted = DeskData.at("2027-03-19T17:30");
    int pickups = 0;
    for (Option o : DESK.options(BENCH, BENCH.start(), Optional.of(wanted))) {
      if (o.latest().orElseThrow() instanceof LatestStart.Found found) {
        JointOrder as = like(o);
        assertTrue(promise(as, o, found.start()).filter(p -> !p.isAfter(wanted)).isPresent());
        assertTrue(DESK.shop().hours().isOpen(found.start()));
        if (found.limit() == LatestStart.Limit.PICKUP) {
          pickups++;
          Instant later = found.start().plusSeconds(60);
          assertFalse(promise(as, o, later).filter(p -> !p.isAfter(wanted)).isPresent());
        }
      }
    }
    assertTrue(pickups > 0, "the pickup itself never limited a start");
  }

  private static JointOrder like(Option o) {
    JointOrder.PrimerPlan primer =
        o.primer().isEmpty()
            ? new JointOrder.PrimerPlan.None()
            : new JointOrder.PrimerPlan.Used(o.primer().get(), true, true, Duration.ZERO);
    return OrderChange.compound(OrderChange.primer(BENCH, primer), o.compound());
  }

  private static Optional<Instant> promise(JointOrder order, Option o, Instant work) {
    return DESK.tellAt(order, o.place(), work.plus(o.touch())).promise().map(p -> p.promise());
  }

  @Test
  void a_primer_that_grows_too_old_while_waiting_is_no_longer_counted_on() {
    JointOrder primed =
        DeskData.order(
            "2027-03-11T15:30",
            o -> {
              DeskData.place(o, "bench");
              o.putObject("primer").put("id", "primer-dry").put("minutesOnPart", 60);
            });
    // on-part life of the dry primer: at least 1 day by data/primers.json
    Told now = DESK.tell(primed);
    Told tooOld = DESK.tellAt(primed, Optional.empty(), DeskData.at("2027-03-12T15:31"));
    assertTrue(now.advice().decision().primer().isPresent());
    assertFalse(tooOld.advice().decision().primer().isPresent());
    for (Option o : DESK.options(primed, primed.start(), Optional.empty())) {
      assertEquals(Optional.of("primer-dry"), o.primer().map(p -> p.id()));
    }
  }

  @Test
  void what_would_move_it_is_told_most_first_and_never_later() {
    List<Shift> shifts = DESK.shifts(BENCH);
    assertTrue(shifts.size() >= 2);
    Instant ready = ready(DESK.tell(BENCH));
    for (int i = 0; i < shifts.size(); i++) {
      assertTrue(shifts.get(i).ready().isBefore(ready));
      assertTrue(i == 0 || shifts.get(i).sooner().compareTo(shifts.get(i - 1).sooner()) <= 0);
    }
  }

  @Test
  void in_a_place_that_never_gets_warm_nothing_is_promised() {
    Told told = DESK.tell(DeskData.order("2027-03-11T15:30", o -> o.put("temperatureC", 3)));
    assertTrue(told.ready().isEmpty());
    assertTrue(told.promise().isEmpty());
    JointOrder cold =
        DeskData.order(
            "2027-03-11T15:30",
            o -> {
              o.remove("temperatureC");
              o.remove("temperaturePlusMinusC");
              ObjectNode cure = o.putObject("cure").put("plusMinusC", 1);
              cure.putArray("profile").addObject().put("at", "12:00").put("c", 5.5);
            });
    assertTrue(DESK.tell(cold).promise().isEmpty(), "may stay just below the least temperature");
  }

  @Test
  void weeks_without_opening_move_the_promise_past_them() {
    Told told = DESK.tell(DeskData.in("cupboard", "2027-08-06T16:00"));
    assertEquals(DeskData.at("2027-08-24T09:15"), told.promise().orElseThrow().promise());
  }

  @Test
  void a_leap_day_counts_as_a_day() {
    JointOrder leap = closed("2028-02-28T12:00");
    JointOrder plain = closed("2027-02-28T12:00");
    Duration one = Duration.between(leap.start(), DESK.tell(leap).ready().orElseThrow());
    Duration two = Duration.between(plain.start(), DESK.tell(plain).ready().orElseThrow());
    assertEquals(one, two);
  }

  private static JointOrder closed(String start) {
    JointOrder near = DeskData.in("bench", "2027-03-11T15:30");
    Instant at = DeskData.at(start);
    return OrderChange.cure(OrderChange.start(near, at), DESK.shop().places().get(0).from(at));
  }

  @Test
  void on_the_short_night_a_bench_cures_less_than_on_any_other_by_the_same_hour() {
    // heated by the clock, the morning comes an hour sooner, so an hour of cold lacks
    JointOrder spring = closed("2027-03-27T18:30");
    JointOrder usual = closed("2027-03-20T18:30");
    Duration one = Duration.between(spring.start(), ready(DESK.tell(spring)));
    Duration two = Duration.between(usual.start(), ready(DESK.tell(usual)));
    assertTrue(one.compareTo(two) < 0, one + " against " + two);
    assertTrue(two.minus(one).compareTo(Duration.ofHours(1)) < 0);
  }

  @Test
  void a_part_that_comes_in_cold_is_waited_for() {
    JointOrder cold =
        DeskData.order(
            "2027-03-11T15:30",
            o -> {
              DeskData.place(o, "bench");
              ((ObjectNode) o.get("part")).put("arrivesAtC", 2);
            });
    Told told = DESK.tell(cold);
    assertTrue(told.ready().orElseThrow().isAfter(ready(DESK.tell(BENCH))));
    assertEquals(2, told.advice().order().cure().history().celsiusAt(0), 1e-9);
  }
}
