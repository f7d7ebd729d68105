package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.Decision;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.Advice.Step;
import annulus.advice.Advice.StepKind;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Finish;
import annulus.catalog.Stage;
import annulus.quantity.Numbers;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** What to do, in workshop order. */
final class Steps {
  private final JointOrder order;
  private final Catalog catalog;
  private final List<Step> steps = new ArrayList<>();

  private Steps(JointOrder order, Catalog catalog) {
    this.order = order;
    this.catalog = catalog;
  }

  static List<Step> of(
      JointOrder order,
      Catalog catalog,
      Decision decision,
      Optional<CureTimes> cure,
      Optional<HandBack> handBack,
      double volumeMl) {
    Steps steps = new Steps(order, catalog);
    if (decision.kind() == Kind.USE_COMPOUND) {
      steps.bond(decision, cure.orElseThrow(), handBack, volumeMl);
    } else if (decision.kind() == Kind.PRESS_DRY) {
      steps.press(handBack);
    } else if (decision.kind() == Kind.STRIP_AND_REDO) {
      steps.add(StepKind.STRIP);
      steps.add(StepKind.CLEAN);
      steps.add(StepKind.REDO);
    } else if (decision.kind() == Kind.MEASURE_AGAIN) {
      steps.add(StepKind.MEASURE_AGAIN);
    } else if (Choice.wantsPrimerAnew(decision)
        && order.primer() instanceof JointOrder.PrimerPlan.Used was) {
      steps.primeAnew(was);
    }
    return steps.steps;
  }

  private void bond(
      Decision decision, CureTimes cure, Optional<HandBack> handBack, double volumeMl) {
    CompoundClass compound = decision.compound().orElseThrow();
    boolean primedAlready = decision.primer().isPresent() && isOnAlready();
    prepare(primedAlready, false, false);
    decision.primer().ifPresent(primedAlready ? this::keepPrimed : this::prime);
    boolean film = compound.role() == CompoundClass.Role.FILM;
    add(
        film ? StepKind.APPLY_FILM : StepKind.APPLY,
        Optional.empty(),
        Optional.empty(),
        Map.of("class", compound.name(), "ml", Numbers.fixed(volumeMl, 2)));
    add(StepKind.PRESS_STRAIGHT, Optional.of(cure.workingTime()), Optional.empty(), Map.of());
    add(StepKind.WIPE);
    Optional<Duration> alone = cure.at(Stage.FIXTURE).sure().map(f -> f.plus(rest()));
    add(StepKind.LEAVE_UNDISTURBED, alone, alone.map(this::clock), Map.of());
    stage(StepKind.HANDLE, cure, Stage.HANDLING);
    Optional<Duration> test = cure.at(Stage.FUNCTIONAL).sure();
    if (handBack.isEmpty() || test.isEmpty() || later(handBack.get().after(), test.get())) {
      stage(StepKind.CHECK, cure, Stage.FUNCTIONAL);
    }
    handBack.ifPresent(this::handBack);
    Optional<Duration> full = cure.at(Stage.FULL).sure();
    if (handBack.isPresent() && (full.isEmpty() || later(full.get(), handBack.get().after()))) {
      add(StepKind.TELL_LIMITED, full, full.map(this::clock), Map.of());
    }
  }

  /** Later by more than the rounding of a clock time. */
  private static boolean later(Duration one, Duration other) {
    return one.minus(other).compareTo(Duration.ofMinutes(1)) > 0;
  }

  private Duration rest() {
    return Duration.ofSeconds(
        (long) Math.ceil(60 * catalog.policy().value("undisturbed-after-fixture-min")));
  }

  private Instant clock(Duration after) {
    return order.start().plus(after);
  }

  private void stage(StepKind kind, CureTimes cure, Stage stage) {
    Optional<Duration> sure = cure.at(stage).sure();
    if (sure.isPresent()) {
      add(kind, sure, sure.map(this::clock), Map.of());
    }
  }

  private void press(Optional<HandBack> handBack) {
    prepare(false, true, false);
    add(StepKind.PRESS_DRY);
    handBack.ifPresent(this::handBack);
  }

