package annulus.advice;

import annulus.advice.Advice.CureTimes;
import annulus.advice.Advice.Decision;
import annulus.advice.Advice.Figure;
import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.HandBack;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.Step;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.NamedNumber;
import annulus.fit.Gap;
import annulus.select.ClassVerdict;
import annulus.stock.Draw;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Judges joints against one catalogue and one rule book. Holds no state between orders. */
public final class Advisor {
  private final Knowledge knowledge;
  private final Catalog catalog;
  private final List<Figure> policyFigures;

  /**
   * @param knowledge all that answers are judged by
   */
  public Advisor(Knowledge knowledge) {
    this.knowledge = knowledge;
    this.catalog = knowledge.catalog();
    this.policyFigures =
        catalog.policy().numbers().values().stream().sorted(BY_ID).map(Advisor::figure).toList();
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
    GapWork work = new GapWork(order, catalog);
    GapFinding found = work.find();
    Optional<PressReport> press =
        JointFacts.fit(found.gap(), catalog, order.confidence()) == JointFacts.FitKind.INTERFERENCE
            ? Optional.of(new PressWork(order, knowledge, found).report())
            : Optional.empty();
    Choice choice = Choice.of(order, knowledge, found, press);
    Decision decision = choice.decision(order, catalog, found.gap());
    if (decision.kind() == Kind.MEASURE_AGAIN) {
      found = withRemedy(found, work.remedy(found));
    }
    Gap gap = found.gap();
    Optional<CurePlan> plan =
        decision.compound().flatMap(c -> CurePlan.of(order, catalog, c, gap, choice.primer()));
    if (plan.isEmpty() && decision.kind() == Kind.USE_COMPOUND) {
      decision = no(Kind.NO_CLASS, decision);
    }
    Optional<HoldWork> bond =
        plan.isPresent()
            ? decision.compound().map(c -> new HoldWork(order, knowledge, c, gap, choice.primer()))
            : Optional.empty();
    Optional<HoldReport> held = bond.map(HoldWork::report);
    Optional<CureTimes> cure = plan.map(p -> p.times(choice.primer()));
    Optional<HandBack> handBack = plan.flatMap(p -> Release.of(order, catalog, p, held));
    if (decision.kind() == Kind.PRESS_DRY) {
      handBack = Release.dryFit(order, press);
    }
    if (grabbedBeforeMove(order, cure)) {
      decision = no(Kind.STRIP_AND_REDO, decision);
      handBack = Optional.empty();
    }
    return new Advice(
        catalog.version(),
        order,
        decision,
        handBack,
        found,
        cure,
        press,
        hold(bond, held, plan, handBack).map(h -> withCarriers(h, order, gap, choice)),
        steps(order, decision, cure, handBack, gap),
        choice.cautions(),
        choice.selection().table(),
        WhenAsked.list(() -> figures(plan)));
  }

  private List<Step> steps(
      JointOrder order,
      Decision decision,
      Optional<CureTimes> cure,
      Optional<HandBack> handBack,
      Gap gap) {
    return WhenAsked.list(
        () -> Steps.of(order, catalog, decision, cure, handBack, volumeMl(order, gap)));
  }

  /** The hold, with what it is worth at hand-back. */
  private static Optional<HoldReport> hold(
      Optional<HoldWork> bond,
      Optional<HoldReport> held,
      Optional<CurePlan> plan,
      Optional<HandBack> handBack) {
    if (held.isEmpty() || handBack.isEmpty()) {
      return held;
    }
    double fraction = plan.orElseThrow().sureFraction(handBack.get().after());
    return held.map(h -> h.withHandBack(bond.orElseThrow().atFraction(fraction)));
  }

  /** Where the chosen class never carries the load, those of the suitable ones that do. */
  private HoldReport withCarriers(HoldReport held, JointOrder order, Gap gap, Choice choice) {
    if (held.fractionWanted().orElse(0) <= 1 || !held.computable()) {
      return held;
    }
    return held.withCarriers(
        choice.selection().table().stream()
            .filter(ClassVerdict::usable)
            .map(ClassVerdict::compound)
            .filter(c -> isReleased(c, order, gap, choice))
            .toList());
  }

  private boolean isReleased(CompoundClass compound, JointOrder order, Gap gap, Choice choice) {
    HoldReport held = new HoldWork(order, knowledge, compound, gap, choice.primer()).report();
    return CurePlan.of(order, catalog, compound, gap, choice.primer())
        .flatMap(p -> Release.of(order, catalog, p, Optional.of(held)))
        .isPresent();
  }

  private static GapFinding withRemedy(GapFinding found, Optional<annulus.measure.Remedy> remedy) {
    return new GapFinding(
        found.gap(),
        found.level(),
        found.bore(),
        found.part(),
        found.atAssemblyUm(),
        found.inService(),
        remedy);
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

  private double volumeMl(JointOrder order, Gap gap) {
    return Draw.compound(
            gap.nominalMm(),
            gap.upperUm(order.confidence()),
            order.engagementMm(),
            catalog.policy().value("waste-factor"),
            catalog.policy().value("least-draw-ml"))
        .value();
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
