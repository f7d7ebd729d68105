package annulus.select;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;

/** A rule that spoke. Its figures are put together when they are asked for. */
public final class Finding {
  private final Rule rule;
  private final String classId;
  private final Supplier<Map<Fact, Object>> figures;

  private Finding(Rule rule, String classId, Supplier<Map<Fact, Object>> figures) {
    this.rule = rule;
    this.classId = classId;
    this.figures = figures;
  }

  /**
   * @param rule which
   * @param classId about which class; empty for the joint as a whole
   * @param figures the facts it looked at or mentions, with their values
   */
  public Finding(Rule rule, String classId, Map<Fact, Object> figures) {
    this(rule, classId, copied(figures));
  }

  private static Supplier<Map<Fact, Object>> copied(Map<Fact, Object> figures) {
    Map<Fact, Object> copy = new LinkedHashMap<>(figures);
    return () -> copy;
  }

  static Finding of(Rule rule, Facts facts, String classId) {
    return new Finding(rule, rule.ofJoint() ? "" : classId, () -> told(rule, facts));
  }

  private static Map<Fact, Object> told(Rule rule, Facts facts) {
    Map<Fact, Object> figures = new LinkedHashMap<>();
    for (Fact fact : rule.figures()) {
      Object value = facts.value(fact);
      if (value != null) {
        figures.put(fact, value);
      }
    }
    return figures;
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
    return Collections.unmodifiableMap(figures.get());
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
