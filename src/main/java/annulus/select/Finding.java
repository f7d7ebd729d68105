package annulus.select;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A rule that spoke. Its figures are put together when they are first asked for. */
public final class Finding {
  private final Rule rule;
  private final String classId;
  private final Facts facts;
  private volatile Map<Fact, Object> figures;

  private Finding(Rule rule, String classId, Facts facts, Map<Fact, Object> figures) {
    this.rule = rule;
    this.classId = classId;
    this.facts = facts;
    this.figures = figures;
  }

  /**
   * @param rule which
   * @param classId about which class; empty for the joint as a whole
   * @param figures the facts it looked at or mentions, with their values
   */
  public Finding(Rule rule, String classId, Map<Fact, Object> figures) {
    this(rule, classId, null, Collections.unmodifiableMap(new LinkedHashMap<>(figures)));
  }

  static Finding of(Rule rule, Facts facts, String classId) {
    return new Finding(rule, rule.ofJoint() ? "" : classId, facts, null);
  }

  private Map<Fact, Object> told() {
    Map<Fact, Object> told = new LinkedHashMap<>();
    for (Fact fact : rule.figures()) {
      Object value = facts.value(fact);
      if (value != null) {
        told.put(fact, value);
      }
    }
    return Collections.unmodifiableMap(told);
  }

  /** Which rule. */
  public Rule rule() {
    return rule;
  }

  /** About which class; empty for the joint as a whole. */
  public String classId() {
    return classId;
  }

  /** The facts it looked at or mentions, with their values. */
  public Map<Fact, Object> figures() {
    Map<Fact, Object> known = figures;
    if (known == null) {
      known = told();
      figures = known;
    }
    return known;
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Finding f && parts().equals(f.parts());
  }

  @Override
  public int hashCode() {
    return parts().hashCode();
  }

  @Override
  public String toString() {
    return "Finding" + parts();
  }

  private List<Object> parts() {
    return List.of(rule, classId, figures());
  }
}
