package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.StageTime;
import annulus.advice.Advice.StepKind;
import annulus.catalog.Stage;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;

/** What the four stages are called, from when each counts and what may be done then. */
final class StageTexts {
  /** Two clock times this near are the same one, rounded. */
  private static final Duration ROUNDING = Duration.ofMinutes(1);

  private final Advice advice;
  private final ShopTime time;

  StageTexts(Advice advice) {
    this.advice = advice;
    this.time = new ShopTime(advice.order().zone(), advice.order().start());
  }

  static String name(Stage stage) {
    return switch (stage) {
      case FIXTURE -> "fixture";
      case HANDLING -> "handling";
      case FUNCTIONAL -> "functional";
      case FULL -> "full cure";
    };
  }

  /** From when the words of a stage surely hold: at fixture, after the rest; empty for never. */
  Optional<Duration> sure(StageTime stage) {
    return stage.sure().map(d -> d.plus(rest(stage.stage())));
  }

  /** As {@link #sure} for half of all such joints. */
  Optional<Duration> typical(StageTime stage) {
    return stage.typical().map(d -> d.plus(rest(stage.stage())));
  }

  /** How long it is left alone after fixture; the step has that already. */
  private Duration rest(Stage stage) {
    Optional<Duration> fixture = advice.cure().flatMap(c -> c.at(Stage.FIXTURE).sure());
    return stage == Stage.FIXTURE
        ? advice
            .step(StepKind.LEAVE_UNDISTURBED)
            .flatMap(Advice.Step::time)
            .flatMap(alone -> fixture.map(alone::minus))
            .orElse(Duration.ZERO)
        : Duration.ZERO;
  }

  String mayBeDone(Stage stage) {
    return switch (stage) {
      case FIXTURE -> "Do not touch, turn or move it before" + rested();
      case HANDLING -> "Other parts may go on. No torque, no load.";
      case FUNCTIONAL -> functional();
      case FULL -> full();
    };
  }

  private String rested() {
    Duration rest = rest(Stage.FIXTURE);
    return rest.isZero() ? "." : ": fixture and " + ShopTime.up(rest) + " rest.";
  }

  private String functional() {
    Optional<HandBack> handBack = advice.handBack();
    if (handBack.isEmpty()) {
      return "Shop's own test only.";
    }
    String use = advice.limited().isPresent() ? ", limited use." : ".";
    if (isReached(Stage.FUNCTIONAL, handBack.get())) {
      return "Hand back" + use;
    }
    return advice.limited().isPresent()
        ? "Shop's own test only. " + handBackFrom(handBack.get()) + use
        : "Shop's own test only, until hand-back.";
  }

  private String full() {
    Optional<HandBack> handBack = advice.handBack();
    if (handBack.isEmpty()) {
      return "Not to be handed over as it is.";
    }
    if (advice.limited().isPresent()) {
      return advice.limited().get().until().isPresent()
          ? "Full use."
          : "Full use can't be promised.";
    }
    return isReached(Stage.FULL, handBack.get())
        ? "Hand back, full use."
        : "Shop's own test only. " + handBackFrom(handBack.get()) + ", full use.";
  }

  /** Whether the stage is what the hand-back waited for. */
  private boolean isReached(Stage stage, HandBack handBack) {
    Optional<Duration> sure =
        advice
            .cure()
            .map(CureTimes::stages)
            .map(s -> s.get(stage.ordinal()))
            .flatMap(StageTime::sure);
    return sure.map(s -> handBack.after().minus(s).compareTo(ROUNDING) <= 0).orElse(false);
  }

  private String handBackFrom(HandBack handBack) {
    return "Hand back from " + time.brief(handBack.at());
  }

  static String id(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
