package annulus.select;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * A rule that spoke.
 *
 * @param rule which
 * @param classId about which class; empty for the joint as a whole
 * @param figures the facts it looked at or mentions, with their values
 */
public record Finding(Rule rule, String classId, Map<Fact, Object> figures) {
  public Finding {
    figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
  }

  static Finding of(Rule rule, Facts facts, String classId) {
    Map<Fact, Object> figures = new LinkedHashMap<>();
    for (Fact fact : rule.figures()) {
      Object value = facts.value(fact);
      if (value != null) {
        figures.put(fact, value);
      }
    }
    return new Finding(rule, rule.ofJoint() ? "" : classId, figures);
  }
}
