package annulus.hold;

import annulus.quantity.Check;
import annulus.quantity.Estimate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;

/**
 * What it takes to undo a joint later.
 *
 * @param hold the joint; taken as fully cured and cold, without knock-down for repeated load
 * @param hot share of the cold bond strength kept when warm
 * @param surroundings what is part of the joint or close to it
 * @param limits what the more fragile member bears
 */
public record Removal(
    HybridHold hold, HotStrength hot, Set<Surrounding> surroundings, Limits limits) {

  /** What is part of the joint or close to it. */
  public enum Surrounding {
    LAMINATE,
    PLASTIC,
    SEAL,
    PAINT,
    BATTERY,
    BEARING,
    BRITTLE
  }

  /**
   * What the more fragile member bears; empty where nobody has given a figure.
   *
   * @param axialN axial force, N
   * @param torqueNm torque, N·m
   * @param celsius temperature, °C
   */
  public record Limits(OptionalDouble axialN, OptionalDouble torqueNm, OptionalDouble celsius) {
    public Limits {
      axialN.ifPresent(v -> Check.positive("axialN", v, "N"));
      torqueNm.ifPresent(v -> Check.positive("torqueNm", v, "N·m"));
      celsius.ifPresent(v -> Check.within("celsius", v, 0, 1000, "°C"));
    }

    /** Nobody has given any. */
    public static Limits none() {
      return new Limits(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    }
  }

  /** Whether a tool will do. */
  public enum Outcome {
    /** It gives the high end, and the member bears it. */
    ENOUGH,
    /** It may do, or nobody can tell. */
    DOUBTFUL,
    /** It does not give even the likely force or torque. */
    NOT_ENOUGH,
    /** It must not be done. */
    REFUSED
  }

  /** Why an outcome is what it is. */
  public enum Reason {
    TOOL_TOO_WEAK,
    TOOL_BELOW_HIGH_END,
    MEMBER_LIMIT_BELOW_LIKELY,
    MEMBER_LIMIT_BELOW_HIGH_END,
    MEMBER_LIMIT_NOT_KNOWN,
    GRIP_NOT_KNOWN,
    BLOW_FORCE_NOT_KNOWN,
    BLOWS_MARK_BEARINGS,
    BLOWS_CHIP_BRITTLE,
    NO_BLOWS_ON_SEAL,
    NO_BLOWS_ON_LAMINATE,
    NO_BLOWS_ON_PLASTIC,
    NO_HEAT_ON_LAMINATE,
    NO_HEAT_ON_PLASTIC,
    NO_HEAT_NEAR_SEAL,
    NO_HEAT_ON_PAINT,
    NO_HEAT_NEAR_BATTERY,
    HEAT_ABOVE_MEMBER_LIMIT,
    HEAT_BEYOND_STRENGTH_DATA,
    NEEDS_PRESS_OR_TWIST_WHILE_HOT,
    BURNS_AND_FUMES
  }

  /**
   * One way to undo the joint.
   *
   * @param tool what is used
   * @param outcome whether it will do
   * @param axialN force to break it loose this way, N
   * @param torqueNm torque to break it loose this way, N·m
   * @param reasons why; empty only for a plain {@link Outcome#ENOUGH}
   */
  public record Way(
      Tool tool, Outcome outcome, Estimate axialN, Estimate torqueNm, Set<Reason> reasons) {
    public Way {
      reasons = Collections.unmodifiableSet(new TreeSet<>(reasons));
    }
  }

  public Removal {
    surroundings = Collections.unmodifiableSet(new TreeSet<>(surroundings));
    BondHold whole =
        hold.bond()
            .with(HoldFactor.Kind.STRENGTH_FRACTION, Estimate.exactly(1))
            .with(HoldFactor.Kind.HOT_STRENGTH, Estimate.exactly(1))
            .with(HoldFactor.Kind.DYNAMIC, Estimate.exactly(1));
    hold = new HybridHold(whole, hold.friction(), hold.limits());
  }

  /**
   * Axial force to break the cold joint loose.
   *
   * <p>{@code F_grip + F_bond} at full cure; a bond may be stronger than its class says, so plan
   * with the high end.
   *
   * @return N
   *     <p>Valid for: as {@link HybridHold#axialN}; the true force may be above it where the grip
   *     is not known.
   *     <p>Source: as {@link HybridHold#axialN}.
   */
  public Estimate breakLooseN() {
    return hold.axialN();
  }

  /** Torque to break the cold joint loose, N·m: {@code F d/2}. */
  public Estimate breakLooseTorqueNm() {
    return torque(breakLooseN());
  }

  /** Each tool at hand, judged. */
  public List<Way> ways(List<Tool> tools) {
    Estimate cold = breakLooseN();
    List<Way> ways = new ArrayList<>(tools.size());
    for (Tool tool : tools) {
      ways.add(way(tool, tools, cold));
    }
    return ways;
  }

  private Way way(Tool tool, List<Tool> tools, Estimate cold) {
    if (tool instanceof Tool.LocalHeat heat) {
      return heated(heat, tools, cold);
    }
    return tool instanceof Tool.Drift drift ? driven(drift, cold) : forced(tool, cold);
  }

  private Way forced(Tool tool, Estimate axialN) {
    Set<Reason> reasons = EnumSet.noneOf(Reason.class);
    boolean turns = tool instanceof Tool.Twist;
    Estimate need = turns ? torque(axialN) : axialN;
    double capacity =
        tool instanceof Tool.Twist t ? t.capacityNm() : ((Tool.Press) tool).capacityN();
    Outcome outcome =
        ForceJudge.judge(capacity, need, turns ? limits.torqueNm() : limits.axialN(), reasons);
    if (!hold.friction().isKnown()) {
      reasons.add(Reason.GRIP_NOT_KNOWN);
      outcome = outcome == Outcome.ENOUGH ? Outcome.DOUBTFUL : outcome;
    }
    return new Way(tool, outcome, axialN, torque(axialN), reasons);
  }

  private Way driven(Tool.Drift drift, Estimate cold) {
    Set<Reason> reasons = SurroundingRules.againstBlows(surroundings);
    Outcome outcome = reasons.isEmpty() ? Outcome.DOUBTFUL : Outcome.REFUSED;
    if (reasons.isEmpty()) {
      reasons.add(Reason.BLOW_FORCE_NOT_KNOWN);
      if (surroundings.contains(Surrounding.BEARING)) {
        reasons.add(Reason.BLOWS_MARK_BEARINGS);
      }
      if (surroundings.contains(Surrounding.BRITTLE)) {
        reasons.add(Reason.BLOWS_CHIP_BRITTLE);
      }
    }
    return new Way(drift, outcome, cold, torque(cold), reasons);
  }

  private Way heated(Tool.LocalHeat heat, List<Tool> tools, Estimate cold) {
    Set<Reason> refused = SurroundingRules.againstHeat(surroundings);
    if (heat.celsius() > limits.celsius().orElse(Double.POSITIVE_INFINITY)) {
      refused.add(Reason.HEAT_ABOVE_MEMBER_LIMIT);
    }
    return refused.isEmpty()
        ? allowedHeat(heat, tools)
        : new Way(heat, Outcome.REFUSED, cold, torque(cold), refused);
  }

  private Way allowedHeat(Tool.LocalHeat heat, List<Tool> tools) {
    Set<Reason> reasons = EnumSet.of(Reason.BURNS_AND_FUMES, Reason.NEEDS_PRESS_OR_TWIST_WHILE_HOT);
    Estimate left = breakLooseAtN(heat.celsius());
    Outcome best = bestWhileHot(tools, left, reasons);
    if (limits.celsius().isEmpty()) {
      reasons.add(Reason.MEMBER_LIMIT_NOT_KNOWN);
      best = best == Outcome.ENOUGH ? Outcome.DOUBTFUL : best;
    }
    if (hot.at(heat.celsius()).isEmpty()) {
      reasons.add(Reason.HEAT_BEYOND_STRENGTH_DATA);
      best = best == Outcome.ENOUGH ? Outcome.DOUBTFUL : best;
    }
    return new Way(heat, best, left, torque(left), reasons);
  }

  /** The best press or wrench at hand on the weakened joint; its reasons join the others. */
  private Outcome bestWhileHot(List<Tool> tools, Estimate left, Set<Reason> reasons) {
    Optional<Way> best =
        tools.stream()
            .filter(tool -> tool instanceof Tool.Press || tool instanceof Tool.Twist)
            .map(tool -> forced(tool, left))
            .min(Comparator.comparing(Way::outcome));
    best.ifPresent(way -> reasons.addAll(way.reasons()));
    return best.map(Way::outcome).orElse(Outcome.NOT_ENOUGH);
  }

  /** Force while warm, N: the bond weakened, the grip as it is; above the data the last share. */
  private Estimate breakLooseAtN(double celsius) {
    Optional<Estimate> share = hot.at(celsius);
    Estimate kept = share.orElse(hot.curve().last().value());
    HybridHold warm =
        new HybridHold(
            hold.bond().with(HoldFactor.Kind.HOT_STRENGTH, kept), hold.friction(), hold.limits());
    return warm.axialN();
  }

  private Estimate torque(Estimate axialN) {
    return Estimates.torqueNm(axialN, hold.bond().diameterMm());
  }
}
