package annulus.report;

import annulus.advice.Advice;
import annulus.catalog.Stage;
import java.util.Locale;

/** What the four stages are called and what may be done at each. */
final class StageTexts {
  private StageTexts() {}

  static String name(Stage stage) {
    return switch (stage) {
      case FIXTURE -> "fixture";
      case HANDLING -> "handling";
      case FUNCTIONAL -> "functional";
      case FULL -> "full cure";
    };
  }

  static String mayBeDone(Stage stage, Advice advice) {
    boolean ever = advice.handBack().isPresent();
    return switch (stage) {
      case FIXTURE -> "Do not touch, turn or move it before.";
      case HANDLING -> "Other parts may go on. No torque, no load.";
      case FUNCTIONAL -> ever ? "Shop's own test only, until hand-back." : "Shop's own test only.";
      case FULL ->
          ever ? "May be handed over from hand-back time on." : "Not to be handed over as it is.";
    };
  }

  static String id(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
