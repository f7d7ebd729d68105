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
import annulus.quantity.Estimate;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The words for force: will it press, will it hold, will it come apart. */
final class ForceTexts {
  /** Colder than anything a joint meets; a limit reached only there is not worth a line. */
  private static final double COLDEST_WORTH_SAYING = -100;

  /** Forces rest on wide factors: more digits would only look sure. */
  static final int DIGITS = 3;

  private final Advice advice;
  private final JointOrder order;

  ForceTexts(Advice advice) {
    this.advice = advice;
    this.order = advice.order();
  }

  /** Lines on pressing; empty for a joint that does not read as an interference. */
  List<String> press() {
    return advice.press().map(this::press).orElse(List.of());
  }

  private List<String> press(PressReport press) {
    List<String> lines = new ArrayList<>();
    if (press.answer().orElse(null) instanceof PressAnswer.Pressed pressed) {
      RingStresses high = pressed.highStresses();
      lines.add("force to press it home: " + range(pressed.pressInForceN(), "N"));
      lines.add("contact pressure: " + range(pressed.pressureMPa(), "MPa"));
      lines.add(limit("the outer member", pressed.hubLimit(), pressed));
      lines.add(limit("the part", pressed.partLimit(), pressed));
      lines.add(
          "hoop stress at the bore, at the most: "
              + Figures.roundedUp(high.hubBore().hoopMPa(), 0)
              + " MPa");
      lines.add(
          "hoop stress in the part, at the most: "
              + Figures.roundedUp(Math.abs(high.partBore().hoopMPa()), 0)
              + " MPa in compression");
      lines.add("holds by friction at 20 °C: " + atLeast(pressed.holdN(), "N"));
      press.tightest().ifPresent(t -> tightest(t, pressed, lines));
    } else if (press.answer().orElse(null) instanceof PressAnswer.Loose) {
      lines.add("nothing presses once the peaks of the finish have flattened");
    } else {
      lines.add("no pressure and no force is computed: see the cautions");
    }
    press
        .leastHold()
        .ifPresent(h -> lines.add("holds at the looser end of service: " + atLeast(h, "N")));
    press.looseAtC().stream()
        .filter(t -> t <= hottestStood())
        .forEach(
            t ->
                lines.add(
                    "no interference is left at "
                        + Numbers.fixed(t, 0)
                        + " °C (both members at one temperature)"));
    press.tooTightAtC().stream()
        .filter(t -> t > COLDEST_WORTH_SAYING && t <= hottestStood())
        .forEach(
            t ->
                lines.add(
                    "the pressure reaches a member's limit at "
                        + Numbers.fixed(t, 0)
                        + " °C (both members at one temperature)"));
    press.slip().ifPresent(s -> lines.add(slip(s)));
    return lines;
  }

  /** What the tightest asks of the members, where it is more than they surely bear. */
  private static void tightest(PressAnswer answer, PressAnswer.Pressed atRest, List<String> lines) {
    if (answer instanceof PressAnswer.Pressed tight && tight.standing() != atRest.standing()) {
      lines.add(
          "contact pressure at the tightest of service: " + range(tight.pressureMPa(), "MPa"));
      lines.add(limit("the outer member", tight.hubLimit(), tight));
      lines.add(limit("the part", tight.partLimit(), tight));
    }
  }

  /** Hotter than this a member is spoilt, whatever the fit does there, °C. */
  private double hottestStood() {
    return Math.min(order.bore().material().heatLimitC(), order.part().material().heatLimitC());
  }

