package annulus.bench;

import annulus.cure.Rate;
import annulus.cure.TemperatureHistory;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.ODEStateAndDerivative;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.events.Action;
import org.hipparchus.ode.events.AdaptableInterval;
import org.hipparchus.ode.events.ODEEventDetector;
import org.hipparchus.ode.events.ODEEventHandler;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/** The cure as a general integrator does it: dτ/dt = A(T(t)) from corner to corner, with events. */
final class CureOde {
  private final double[] corners;
  private final double[] celsius;
  private final Rate rate;
  private final double[] targets;
  private final double tolerance;

  /**
   * @param corners times of a history's corners, s
   * @param celsius temperatures there, °C
   * @param targets reduced hours wanted, rising
   */
  CureOde(double[] corners, double[] celsius, Rate rate, double[] targets, double tolerance) {
    this.corners = corners.clone();
    this.celsius = celsius.clone();
    this.rate = rate;
    this.targets = targets.clone();
    this.tolerance = tolerance;
  }

  /** The corners of a history over some seconds. */
  static double[][] corners(TemperatureHistory history, double seconds) {
    java.util.ArrayList<double[]> all = new java.util.ArrayList<>();
    history.forEachPiece(seconds, (s, sc, e, ec) -> all.add(new double[] {s, sc, e, ec}));
    double[][] result = new double[2][all.size() + 1];
    for (int i = 0; i < all.size(); i++) {
      result[0][i] = all.get(i)[0];
      result[1][i] = all.get(i)[1];
      result[0][i + 1] = all.get(i)[2];
      result[1][i + 1] = all.get(i)[3];
    }
    return result;
  }

  /** When each target is reached, s. */
  double[] times() {
    double[] reached = new double[targets.length];
    double gathered = 0;
    int next = 0;
    for (int i = 1; i < corners.length && next < targets.length; i++) {
      Piece piece = new Piece(corners[i - 1], celsius[i - 1], corners[i], celsius[i]);
      DormandPrince853Integrator integrator =
          new DormandPrince853Integrator(1e-3, 1e6, tolerance, tolerance);
      Reach[] wanted = new Reach[targets.length - next];
      for (int k = next; k < targets.length; k++) {
        wanted[k - next] = new Reach(targets[k]);
        integrator.addEventDetector(wanted[k - next]);
      }
      ODEStateAndDerivative end =
          integrator.integrate(
              piece, new ODEState(corners[i - 1], new double[] {gathered}), corners[i]);
      gathered = end.getPrimaryState()[0];
      for (Reach reach : wanted) {
        if (!Double.isNaN(reach.at)) {
          reached[next++] = reach.at;
        }
      }
    }
    return reached;
  }

  private final class Piece implements OrdinaryDifferentialEquation {
    private final double start;
    private final double startC;
    private final double perSecond;

    Piece(double start, double startC, double end, double endC) {
      this.start = start;
      this.startC = startC;
      this.perSecond = (endC - startC) / (end - start);
    }

    @Override
    public int getDimension() {
      return 1;
    }

    @Override
    public double[] computeDerivatives(double t, double[] y) {
      return new double[] {rate.at(startC + perSecond * (t - start)) / 3600};
    }
  }

  private static final class Reach implements ODEEventDetector {
    private final double target;
    private double at = Double.NaN;

    Reach(double target) {
      this.target = target;
    }

    @Override
    public AdaptableInterval getMaxCheckInterval() {
      return (state, forward) -> 1e9;
    }

    @Override
    public int getMaxIterationCount() {
      return 100;
    }

    @Override
    public BracketingNthOrderBrentSolver getSolver() {
      return new BracketingNthOrderBrentSolver(0, 1e-7, 0, 5);
    }

    @Override
    public double g(ODEStateAndDerivative state) {
      return state.getPrimaryState()[0] - target;
    }

    @Override
    public ODEEventHandler getHandler() {
      return (state, detector, increasing) -> {
        at = state.getTime();
        return Action.CONTINUE;
      };
    }
  }
}
