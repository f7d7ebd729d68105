package annulus.report;

import annulus.advice.Advice;
import annulus.advice.HoldReport;
import annulus.advice.JointOrder;
import annulus.advice.PressReport;
import annulus.fit.PressAnswer;
import annulus.fit.PressLimit;
import annulus.fit.RingStresses;
import annulus.fit.ShrinkAssembly;
import annulus.hold.HoldFactor;
import annulus.hold.Removal;
import annulus.hold.Tool;
import annulus.quantity.Estimate;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The words for force: will it press, will it hold, will it come apart. */
final class ForceTexts {
  /** Colder than anything a joint meets; a limit reached only there is not worth a line. */
  private static final double COLDEST_WORTH_SAYING = -100;

  private final Advice advice;
  private final JointOrder order;

  ForceTexts(Advice advice) {
    this.advice = advice;
    this.order = advice.order();
  }

  /** Lines on pressing; empty for a joint that is no interference. */
  List<String> press() {
    return advice.press().map(this::press).orElse(List.of());
  }

  private List<String> press(PressReport press) {
    List<String> lines = new ArrayList<>();
    if (press.answer().orElse(null) instanceof PressAnswer.Pressed pressed) {
      RingStresses high = pressed.highStresses();
      lines.add("force to press it home: " + range(pressed.pressInForceN(), "N"));
      lines.add("contact pressure: " + range(pressed.pressureMPa(), "MPa"));
      lines.add(
          "hoop stress at the bore, at the most: "
              + Figures.roundedUp(high.hubBore().hoopMPa(), 0)
              + " MPa; "
              + limit("the outer member", pressed.hubLimit(), pressed));
      lines.add(
          "hoop stress in the part, at the most: "
              + Figures.roundedUp(Math.abs(high.partBore().hoopMPa()), 0)
              + " MPa in compression; "
              + limit("the part", pressed.partLimit(), pressed));
      lines.add("holds by friction at 20 °C: " + atLeast(pressed.holdN(), "N"));
    } else if (press.answer().orElse(null) instanceof PressAnswer.Loose) {
      lines.add("nothing presses once the peaks of the finish have flattened");
    } else {
      lines.add("no pressure and no force is computed: see the cautions");
    }
    press
        .leastHold()
        .ifPresent(h -> lines.add("holds at the looser end of service: " + atLeast(h, "N")));
    if (press.looseAtC().isPresent()) {
      lines.add(
          "no interference is left at "
              + Numbers.fixed(press.looseAtC().getAsDouble(), 0)
              + " °C (both members at one temperature)");
    }
    press.tooTightAtC().stream()
        .filter(t -> t > COLDEST_WORTH_SAYING)
        .forEach(
            t ->
                lines.add(
                    "the pressure reaches a member's limit at "
                        + Numbers.fixed(t, 0)
                        + " °C (both members at one temperature)"));
    press.slip().ifPresent(s -> lines.add(slip(s)));
    return lines;
  }

  private static String slip(ShrinkAssembly.Answer answer) {
    if (!(answer instanceof ShrinkAssembly.Slips slips)) {
      return "no heat to slip it on: a member is laminate or plastic";
    }
    String hot =
        "slips together dry with the outer member at " + celsius(Math.ceil(slips.ringCelsius()));
    if (!slips.isWithinLimits()) {
      return hot + ": DO NOT, that is hotter than a member stands";
    }
    boolean rough = slips.cautions().contains(ShrinkAssembly.Caution.EXPANSION_STRETCHED);
    return hot
        + " and the part at "
        + celsius(slips.partCelsius())
        + (rough ? " (rough figure)" : "")
        + ": hot metal burns, no compound on hot faces";
  }

  /** Two lines at most for a card: what it carries, and what undoes it or must not be done. */
  List<String> brief() {
    List<String> lines = new ArrayList<>();
    advice.hold().filter(h -> bonded()).ifPresent(h -> brief(h, lines));
    if (advice.press().flatMap(PressReport::answer).orElse(null)
        instanceof PressAnswer.Pressed pressed) {
      lines.add(
          "Press home with "
              + range(pressed.pressInForceN(), "N")
              + ". In service it holds "
              + advice
                  .press()
                  .get()
                  .leastHold()
                  .map(h -> atLeast(h, "N"))
                  .orElse("an unknown force")
              + ".");
    }
    return lines;
  }

  private boolean bonded() {
    return advice.decision().kind() == Advice.Kind.USE_COMPOUND;
  }

  private void brief(HoldReport hold, List<String> lines) {
    List<String> never =
        hold.ways().stream()
            .filter(w -> w.outcome() == Removal.Outcome.REFUSED)
            .map(w -> w.tool() instanceof Tool.Drift ? "hammer and drift" : "heat")
            .toList();
    String mustNot = never.isEmpty() ? "" : " To undo it, never: " + String.join(", ", never) + ".";
    if (!hold.computable()) {
      lines.add("Hold not computed (laminate or plastic): ask the part's maker." + mustNot);
      return;
    }
    Estimate then = hold.atHandBack().orElse(hold.bondHot());
    String when = hold.atHandBack().isPresent() ? "at hand-back, " : "at full cure, ";
    String wanted =
        hold.wantedN().isPresent()
            ? "; wanted " + Figures.roundedUp(hold.wantedN().getAsDouble(), 0) + " N"
            : "";
    lines.add("Holds along the bore " + when + "hot: " + atLeast(then, "N") + wanted + ".");
    lines.add(
        "Undoing takes up to "
            + Figures.roundedUp(hold.breakLoose().high(), 0)
            + " N or "
            + Figures.roundedUp(hold.breakLooseTorque().high(), 0)
            + " N·m."
            + mustNot);
  }