  private String slip(ShrinkAssembly.Answer answer) {
    if (!(answer instanceof ShrinkAssembly.Slips slips)) {
      return "no heat to slip it on: a member is laminate or plastic";
    }
    String hot =
        "slips together dry with the outer member at " + celsius(Math.ceil(slips.ringCelsius()));
    if (!slips.isWithinLimits()) {
      return hot + ": DO NOT, " + RemovalTexts.hotterThan(order, slips.ringCelsius());
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
    if (!bonded()
        && advice.press().flatMap(PressReport::answer).orElse(null)
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
    String undoing = RemovalTexts.brief(hold);
    if (!hold.computable()) {
      lines.add("Hold not computed (laminate or plastic): ask the part's maker." + undoing);
      return;
    }
    Estimate then = hold.atHandBack().orElse(hold.bondHot());
    String when = hold.atHandBack().isPresent() ? "at hand-back, " : "at full strength, ";
    String wanted =
        hold.wantedN().isPresent()
            ? "; wanted " + wanted(hold, hold.wantedN().getAsDouble(), "")
            : "";
    String load = repeats().isPresent() ? ", repeated load" : "";
    lines.add(
        "Holds along the bore " + when + "hot" + load + ": " + atLeast(then, "N") + wanted + ".");
    lines.add(
        "Undoing takes up to "
            + Figures.forceUp(hold.breakLoose().high(), DIGITS)
            + " N or "
            + Figures.forceUp(hold.breakLooseTorque().high(), DIGITS)
            + " N·m."
            + undoing);
  }

  /** The pressure against what a member bears of it; its stress has no limit here. */
  private static String limit(String who, PressLimit limit, PressAnswer.Pressed pressed) {
    String most = "pressure up to " + Figures.roundedUp(pressed.pressureMPa().high(), 0) + " MPa; ";
    if (limit.standing() == PressLimit.Standing.NOT_KNOWN) {
      return most + "what " + who + " bears is not known";
    }
    String bears =
        switch (limit.standing()) {
          case WITHIN -> " bears ";
          case MAY_EXCEED -> " may give way at ";
          default -> " gives way at ";
        };
    return most + who + bears + Numbers.fixed(limit.pressureMPa().orElse(0), 0) + " MPa";
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
    repeats()
        .ifPresent(
            r ->
                lines.add(
                    "counted for a load that repeats ("
                        + r
                        + "): one steady pull, as to undo it, takes more"));
    lines.add("at full strength, at room temperature: " + atLeast(hold.bondCold(), "N"));
    lines.add("at full strength," + hot + atLeast(hold.bondHot(), "N"));
    lines.add("turned, at full strength," + hot + atLeast(hold.torqueHot(), "N·m"));
    hold.atHandBack().ifPresent(h -> lines.add("at hand-back," + hot + atLeast(h, "N")));
    hold.wantedN()
        .ifPresent(
            n ->
                lines.add(
                    "wanted, the whole load with its safety factor as one force along the bore: "
                        + wanted(hold, n, ", only just covered")));
    hold.safety().ifPresent(s -> lines.add(safety(s)));
    return lines;
  }

  private static String safety(Estimate safety) {
    return "safety reached hot at full strength: at least "
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

  /** How the load repeats, in words; empty for none or a steady one. */
  private Optional<String> repeats() {
    return order
        .load()
        .map(JointOrder.Load::repeats)
        .filter(r -> !r.equals("static"))
        .map(r -> r.replace('-', ' '));
  }

  /** The lower end first: it is the one to count on. */
  private static String atLeast(Estimate estimate, String unit) {
    return "at least "
        + Figures.forceDown(estimate.low(), DIGITS)
        + " "
        + unit
        + " (likely "
        + Figures.force(estimate.likely(), DIGITS)
        + ")";
  }

  /**
   * The load, rounded up. Where the hold covers it by less than the rounding, that is said, or the
   * hold would read as less than the load.
   */
  private static String wanted(HoldReport hold, double wantedN, String justCovered) {
    String up = Figures.forceUp(wantedN, DIGITS);
    double low = hold.atHandBack().orElse(hold.bondHot()).low();
    String held = Figures.forceDown(low, DIGITS);
    boolean readsAsLess = Double.parseDouble(held) < Double.parseDouble(up);
    return low >= wantedN && readsAsLess ? "just under " + up + " N" + justCovered : up + " N";
  }

  private static String range(Estimate estimate, String unit) {
    return Figures.forceDown(estimate.low(), DIGITS)
        + " to "
        + Figures.forceUp(estimate.high(), DIGITS)
        + " "
        + unit
        + ", likely "
        + Figures.force(estimate.likely(), DIGITS);
  }

  private static String celsius(double celsius) {
    return Numbers.fixed(celsius, 0) + " °C";
  }
}
