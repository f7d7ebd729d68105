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
 * One rule, one id, one summary. What it looks at is worked out once, when it is first asked for: a
 * start makes all rules, and few speak.
 */
public final class Rule {
  private final String id;
  private final String summary;
  private final Verdict verdict;
  private final Condition when;
  private final String reason;
  private final Provenance provenance;
  private final boolean ofJoint;
  private volatile Set<Fact> facts;
  private volatile List<Fact> figures;
  private volatile List<Condition> leaves;

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
    this(
        Check.text("id", id),
        Check.text("summary", summary),
        verdict,
        when,
        Check.text("reason", reason),
        provenance,
        when.ofClass());
    figures(); // refuses a reason that mentions what is no fact
  }

  private Rule(
      String id,
      String summary,
      Verdict verdict,
      Condition when,
      String reason,
      Provenance provenance,
      boolean ofClass) {
    this.id = id;
    this.summary = summary;
    this.verdict = verdict;
    this.when = when;
    this.reason = reason;
    this.provenance = provenance;
    this.ofJoint = !ofClass;
  }

  /** As the constructor, for a rule that the constructor has not refused before: at the build. */
  public static Rule ofChecked(
      String id,
      String summary,
      Verdict verdict,
      Condition when,
      String reason,
      Provenance provenance) {
    return new Rule(id, summary, verdict, when, reason, provenance, when.ofClass());
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
    Set<Fact> known = facts;
    if (known == null) {
      known = Collections.unmodifiableSet(when.facts());
      facts = known;
    }
    return known;
  }

  /** The single tests that its test is made of, in the order written. */
  public List<Condition> leaves() {
    List<Condition> known = leaves;
    if (known == null) {
      known = List.copyOf(when.leaves());
      leaves = known;
    }
    return known;
  }

  /** The parts of its test that look at a class, or those that do not; all must hold. */
  List<Condition> parts(boolean ofClass) {
    List<Condition> found = new ArrayList<>();
    for (Condition part : when instanceof Condition.All all ? all.parts() : List.of(when)) {
      if (part.ofClass() == ofClass) {
        found.add(part);
      }
    }
    return found;
  }

  /** The facts it looks at, then those its reason mentions. */
  List<Fact> figures() {
    List<Fact> known = figures;
    if (known == null) {
      known = List.copyOf(figures(when, reason));
      figures = known;
    }
    return known;
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
