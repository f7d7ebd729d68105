package annulus.advice;

import annulus.advice.Advice.Decision;
import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.fit.Gap;
import annulus.select.ClassVerdict;
import annulus.select.Fact;
import annulus.select.Facts;
import annulus.select.Finding;
import annulus.select.Rule;
import annulus.select.Selection;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * The choice of a class, with primer where the order leaves it open and nothing else will do.
 *
 * @param selection the whole table
 * @param primer the primer the table was made with
 * @param asked the class that the order insists on: then the others do not decide
 */
record Choice(Selection selection, Optional<PlannedPrimer> primer, Optional<String> asked) {
  private static final Set<String> NOT_SURE = Set.of("gap-not-sure");
  private static final Set<String> GAP = Set.of("gap-too-wide", "gap-too-narrow");
  private static final Set<String> TOO_WIDE = Set.of("gap-too-wide", "face-to-face-limit");
  private static final Set<String> PRESS_TOO_HIGH = Set.of("press-too-high");
  private static final Set<String> STALE_PRIMER = Set.of("primer-too-old");
  private static final Set<Fact> FIT = Set.of(Fact.FIT, Fact.GAP_LOOSEST, Fact.GAP_LIKELY);

  /** What matters to a press fit too, where nothing is bonded. */
  private static final Set<Fact> DRY =
      Set.of(
          Fact.FIT,
          Fact.BORE_KIND,
          Fact.PART_KIND,
          Fact.BORE_STATE,
          Fact.PART_STATE,
          Fact.ELECTRONICS_NEAR,
          Fact.CONSEQUENCE,
          Fact.LOAD_GIVEN,
          Fact.WARRANTY);

  /**
   * The choice in one joint.
   *
   * @param classes what is the same of each class in every joint, by id
   */
  static Choice of(
      JointOrder order,
      Knowledge knowledge,
      Map<String, ClassFacts> classes,
      GapFinding found,
      FitBelief fit,
      Optional<PressReport> press) {
    JointFacts facts = new JointFacts(order, found, fit, press);
    Choice choice = with(order, knowledge, classes, facts, named(order));
    if (choice.selection().chosen().isPresent()
        || !(order.primer() instanceof JointOrder.PrimerPlan.Open)) {
      return choice;
    }
    return primed(order, knowledge, classes, facts, firstPrimer(knowledge.catalog()))
        .orElse(choice);
  }

  /** The choice under the first plan of a primer with which some class may be used. */
  private static Optional<Choice> primed(
      JointOrder order,
      Knowledge knowledge,
      Map<String, ClassFacts> classes,
      JointFacts facts,
      Optional<Primer> primer) {
    if (primer.isEmpty()) {
      return Optional.empty();
    }
    for (PlannedPrimer plan : plans(order, primer.get())) {
      Choice choice = with(order, knowledge, classes, facts, Optional.of(plan));
      if (choice.selection().chosen().isPresent()) {
        return Optional.of(choice);
      }
    }
    return Optional.empty();
  }

  private static Optional<Primer> firstPrimer(Catalog catalog) {
    return catalog.primers().values().stream().findFirst();
  }

  /**
   * The faces that primer has to go on yet for some class to be usable, where the order leaves it
   * out; empty where none is wanted or none helps.
   */
  Optional<PlannedPrimer> missingPrimer(
      JointOrder order,
      Knowledge knowledge,
      Map<String, ClassFacts> classes,
      GapFinding found,
      FitBelief fit,
      Optional<PressReport> press) {
    boolean wanted =
        considered().stream().anyMatch(v -> v.standing() == ClassVerdict.Standing.NEEDS_PRIMER);
    if (!wanted || order.primer() instanceof JointOrder.PrimerPlan.Open) {
      return Optional.empty();
    }
    Optional<Primer> used = order.primer().used().or(() -> firstPrimer(knowledge.catalog()));
    JointFacts facts = new JointFacts(order, found, fit, press);
    return primed(order, knowledge, classes, facts, used)
        .flatMap(Choice::primer)
        .flatMap(p -> without(p, kept(order)));
  }

  /** Live primer that is on already and stays on: such a face must not be wiped again. */
  static Optional<PlannedPrimer> kept(JointOrder order) {
    return order.primer() instanceof JointOrder.PrimerPlan.Used used && !used.age().isZero()
        ? named(order)
        : Optional.empty();
  }

  /** The faces of a plan that have no live primer on them. */
  private static Optional<PlannedPrimer> without(PlannedPrimer plan, Optional<PlannedPrimer> kept) {
    boolean onBore = plan.onBore() && !kept.map(PlannedPrimer::onBore).orElse(false);
    boolean onPart = plan.onPart() && !kept.map(PlannedPrimer::onPart).orElse(false);
    return onBore || onPart
        ? Optional.of(new PlannedPrimer(plan.primer(), onBore, onPart, true))
        : Optional.empty();
  }

