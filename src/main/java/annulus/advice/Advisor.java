package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.Decision;
import annulus.advice.Advice.Figure;
import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.advice.Advice.StageTime;
import annulus.advice.Advice.Step;
import annulus.advice.JointOrder.CurePlace;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.NamedNumber;
import annulus.measure.FormLimits;
import annulus.quantity.Estimate;
import annulus.quantity.WhenAsked;
import annulus.select.ClassVerdict;
import annulus.stock.Draw;
import annulus.stock.Millilitres;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Judges joints against one catalogue and one rule book. Holds no state between orders. */
public final class Advisor {
  private final Knowledge knowledge;
  private final Catalog catalog;
  private final List<Figure> policyFigures;
  private final Map<String, ClassFacts> classes;
  private final FormLimits limits;

  /**
   * @param knowledge all that answers are judged by
   */
  public Advisor(Knowledge knowledge) {
    this.knowledge = knowledge;
    this.catalog = knowledge.catalog();
    List<NamedNumber> byId = new ArrayList<>(catalog.policy().numbers().values());
    byId.sort(BY_ID);
    List<Figure> figures = new ArrayList<>(byId.size());
    byId.forEach(number -> figures.add(figure(number)));
    this.policyFigures = List.copyOf(figures);
    this.classes = ClassFacts.of(catalog);
    this.limits = MeasureLimits.of(catalog.policy());
  }

  /** All that it judges by. */
  public Knowledge knowledge() {
    return knowledge;
  }

  /** The catalogue it judges by. */
  public Catalog catalog() {
    return catalog;
  }

  /**
   * The answer to one order: the same for the same order and data, byte for byte.
   *
   * @throws annulus.quantity.InvalidValue when an instrument cannot measure what it is said to have
   *     measured
   */
  public Advice advise(JointOrder order) {
    return advise(order, JointHeat.Entry.LIES_THERE);
  }

  /** As {@link #advise(JointOrder)} for parts that come into their place in this way. */
  Advice advise(JointOrder order, JointHeat.Entry entry) {
    Optional<CurePlace> near = JointHeat.felt(order, entry, knowledge.warmUp(), false);
    Advice advice = judged(order, near);
    return near.isEmpty() || endsWithin(advice, Duration.ofSeconds((long) JointHeat.NEAR_SECONDS))
        ? advice
        : judged(order, JointHeat.felt(order, entry, knowledge.warmUp(), true));
  }

  private Advice judged(JointOrder order, Optional<CurePlace> felt) {
    return judged(felt.map(f -> OrderChange.cure(order, f)).orElse(order));
  }

  /** Whether nothing that is told lies later after the start. */
  private static boolean endsWithin(Advice advice, Duration most) {
    if (advice.cure().isEmpty()) {
      return true;
    }
    CureTimes cure = advice.cure().get();
    boolean ends = cure.slowPracticeFull().filter(d -> d.compareTo(most) <= 0).isPresent();
    for (StageTime stage : cure.stages()) {
      ends &= stage.sure().filter(d -> d.compareTo(most) <= 0).isPresent();
      ends &= stage.typical().filter(d -> d.compareTo(most) <= 0).isPresent();
    }
    return ends && advice.handBack().filter(h -> h.after().compareTo(most) > 0).isEmpty();
  }

  private Advice judged(JointOrder order) {
    GapWork work = new GapWork(order, catalog, limits);
    GapFinding found = work.find();
    FitBelief fit = FitBelief.of(found.gap(), catalog.policy(), order.confidence());
    Optional<PressReport> press =
        found.mayPress()
            ? Optional.of(new PressWork(order, knowledge, found).report())
            : Optional.empty();
    boolean heldBack = Release.heldBackAsPressFit(order, fit, press);
    Choice choice = Choice.of(order, knowledge, classes, found, fit, press);
    Decision decision = choice.decision(order, catalog, found.gap(), fit);
    GapFinding gap =
        decision.kind() == Kind.MEASURE_AGAIN ? found.withRemedies(work.remedies(found)) : found;
    Optional<PlannedPrimer> primer = choice.primer();
    Optional<CurePlan> plan =
        decision.compound().isPresent()
            ? CurePlan.of(order, catalog, decision.compound().get(), gap, primer)
            : Optional.empty();
    if (plan.isEmpty() && decision.kind() == Kind.USE_COMPOUND) {
      decision = no(Kind.NO_CLASS, decision);
    }
    Optional<CureTimes> cure = plan.map(p -> p.times(primer));
    Optional<HoldWork> bond =
        plan.map(p -> new HoldWork(order, knowledge, p.compound(), gap, primer, press));
    Optional<HandBack> handBack =
        plan.isPresent() && !heldBack
            ? Release.of(order, catalog, plan.get(), cure.get(), bond.get().fractionWanted())
            : Optional.empty();
    if (decision.kind() == Kind.PRESS_DRY) {
      handBack = Release.dryFit(order, press);
    }
    if (grabbedBeforeMove(order, cure)) {
      decision = no(Kind.STRIP_AND_REDO, decision);
      handBack = Optional.empty();
    }
    boolean mayWantPrimer = decision.kind() == Kind.NO_CLASS;
    Supplier<Optional<PlannedPrimer>> missing =
        () ->
            mayWantPrimer
                ? choice.missingPrimer(order, knowledge, classes, found, fit, press)
                : Optional.empty();
    return new Advice(
        catalog.version(),
        order,
        decision,
        handBack,
        primed(order, decision),
        catalog.limitedUse(),
        gap,
        cure,
        press.filter(p -> fit.readsDry()),
        holds(bond, plan, handBack, heldBack ? List.of() : choice.selection().table()),
        steps(order, decision, cure, handBack, gap, missing),
        choice.cautions(decision.kind() == Kind.PRESS_DRY),
        choice.selection().table(),
        WhenAsked.list(() -> figures(plan)));
  }

