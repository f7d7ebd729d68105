package annulus.bench;

import annulus.cure.CureCurve;
import annulus.cure.CureForecast;
import annulus.cure.CureModel;
import annulus.cure.Rate;
import annulus.cure.SlowestRate;
import annulus.cure.Spread;
import annulus.cure.TemperatureHistory;
import annulus.cure.TemperatureHistory.Point;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * When a joint reaches its four stages in a shop that is warm by day and cold by night, surely,
 * beside a general integrator of differential equations at the same error.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class CureBench {
  /** Both to this, s. */
  private static final double SAME_ERROR_S = 1e-6;

  private static final double HOUR = 3600;
  private static final double[] FRACTIONS = {0.005, 0.2, 0.55, 0.97};

  private TemperatureHistory day;
  private CureModel model;
  private double[][] corners;
  private double[] targets;
  private CureOde ode;

  /** Finds the loosest tolerance at which the integrator is as good. */
  @Setup
  public void setUp() {
    day =
        TemperatureHistory.repeating(
            List.of(
                new Point(0, 18),
                new Point(2 * HOUR, 19),
                new Point(8 * HOUR, 21),
                new Point(9 * HOUR, 17),
                new Point(14 * HOUR, 12),
                new Point(20 * HOUR, 10),
                new Point(22 * HOUR, 16),
                new Point(24 * HOUR, 18)),
            24 * HOUR);
    Rate slow = SlowestRate.between(38, 55, 22, 5, 40);
    CureCurve curve =
        new CureCurve(
            List.of(
                new CureCurve.Point(0.005, 0.4),
                new CureCurve.Point(0.2, 2),
                new CureCurve.Point(0.55, 8),
                new CureCurve.Point(0.97, 24),
                new CureCurve.Point(1, 72)));
    model = new CureModel(1, 1.2, 1, curve, slow, slow, new Spread(0.33));
    double[] ours = integral();
    targets = new double[FRACTIONS.length];
    for (int i = 0; i < targets.length; i++) {
      targets[i] = model.hoursNeeded(FRACTIONS[i], 0.95).orElseThrow();
    }
    corners = CureOde.corners(day, 30 * 24 * HOUR);
    for (double tolerance = 1e-4; tolerance > 1e-16; tolerance /= 10) {
      ode = new CureOde(corners[0], corners[1], slow, targets, tolerance);
      if (difference(ours, ode.times()) <= SAME_ERROR_S) {
        return;
      }
    }
    throw new IllegalStateException("the integrator never comes within " + SAME_ERROR_S + " s");
  }

  private static double difference(double[] a, double[] b) {
    double most = 0;
    for (int i = 0; i < a.length; i++) {
      most = Math.max(most, Math.abs(a[i] - b[i]));
    }
    return most;
  }

  /** Ours, from the history to the four times. */
  @Benchmark
  public double[] integral() {
    CureForecast forecast = model.in(day);
    double[] times = new double[FRACTIONS.length];
    for (int i = 0; i < times.length; i++) {
      times[i] = forecast.secondsTo(FRACTIONS[i], 0.95).orElseThrow();
    }
    return times;
  }

  /** The integrator, from the corners to the four times. */
  @Benchmark
  public double[] integrator() {
    return ode.times();
  }
}
