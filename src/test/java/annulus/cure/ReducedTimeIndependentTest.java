package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.cure.TemperatureHistory.Point;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.api.Test;

/**
 * The closed integration against Hipparchus' Dormand-Prince 8(5,3) integrator and against the
 * exponential integral. The rates are written out again here so that nothing is shared.
 */
class ReducedTimeIndependentTest {
  private static final double R = 8.314462618;

  private static double relativeRate(double kj, double referenceC, double celsius) {
    return Math.exp(-kj * 1000 / R * (1 / (celsius + 273.15) - 1 / (referenceC + 273.15)));
  }

  @Provide
  Arbitrary<TemperatureHistory> histories() {
    return Histories.any(-10, 45);
  }

  @Property(tries = 150)
  void an_ode_integrator_finds_the_same_reduced_time(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @DoubleRange(min = 20, max = 90) double kj,
      @ForAll @IntRange(min = 1, max = 200_000) int seconds) {
    Rate rate = new ArrheniusRate(kj, 22, -40, 100);
    double[] sum = {0};
    history.forEachPiece(
        seconds,
        (s, a, e, b) -> sum[0] += ode(e - s, t -> relativeRate(kj, 22, a + (b - a) * t / (e - s))));
    double hours = new ReducedTime(history, rate).hoursAt(seconds);
    assertEquals(sum[0] / 3600, hours, 2e-9 * hours);
  }

  @Property(tries = 150)
  void an_ode_integrator_agrees_where_pieces_cross_every_limit(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @IntRange(min = 1, max = 200_000) int seconds) {
    Rate rate = SlowestRate.between(38, 55, 22, 5, 35);
    double[] sum = {0};
    history.forEachPiece(
        seconds, (s, a, e, b) -> sum[0] += betweenCuts(e - s, a, b, new double[] {5, 22, 35}));
    double hours = new ReducedTime(history, rate).hoursAt(seconds);
    assertEquals(sum[0] / 3600, hours, 2e-9 * hours + 1e-12);
  }

  private static double slow(double celsius) {
    double held = Math.min(celsius, 35);
    return celsius < 5 ? 0 : Math.min(relativeRate(38, 22, held), relativeRate(55, 22, held));
  }

  /** Integrates over temperature between the places where the rate has a corner. */
  private static double betweenCuts(double seconds, double a, double b, double[] cuts) {
    if (a == b) {
      return slow(a) * seconds;
    }
    double sum = 0;
    double low = Math.min(a, b);
    double high = Math.max(a, b);
    double from = low;
    for (int i = 0; i <= cuts.length; i++) {
      double to = i == cuts.length ? high : Math.min(high, Math.max(low, cuts[i]));
      if (to > from) {
        double start = from;
        double middle = (from + to) / 2;
        sum += middle < 5 ? 0 : ode(to - from, t -> slow(start + t));
        from = to;
      }
    }
    return sum * seconds / (high - low);
  }

  private interface Curve {
    double at(double t);
  }

