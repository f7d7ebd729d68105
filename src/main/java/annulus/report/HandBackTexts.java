package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.Condition;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.StageTime;
import annulus.advice.PressReport;
import annulus.catalog.Catalog;
import annulus.catalog.ReleaseRule;
import annulus.quantity.Numbers;
import java.util.Optional;

/** The hand-back in words: the one safe time and what it waits for, or why there is none. */
final class HandBackTexts {
  private static final String OLD_COMPOUND =
      "Old compound is on a face: scrape it off and measure the bare faces first.";

  private final Advice advice;
  private final ReleaseRule release;
  private final String restMinutes;

  HandBackTexts(Advice advice, Catalog catalog) {
    this.advice = advice;
    this.release = catalog.release().get(advice.order().consequence());
    this.restMinutes = Numbers.plain(catalog.policy().value("undisturbed-after-fixture-min"));
  }

  /** What rules, as a sentence; or why no time can be promised. */
  String why() {
    Optional<HandBack> handBack = advice.handBack();
    return handBack.map(h -> "Ruled by: " + condition(h.ruling()) + ".").orElseGet(this::none);
  }

  String condition(Condition condition) {
    String sure = " at " + Figures.wanted(advice.order().confidence());
    return switch (condition) {
      case FIXTURE_AND_REST ->
          "fixture" + sure + " and " + restMinutes + " min left alone after it";
      case POLICY_STAGE -> StageTexts.name(release.stage()) + sure + ", because " + consequence();
      case SLOW_PRACTICE -> "full cure as the slowest practice has it, because " + consequence();
      case HOLD_COVERS_LOAD -> "the hold covers the load with its safety factor" + sure;
      case DRY_FIT -> "nothing to wait for: a dry fit holds when it is home";
    };
  }

  private String consequence() {
    return switch (advice.order().consequence()) {
      case NUISANCE -> "a failure is a nuisance only";
      case STRANDING -> "a failure would leave somebody stranded";
      case INJURY -> "a failure could hurt someone";
    };
  }

  private String none() {
    return switch (advice.decision().kind()) {
      case MEASURE_AGAIN -> "Nothing may be bonded until the measurement decides.";
      case TOO_TIGHT -> "It may not be pressed as it stands.";
      case TOO_WIDE, NO_CLASS -> "It may not be bonded as it stands.";
      case STRIP_AND_REDO -> "The film is torn: every clock starts anew with the new joint.";
      case USE_COMPOUND, PRESS_DRY -> never();
    };
  }

  private String never() {
    if (advice.decision().kind() == Advice.Kind.PRESS_DRY) {
      return noGrip();
    }
    if (advice.order().hasOldCompound()) {
      return OLD_COMPOUND;
    }
    Optional<CureTimes> cure = advice.cure();
    for (StageTime stage : cure.map(CureTimes::stages).orElse(java.util.List.of())) {
      if (stage.sure().isEmpty() && stage.stage().compareTo(release.stage()) <= 0) {
        return "In this place it never surely gets to "
            + StageTexts.name(stage.stage())
            + ": it may be too cold. Use a warmer place.";
      }
    }
    boolean slow = cure.isPresent() && cure.get().slowPracticeFull().isEmpty();
    if (slow && release.slowPractice()) {
      return "In this place full cure is never reached as the slowest practice has it.";
    }
    return advice.press().isPresent()
        ? noGrip()
        : "The joint never surely carries the load with its safety factor.";
  }

  private String noGrip() {
    if (advice.order().hasOldCompound()) {
      return OLD_COMPOUND;
    }
    return advice.isPressBorne()
        ? "The grip of the press fit is not sure to hold over the service range or the load."
        : notBorne(advice.press().orElseThrow().standing());
  }

  /** Why nobody knows whether the members bear the press fit. */
  private static String notBorne(PressReport.Standing standing) {
    return switch (standing) {
      case DIAMETER_MISSING ->
          "At this interference a thin wall may yield or crack: give the outside diameter around"
              + " the bore and the inside diameter of the part (0 for a solid one).";
      case NO_HONEST_FIGURE ->
          "A member is laminate or plastic: what interference it bears only its maker can say.";
      default -> "What interference a member bears is not known here: ask its maker.";
    };
  }
}
