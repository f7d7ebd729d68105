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
      case MEASURE_AGAIN ->
          "Measure again as told above, and ask again. Join nothing until the answer is clear.";
      case PROTECT ->
          "Gloves on throughout, fresh air. No flame or spark: " + value(step, "burns") + ".";
      case STRIP -> "Pull the part out. Wipe off all wet compound, bore and part.";
      case REMOVE_OLD_COMPOUND -> removeOldCompound(step);
      case WARM_UP -> "Let " + faces(step) + " come to room temperature and dry off first.";
      case COOL_DOWN ->
          "Let "
              + faces(step)
              + " cool to room temperature first: hot, the compound grabs at once.";
      case TOO_QUICK ->
          "STOP: as it stands it may grab within "
              + step.time().map(ShopTime::down).orElse("seconds")
              + ", too quick for anybody to push it home. Work cooler, then ask again.";
      case TRY_FIRST ->
          "Try "
              + value(step, "what")
              + " on scrap of "
              + faces(step)
              + " first: plastic can crack.";
      case CLEAN -> clean(step);
      case KEEP_PRIMED -> keepPrimed(step);
      case ABRADE -> abrade(step);
      case PRIME -> prime(step);
      case FLASH_OFF -> "Wait " + duration(step) + " until the primer is dry." + goodFor(step);
      case APPLY ->
          "Draw " + value(step, "ml") + " mL of " + value(step, "class") + ". " + where(step);
      case APPLY_FILM ->
          "Wipe a thin film of "
              + value(step, "class")
              + " on both faces, "
              + value(step, "ml")
              + " mL in all.";
      case PRESS_STRAIGHT -> pressStraight(step);
      case CENTRE ->
          "Centre it with a jig, shims or a V-block until it is fixed: it can sit up to "
              + value(step, "um")
              + " µm off centre.";
      case PRESS_DRY -> pressDry(step);
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

  private static String removeOldCompound(Step step) {
    String faces = faces(step);
    String off = "Take all compound off " + faces;
    return switch (value(step, "care")) {
      case "film" -> off + " with a plastic scraper, without cutting its plating or film.";
      case "plastic" -> off + " by hand with a plastic scraper. Do not gouge it.";
      case "laminate" ->
          off
              + " with a plastic scraper, the rest by hand with fine abrasive, wet, dust mask on."
              + " Never cut fibres.";
      case "cadmium" ->
          "Do not scrape, sand or brush "
              + faces
              + ": cadmium dust is poisonous. Ask the part's maker how to get the compound off.";
      default -> "Scrape all compound off " + faces + " down to bare material.";
    };
  }

  private static String abrade(Step step) {
    String gloss = "Rub the gloss of " + faces(step) + " dull";
    return switch (value(step, "care")) {
      case "laminate" ->
          gloss
              + " by hand with fine abrasive, wet, dust mask on. Never cut fibres. Wipe, clean again.";
      case "plastic" -> gloss + " by hand with fine abrasive. Wipe off the dust, clean again.";
      default -> gloss + " with fine abrasive. Wipe off the dust, clean again.";
    };
  }

  private static String prime(Step step) {
    String what = value(step, "primer") + " on " + faces(step);
    String coat =
        switch (value(step, "application")) {
          case "WIPE" -> "Wipe " + what + ", one thin coat.";
          case "WIPE_OR_SPRAY" -> "Wipe or spray " + what + ", one thin coat.";
          default -> "Put " + what + ", one thin coat, as its label says.";
        };
    return step.values().containsKey("days") ? coat + goodFor(step) : coat;
  }

  private static String goodFor(Step step) {
    return " Good for " + value(step, "days") + " d, then clean and prime again.";
  }

  private static String where(Step step) {
    return switch (value(step, "where")) {
      case "both" -> "Coat both faces all over with it.";
      case "all of part" ->
          "Coat the part all over with it, where the bore will sit; none in the bore.";
      case "ring on part" -> "Put a ring of it round the part, where the bore will sit.";
      default -> "Put a ring of it round the mouth of the bore.";
    };
  }

  private static String pressStraight(Step step) {
    String redo = " If it grabs short: strip, clean, redo.";
    return step.values().containsKey("tooQuick")
        ? "When the new answer leaves time enough: push straight home in one go." + redo
        : "Push straight home in one go, within "
            + step.time().map(ShopTime::down).orElse("seconds")
            + "."
            + redo;
  }

  private static String pressDry(Step step) {
    String press =
        "Press it home dry and square. Push on the ring that is the tight fit, not through balls.";
    String seizing = step.values().getOrDefault("seizing", "");
    return seizing.isEmpty()
        ? press
        : press
            + " "
            + seizing
            + " galls and can seize half way: press slowly, stop if it jerks. Ask its maker whether"
            + " anything may go between.";
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

  private static String faces(Step step) {
    return value(step, "faces");
  }

  private static String value(Step step, String name) {
    return step.values().getOrDefault(name, "(" + name + ")");
  }
}