  private static double ode(double length, Curve curve) {
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return 1;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            return new double[] {curve.at(t)};
          }
        };
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(length * 1e-9, length, 1e-13, 1e-12);
    return integrator.integrate(equation, new ODEState(0, new double[] {0}), length)
        .getPrimaryState()[0];
  }

  /** E1 by its continued fraction (Abramowitz and Stegun 5.1.22), good for large arguments. */
  private static double scaledE1(double x) {
    double fraction = 0;
    for (int n = 80; n >= 1; n--) {
      fraction = n / (1 + n / (x + fraction));
    }
    return 1 / (x + fraction);
  }

  /** ∫ exp(−b/T) dT = T·exp(−b/T) − b·E1(b/T), exponent taken out. */
  private static double antiderivative(double kelvin, double b, double kelvinRef) {
    double x = b / kelvin;
    return Math.exp(-b * (1 / kelvin - 1 / kelvinRef)) * (kelvin - b * scaledE1(x));
  }

  @Property(tries = 500)
  void the_exponential_integral_finds_the_same_on_a_ramp(
      @ForAll @DoubleRange(min = -75, max = 100) double fromC,
      @ForAll @DoubleRange(min = 20, max = 200) double rise,
      @ForAll @DoubleRange(min = 20, max = 150) double kj) {
    double b = kj * 1000 / R;
    double first = fromC + 273.15;
    double last = fromC + rise + 273.15;
    double exact = antiderivative(last, b, 295.15) - antiderivative(first, b, 295.15);
    Rate rate = new ArrheniusRate(kj, 22, -80, 300);
    double hours = PieceIntegral.hours(rate, 3600 * rise, fromC, fromC + rise);
    assertEquals(exact, hours, 2e-9 * exact);
  }

  @Test
  void the_steepest_rate_allowed_keeps_the_stated_error() {
    double b = 150_000 / R;
    double exact = antiderivative(253.15, b, 295.15) - antiderivative(193.15, b, 295.15);
    double hours = PieceIntegral.hours(new ArrheniusRate(150, 22, -80, 300), 3600 * 60, -80, -20);
    assertEquals(exact, hours, 1e-9 * exact);
  }

  @Test
  void a_ramp_of_almost_nothing_equals_a_constant() {
    Rate rate = new ArrheniusRate(45, 22, 5, 60);
    double ramp = PieceIntegral.hours(rate, 7200, 17, Math.nextUp(17.0));
    assertEquals(2 * relativeRate(45, 22, 17), ramp, 1e-11);
  }

  @Test
  void a_week_of_seconds_adds_up_like_the_pieces_it_was_cut_from() {
    Rate rate = new ArrheniusRate(45, 22, 5, 60);
    TemperatureHistory night = ReducedTimePublishedTest.coldNight();
    CureAccumulator seconds = new CureAccumulator(rate, 10, 1e6);
    int week = 7 * 24 * 3600;
    for (int i = 0; i < week; i++) {
      seconds.piece(i, night.celsiusAt(i), i + 1.0, night.celsiusAt(i + 1.0));
    }
    ReducedTime whole = new ReducedTime(night, rate);
    assertEquals(whole.hoursAt(week), seconds.hours(), 1e-10 * seconds.hours());
    double tenHours = whole.secondsToReach(10).orElseThrow();
    assertEquals(tenHours, seconds.reachedAt(0).orElseThrow(), 1e-5);
    assertTrue(seconds.reachedAt(1).isEmpty());
  }

  @Property(tries = 200)
  void the_accumulator_follows_any_history(
      @ForAll("histories") TemperatureHistory history,
      @ForAll @IntRange(min = 1, max = 300_000) int seconds) {
    Rate rate = SlowestRate.between(38, 55, 22, 5, 35);
    ReducedTime reduced = new ReducedTime(history, rate);
    double half = reduced.hoursAt(seconds) / 2;
    CureAccumulator streamed = new CureAccumulator(rate, half);
    AtomicInteger pieces = new AtomicInteger();
    history.forEachPiece(
        seconds,
        (s, a, e, b) -> {
          pieces.incrementAndGet();
          streamed.piece(s, a, e, b);
        });
    assertTrue(pieces.get() > 0);
    assertEquals(2 * half, streamed.hours(), 1e-11 * half + 1e-12);
    double reached = streamed.reachedAt(0).orElseThrow();
    // The time is promised to 1e-6 s; at these rates a second is worth at most about an hour/3600.
    assertEquals(half, reduced.hoursAt(reached), 1e-9 * half + 1e-6 / 3600);
  }

  @Test
  void points_of_a_history_need_no_piece_for_a_step() {
    TemperatureHistory step =
        TemperatureHistory.holdingLast(
            List.of(new Point(0, 10), new Point(60, 10), new Point(60, 30)));
    AtomicInteger pieces = new AtomicInteger();
    step.forEachPiece(120, (s, a, e, b) -> pieces.incrementAndGet());
    assertEquals(2, pieces.get());
  }
}
