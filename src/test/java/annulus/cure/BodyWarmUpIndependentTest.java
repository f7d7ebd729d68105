package annulus.cure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Interval;
import java.util.List;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.statistics.Statistics;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/** A part in a changing room against Hipparchus' Dormand-Prince integrator. */
class BodyWarmUpIndependentTest {
  private static final double HORIZON = 100_000;

  @Provide
  Arbitrary<TemperatureHistory> rooms() {
    return Histories.any(-5, 40);
  }

  @Property(tries = 100)
  void a_part_is_never_warmer_than_the_equation_says_for_any_transfer_in_the_range(
      @ForAll("rooms") TemperatureHistory room,
      @ForAll @DoubleRange(min = -10, max = 60) double startC,
      @ForAll @DoubleRange(min = 4, max = 16) double transfer) {
    BodyWarmUp ring = BodyWarmUp.ring(62, 42, 12, 7850, 486, new Interval(4, 16));
    TemperatureHistory part = ring.following(startC, room, HORIZON, HORIZON / 20_000.0);
    double constant = ring.timeConstantSeconds(transfer);
    double[] exact = {startC};
    room.forEachPiece(
        HORIZON,
        (from, fromC, to, toC) -> {
          exact[0] = ode(exact[0], constant, to - from, fromC, toC);
          double here = to < HORIZON ? part.celsiusAt(to) : room.coldestC();
          Statistics.label("part").collect(here < exact[0] - 3 ? "much colder" : "close");
          assertTrue(here <= exact[0] + 1e-6, here + " is warmer than " + exact[0]);
        });
  }

  @Property(tries = 100)
  void a_part_of_known_transfer_follows_the_equation_closely(
      @ForAll @DoubleRange(min = -10, max = 60) double startC,
      @ForAll @DoubleRange(min = 0, max = 40) double fromC,
      @ForAll @DoubleRange(min = 0, max = 40) double toC) {
    BodyWarmUp ring = BodyWarmUp.ring(62, 42, 12, 7850, 486, new Interval(8, 8));
    double day = 86_400;
    TemperatureHistory room =
        TemperatureHistory.holdingLast(
            List.of(
                new TemperatureHistory.Point(0, fromC), new TemperatureHistory.Point(day, toC)));
    TemperatureHistory part = ring.following(startC, room, day, day / 20_000.0);
    double constant = ring.timeConstantSeconds(8);
    for (int hour = 1; hour < 24; hour++) {
      double hereRoom = fromC + (toC - fromC) * hour / 24;
      double exact = ode(startC, constant, hour * 3600.0, fromC, hereRoom);
      assertEquals(exact, part.celsiusAt(hour * 3600.0), 0.2);
    }
  }

  private static double ode(double startC, double constant, double length, double a, double b) {
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return 1;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            return new double[] {(a + (b - a) * t / length - y[0]) / constant};
          }
        };
    return new DormandPrince853Integrator(length * 1e-9, length, 1e-11, 1e-11)
        .integrate(equation, new ODEState(0, new double[] {startC}), length)
        .getPrimaryState()[0];
  }
}
