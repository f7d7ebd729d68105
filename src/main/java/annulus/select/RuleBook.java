package annulus.select;

import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReferenceArray;

/** All rules; refused at load when two contradict each other or one can never speak. */
public final class RuleBook {
  private final List<Rule> rules;

  /** By id, so that what they say comes out sorted. */
  private final List<Rule> sorted;

  /** The places of all rules. */
  private final Bits all;

  private final RuleSide onJoint;
  private final RuleSide onClass;

  /** The places of the rules with each verdict, in the order of verdicts. */
  private final Bits[] byVerdict = new Bits[Rule.Verdict.values().length];

  /**
   * @param rules in any order
   * @throws InvalidValue named by a rule's id, when rules contradict each other, one can never
   *     speak, or an id stands twice
   */
  public RuleBook(List<Rule> rules) {
    this(List.copyOf(rules), byId(rules));
    Set<String> ids = new HashSet<>();
    for (Rule rule : rules) {
      if (!ids.add(rule.id())) {
        throw new InvalidValue("id", rule.id() + " stands twice", "each rule once");
      }
      checkPossible(rule);
    }
    for (int i = 0; i < rules.size(); i++) {
      checkAgrees(rules.get(i), rules.subList(0, i));
    }
  }

  private RuleBook(List<Rule> rules, List<Rule> sorted) {
    this.rules = rules;
    this.sorted = sorted;
    this.all = new Bits(sorted.size());
    for (Rule.Verdict verdict : Rule.Verdict.values()) {
      byVerdict[verdict.ordinal()] = new Bits(sorted.size());
    }
    for (int i = 0; i < sorted.size(); i++) {
      all.set(i);
      byVerdict[sorted.get(i).verdict().ordinal()].set(i);
    }
    this.onJoint = new RuleSide(sorted, false);
    this.onClass = new RuleSide(sorted, true);
  }

  /** As the constructor, for rules that it has not refused before: at the build. */
  public static RuleBook ofChecked(List<Rule> rules) {
    return new RuleBook(List.copyOf(rules), byId(rules));
  }

  private static List<Rule> byId(List<Rule> rules) {
    List<Rule> byId = new ArrayList<>(rules);
    byId.sort((a, b) -> a.id().compareTo(b.id()));
    return List.copyOf(byId);
  }

  /** The facts are compared first: it is quicker, and hardly any two rules look at the same. */
  private static void checkAgrees(Rule rule, List<Rule> before) {
    for (Rule other : before) {
      if (contradict(other.verdict(), rule.verdict())
          && other.facts().equals(rule.facts())
          && other.when().equals(rule.when())) {
        throw new InvalidValue(
            rule.id(), "contradicts " + other.id() + " on the same facts", "one verdict");
      }
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

  /** All rules, in the order given. */
  public List<Rule> rules() {
    return rules;
  }

  /** Every rule that speaks on these facts, sorted by id. */
  public List<Finding> findings(Facts facts, String classId) {
    return List.copyOf(on(facts).findings(facts, classId));
  }

  /** What the rules say as far as the joint decides it. */
  OnJoint on(Facts joint) {
    Bits open = all.copy();
    onJoint.silence(joint, open);
    return new OnJoint(joint, open);
  }

  /** The rules that one joint does not keep silent. */
  final class OnJoint {
    private final Facts joint;
    private final Bits open;

    /** By place: what the joint alone decides, the same for every class; made when asked for. */
    private final AtomicReferenceArray<Finding> ofJoint;

    private OnJoint(Facts joint, Bits open) {
      this.joint = joint;
      this.open = open;
      this.ofJoint = new AtomicReferenceArray<>(sorted.size());
    }

    /** What the rule at a place says of the joint. */
    Finding ofJoint(int place) {
      Finding known = ofJoint.get(place);
      if (known == null) {
        known = Finding.of(sorted.get(place), joint, "");
        ofJoint.set(place, known);
      }
      return known;
    }

    /** The rule at a place in the order of ids. */
    Rule at(int place) {
      return sorted.get(place);
    }

    /** The places of the rules with this verdict. */
    Bits with(Rule.Verdict verdict) {
      return byVerdict[verdict.ordinal()];
    }

    /**
     * Every rule that speaks of a class in the joint, sorted by id.
     *
     * @param facts those of the joint and of the class
     */
    Spoken findings(Facts facts, String classId) {
      Bits speaking = open.copy();
      onClass.silence(facts, speaking);
      return new Spoken(this, speaking, facts, classId);
    }
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof RuleBook b && rules.equals(b.rules);
  }

  @Override
  public int hashCode() {
    return rules.hashCode();
  }

  @Override
  public String toString() {
    return "RuleBook" + rules;
  }
}
