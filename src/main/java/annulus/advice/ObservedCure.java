package annulus.advice;

import annulus.advice.Observation.Joint;
import annulus.advice.Observation.Pull;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.catalog.Stage;
import annulus.cure.ArrheniusRate;
import annulus.cure.CureCurve;
import annulus.cure.GapFactor;
import annulus.cure.Spread;
import annulus.cure.SurfaceActivity;
import annulus.quantity.Estimate;
import annulus.quantity.Units;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What the shipped data expect of a joint that was watched: likely values throughout. */
final class ObservedCure {
  private final Catalog catalog;
  private final CompoundClass.Cure cure;

  ObservedCure(Catalog catalog, CompoundClass.Cure cure) {
    this.catalog = catalog;
    this.cure = cure;
  }

  /**
   * A pair of faces.
   *
   * @param timeFactor on the reference time
   * @param sigmaLn spread of its logarithm
   */
  record Faces(double timeFactor, double sigmaLn) {}

  /** Hours at the reference temperature that a time at the joint's temperature is worth. */
  double hours(Joint joint, Duration after) {
    double rate =
        new ArrheniusRate(
                cure.activationKJ().likely(), cure.referenceC(), cure.minimumC(), cure.heldAboveC())
            .at(joint.celsius());
    return after.toMillis() / 3_600_000.0 * rate;
  }

  double gapFactor(Joint joint) {
    return GapFactor.of(joint.radialGapUm(), cure.referenceGapUm(), cure.gapExponent().likely());
  }

  /** Doubt of the logarithm of the rate: a rectangular doubt of the temperature times its slope. */
  double temperatureSigma(Joint joint, double plusMinusC) {
    double kelvin = Units.kelvin(joint.celsius());
    double slope = cure.activationKJ().likely() * 1000 / (Units.GAS_CONSTANT * kelvin * kelvin);
    return slope * plusMinusC / Math.sqrt(3);
  }

  /** Empty when such faces never start the cure. */
  Optional<Faces> faces(Joint joint) {
    OptionalDouble likely = timeFactor(joint, false);
    OptionalDouble low = timeFactor(joint, true);
    if (likely.isEmpty() || low.isEmpty()) {
      return Optional.empty();
    }
    double sigma = Math.log(low.getAsDouble() / likely.getAsDouble()) / Spread.LIMIT_Z;
    return Optional.of(new Faces(likely.getAsDouble(), Math.max(0, sigma)));
  }

  /** Hours at the reference temperature to the likely fixture; empty when it never cures. */
  Optional<Double> fixtureHours(Joint joint) {
    return faces(joint)
        .map(f -> cure.at(Stage.FIXTURE).hours() * f.timeFactor() * gapFactor(joint));
  }

  /** Strength that is likely when it is pulled, MPa; 0 when it never cures. */
  double strengthMPa(Pull pull, CompoundClass compound) {
    double primed = pull.joint().primer().map(p -> p.strengthFactor().likely()).orElse(1.0);
    return compound.strengthMPa().likely() * likelyFraction(pull.joint(), pull.after()) * primed;
  }

  private OptionalDouble timeFactor(Joint joint, boolean low) {
    return SurfaceActivity.surfaceFactor(
        face(joint.bore(), joint.primer(), low), face(joint.part(), joint.primer(), low));
  }

  private SurfaceActivity face(Activity.Level level, Optional<Primer> primer, boolean low) {
    double own = value(catalog.activities().get(level).rate(), low);
    SurfaceActivity bare =
        level == Activity.Level.INERT
            ? new SurfaceActivity.Inert(OptionalDouble.of(own))
            : new SurfaceActivity.Active(own);
    return primer.isPresent() ? bare.primed(value(primer.get().rate(), low)) : bare;
  }

  private static double value(Estimate estimate, boolean low) {
    return low ? estimate.low() : estimate.likely();
  }

  /** Share of full strength that is likely reached. */
  double likelyFraction(Joint joint, Duration after) {
    Optional<Faces> faces = faces(joint);
    if (faces.isEmpty()) {
      return 0;
    }
    List<CureCurve.Point> points = new ArrayList<>();
    cure.stages().forEach(s -> points.add(new CureCurve.Point(s.fraction(), s.hours())));
    double factor = faces.get().timeFactor() * gapFactor(joint);
    return new CureCurve(points).fractionAt(hours(joint, after) / factor);
  }
}
