package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.CureCurve.Point;
import java.util.List;
import java.util.OptionalDouble;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Scale;
import net.jqwik.api.statistics.Statistics;

class CurePropertyTest {
  private static final Rate TYPICAL = new ArrheniusRate(45, 22, 5, 40);
  private static final Rate SLOW = SlowestRate.between(38, 55, 22, 5, 40);
  private static final CureCurve CURVE =
      new CureCurve(
          List.of(new Point(0.1, 0.4), new Point(0.55, 4), new Point(0.8, 12), new Point(1, 24)));

  private static CureModel model(double factor, double sigma) {
    return new CureModel(factor, 1, 1, CURVE, TYPICAL, SLOW, new Spread(sigma));
  }

  @Provide
  Arbitrary<TemperatureHistory> histories() {
    return Histories.any(-5, 45);
  }

  @Provide
  Arbitrary<List<TemperatureHistory.Point>> points() {
    return Histories.points(-5, 40);
  }

  private static double orNever(OptionalDouble seconds) {
    return seconds.orElse(Double.POSITIVE_INFINITY);
  }

  @Property
  void a_warmer_place_never_cures_later(
      @ForAll("points") List<TemperatureHistory.Point> points,
      @ForAll @DoubleRange(min = 0, max = 20) double warmer,
      @ForAll @DoubleRange(min = 0.01, max = 60) double hours) {
    List<TemperatureHistory.Point> warm =
        points.stream()
            .map(p -> new TemperatureHistory.Point(p.seconds(), p.celsius() + warmer))
            .toList();
    ReducedTime cold = new ReducedTime(TemperatureHistory.holdingLast(points), SLOW);
    ReducedTime hot = new ReducedTime(TemperatureHistory.holdingLast(warm), SLOW);
    double first = orNever(hot.secondsToReach(hours));
    double second = orNever(cold.secondsToReach(hours));
    Statistics.label("cold one").collect(second < Double.POSITIVE_INFINITY ? "ends" : "never");
    assertTrue(first <= second + 1e-5, first + " after " + second);
  }

  @Property
  void a_later_start_never_ends_sooner(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @IntRange(min = 0, max = 200_000) int start,
      @ForAll @IntRange(min = 0, max = 100_000) int later,
      @ForAll @DoubleRange(min = 0.01, max = 60) double hours) {
    double early =
        start + orNever(new ReducedTime(history.from(start), TYPICAL).secondsToReach(hours));
    double late =
        start
            + later
            + orNever(
                new ReducedTime(history.from((double) start + later), TYPICAL)
                    .secondsToReach(hours));
    Statistics.label("early start").collect(early < Double.POSITIVE_INFINITY ? "ends" : "never");
    assertTrue(early <= late + 1e-4, early + " after " + late);
  }

  @Property
  void a_history_seen_from_later_has_the_same_temperatures(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @IntRange(min = 0, max = 200_000) int start,
      @ForAll @IntRange(min = 0, max = 200_000) int after) {
    double halfSecond = after + 0.5;
    assertEquals(
        history.celsiusAt(start + halfSecond), history.from(start).celsiusAt(halfSecond), 1e-9);
  }

  @Property
  void a_history_joined_to_another_is_each_in_its_time(
      @ForAll("histories") TemperatureHistory first,
      @ForAll("histories") TemperatureHistory second,
      @ForAll @IntRange(min = 1, max = 200_000) int at,
      @ForAll @IntRange(min = 0, max = 300_000) int seen) {
    double halfSecond = seen + 0.5;
    double expected =
        halfSecond < at ? first.celsiusAt(halfSecond) : second.celsiusAt(halfSecond - at);
    assertEquals(expected, first.then(at, second).celsiusAt(halfSecond), 1e-9);
    Statistics.label("side").collect(halfSecond < at);
  }

  @Property
  void the_time_found_is_the_earliest_that_reaches_the_amount(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @DoubleRange(min = 0.01, max = 400) double hours) {
    ReducedTime reduced = new ReducedTime(history, SLOW);
    OptionalDouble found = reduced.secondsToReach(hours);
    Statistics.label("found").collect(found.isPresent());
    if (found.isPresent()) {
      double at = found.getAsDouble();
      assertEquals(hours, reduced.hoursAt(at), 1e-9 * hours);
      double before = reduced.hoursAt(Math.max(0, at - 1e-3));
      assertTrue(before < hours, "already reached a millisecond before");
    } else {
      assertTrue(reduced.hoursAt(1e9) < hours);
    }
  }

