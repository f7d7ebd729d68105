package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.CureTimes;
import annulus.advice.MeasuredCourse.Hole;
import annulus.advice.PromiseDesk.Input;
import annulus.advice.PromiseDesk.Option;
import annulus.advice.PromiseDesk.Shift;
import annulus.advice.PromiseDesk.Told;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.catalog.Stage;
import annulus.cure.TemperatureHistory;
import annulus.quantity.InvalidValue;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Running jobs judged again, what would move a promise, and the ways of making a joint. */
class ReassessmentTest {
  private static final PromiseDesk DESK = DeskData.desk();
  private static final JointOrder ORDER =
      DeskData.order("2027-03-12T10:00", o -> o.put("temperatureC", 18));

  private static MeasuredCourse course(double celsius, Duration until, Hole... holes) {
    return new MeasuredCourse(TemperatureHistory.constant(celsius), until, 0.5, List.of(holes));
  }

  @Test
  void a_log_of_one_temperature_is_worth_that_temperature_and_the_plan_its_own() {
    Reassessment cold = DESK.reassess(ORDER, course(10, Duration.ofHours(6)));
    assertEquals(10, cold.measuredC().orElseThrow(), 1e-6);
    assertEquals(18, cold.plannedC().orElseThrow(), 1e-6);
    assertEquals(ORDER.start().plus(Duration.ofHours(6)), cold.at());
    assertEquals(Optional.empty(), cold.holesStraight());
    Duration moved =
        Duration.between(cold.planned().ready().orElseThrow(), cold.now().ready().orElseThrow());
    assertEquals(Optional.of(moved), cold.moved());
    assertTrue(moved.toMinutes() > 0);
    assertTrue(cold.typicalFraction() > cold.sureFraction());
  }

  /** The log is doubted downwards: its cold side lies its own doubt below it. */
  @Test
  void the_cold_side_of_a_log_lies_its_doubt_below_it() {
    Reassessment again = DESK.reassess(ORDER, course(15, Duration.ofHours(6)));
    JointOrder.CurePlace place = again.now().advice().order().cure();
    assertEquals(15, place.history().celsiusAt(3 * 3600), 1e-9);
    assertEquals(14.5, place.coldSide().celsiusAt(3 * 3600), 1e-9);
    assertEquals(18, place.history().celsiusAt(7 * 3600), 1e-9);
  }

  @Test
  void the_stage_reached_for_sure_is_the_last_whose_time_has_come() {
    CureTimes cure = DESK.tell(ORDER).advice().cure().orElseThrow();
    Duration fixture = cure.at(Stage.FIXTURE).sure().orElseThrow();
    Duration handling = cure.at(Stage.HANDLING).sure().orElseThrow();
    Duration full = cure.at(Stage.FULL).sure().orElseThrow();
    assertEquals(Optional.empty(), stage(fixture.minusMinutes(5)));
    assertEquals(Optional.of(Stage.FIXTURE), stage(fixture.plusMinutes(5)));
    assertEquals(Optional.of(Stage.HANDLING), stage(handling.plusMinutes(5)));
    assertEquals(Optional.of(Stage.FULL), stage(full.plusMinutes(30)));
  }

  /** A log just as the coldest of the plan, so that its times are those of the plan. */
  private static Optional<Stage> stage(Duration until) {
    double sure = ORDER.cure().coldSide().celsiusAt(0);
    MeasuredCourse course =
        new MeasuredCourse(TemperatureHistory.constant(sure), until, 0, List.of());
    return DESK.reassess(ORDER, course).stage();
  }

  @Test
  void a_job_that_never_gets_there_has_not_moved() {
    JointOrder never = DeskData.order("2027-03-12T10:00", o -> o.put("temperatureC", 2));
    Reassessment again = DESK.reassess(never, course(18, Duration.ofHours(6)));
    assertEquals(Optional.empty(), again.planned().ready());
    assertEquals(Optional.empty(), again.moved());
  }

  private static Hole hole(int from, int to, double before, double after) {
    double taken = Math.min(before, after) - 5;
    return new Hole(Duration.ofHours(from), Duration.ofHours(to), taken, before, after);
  }

