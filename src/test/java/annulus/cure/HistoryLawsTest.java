package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.TemperatureHistory.Point;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Laws of temperature histories, and parts that warm and cool by Newton's law in closed form. */
class HistoryLawsTest {
  @Provide
  Arbitrary<TemperatureHistory> rooms() {
    return Histories.any(-5, 40);
  }

  /** A log with another history after it, begun later, is the same history on another clock. */
  @Property(tries = 300)
  void a_history_begun_later_shows_the_same_temperatures(
      @ForAll("rooms") TemperatureHistory log,
      @ForAll("rooms") TemperatureHistory plan,
      @ForAll @IntRange(min = 1, max = 20_000) int joined,
      @ForAll @IntRange(min = 0, max = 200_000) int later,
      @ForAll @IntRange(min = 0, max = 200_000) int asked) {
    TemperatureHistory whole = log.then(joined, plan);
    Statistics.label("plan").collect(plan.repeats() ? "repeats" : "holds");
    Statistics.label("begun").collect(later < joined ? "in the log" : "in the plan");
    assertEquals(whole.celsiusAt(later + asked), whole.from(later).celsiusAt(asked), 1e-6);
    double expected =
        asked < joined ? log.celsiusAt(asked) : plan.celsiusAt((double) asked - joined);
    assertEquals(expected, whole.celsiusAt(asked), 1e-6);
    TemperatureHistory twice = whole.from(later).from(asked);
    assertEquals(whole.celsiusAt(later + asked + 777), twice.celsiusAt(777), 1e-6);
  }

  @Test
  void a_day_that_repeats_is_the_same_every_day_from_any_hour() {
    TemperatureHistory day =
        TemperatureHistory.repeating(
            List.of(new Point(0, 8), new Point(21_600, 20), new Point(64_800, 20)), 86_400);
    TemperatureHistory log = TemperatureHistory.constant(15).then(3_600, day);
    for (int hour = 0; hour < 60; hour++) {
      TemperatureHistory begun = log.from(hour * 3600.0);
      for (int more = 0; more < 60; more++) {
        double clock = hour + more - 1.0;
        double inDay = clock % 24;
        double expected = clock < 0 ? 15 : inDay < 6 ? 8 + 2 * inDay : 20;
        assertEquals(expected, begun.celsiusAt(more * 3600.0), 1e-9, hour + " + " + more);
      }
    }
  }

  @Test
  void points_out_of_order_make_no_history() {
    List<List<Point>> wrong =
        List.of(
            List.of(),
            List.of(new Point(1, 20)),
            List.of(new Point(0, 20), new Point(10, 20), new Point(9, 20)),
            List.of(new Point(0, 20), new Point(5, 1), new Point(5, 2), new Point(5, 3)));
    for (List<Point> points : wrong) {
      assertThrows(InvalidValue.class, () -> TemperatureHistory.holdingLast(points));
      assertThrows(InvalidValue.class, () -> TemperatureHistory.repeating(points, 100));
    }
    InvalidValue late =
        assertThrows(InvalidValue.class, () -> TemperatureHistory.holdingLast(wrong.get(2)));
    assertEquals("9 s comes after a later point", late.problem());
    assertEquals("at least 10 s", late.allowed());
    List<Point> day = List.of(new Point(0, 20), new Point(100, 10));
    assertEquals(10, TemperatureHistory.repeating(day, 100).celsiusAt(99.9999999), 1e-6);
    assertThrows(InvalidValue.class, () -> TemperatureHistory.repeating(day, 99.9));
  }

  /**
   * Newton's law in closed form: the figure is never warmer than the exact one, at any moment, and
   * within 0.8 % of the first difference of it.
   */
  @ParameterizedTest
  @CsvSource({"5, 20", "35, 20", "-10, 0", "60, 15"})
  void a_part_in_a_room_is_never_warmer_than_newtons_law_nor_much_colder(
      double startC, double roomC) {
    BodyWarmUp ring = BodyWarmUp.ring(62, 42, 12, 7850, 486, new Interval(8, 8));
    double constant = ring.timeConstantSeconds(8);
    double near = 0.012 * Math.abs(startC - roomC);
    TemperatureHistory room = TemperatureHistory.constant(roomC);
    TemperatureHistory course = ring.course(startC, roomC);
    TemperatureHistory followed =
        ring.following(startC, room, 4 * constant, 4 * constant / 20_000.0);
    for (int i = 0; i < 400; i++) {
      double seconds = i * constant / 101;
      double exact = roomC + (startC - roomC) * Math.exp(-seconds / constant);
      for (TemperatureHistory part : List.of(course, followed)) {
        double here = part.celsiusAt(seconds);
        assertTrue(here <= exact + 1e-9, here + " above " + exact + " at " + seconds);
        assertTrue(here >= exact - near, here + " far below " + exact + " at " + seconds);
      }
    }
  }

  @Test
  void a_part_as_warm_as_the_room_stays_so() {
    BodyWarmUp ring = BodyWarmUp.ring(62, 42, 12, 7850, 486, new Interval(4, 16));
    assertEquals(20, ring.course(20, 20).celsiusAt(1000));
    assertEquals(20, ring.course(20, 20).coldestC());
  }

  @Test
  void an_inert_face_is_credited_a_rate_above_nothing_or_none() {
    assertEquals(OptionalDouble.empty(), SurfaceActivity.Inert.always().rateBesideActive());
    assertThrows(InvalidValue.class, () -> new SurfaceActivity.Inert(OptionalDouble.of(0)));
  }

  @Test
  void a_quantile_is_checked_even_for_a_stage_never_reached() {
    CureCurve curve =
        new CureCurve(List.of(new CureCurve.Point(0.1, 1), new CureCurve.Point(0.9, 24)));
    Rate rate = new ArrheniusRate(45, 22, 5, 60);
    CureModel model = new CureModel(1, 1, 1, curve, rate, rate, new Spread(0.3));
    assertTrue(model.hoursNeeded(0.95, 0.5).isEmpty());
    assertThrows(InvalidValue.class, () -> model.hoursNeeded(0.95, 0));
  }
}
