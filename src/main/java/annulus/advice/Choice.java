package annulus.advice;

import annulus.advice.Advice.Decision;
import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.PlannedPrimer;
import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Policy;
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
  private static final String NOT_SURE = "gap-not-sure";
  private static final Set<String> GAP = Set.of("gap-too-wide", "gap-too-narrow");

  static Choice of(
      JointOrder order, Knowledge knowledge, GapFinding found, Optional<PressReport> press) {
    JointFacts facts = new JointFacts(order, knowledge.catalog(), found, press);
    Choice choice = with(order, knowledge, facts, named(order));
    if (choice.selection().chosen().isPresent()
        || !(order.primer() instanceof JointOrder.PrimerPlan.Open)) {
      return choice;
    }
    for (PlannedPrimer plan : plans(order, knowledge.catalog())) {
      Choice primed = with(order, knowledge, facts, Optional.of(plan));
      if (primed.selection().chosen().isPresent()) {
        return primed;
      }
    }
    return choice;
  }

  /** A primer that went on longer ago than its shortest on-part life is not counted. */
  private static Optional<PlannedPrimer> named(JointOrder order) {
    if (!(order.primer() instanceof JointOrder.PrimerPlan.Used used)) {
      return Optional.empty();
    }
    double age = used.age().toSeconds() / 86_400.0;
    return age > used.primer().onPartDays().low()
        ? Optional.empty()
        : Optional.of(new PlannedPrimer(used.primer(), used.onBore(), used.onPart(), false));
  }

  /** First the least active face alone, then both. */
  private static List<PlannedPrimer> plans(JointOrder order, Catalog catalog) {
    if (catalog.primers().isEmpty()) {
      return List.of();
    }
    var primer = catalog.primers().values().iterator().next();
    Activity.Level bore = order.bore().activity();
    Activity.Level part = order.part().activity();
    List<PlannedPrimer> plans = new ArrayList<>();
    if (bore != part) {
      boolean onBore = bore.compareTo(part) > 0;
      plans.add(new PlannedPrimer(primer, onBore, !onBore, true));
    }
    plans.add(new PlannedPrimer(primer, true, true, true));
    return plans;
  }

  private static Choice with(
      JointOrder order, Knowledge knowledge, JointFacts facts, Optional<PlannedPrimer> primer) {
    Facts joint = facts.joint(primer);
    Optional<String> asked = order.compound().map(CompoundClass::id);
    Selection selection =
        Selection.of(
            knowledge.rules(),
            knowledge.catalog().compounds().values(),
            joint,
            compound -> facts.ofClass(joint, compound, primer),
            order.surroundings().comesApartLater(),
            asked);
    return new Choice(selection, primer, asked);
  }

  /** What follows from the table. */
  Decision decision(JointOrder order, Catalog catalog, Gap gap) {
    Optional<ClassVerdict> chosen = selection.chosen();
    if (chosen.isPresent()) {
      return new Decision(
          Kind.USE_COMPOUND,
          Optional.of(chosen.get().compound()),
          primer,
          chosen.get().covers(),
          List.of());
    }
    Policy policy = catalog.policy();
    double dryUm = policy.value("dry-press-from-um");
    double dry = JointFacts.probabilityDry(gap, dryUm);
    if (dry >= order.confidence()) {
      boolean tight =
          gap.smallestUm() < policy.value("dry-press-least-um")
              || forbidden().stream().anyMatch(f -> f.rule().id().equals("press-too-high"));
      return no(tight ? Kind.TOO_TIGHT : Kind.PRESS_DRY, dry, tight ? against() : List.of());
    }
    boolean nearlyDry = gap.largestUm() <= dryUm && forbidden().isEmpty();
    if (onlyUnsure() || nearlyDry) {
      double best = selection.table().stream().mapToDouble(ClassVerdict::covers).max().orElse(0);
      return no(Kind.MEASURE_AGAIN, Math.max(best, dry), only(Set.of(NOT_SURE)));
    }
    if (tooWideForAll()) {
      List<Finding> because = only(Set.of("gap-too-wide", "face-to-face-limit"));
      return no(Kind.TOO_WIDE, 0, because);
    }
    return no(Kind.NO_CLASS, 0, against());
  }

  private static Decision no(Kind kind, double probability, List<Finding> because) {
    return new Decision(kind, Optional.empty(), Optional.empty(), probability, because);
  }

  /** The classes that decide: all, or only the one that was asked for. */
  private List<ClassVerdict> considered() {
    return selection.table().stream()
        .filter(v -> asked.isEmpty() || asked.get().equals(v.compound().id()))
        .toList();
  }

  /** Whether some class is held back by nothing but the doubt about the gap. */
  private boolean onlyUnsure() {
    return considered().stream()
        .map(v -> v.of(Rule.Verdict.EXCLUDES))
        .anyMatch(f -> !f.isEmpty() && f.stream().allMatch(x -> x.rule().id().equals(NOT_SURE)));
  }

  private boolean tooWideForAll() {
    Set<String> wide = Set.of("gap-too-wide", "face-to-face-limit");
    return selection.table().stream()
        .allMatch(v -> v.findings().stream().anyMatch(f -> wide.contains(f.rule().id())));
  }

  /** Findings of the joint itself that exclude every class. */
  private List<Finding> forbidden() {
    return against().stream().filter(f -> f.rule().ofJoint()).toList();
  }

  private List<Finding> only(Set<String> rules) {
    return against().stream().filter(f -> rules.contains(f.rule().id())).toList();
  }

  /**
   * Findings that stand in the way, each rule once, those of the joint first. Classes that the gap
   * itself rules out are left aside while there are others.
   */
  private List<Finding> against() {
    List<ClassVerdict> near =
        considered().stream()
            .filter(v -> v.findings().stream().noneMatch(f -> GAP.contains(f.rule().id())))
            .toList();
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
   */
  List<Finding> cautions() {
    List<Finding> result = new ArrayList<>();
    List<ClassVerdict> about =
        selection.chosen().map(List::of).orElse(selection.table().stream().limit(1).toList());
    boolean chosen = selection.chosen().isPresent();
    for (ClassVerdict verdict : about) {
      for (Finding finding : verdict.of(Rule.Verdict.CAUTION)) {
        if (chosen || withoutBond(finding)) {
          result.add(finding);
        }
      }
    }
    return result;
  }

  private static boolean withoutBond(Finding finding) {
    Set<Fact> facts = finding.rule().facts();
    boolean shape =
        facts.stream().anyMatch(f -> f.id().startsWith("form.") || f.id().startsWith("press."));
    boolean fit = Set.of(Fact.FIT, Fact.GAP_LOOSEST, Fact.GAP_LIKELY).containsAll(facts);
    return finding.rule().ofJoint() && (shape || fit);
  }
}
