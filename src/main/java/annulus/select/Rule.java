package annulus.select;

import annulus.catalog.Provenance;
import annulus.quantity.Check;
import annulus.quantity.InvalidValue;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One rule, one id, one summary.
 *
 * @param id stable name
 * @param summary what it is about, one sentence
 * @param verdict what it does to a class
 * @param when the facts that make it speak
 * @param reason the words, with facts in braces
 * @param provenance source of the rule
 */
public record Rule(
    String id,
    String summary,
    Verdict verdict,
    Condition when,
    String reason,
    Provenance provenance) {
  private static final Pattern PLACE = Pattern.compile("\\{([^}]*)}");

  public Rule {
    Check.text("id", id);
    Check.text("summary", summary);
    Check.text("reason", reason);
    Matcher places = PLACE.matcher(reason);
    while (places.find()) {
      String name = places.group(1);
      if (Fact.named(name).isEmpty()) {
        throw new InvalidValue("reason", "{" + name + "} is not a fact", "names of facts");
      }
    }
  }

  /** What a rule does to a class. */
  public enum Verdict {
    EXCLUDES,
    NEEDS_PRIMER,
    CAUTION,
    PREFERS
  }

  /** Whether it looks at the joint alone, so that it speaks once and not per class. */
  public boolean ofJoint() {
    return when.facts().stream().noneMatch(Fact::ofClass);
  }
}
