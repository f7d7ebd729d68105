package annulus.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.hipparchus.ode.ODEIntegrator;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The ring formulas against a numerical solution of radial equilibrium (hipparchus-ode). */
class PressFitIndependentTest {
  /** Displacement u and u' of an axially free ring: u'' + u'/r - u/r² = 0. */
  private static final OrdinaryDifferentialEquation EQUILIBRIUM =
      new OrdinaryDifferentialEquation() {
        @Override
        public int getDimension() {
          return 2;
        }

        @Override
        public double[] computeDerivatives(double r, double[] u) {
          return new double[] {u[1], u[0] / (r * r) - u[1] / r};
        }
      };

  private static double[] integrate(double from, double to, double u, double slope) {
    ODEIntegrator integrator = new DormandPrince853Integrator(1e-9, 1, 1e-13, 1e-13);
    ODEState start = new ODEState(from, new double[] {u, slope});
    return integrator.integrate(EQUILIBRIUM, start, to).getPrimaryState();
  }

  private static double radial(double e, double nu, double r, double[] u) {
    return e / (1 - nu * nu) * (u[1] + nu * u[0] / r);
  }

  private static double hoop(double e, double nu, double r, double[] u) {
    return e / (1 - nu * nu) * (u[0] / r + nu * u[1]);
  }

  /** State at the joint of a ring free at the other face and pressed with 1 MPa at the joint. */
  private static double[] underUnitPressure(double e, double nu, double free, double joint) {
    // Free face: u' = -nu u / r. One trial, then scaled: the equation is linear.
    double[] trial = integrate(free, joint, 1, -nu / free);
    double scale = -1 / radial(e, nu, joint, trial);
    return new double[] {trial[0] * scale, trial[1] * scale};
  }

  @ParameterizedTest
  @CsvSource({
    "42,50,36,40,68.9,0.33,207,0.292",
    "30,60,10,20,206,0.3,110,0.324",
    "500,600,400,100,210,0.3,68.9,0.33",
    "50,55,48,25,114,0.34,200,0.29"
  })
  void pressure_and_stresses_solve_the_equilibrium_of_both_rings(
      double d,
      double hub,
      double bore,
      double deltaUm,
      double eo,
      double no,
      double ei,
      double ni) {
    PressGeometry geometry = new PressGeometry(d, hub, bore, 10);
    double[] outer = underUnitPressure(eo * 1000, no, hub / 2, d / 2);
    double[] inner = underUnitPressure(ei * 1000, ni, bore / 2, d / 2);
    double pressure = deltaUm / 2000 / (outer[0] - inner[0]);
    assertEquals(
        pressure, PressFit.pressureMPa(geometry, eo, no, ei, ni, deltaUm), 1e-8 * pressure);
    RingStresses stresses = RingStresses.under(geometry, pressure);
    assertEquals(
        pressure * hoop(eo * 1000, no, d / 2, outer),
        stresses.hubBore().hoopMPa(),
        1e-8 * pressure);
    assertEquals(
        pressure * hoop(ei * 1000, ni, d / 2, inner),
        stresses.partOutside().hoopMPa(),
        1e-8 * pressure * 100);
  }
}
