package annulus.hold;

import annulus.quantity.Estimate;
import java.util.OptionalDouble;
import java.util.Set;

/** Judges a tool's force or torque against what is needed and what the member bears. */
final class ForceJudge {
  private ForceJudge() {}

  static Removal.Outcome judge(
      double capacity, Estimate need, OptionalDouble limit, Set<Removal.Reason> reasons) {
    if (limit.isPresent() && limit.getAsDouble() < need.likely()) {
      reasons.add(Removal.Reason.MEMBER_LIMIT_BELOW_LIKELY);
      return Removal.Outcome.REFUSED;
    }
    if (capacity < need.likely()) {
      reasons.add(Removal.Reason.TOOL_TOO_WEAK);
      return Removal.Outcome.NOT_ENOUGH;
    }
    if (capacity < need.high()) {
      reasons.add(Removal.Reason.TOOL_BELOW_HIGH_END);
    }
    if (limit.isEmpty()) {
      reasons.add(Removal.Reason.MEMBER_LIMIT_NOT_KNOWN);
    } else if (limit.getAsDouble() < need.high()) {
      reasons.add(Removal.Reason.MEMBER_LIMIT_BELOW_HIGH_END);
    }
    return reasons.isEmpty() ? Removal.Outcome.ENOUGH : Removal.Outcome.DOUBTFUL;
  }
}
