package annulus.advice;

import annulus.advice.Advice.Kind;
import annulus.advice.JointOrder.CurePlace;
import annulus.advice.JointOrder.PrimerPlan;
import annulus.advice.PromiseDesk.Input;
import annulus.advice.PromiseDesk.Shift;
import annulus.advice.PromiseDesk.Told;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Primer;
import annulus.fit.Gap;
import annulus.quantity.Estimate;
import annulus.quantity.Numbers;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Recomputes a promise with one doubtful input after the other at its better end. */
final class PromiseShifts {
  private final Knowledge knowledge;
  private final Shop shop;

  PromiseShifts(Knowledge knowledge, Shop shop) {
    this.knowledge = knowledge;
    this.shop = shop;
  }

  /** What moves the hand-back, most first; what moves nothing is left out. */
  List<Shift> of(JointOrder order) {
    Told now = desk(knowledge).tell(order);
    Optional<CompoundClass> chosen = now.advice().decision().compound();
    if (chosen.isEmpty() || now.ready().isEmpty()) {
      return List.of();
    }
    JointOrder fixed = OrderChange.compound(order, chosen.get());
    List<Shift> shifts = new ArrayList<>();
    temperature(fixed, now).ifPresent(shifts::add);
    gap(fixed, now).ifPresent(shifts::add);
    primer(fixed, now).ifPresent(shifts::add);
    arrival(fixed, now).ifPresent(shifts::add);
    faces(fixed, now).ifPresent(shifts::add);
    classTimes(fixed, now).ifPresent(shifts::add);
    activation(fixed, now).ifPresent(shifts::add);
    shifts.sort(Comparator.comparing(Shift::sooner).reversed());
    return List.copyOf(shifts);
  }

  private PromiseDesk desk(Knowledge with) {
    return new PromiseDesk(with, shop);
  }

  private static Optional<Shift> shift(Input input, String atBest, Told now, Told then) {
    Optional<Instant> ready = then.ready();
    if (ready.isEmpty() || !ready.get().isBefore(now.ready().orElseThrow())) {
      return Optional.empty();
    }
    Duration sooner = Duration.between(ready.get(), now.ready().orElseThrow());
    return Optional.of(new Shift(input, atBest, ready.get(), then.promise(), sooner));
  }

  private Optional<Shift> temperature(JointOrder order, Told now) {
    double doubt = order.cure().plusMinusC();
    CurePlace warmer =
        new CurePlace(order.cure().history().shiftedBy(doubt), 0, order.cure().describedAs());
    String text = Numbers.plain(doubt) + " °C warmer than planned, and sure";
    return shift(
        Input.TEMPERATURE, text, now, desk(knowledge).tell(OrderChange.cure(order, warmer)));
  }

  /** At the lower limit where the class still suits, else at the likely gap. */
  private Optional<Shift> gap(JointOrder order, Told now) {
    Gap gap = now.advice().gap().gap();
    for (double um : new double[] {gap.lowerUm(order.confidence()), gap.meanUm()}) {
      Told then = desk(knowledge).tell(OrderChange.exactGap(order, gap, um));
      if (then.advice().decision().kind() == Kind.USE_COMPOUND) {
        String text =
            Numbers.fixed(um, 0)
                + " µm radial ("
                + Numbers.fixed(2 * um, 0)
                + " µm diametral) and sure";
        return shift(Input.GAP, text, now, then);
      }
    }
    return Optional.empty();
  }

  private Optional<Shift> primer(JointOrder order, Told now) {
    if (order.primer() instanceof PrimerPlan.Used) {
      return Optional.empty();
    }
    Optional<Shift> best = Optional.empty();
    for (Primer primer : knowledge.catalog().primers().values()) {
      PrimerPlan both = new PrimerPlan.Used(primer, true, true, Duration.ZERO);
      Told then = desk(knowledge).tell(OrderChange.primer(order, both));
      Optional<Shift> shift = shift(Input.PRIMER, primer.name() + " on both faces", now, then);
      boolean better =
          shift.isPresent()
              && (best.isEmpty() || shift.get().sooner().compareTo(best.get().sooner()) > 0);
      best = better ? shift : best;
    }
    return best;
  }

  private Optional<Shift> arrival(JointOrder order, Told now) {
    return shift(
        Input.ARRIVAL,
        "parts at the temperature of the place",
        now,
        desk(knowledge).tell(OrderChange.arrivedWarm(order)));
  }

  private Optional<Shift> faces(JointOrder order, Told now) {
    Map<Activity.Level, Activity> best = new LinkedHashMap<>();
    for (Activity activity : knowledge.catalog().activities().values()) {
      Estimate high = Estimate.exactly(activity.rate().high());
      best.put(activity.level(), new Activity(activity.level(), high, activity.provenance()));
    }
    Catalog c = knowledge.catalog();
    Catalog changed =
        new Catalog(
            c.version(),
            c.materials(),
            c.finishes(),
            best,
            c.compounds(),
            c.primers(),
            c.instruments(),
            c.release(),
            c.cautions(),
            c.ranks(),
            c.limitedUse(),
            c.policy());
    return shift(
        Input.FACES,
        "faces as active as such faces ever are",
        now,
        desk(with(changed)).tell(order));
  }

  private Optional<Shift> classTimes(JointOrder order, Told now) {
    return changedClass(
        Input.CLASS_TIMES,
        "this shop's own times known without spread",
        order,
        now,
        c -> cure(c, c.activationKJ(), 0));
  }

  private Optional<Shift> activation(JointOrder order, Told now) {
    return changedClass(
        Input.ACTIVATION,
        "how temperature acts on this compound known",
        order,
        now,
        c -> cure(c, Estimate.exactly(c.activationKJ().likely()), c.spreadLn()));
  }

  private Optional<Shift> changedClass(
      Input input,
      String text,
      JointOrder order,
      Told now,
      UnaryOperator<CompoundClass.Cure> change) {
    CompoundClass changed = ClassChange.cure(order.compound().orElseThrow(), change);
    Map<String, CompoundClass> compounds = new LinkedHashMap<>(knowledge.catalog().compounds());
    compounds.put(changed.id(), changed);
    Knowledge other = with(knowledge.catalog().withCompounds(compounds));
    return shift(input, text, now, desk(other).tell(OrderChange.compound(order, changed)));
  }

  private static CompoundClass.Cure cure(CompoundClass.Cure c, Estimate activation, double spread) {
    return new CompoundClass.Cure(
        c.referenceC(),
        c.referenceGapUm(),
        c.gapExponent(),
        activation,
        c.minimumC(),
        c.cautionBelowC(),
        c.heldAboveC(),
        spread,
        c.stages(),
        c.completeHours(),
        c.slowFullHours(),
        c.workingMinutes());
  }

  private Knowledge with(Catalog catalog) {
    return knowledge.withCatalog(catalog);
  }
}
