package annulus.select;

import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;

/** All rules; refused at load when two contradict each other or one can never speak. */
public record RuleBook(List<Rule> rules) {
  private static final Comparator<Finding> BY_ID = Comparator.comparing(f -> f.rule().id());

  public RuleBook {
    rules = List.copyOf(rules);
    Set<String> ids = new HashSet<>();
    Map<Condition, Rule> byCondition = new HashMap<>();
    for (Rule rule : rules) {
      if (!ids.add(rule.id())) {
        throw new InvalidValue("id", rule.id() + " stands twice", "each rule once");
      }
      Rule other = byCondition.putIfAbsent(rule.when(), rule);
      if (other != null && contradict(other.verdict(), rule.verdict())) {
        throw new InvalidValue(
            rule.id(), "contradicts " + other.id() + " on the same facts", "one verdict");
      }
      checkPossible(rule);
    }
  }

  private static boolean contradict(Rule.Verdict a, Rule.Verdict b) {
    boolean against = a == Rule.Verdict.EXCLUDES || b == Rule.Verdict.EXCLUDES;
    boolean favours = a == Rule.Verdict.PREFERS || b == Rule.Verdict.PREFERS;
    return against && favours;
  }

  private static void checkPossible(Rule rule) {
    if (!(rule.when() instanceof Condition.All all)) {
      return;
    }
    Map<Fact, double[]> ranges = new HashMap<>();
    Map<Fact, Set<Object>> words = new HashMap<>();
    for (Condition part : all.parts()) {
      boolean possible = true;
      if (part instanceof Condition.Against a) {
        double[] range =
            ranges.computeIfAbsent(
                a.fact(), f -> new double[] {Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY});
        narrow(range, a);
        possible = range[0] <= range[1];
      } else if (part instanceof Condition.Is is) {
        Set<Object> left = words.computeIfAbsent(is.fact(), f -> new HashSet<>(is.values()));
        left.retainAll(is.values());
        possible = !left.isEmpty();
      }
      if (!possible) {
        throw new InvalidValue(
            rule.id(),
            "can never speak: its tests exclude each other",
            "tests that can hold together");
      }
    }
  }

  /** Above and below leave the limit itself out, so that "above 20, at most 20" is seen through. */
  private static void narrow(double[] range, Condition.Against a) {
    switch (a.comparison()) {
      case ABOVE -> range[0] = Math.max(range[0], Math.nextUp(a.limit()));
      case AT_LEAST -> range[0] = Math.max(range[0], a.limit());
      case BELOW -> range[1] = Math.min(range[1], Math.nextDown(a.limit()));
      case AT_MOST -> range[1] = Math.min(range[1], a.limit());
    }
  }

  /** Every rule that speaks on these facts, sorted by id. */
  public List<Finding> findings(Facts facts, String classId) {
    return speaking(facts, classId, rule -> true);
  }

  /** The rules of the joint alone that speak: the same for every class. */
  List<Finding> ofJoint(Facts joint) {
    return speaking(joint, "", Rule::ofJoint);
  }

  /** The rules of a class that speak, together with those of the joint, sorted by id. */
  List<Finding> ofClass(Facts facts, String classId, List<Finding> ofJoint) {
    List<Finding> all = new ArrayList<>(ofJoint);
    all.addAll(speaking(facts, classId, rule -> !rule.ofJoint()));
    all.sort(BY_ID);
    return all;
  }

  private List<Finding> speaking(Facts facts, String classId, Predicate<Rule> asked) {
    List<Finding> found = new ArrayList<>();
    for (Rule rule : rules) {
      if (asked.test(rule) && rule.when().holds(facts)) {
        found.add(Finding.of(rule, facts, classId));
      }
    }
    found.sort(BY_ID);
    return found;
  }
}