  @Test
  void holes_may_be_filled_straight_between_the_readings_around_them() {
    MeasuredCourse course =
        new MeasuredCourse(
            TemperatureHistory.constant(5),
            Duration.ofHours(12),
            0.5,
            List.of(hole(0, 1, 20, 20), hole(2, 4, 20, 10), hole(8, 10, 12, 16)));
    assertEquals(Duration.ofHours(5), course.missing());
    TemperatureHistory straight = course.withHolesStraight();
    assertEquals(20, straight.celsiusAt(1800), 1e-9);
    assertEquals(5, straight.celsiusAt(1.5 * 3600), 1e-9);
    assertEquals(15, straight.celsiusAt(3 * 3600), 1e-9);
    assertEquals(5, straight.celsiusAt(6 * 3600), 1e-9);
    assertEquals(14, straight.celsiusAt(9 * 3600), 1e-9);
    assertEquals(5, straight.celsiusAt(11 * 3600), 1e-9);
    Told filled =
        DESK.reassess(ORDER, course(10, Duration.ofHours(12), hole(2, 4, 20, 20)))
            .holesStraight()
            .orElseThrow();
    Told cold = DESK.reassess(ORDER, course(10, Duration.ofHours(12))).now();
    assertTrue(filled.ready().orElseThrow().isBefore(cold.ready().orElseThrow()));
  }

  /** From 15 °C down to -5 °C in four hours and back in two: below 5 °C half of each slope. */
  @Test
  void time_too_cold_for_the_class_is_told_by_where_the_log_crosses_its_limit() {
    TemperatureHistory night =
        TemperatureHistory.holdingLast(
            List.of(
                new TemperatureHistory.Point(0, 15),
                new TemperatureHistory.Point(4 * 3600, -5),
                new TemperatureHistory.Point(6 * 3600, 15)));
    MeasuredCourse course = new MeasuredCourse(night, Duration.ofHours(8), 0.5, List.of());
    Reassessment again = DESK.reassess(ORDER, course);
    double least = again.now().advice().decision().compound().orElseThrow().cure().minimumC();
    assertEquals(5, least);
    assertEquals(Duration.ofHours(3), again.tooCold());
    assertEquals(Duration.ZERO, DESK.reassess(ORDER, course(5, Duration.ofHours(6))).tooCold());
    assertEquals(
        Duration.ofHours(6), DESK.reassess(ORDER, course(4.9, Duration.ofHours(6))).tooCold());
  }

  @Test
  void the_later_of_plan_and_log_is_the_safe_one() {
    Reassessment cold = DESK.reassess(ORDER, course(10, Duration.ofHours(6)));
    assertEquals(cold.now(), cold.later());
    Reassessment warm = DESK.reassess(ORDER, course(30, Duration.ofHours(6)));
    assertTrue(warm.moved().orElseThrow().isNegative());
    assertEquals(warm.planned(), warm.later());
    JointOrder never = DeskData.order("2027-03-12T10:00", o -> o.put("temperatureC", 2));
    assertEquals(
        Optional.empty(), DESK.reassess(never, course(18, Duration.ofHours(6))).later().ready());
  }

  @Test
  void a_log_reaches_past_the_start_and_is_doubted_within_reason() {
    assertThrows(InvalidValue.class, () -> course(18, Duration.ZERO));
    assertThrows(InvalidValue.class, () -> course(18, Duration.ofSeconds(-1)));
    assertThrows(
        InvalidValue.class,
        () ->
            new MeasuredCourse(
                TemperatureHistory.constant(18), Duration.ofHours(1), 20.1, List.of()));
  }

  private static JointOrder doubtful() {
    return DeskData.order(
        "2027-03-12T10:00",
        o -> {
          o.put("temperatureC", 17);
          o.put("temperaturePlusMinusC", 2);
          o.put("primer", "none");
          ((ObjectNode) o.get("bore")).put("material", "aluminium-6061");
          ((ObjectNode) o.get("part")).put("arrivesAtC", 2);
          o.put("consequence", "stranding");
        });
  }

  @Test
  void every_doubtful_input_is_told_once_with_what_it_would_bring() {
    JointOrder order = doubtful();
    Told now = DESK.tell(order);
    List<Shift> shifts = DESK.shifts(order);
    Set<Input> inputs =
        shifts.stream()
            .map(Shift::input)
            .collect(Collectors.toCollection(() -> EnumSet.noneOf(Input.class)));
    assertEquals(EnumSet.allOf(Input.class), inputs);
    assertEquals(inputs.size(), shifts.size());
    Instant ready = now.ready().orElseThrow();
    for (Shift shift : shifts) {
      assertEquals(shift.sooner(), Duration.between(shift.ready(), ready));
      assertTrue(shift.sooner().toMinutes() > 0);
    }
    Shift gap = shifts.stream().filter(s -> s.input() == Input.GAP).findFirst().orElseThrow();
    double um = now.advice().gap().gap().lowerUm(order.confidence());
    String said = Math.round(um) + " µm radial (" + Math.round(2 * um) + " µm diametral)";
    assertTrue(gap.atBest().startsWith(said), gap.atBest() + " for " + said);
  }

