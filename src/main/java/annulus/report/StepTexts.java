package annulus.report;

import annulus.advice.Advice.Step;
import java.time.Duration;
import java.time.Instant;

/** The words of the steps, for somebody with gloves on. */
final class StepTexts {
  private final ShopTime time;

  StepTexts(ShopTime time) {
    this.time = time;
  }

  String text(Step step) {
    return switch (step.kind()) {
      case MEASURE_AGAIN -> "Measure again as told above. Bond nothing until the answer is clear.";
      case STRIP -> "Pull the part out. Scrape and wipe off all compound, bore and part.";
      case REMOVE_OLD_COMPOUND ->
          "Scrape off old compound down to bare material. Then measure again.";
      case WARM_UP -> "Let bore and part come to room temperature and dry off first.";
      case CLEAN -> clean(step);
      case KEEP_PRIMED -> keepPrimed(step);
      case ABRADE -> "Rub the glossy face dull with fine abrasive. Wipe off the dust, clean again.";
      case PRIME ->
          "Wipe or spray "
              + value(step, "primer")
              + " on "
              + value(step, "faces")
              + ", one thin coat.";
      case FLASH_OFF ->
          "Wait "
              + duration(step)
              + " until the primer is dry. Good for "
              + value(step, "days")
              + " d, then clean and prime again.";
      case APPLY ->
          "Gloves on. Draw "
              + value(step, "ml")
              + " mL of "
              + value(step, "class")
              + ". Put a ring of it round the mouth of the bore.";
      case APPLY_FILM ->
          "Gloves on. Wipe a thin film of "
              + value(step, "class")
              + " on both faces, "
              + value(step, "ml")
              + " mL in all.";
      case PRESS_STRAIGHT ->
          "Push straight home in one go, within "
              + step.time().map(ShopTime::down).orElse("seconds")
              + ". If it grabs short: strip, clean, redo.";
      case PRESS_DRY ->
          "Press it home dry and square. Push on the ring that is the tight fit, not through balls.";
      case WIPE -> "Wipe off the bead outside. None may stay near a seal or bearing.";
      case LEAVE_UNDISTURBED ->
          step.at().isPresent()
              ? "Do not touch or turn it until " + clock(step) + " (" + duration(step) + ")."
              : "Do not touch or turn it: no time can be given when it holds.";
      case HANDLE -> "From " + clock(step) + ": other parts may go on. No torque, no load.";
      case CHECK -> "From " + clock(step) + ": the shop's own careful test. Nobody else.";
      case HAND_BACK -> handBack(step);
      case TELL_LIMITED ->
          step.at().isPresent()
              ? "Say so to whoever takes it: limited use until full cure, " + clock(step) + "."
              : "Say so to whoever takes it: limited use, full cure can't be promised.";
      case REDO -> "Start again: measure, then fresh compound. All times start anew.";
    };
  }

  private static String clean(Step step) {
    boolean primed = step.values().containsKey("oldPrimer");
    String none = value(step, "newPrimer").equals("none") ? " No primer is needed." : "";
    return "Clean bore and part with cleaner until a white cloth stays white"
        + (primed ? " and the old primer is off" : "")
        + ". Let them dry."
        + none;
  }

  private String keepPrimed(Step step) {
    String other = value(step, "other");
    String clean = other.isEmpty() ? "" : "Clean " + other + " until a white cloth stays white. ";
    return clean
        + "Primer is on "
        + value(step, "faces")
        + ": do not wipe or touch it. Good until "
        + clock(step)
        + ".";
  }

  private String handBack(Step step) {
    boolean atOnce = step.time().filter(Duration::isZero).isPresent();
    return atOnce
        ? "Check that it is home and square. Then hand back."
        : "Hand back from " + clock(step) + ", not before, after a last check.";
  }

  private String clock(Step step) {
    return step.at().map(this::brief).orElse("(no time)");
  }

  private String brief(Instant instant) {
    return time.brief(instant);
  }

  private static String duration(Step step) {
    return step.time().map(ShopTime::up).orElse("(no time)");
  }

  private static String value(Step step, String name) {
    return step.values().getOrDefault(name, "(" + name + ")");
  }
}