  /**
   * A primer that went on longer ago than its shortest on-part life is not counted, nor one under
   * which old compound still has to be scraped off.
   */
  private static Optional<PlannedPrimer> named(JointOrder order) {
    if (!(order.primer() instanceof JointOrder.PrimerPlan.Used used)) {
      return Optional.empty();
    }
    boolean onBore = used.onBore() && lasts(used, order.bore());
    boolean onPart = used.onPart() && lasts(used, order.part());
    return used.isTooOld() || !(onBore || onPart)
        ? Optional.empty()
        : Optional.of(new PlannedPrimer(used.primer(), onBore, onPart, false));
  }

  /** What goes on after the face was scraped stays there. */
  private static boolean lasts(JointOrder.PrimerPlan.Used used, Member member) {
    return used.age().isZero() || member.state() != Member.FaceState.OLD_COMPOUND;
  }

  /** First the least active face alone, then both; faces that have live primer keep it. */
  private static List<PlannedPrimer> plans(JointOrder order, Primer primer) {
    Activity.Level bore = order.bore().activity();
    Activity.Level part = order.part().activity();
    List<PlannedPrimer> plans = new ArrayList<>();
    if (bore != part) {
      Optional<PlannedPrimer> live = named(order);
      boolean boreFirst = bore.compareTo(part) > 0;
      boolean onBore = boreFirst || live.map(PlannedPrimer::onBore).orElse(false);
      boolean onPart = !boreFirst || live.map(PlannedPrimer::onPart).orElse(false);
      plans.add(new PlannedPrimer(primer, onBore, onPart, true));
    }
    plans.add(new PlannedPrimer(primer, true, true, true));
    return plans;
  }

  private static Choice with(
      JointOrder order,
      Knowledge knowledge,
      Map<String, ClassFacts> classes,
      JointFacts facts,
      Optional<PlannedPrimer> primer) {
    Facts joint = facts.joint(primer);
    Optional<String> asked = order.compound().map(CompoundClass::id);
    Selection selection =
        Selection.of(
            knowledge.rules(),
            knowledge.catalog().compounds().values(),
            joint,
            compound -> facts.ofClass(joint, compound, classes.get(compound.id()), primer),
            order.surroundings().comesApartLater(),
            asked);
    return new Choice(selection, primer, asked);
  }

  /** What follows from the table. */
  Decision decision(JointOrder order, Catalog catalog, Gap gap, FitBelief fit) {
    Policy policy = catalog.policy();
    boolean tooTight = fit.readsDry() && gap.smallestUm() < policy.value("dry-press-least-um");
    Optional<ClassVerdict> chosen = selection.chosen();
    if (chosen.isPresent() && !tooTight) {
      return new Decision(
          Kind.USE_COMPOUND,
          Optional.of(chosen.get().compound()),
          primer,
          chosen.get().covers(),
          List.of());
    }
    double dry = fit.dry();
    List<Finding> against = against();
    List<Finding> forbidden = ofJoint(against);
    if (dry >= order.confidence() || chosen.isPresent()) {
      boolean tight = tooTight || has(forbidden, PRESS_TOO_HIGH);
      return no(tight ? Kind.TOO_TIGHT : Kind.PRESS_DRY, dry, tight ? against : List.of());
    }
    boolean nearlyDry = fit.readsDry() && forbidden.isEmpty();
    if (onlyUnsure() || nearlyDry) {
      return no(
          Kind.MEASURE_AGAIN,
          Math.max(bestCovers(), dry),
          withStalePrimer(only(against, NOT_SURE), against));
    }
    if (tooWideForAll()) {
      return no(Kind.TOO_WIDE, 0, only(against, TOO_WIDE));
    }
    return no(Kind.NO_CLASS, 0, withStalePrimer(against, against));
  }

  /** Where some class wants primer, one that is there but too old is told first. */
  private List<Finding> withStalePrimer(List<Finding> reasons, List<Finding> against) {
    boolean primerWanted = false;
    for (Finding finding : against) {
      primerWanted |= finding.rule().verdict() == Rule.Verdict.NEEDS_PRIMER;
    }
    if (!primerWanted || selection.table().isEmpty()) {
      return reasons;
    }
    List<Finding> told = only(selection.table().get(0).findings(), STALE_PRIMER);
    told.addAll(reasons);
    return told;
  }

  /** Whether primer is wanted, and the one that is there is too old. */
  static boolean wantsPrimerAnew(Decision decision) {
    return has(decision.because(), STALE_PRIMER);
  }

