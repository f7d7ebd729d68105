package annulus.advice;

import annulus.quantity.Estimate;
import java.util.OptionalDouble;

/**
 * What the cured joint carries.
 *
 * @param bondCold axial bond hold at full cure and room temperature, N
 * @param bondHot axial bond hold at full cure and the highest service temperature, N
 * @param torqueHot torque at full cure and the highest service temperature, N·m
 * @param wantedN axial equivalent of the load times its safety factor, N; empty without a load
 * @param fractionWanted strength fraction that covers the load; empty without a load, above 1 when
 *     the joint never does
 */
public record HoldReport(
    Estimate bondCold,
    Estimate bondHot,
    Estimate torqueHot,
    OptionalDouble wantedN,
    OptionalDouble fractionWanted) {}
