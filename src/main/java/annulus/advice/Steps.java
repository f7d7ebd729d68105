package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.Decision;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.Advice.Step;
import annulus.advice.Advice.StepKind;
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
      steps.press();
    } else if (decision.kind() == Kind.STRIP_AND_REDO) {
      steps.add(StepKind.STRIP);
      steps.add(StepKind.CLEAN);
      steps.add(StepKind.REDO);
    } else if (decision.kind() == Kind.MEASURE_AGAIN) {
      steps.add(StepKind.MEASURE_AGAIN);
    }
    return steps.steps;
  }

  private void bond(
      Decision decision, CureTimes cure, Optional<HandBack> handBack, double volumeMl) {
    CompoundClass compound = decision.compound().orElseThrow();
    prepare();
    decision.primer().ifPresent(this::prime);
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
    stage(StepKind.CHECK, cure, Stage.FUNCTIONAL);
    handBack.ifPresent(
        h -> add(StepKind.HAND_BACK, Optional.of(h.after()), Optional.of(h.at()), Map.of()));
  }

  private Duration rest() {
    return Duration.ofMinutes((long) catalog.policy().value("undisturbed-after-fixture-min"));
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

  private void press() {
    prepare();
    add(StepKind.PRESS_DRY);
    add(StepKind.HAND_BACK, Optional.of(Duration.ZERO), Optional.of(order.start()), Map.of());
  }

  private void prepare() {
    List<Member> members = List.of(order.bore(), order.part());
    double room = order.cure().history().celsiusAt(0);
    if (members.stream().anyMatch(m -> m.arrivesAtC().orElse(room) < room)) {
      add(StepKind.WARM_UP);
    }
    if (members.stream().anyMatch(m -> m.state() == Member.FaceState.OLD_COMPOUND)) {
      add(StepKind.REMOVE_OLD_COMPOUND);
    }
    add(StepKind.CLEAN);
    boolean gloss =
        members.stream()
            .anyMatch(m -> m.finish().id().equals("polished") || m.finish().id().equals("moulded"));
    if (gloss && members.stream().allMatch(m -> m.finish().film() == Finish.Film.BARE)) {
      add(StepKind.ABRADE);
    }
  }

  private void prime(PlannedPrimer plan) {
    String faces =
        plan.onBore() && plan.onPart() ? "both faces" : plan.onBore() ? "the bore" : "the part";
    boolean done =
        order.primer() instanceof JointOrder.PrimerPlan.Used used && !used.age().isZero();
    if (!done) {
      add(
          StepKind.PRIME,
          Optional.empty(),
          Optional.empty(),
          Map.of("primer", plan.primer().name(), "faces", faces));
    }
    double minutes = plan.primer().flashOffMinutes().high();
    if (minutes > 0 && !done) {
      Duration wait = Duration.ofSeconds((long) Math.ceil(minutes * 60));
      double days = plan.primer().onPartDays().low();
      add(
          StepKind.FLASH_OFF,
          Optional.of(wait),
          Optional.empty(),
          Map.of("days", Numbers.plain(days)));
    }
  }

  private void add(StepKind kind) {
    add(kind, Optional.empty(), Optional.empty(), Map.of());
  }

  private void add(
      StepKind kind, Optional<Duration> time, Optional<Instant> at, Map<String, String> values) {
    steps.add(new Step(kind, time, at, values));
  }
}
