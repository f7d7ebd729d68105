package annulus.report;

import annulus.advice.Advice;
import annulus.advice.HoldReport;
import annulus.advice.JointOrder;
import annulus.advice.Member;
import annulus.hold.Removal;
import annulus.hold.Tool;
import annulus.measure.Side;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The words for undoing a joint: the force, and each tool judged. */
final class RemovalTexts {
  private final Advice advice;
  private final JointOrder order;

  RemovalTexts(Advice advice) {
    this.advice = advice;
    this.order = advice.order();
  }

  /** Lines on undoing the joint later; empty where nothing is bonded. */
  List<String> lines() {
    Optional<HoldReport> hold = advice.hold();
    if (hold.isEmpty()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    if (nothingWillDo(hold.get())) {
      lines.add(noWay(hold.get()));
    }
    if (hold.get().computable()) {
      lines.add(
          "takes up to "
              + Figures.forceUp(hold.get().breakLoose().high(), ForceTexts.DIGITS)
              + " N (likely "
              + Figures.force(hold.get().breakLoose().likely(), ForceTexts.DIGITS)
              + "), or "
              + Figures.forceUp(hold.get().breakLooseTorque().high(), ForceTexts.DIGITS)
              + " N·m to turn (cold, at full strength: do not count on use having weakened it)");
    }
    hold.get().ways().forEach(w -> lines.add(way(w)));
    return lines;
  }

  /**
   * First of all cautions, for a joint that must come apart later: that it will not. Empty where
   * something at hand may undo it.
   */
  List<String> caution() {
    boolean wanted =
        order.surroundings().comesApartLater()
            && advice.decision().kind() == Advice.Kind.USE_COMPOUND;
    if (!wanted || advice.hold().isEmpty() || !nothingWillDo(advice.hold().get())) {
      return List.of();
    }
    return List.of("It must come apart later, but " + noWay(advice.hold().get()) + ".");
  }

  /** A hammer does not count: nobody knows the force of a blow. */
  private static boolean nothingWillDo(HoldReport hold) {
    for (Removal.Way way : hold.ways()) {
      boolean may = way.outcome().compareTo(Removal.Outcome.DOUBTFUL) <= 0;
      if (may && !(way.tool() instanceof Tool.Drift)) {
        return false;
      }
    }
    return true;
  }

  private static String noWay(HoldReport hold) {
    String hammer = named(hold, Removal.Outcome.DOUBTFUL);
    return "there is no way to get it out with the press, the wrench and the heat counted on here"
        + (hammer.isEmpty() ? ", short of destroying a member" : "; at best " + hammer + " may do");
  }

  /** In a few words, what will or may undo it and what must never be tried. */
  static String brief(HoldReport hold) {
    String never = named(hold, Removal.Outcome.REFUSED);
    String mustNot = never.isEmpty() ? "" : " To undo it, never: " + never + ".";
    if (!hold.computable()) {
      return mustNot;
    }
    String sure = named(hold, Removal.Outcome.ENOUGH);
    String perhaps = named(hold, Removal.Outcome.DOUBTFUL);
    String will = sure.isEmpty() ? "" : " Will do: " + sure + ".";
    String may = perhaps.isEmpty() ? "" : " May do: " + perhaps + ".";
    String none = nothingWillDo(hold) ? " No press, wrench or heat counted on here will do." : "";
    return none + will + may + mustNot;
  }

  private static String named(HoldReport hold, Removal.Outcome outcome) {
    List<String> tools = new ArrayList<>();
    for (Removal.Way way : hold.ways()) {
      if (way.outcome() == outcome) {
        tools.add(shortTool(way.tool()));
      }
    }
    return String.join(", ", tools);
  }

  private static String shortTool(Tool tool) {
    if (tool instanceof Tool.Press) {
      return "bench press";
    } else if (tool instanceof Tool.Twist) {
      return "wrench";
    }
    return tool instanceof Tool.Drift ? "hammer and drift" : "heat";
  }

  private String way(Removal.Way way) {
    String outcome =
        switch (way.outcome()) {
          case ENOUGH -> "will do";
          case DOUBTFUL -> "may do";
          case NOT_ENOUGH -> "will not do";
          case REFUSED -> "MUST NOT BE DONE";
        };
    List<String> reasons = new ArrayList<>();
    for (Removal.Reason reason : way.reasons()) {
      boolean tooHot = reason == Removal.Reason.HEAT_ABOVE_MEMBER_LIMIT;
      reasons.add(
          tooHot && way.tool() instanceof Tool.LocalHeat heat
              ? hotterThan(order, heat.celsius())
              : reason(reason));
    }
    return tool(way.tool())
        + ": "
        + outcome
        + (reasons.isEmpty() ? "" : " (" + String.join("; ", reasons) + ")");
  }

  /** Which member the heat would harm, and what it stands. */
  static String hotterThan(JointOrder order, double celsius) {
    List<String> words = new ArrayList<>();
    for (Member member : List.of(order.bore(), order.part())) {
      double limit = member.material().heatLimitC();
      if (limit < celsius) {
        words.add(
            (member.side() == Side.BORE ? "bore" : "part")
                + " of "
                + DecisionTexts.shortName(member.material().name())
                + " stands only "
                + Numbers.fixed(limit, 0)
                + " °C");
      }
    }
    return words.isEmpty() ? "hotter than a member stands" : String.join(", ", words);
  }

  private static String tool(Tool tool) {
    if (tool instanceof Tool.Press press) {
      return "bench press, " + Numbers.fixed(press.capacityN(), 0) + " N";
    } else if (tool instanceof Tool.Twist twist) {
      return "turning with a wrench, " + Numbers.fixed(twist.capacityNm(), 0) + " N·m";
    } else if (tool instanceof Tool.LocalHeat heat) {
      return "heating the joint to " + Numbers.fixed(heat.celsius(), 0) + " °C";
    }
    return "hammer and drift";
  }

  private static String reason(Removal.Reason reason) {
    return switch (reason) {
      case TOOL_TOO_WEAK -> "too weak";
      case TOOL_BELOW_HIGH_END -> "too weak if the bond is at its strong end";
      case MEMBER_LIMIT_BELOW_LIKELY -> "more than the member bears";
      case MEMBER_LIMIT_BELOW_HIGH_END -> "may be more than the member bears";
      case MEMBER_LIMIT_NOT_KNOWN -> "what the member bears is not known: ask its maker";
      case GRIP_NOT_KNOWN -> "the grip can't be computed";
      case BLOW_FORCE_NOT_KNOWN -> "nobody knows the force of a blow";
      case BLOWS_MARK_BEARINGS -> "blows mark bearings";
      case BLOWS_CHIP_BRITTLE ->
          "a hard or brittle member can chip or crack: soft drift, eyes covered";
      case NO_BLOWS_ON_SEAL -> "no blows on a seal";
      case NO_BLOWS_ON_LAMINATE -> "no blows on laminate";
      case NO_BLOWS_ON_PLASTIC -> "no blows on plastic";
      case NO_HEAT_ON_LAMINATE -> "no heat on laminate";
      case NO_HEAT_ON_PLASTIC -> "no heat on plastic";
      case NO_HEAT_NEAR_SEAL -> "no heat near a seal";
      case NO_HEAT_ON_PAINT -> "no heat on paint";
      case NO_HEAT_NEAR_BATTERY -> "no heat near a battery";
      case HEAT_ABOVE_MEMBER_LIMIT -> "hotter than a member stands";
      case HEAT_BEYOND_STRENGTH_DATA -> "strength that hot is not known";
      case NEEDS_PRESS_OR_TWIST_WHILE_HOT -> "press or turn while hot";
      case BURNS_AND_FUMES -> "burns and fumes: gloves, fresh air";
    };
  }
}
