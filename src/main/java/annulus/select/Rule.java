package annulus.select;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * One rule, one id, one summary. What it looks at is worked out once, because rules are tried on
 * every class of every joint.
 */
public final class Rule {
  private final String id;
  private final String summary;
  private final Verdict verdict;
  private final Condition when;
  private final String reason;
  private final Provenance provenance;
  private final Set<Fact> facts;
  private final List<Fact> figures;
  private final List<Condition> leaves = new ArrayList<>();
  private final boolean ofJoint;
  private final List<Condition> onJoint = new ArrayList<>();
  private final List<Condition> onClass = new ArrayList<>();

  /**
   * @param id stable name
   * @param summary what it is about, one sentence
   * @param verdict what it does to a class
   * @param when the facts that make it speak
   * @param reason the words, with facts in braces
   * @param provenance source of the rule
   * @throws InvalidValue when a text is empty or the reason mentions what is no fact
   */
  public Rule(
      String id,
      String summary,
      Verdict verdict,
      Condition when,
      String reason,
      Provenance provenance) {
    this.id = Check.text("id", id);
    this.summary = Check.text("summary", summary);
    this.verdict = verdict;
    this.when = when;
    this.reason = Check.text("reason", reason);
    this.provenance = provenance;
    this.facts = Collections.unmodifiableSet(when.facts());
    this.figures = List.copyOf(figures(when, reason));
    this.ofJoint = !looksAtClass(when);
    addLeaves(when);
    for (Condition part : when instanceof Condition.All all ? all.parts() : List.of(when)) {
      (looksAtClass(part) ? onClass : onJoint).add(part);
    }
  }

  private void addLeaves(Condition test) {
    if (test instanceof Condition.All all) {
      all.parts().forEach(this::addLeaves);
    } else if (test instanceof Condition.Any any) {
      any.parts().forEach(this::addLeaves);
    } else {
      leaves.add(test);
    }
  }

  private static boolean looksAtClass(Condition when) {
    for (Fact fact : when.facts()) {
      if (fact.ofClass()) {
        return true;
      }
    }
    return false;
  }

  private static Set<Fact> figures(Condition when, String reason) {
    Set<Fact> figures = new LinkedHashSet<>(when.facts());
    for (int open = reason.indexOf('{'); open >= 0; open = reason.indexOf('{', open + 1)) {
      int close = reason.indexOf('}', open);
      if (close > 0) {
        figures.add(mentioned(reason.substring(open + 1, close)));
      }
    }
    return figures;
  }

  private static Fact mentioned(String name) {
    return Fact.named(name)
        .orElseThrow(
            () -> new InvalidValue("reason", "{" + name + "} is not a fact", "names of facts"));
  }

  /** What a rule does to a class. */
  public enum Verdict {
    EXCLUDES,
    NEEDS_PRIMER,
    CAUTION,
    PREFERS
  }

  public String id() {
    return id;
  }

  public String summary() {
    return summary;
  }

  public Verdict verdict() {
    return verdict;
  }

  public Condition when() {
    return when;
  }

  public String reason() {
    return reason;
  }

  public Provenance provenance() {
    return provenance;
  }

  /** The facts it looks at, in the order written. */
  public Set<Fact> facts() {
    return facts;
  }

  /** The single tests that its test is made of, in the order written. */
  public List<Condition> leaves() {
    return Collections.unmodifiableList(leaves);
  }

  /** The parts of its test that look at a class, or those that do not; all must hold. */
  List<Condition> parts(boolean ofClass) {
    return Collections.unmodifiableList(ofClass ? onClass : onJoint);
  }

  /** The facts it looks at, then those its reason mentions. */
  List<Fact> figures() {
    return figures;
  }

  /** Whether it looks at the joint alone, so that it speaks once and not per class. */
  public boolean ofJoint() {
    return ofJoint;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Rule r && parts().equals(r.parts());
  }

  @Override
  public int hashCode() {
    return parts().hashCode();
  }

  @Override
  public String toString() {
    return id;
  }

  private List<Object> parts() {
    return List.of(id, summary, verdict, when, reason, provenance);
  }
}