  private static String limit(String who, PressLimit limit, PressAnswer.Pressed pressed) {
    return switch (limit.standing()) {
      case WITHIN ->
          who
              + " bears the pressure (limit "
              + Numbers.fixed(limit.pressureMPa().orElse(0), 0)
              + " MPa)";
      case MAY_EXCEED ->
          who
              + " may give way: pressure up to "
              + Figures.roundedUp(pressed.pressureMPa().high(), 0)
              + " MPa against "
              + Numbers.fixed(limit.pressureMPa().orElse(0), 0)
              + " MPa";
      case EXCEEDS ->
          who + " gives way: limit " + Numbers.fixed(limit.pressureMPa().orElse(0), 0) + " MPa";
      case NOT_KNOWN -> "what " + who + " bears is not known";
    };
  }

  /** Lines on what the bond holds; empty where nothing is bonded. */
  List<String> hold() {
    return advice.hold().map(this::hold).orElse(List.of());
  }

  private List<String> hold(HoldReport hold) {
    List<String> lines = new ArrayList<>();
    if (!hold.computable()) {
      lines.add("no figure: a member is laminate or plastic. Ask the part's maker.");
      return lines;
    }
    String hot = " at " + celsius(order.service().high()) + ": ";
    lines.add("at full cure, at room temperature: " + atLeast(hold.bondCold(), "N"));
    lines.add("at full cure," + hot + atLeast(hold.bondHot(), "N"));
    lines.add("turned, at full cure," + hot + atLeast(hold.torqueHot(), "N·m"));
    hold.atHandBack().ifPresent(h -> lines.add("at hand-back," + hot + atLeast(h, "N")));
    hold.wantedN()
        .ifPresent(
            n ->
                lines.add(
                    "wanted with the safety factor: "
                        + Figures.roundedUp(n, 0)
                        + " N along the bore"));
    hold.safety().ifPresent(s -> lines.add(safety(s)));
    return lines;
  }

  private static String safety(Estimate safety) {
    return "safety reached hot at full cure: at least "
        + Figures.roundedDown(safety.low(), 1)
        + " (likely "
        + Numbers.fixed(safety.likely(), 1)
        + ")";
  }

  /** The factors of the hold, for those who ask why. */
  List<String> factors() {
    List<String> lines = new ArrayList<>();
    for (HoldFactor factor : advice.hold().map(HoldReport::factors).orElse(List.of())) {
      lines.add(
          StageTexts.id(factor.kind()).replace('-', ' ')
              + ": "
              + Numbers.fixed(factor.value().low(), 2)
              + " to "
              + Numbers.fixed(factor.value().high(), 2)
              + ", likely "
              + Numbers.fixed(factor.value().likely(), 2));
    }
    return lines;
  }

  /** Lines on undoing the joint later; empty where nothing is bonded. */
  List<String> removal() {
    Optional<HoldReport> hold = advice.hold();
    if (hold.isEmpty()) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    if (hold.get().computable()) {
      lines.add(
          "takes up to "
              + Figures.roundedUp(hold.get().breakLoose().high(), 0)
              + " N (likely "
              + Numbers.fixed(hold.get().breakLoose().likely(), 0)
              + "), or "
              + Figures.roundedUp(hold.get().breakLooseTorque().high(), 0)
              + " N·m to turn (cold, full strength, not lowered for a load that repeats)");
    }
    hold.get().ways().forEach(w -> lines.add(way(w)));
    return lines;
  }

  private static String way(Removal.Way way) {
    String outcome =
        switch (way.outcome()) {
          case ENOUGH -> "will do";
          case DOUBTFUL -> "may do";
          case NOT_ENOUGH -> "will not do";
          case REFUSED -> "MUST NOT BE DONE";
        };
    List<String> reasons = way.reasons().stream().map(ForceTexts::reason).toList();
    return tool(way.tool())
        + ": "
        + outcome
        + (reasons.isEmpty() ? "" : " (" + String.join("; ", reasons) + ")");
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

  /** The lower end first: it is the one to count on. */
  private static String atLeast(Estimate estimate, String unit) {
    return "at least "
        + Figures.roundedDown(estimate.low(), 0)
        + " "
        + unit
        + " (likely "
        + Numbers.fixed(estimate.likely(), 0)
        + ")";
  }

  private static String range(Estimate estimate, String unit) {
    int decimals = estimate.high() < 10 ? 1 : 0;
    return Figures.roundedDown(estimate.low(), decimals)
        + " to "
        + Figures.roundedUp(estimate.high(), decimals)
        + " "
        + unit
        + ", likely "
        + Numbers.fixed(estimate.likely(), decimals);
  }

  private static String celsius(double celsius) {
    return Numbers.fixed(celsius, 0) + " °C";
  }
}