  /** The faces that had the primer, and those that surely need it. */
  private void primeAnew(JointOrder.PrimerPlan.Used was) {
    boolean bore = was.onBore() || order.bore().activity() == Activity.Level.INERT;
    boolean part = was.onPart() || order.part().activity() == Activity.Level.INERT;
    prepare(false, false, true);
    prime(new PlannedPrimer(was.primer(), bore, part, true));
  }

  private void handBack(HandBack back) {
    add(StepKind.HAND_BACK, Optional.of(back.after()), Optional.of(back.at()), Map.of());
  }

  private void prepare(boolean primedAlready, boolean dry, boolean anew) {
    double room = order.cure().air().celsiusAt(0);
    if (either(m -> m.arrivesAtC().orElse(room) < room)) {
      add(StepKind.WARM_UP);
    }
    if (order.hasOldCompound()) {
      add(StepKind.REMOVE_OLD_COMPOUND);
    }
    if (primedAlready) {
      return;
    }
    add(StepKind.CLEAN, Optional.empty(), Optional.empty(), oldPrimer(anew));
    boolean gloss =
        either(m -> m.finish().id().equals("polished") || m.finish().id().equals("moulded"));
    if (!dry && gloss && !either(m -> m.finish().film() != Finish.Film.BARE)) {
      add(StepKind.ABRADE);
    }
  }

  /** What has to come off with the dirt, and whether some goes on anew. */
  private Map<String, String> oldPrimer(boolean anew) {
    return order.primer() instanceof JointOrder.PrimerPlan.Used used && used.isTooOld()
        ? Map.of("oldPrimer", used.primer().name(), "newPrimer", anew ? "needed" : "none")
        : Map.of();
  }

  private boolean either(Predicate<Member> test) {
    return test.test(order.bore()) || test.test(order.part());
  }

  private boolean isOnAlready() {
    return order.primer() instanceof JointOrder.PrimerPlan.Used used && !used.age().isZero();
  }

  private static String faces(PlannedPrimer plan) {
    return plan.onBore() && plan.onPart() ? "both faces" : plan.onBore() ? "the bore" : "the part";
  }

  /** A primed face must not be wiped again; only the other one is cleaned. */
  private void keepPrimed(PlannedPrimer plan) {
    Duration age = ((JointOrder.PrimerPlan.Used) order.primer()).age();
    double days = plan.primer().onPartDays().low();
    Duration left = Duration.ofSeconds((long) (days * 86_400)).minus(age);
    String other = plan.onBore() && plan.onPart() ? "" : plan.onBore() ? "the part" : "the bore";
    add(
        StepKind.KEEP_PRIMED,
        Optional.of(left),
        Optional.of(order.start().plus(left)),
        Map.of("faces", faces(plan), "other", other));
    Duration flash = flashOff(plan);
    if (age.compareTo(flash) < 0) {
      add(StepKind.FLASH_OFF, Optional.of(flash.minus(age)), Optional.empty(), days(days));
    }
  }

  private void prime(PlannedPrimer plan) {
    add(
        StepKind.PRIME,
        Optional.empty(),
        Optional.empty(),
        Map.of("primer", plan.primer().name(), "faces", faces(plan)));
    if (!flashOff(plan).isZero()) {
      add(
          StepKind.FLASH_OFF,
          Optional.of(flashOff(plan)),
          Optional.empty(),
          days(plan.primer().onPartDays().low()));
    }
  }

  private static Duration flashOff(PlannedPrimer plan) {
    return Duration.ofSeconds((long) Math.ceil(plan.primer().flashOffMinutes().high() * 60));
  }

  private static Map<String, String> days(double days) {
    return Map.of("days", Numbers.plain(days));
  }

  private void add(StepKind kind) {
    add(kind, Optional.empty(), Optional.empty(), Map.of());
  }

  private void add(
      StepKind kind, Optional<Duration> time, Optional<Instant> at, Map<String, String> values) {
    steps.add(new Step(kind, time, at, values));
  }
}