  private double bestCovers() {
    double best = 0;
    for (ClassVerdict verdict : selection.table()) {
      best = Math.max(best, verdict.covers());
    }
    return best;
  }

  private static Decision no(Kind kind, double probability, List<Finding> because) {
    return new Decision(kind, Optional.empty(), Optional.empty(), probability, because);
  }

  /** The classes that decide: all, or only the one that was asked for. */
  private List<ClassVerdict> considered() {
    if (asked.isEmpty()) {
      return selection.table();
    }
    List<ClassVerdict> considered = new ArrayList<>(1);
    for (ClassVerdict verdict : selection.table()) {
      if (asked.get().equals(verdict.compound().id())) {
        considered.add(verdict);
      }
    }
    return considered;
  }

  /** Whether some class is held back by nothing but the doubt about the gap. */
  private boolean onlyUnsure() {
    for (ClassVerdict verdict : considered()) {
      List<Finding> excluding = verdict.of(Rule.Verdict.EXCLUDES);
      if (!excluding.isEmpty() && only(excluding, NOT_SURE).size() == excluding.size()) {
        return true;
      }
    }
    return false;
  }

  private boolean tooWideForAll() {
    for (ClassVerdict verdict : selection.table()) {
      if (!has(verdict.findings(), TOO_WIDE)) {
        return false;
      }
    }
    return true;
  }

  /** Findings of the joint itself that exclude every class. */
  private static List<Finding> ofJoint(List<Finding> findings) {
    List<Finding> ofJoint = new ArrayList<>();
    for (Finding finding : findings) {
      if (finding.rule().ofJoint()) {
        ofJoint.add(finding);
      }
    }
    return ofJoint;
  }

  private static boolean has(List<Finding> findings, Set<String> rules) {
    for (Finding finding : findings) {
      if (rules.contains(finding.rule().id())) {
        return true;
      }
    }
    return false;
  }

  private static List<Finding> only(List<Finding> findings, Set<String> rules) {
    List<Finding> only = new ArrayList<>();
    for (Finding finding : findings) {
      if (rules.contains(finding.rule().id())) {
        only.add(finding);
      }
    }
    return only;
  }

  /**
   * Findings that stand in the way, each rule once, those of the joint first. Classes that the gap
   * itself rules out are left aside while there are others.
   */
  private List<Finding> against() {
    List<ClassVerdict> near = new ArrayList<>();
    for (ClassVerdict verdict : considered()) {
      if (!has(verdict.findings(), GAP)) {
        near.add(verdict);
      }
    }
    List<ClassVerdict> about = near.isEmpty() ? byDistance() : near;
    Map<String, Finding> byRule = new LinkedHashMap<>();
    for (boolean ofJoint : new boolean[] {true, false}) {
      for (ClassVerdict verdict : about) {
        for (Finding finding : verdict.findings()) {
          Rule.Verdict v = finding.rule().verdict();
          boolean blocks = v == Rule.Verdict.EXCLUDES || v == Rule.Verdict.NEEDS_PRIMER;
          if (blocks && finding.rule().ofJoint() == ofJoint) {
            byRule.putIfAbsent(finding.rule().id(), finding);
          }
        }
      }
    }
    return List.copyOf(byRule.values());
  }

  /** Widest-filling classes first: the nearest to a gap that is too wide for all. */
  private List<ClassVerdict> byDistance() {
    return considered().stream()
        .sorted(Comparator.comparingDouble(v -> -v.compound().gapUm().high()))
        .toList();
  }

  /**
   * Cautions of the joint and of the chosen class. Where nothing is to be bonded, only those about
   * the measurement, the form and the press fit.
   *
   * @param dry whether the parts are pressed together without anything between them
   */
  List<Finding> cautions(boolean dry) {
    Optional<ClassVerdict> chosen = selection.chosen();
    if (chosen.isPresent()) {
      return chosen.get().of(Rule.Verdict.CAUTION);
    }
    List<Finding> result = new ArrayList<>();
    if (!selection.table().isEmpty()) {
      for (Finding finding : selection.table().get(0).of(Rule.Verdict.CAUTION)) {
        if (withoutBond(finding) || (dry && ofDryFit(finding.rule()))) {
          result.add(finding);
        }
      }
    }
    return result;
  }

  private static boolean withoutBond(Finding finding) {
    Rule rule = finding.rule();
    return rule.ofJoint() && (ofShape(rule) || FIT.containsAll(rule.facts()));
  }

  private static boolean ofDryFit(Rule rule) {
    return rule.ofJoint() && DRY.containsAll(rule.facts());
  }

  private static boolean ofShape(Rule rule) {
    for (Fact fact : rule.facts()) {
      if (fact.id().startsWith("form.") || fact.id().startsWith("press.")) {
        return true;
      }
    }
    return false;
  }
}
