package annulus.advice;

import annulus.catalog.CompoundClass;
import annulus.hold.HoldFactor;
import annulus.hold.Removal;
import annulus.quantity.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the cured joint carries, and what it takes to undo it.
 *
 * @param computable false for laminate and plastic members: no figure would be honest
 * @param bondCold axial hold of bond and grip at full strength and room temperature, N
 * @param bondHot axial hold of the bond at full strength and the highest service temperature, with
 *     the grip at the looser end of service, N
 * @param torqueHot torque at full strength and the highest service temperature, N·m
 * @param atHandBack axial hold at hand-back and the highest service temperature, N; empty when
 *     there is no hand-back
 * @param wantedN axial equivalent of the load times its safety factor, N; empty without a load
 * @param fractionWanted strength fraction that covers the load; empty without a load, above 1 when
 *     the joint never does
 * @param safety safety factor reached hot at full strength; empty without a load
 * @param factors what the specimen's strength was multiplied by
 * @param breakLoose axial force to undo the cold joint later, N: plan with the high end
 * @param breakLooseTorque torque to undo it, N·m
 * @param ways what is at hand to undo it, each judged
 * @param carriers other suitable classes that surely carry the load in time; looked for only where
 *     the chosen one never does
 */
public record HoldReport(
    boolean computable,
    Estimate bondCold,
    Estimate bondHot,
    Estimate torqueHot,
    Optional<Estimate> atHandBack,
    OptionalDouble wantedN,
    OptionalDouble fractionWanted,
    Optional<Estimate> safety,
    List<HoldFactor> factors,
    Estimate breakLoose,
    Estimate breakLooseTorque,
    List<Removal.Way> ways,
    List<CompoundClass> carriers) {
  public HoldReport {
    factors = List.copyOf(factors);
    ways = List.copyOf(ways);
    carriers = List.copyOf(carriers);
  }
}