  /** What the order would get with the primer entered; worked out when it is asked for. */
  private List<HandBack> primed(JointOrder order, Decision decision) {
    Optional<PlannedPrimer> plan = decision.primer().filter(PlannedPrimer::addedHere);
    if (plan.isEmpty()) {
      return List.of();
    }
    PlannedPrimer p = plan.get();
    JointOrder.PrimerPlan entered =
        new JointOrder.PrimerPlan.Used(p.primer(), p.onBore(), p.onPart(), Duration.ZERO);
    return WhenAsked.list(
        () -> advise(OrderChange.primer(order, entered)).handBack().stream().toList());
  }

  private List<Step> steps(
      JointOrder order,
      Decision decision,
      Optional<CureTimes> cure,
      Optional<HandBack> handBack,
      GapFinding gap,
      Supplier<Optional<PlannedPrimer>> missing) {
    return WhenAsked.list(
        () ->
            Steps.of(
                order,
                catalog,
                new Steps.Made(
                    decision, cure, handBack, gap, draw(order, gap).value(), missing.get())));
  }

  /** The hold, with what it is worth at hand-back; worked out when it is asked for. */
  private List<HoldReport> holds(
      Optional<HoldWork> bond,
      Optional<CurePlan> plan,
      Optional<HandBack> handBack,
      List<ClassVerdict> mayCarry) {
    if (bond.isEmpty()) {
      return List.of();
    }
    HoldWork work = bond.get();
    return WhenAsked.list(
        () -> {
          Optional<Estimate> atHandBack =
              handBack.flatMap(h -> work.atFraction(plan.orElseThrow().sureFraction(h.after())));
          return List.of(work.report(atHandBack, carriers(work, mayCarry)));
        });
  }

  /** Where the chosen class never carries the load, those of the suitable ones that do. */
  private List<CompoundClass> carriers(HoldWork chosen, List<ClassVerdict> mayCarry) {
    if (chosen.fractionWanted().orElse(0) <= 1 || !chosen.computable()) {
      return List.of();
    }
    List<CompoundClass> carriers = new ArrayList<>();
    for (ClassVerdict verdict : mayCarry) {
      if (verdict.usable() && isReleased(chosen.with(verdict.compound()))) {
        carriers.add(verdict.compound());
      }
    }
    return carriers;
  }

  private boolean isReleased(HoldWork bond) {
    return CurePlan.of(bond.order(), catalog, bond.compound(), bond.found(), bond.primer())
        .flatMap(p -> released(bond, p))
        .isPresent();
  }

  private Optional<HandBack> released(HoldWork bond, CurePlan plan) {
    CureTimes cure = plan.times(bond.primer());
    return Release.of(bond.order(), catalog, plan, cure, bond.fractionWanted());
  }

  private static Decision no(Kind kind, Decision was) {
    return new Decision(kind, was.compound(), was.primer(), was.probability(), was.because());
  }

  /** Moved once it may have grabbed: the film is torn, and no clock can be restarted on it. */
  private static boolean grabbedBeforeMove(JointOrder order, Optional<CureTimes> cure) {
    if (order.movedAt().isEmpty() || cure.isEmpty()) {
      return false;
    }
    Instant mayGrab = order.start().plus(cure.get().workingTime());
    return !order.movedAt().get().isBefore(mayGrab);
  }

  /** Compound to take from the bottle; of gap and film the most that they may be. */
  Millilitres draw(JointOrder order, GapFinding found) {
    return Draw.compound(
        found.gap().nominalMm(),
        found.closedUpperUm(),
        knowledge.hold().wettingFilmUm().value().high(),
        order.engagementMm(),
        catalog.policy().value("waste-factor"),
        catalog.policy().value("least-draw-ml"));
  }

  private static Figure figure(NamedNumber number) {
    return new Figure(
        number.id(), number.value(), number.unit(), number.meaning(), number.provenance());
  }

  private List<Figure> figures(Optional<CurePlan> plan) {
    List<Figure> figures = new ArrayList<>(policyFigures);
    plan.ifPresent(p -> figures.addAll(p.figures(catalog)));
    return figures;
  }

  private static final java.util.Comparator<NamedNumber> BY_ID = (a, b) -> a.id().compareTo(b.id());
}