  @Property
  void the_time_of_an_amount_is_never_after_the_time_it_was_taken_at(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @IntRange(min = 0, max = 2_000_000) int seconds) {
    ReducedTime reduced = new ReducedTime(history, SLOW);
    double found = reduced.secondsToReach(reduced.hoursAt(seconds)).orElseThrow();
    assertTrue(found <= seconds + 1e-5, found + " after " + seconds);
  }

  @Property
  void reduced_time_never_falls(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @IntRange(min = 0, max = 2_000_000) int seconds,
      @ForAll @IntRange(min = 1, max = 1_000) int more) {
    ReducedTime reduced = new ReducedTime(history, SLOW);
    double before = reduced.hoursAt(seconds);
    assertTrue(reduced.hoursAt((double) seconds + more) >= before - 1e-12 * before);
  }

  @Property
  void a_stretch_below_the_minimum_adds_nothing_but_its_length(
      @ForAll("points") List<TemperatureHistory.Point> points,
      @ForAll @DoubleRange(min = -40, max = 4.9) double frost,
      @ForAll @IntRange(min = 1, max = 100_000) int length,
      @ForAll @DoubleRange(min = 0.01, max = 60) double hours) {
    TemperatureHistory after = TemperatureHistory.holdingLast(points);
    TemperatureHistory frozen = TemperatureHistory.constant(frost).then(length, after);
    assertEquals(0, new ReducedTime(frozen, SLOW).hoursAt(length));
    double plain = orNever(new ReducedTime(after, SLOW).secondsToReach(hours));
    double delayed = orNever(new ReducedTime(frozen, SLOW).secondsToReach(hours));
    if (plain < Double.POSITIVE_INFINITY) {
      assertEquals(plain + length, delayed, 1e-5);
    } else {
      assertEquals(plain, delayed);
    }
  }

  @Property
  void a_wider_spread_is_never_earlier_above_the_middle(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @DoubleRange(min = 0, max = 1) double sigma,
      @ForAll @DoubleRange(min = 0, max = 1) double wider,
      @ForAll @DoubleRange(min = 0.5, max = 0.999) @Scale(3) double quantile,
      @ForAll @DoubleRange(min = 0, max = 1) double fraction) {
    double narrow = orNever(model(1, sigma).in(history).secondsTo(fraction, quantile));
    double wide = orNever(model(1, sigma + wider).in(history).secondsTo(fraction, quantile));
    assertTrue(narrow <= wide + 1e-5);
  }

  @Property
  void surer_fuller_or_slower_is_never_earlier(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @DoubleRange(min = 0.001, max = 0.999) @Scale(3) double quantile,
      @ForAll @DoubleRange(min = 0, max = 1) double fraction,
      @ForAll @DoubleRange(min = 0.2, max = 5) double factor) {
    double here = orNever(model(factor, 0.3).in(history).secondsTo(fraction, quantile));
    double surer = (quantile + 0.999) / 2;
    double fuller = (fraction + 1) / 2;
    CureForecast same = model(factor, 0.3).in(history);
    CureForecast slower = model(factor * 1.1, 0.3).in(history);
    assertTrue(here <= orNever(same.secondsTo(fraction, surer)) + 1e-5);
    assertTrue(here <= orNever(same.secondsTo(fuller, quantile)) + 1e-5);
    assertTrue(here <= orNever(slower.secondsTo(fraction, quantile)) + 1e-5);
  }

  @Property
  void fraction_time_and_probability_invert_one_another(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @DoubleRange(min = 0.02, max = 0.98) double quantile,
      @ForAll @DoubleRange(min = 0.1, max = 1) double fraction) {
    CureForecast forecast = model(1.7, 0.3).in(history);
    OptionalDouble seconds = forecast.secondsTo(fraction, quantile);
    Statistics.label("ends").collect(seconds.isPresent());
    if (seconds.isPresent()) {
      double at = seconds.getAsDouble() + 1e-3;
      assertTrue(forecast.fractionAt(at, quantile) >= fraction - 1e-6);
      assertTrue(forecast.probabilityReached(fraction, at) >= quantile - 1e-6);
    }
  }

  @Property
  void no_rate_falls_as_it_gets_warmer(
      @ForAll @DoubleRange(min = -20, max = 60) double celsius,
      @ForAll @DoubleRange(min = 0, max = 30) double warmer) {
    for (Rate rate : List.of(TYPICAL, SLOW)) {
      assertTrue(rate.at(celsius) <= rate.at(celsius + warmer));
    }
    assertTrue(SLOW.at(celsius) <= TYPICAL.at(celsius));
  }
}