  @Test
  void the_better_primer_is_told_and_none_where_one_is_used() {
    JointOrder order = doubtful();
    Instant best =
        DeskData.KNOWLEDGE.catalog().primers().values().stream()
            .map(p -> new JointOrder.PrimerPlan.Used(p, true, true, Duration.ZERO))
            .map(p -> DESK.tell(OrderChange.primer(fixed(order), p)).ready().orElseThrow())
            .min(Instant::compareTo)
            .orElseThrow();
    Shift primer =
        DESK.shifts(order).stream()
            .filter(s -> s.input() == Input.PRIMER)
            .findFirst()
            .orElseThrow();
    assertEquals(best, primer.ready());
    Primer solvent = DeskData.KNOWLEDGE.catalog().primers().get("primer-solvent");
    JointOrder primed =
        OrderChange.primer(
            order, new JointOrder.PrimerPlan.Used(solvent, true, true, Duration.ofMinutes(10)));
    assertTrue(DESK.shifts(primed).stream().noneMatch(s -> s.input() == Input.PRIMER));
  }

  private static JointOrder fixed(JointOrder order) {
    CompoundClass chosen = DESK.tell(order).advice().decision().compound().orElseThrow();
    return OrderChange.compound(order, chosen);
  }

  /** Half of all such joints: the stage of the policy, or fixture and its rest, the later. */
  @ParameterizedTest
  @ValueSource(strings = {"nuisance", "stranding", "injury"})
  void the_likely_time_is_that_of_the_stage_or_of_fixture_and_rest(String consequence) {
    JointOrder order = DeskData.order("2027-03-12T10:00", o -> o.put("consequence", consequence));
    Told told = DESK.tell(order);
    CureTimes cure = told.advice().cure().orElseThrow();
    Stage stage = DeskData.KNOWLEDGE.catalog().release().get(order.consequence()).stage();
    Duration reached = cure.at(stage).typical().orElseThrow();
    Duration rested = cure.at(Stage.FIXTURE).typical().orElseThrow().plusMinutes(15);
    Duration later = reached.compareTo(rested) > 0 ? reached : rested;
    assertEquals(Optional.of(order.start().plus(later)), told.likely());
  }

  @Test
  void a_promise_meets_a_wish_up_to_its_own_minute() {
    Told told = DESK.tell(ORDER);
    Instant promise = told.promise().orElseThrow().promise();
    assertTrue(told.meets(promise));
    assertFalse(told.meets(promise.minusSeconds(1)));
    JointOrder never = DeskData.order("2027-03-12T10:00", o -> o.put("temperatureC", 2));
    assertFalse(DESK.tell(never).meets(Instant.MAX));
  }

  @Test
  void the_strength_of_a_way_is_what_heat_and_primer_leave() {
    List<Option> options = DESK.options(ORDER, ORDER.start(), Optional.empty());
    assertTrue(options.stream().anyMatch(o -> o.primer().isPresent()));
    for (Option option : options) {
      CompoundClass compound = option.compound();
      double left =
          compound.strengthMPa().likely()
              * compound.hotFraction(ORDER.service().high()).likely()
              * option.primer().map(p -> p.strengthFactor().likely()).orElse(1.0);
      assertEquals(left, option.strengthMPa(), 1e-9);
      assertEquals(
          compound.permanence() == CompoundClass.Permanence.RELEASABLE, option.releasable());
    }
  }

  @Test
  void a_class_insisted_on_and_a_primer_already_on_are_kept_in_every_way() {
    CompoundClass chosen = DESK.tell(ORDER).advice().decision().compound().orElseThrow();
    CompoundClass asked =
        DESK.options(ORDER, ORDER.start(), Optional.empty()).stream()
            .map(Option::compound)
            .filter(c -> !c.equals(chosen))
            .findFirst()
            .orElseThrow();
    Primer solvent = DeskData.KNOWLEDGE.catalog().primers().get("primer-solvent");
    JointOrder order =
        OrderChange.primer(
            OrderChange.compound(ORDER, asked),
            new JointOrder.PrimerPlan.Used(solvent, true, true, Duration.ofMinutes(10)));
    List<Option> options = DESK.options(order, order.start(), Optional.empty());
    assertFalse(options.isEmpty());
    for (Option option : options) {
      assertEquals(asked.id(), option.compound().id());
      assertEquals(Optional.of("primer-solvent"), option.primer().map(Primer::id));
    }
  }

  @Test
  void a_log_says_nothing_of_a_joint_without_compound() {
    JointOrder dry =
        DeskData.order(
            "2027-03-12T10:00",
            o ->
                ((ObjectNode) o.get("part"))
                    .putArray("readingsMm")
                    .add(41.99)
                    .add(41.99)
                    .add(41.99));
    Reassessment again = DESK.reassess(dry, course(18, Duration.ofHours(6)));
    assertEquals(Optional.empty(), again.now().advice().decision().compound());
    assertEquals(OptionalDouble.empty(), again.measuredC());
    assertEquals(Optional.empty(), again.stage());
    assertEquals(again.now().ready(), again.now().likely());
  }
}
