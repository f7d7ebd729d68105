package annulus.report;

import annulus.advice.Advice;
import annulus.advice.Advice.Kind;
import annulus.catalog.CompoundClass;
import annulus.select.ClassVerdict;
import annulus.select.Finding;
import annulus.select.Rule;
import java.util.List;

/** A class's verdict in words. */
final class ClassTexts {
  private static final String SHARED = " compound";

  private ClassTexts() {}

  /** What it is called at the bench; the word that all of them share is left out. */
  static String name(CompoundClass compound) {
    String name = compound.name();
    return name.endsWith(SHARED) ? name.substring(0, name.length() - SHARED.length()) : name;
  }

  static String standing(ClassVerdict verdict) {
    return switch (verdict.standing()) {
      case CHOSEN -> "chosen";
      case SUITABLE -> "suitable";
      case NEEDS_PRIMER -> "needs primer";
      case EXCLUDED -> "excluded";
    };
  }

  /** The shortest reason for its standing. */
  static String reason(ClassVerdict verdict, Advice advice) {
    boolean asked = advice.order().compound().isPresent();
    return switch (verdict.standing()) {
      case CHOSEN ->
          asked ? "Asked for, and it covers the gap." : "First choice of those that cover the gap.";
      case SUITABLE -> suitable(asked, advice.decision().kind() == Kind.USE_COMPOUND);
      case NEEDS_PRIMER -> shortest(verdict.of(Rule.Verdict.NEEDS_PRIMER));
      case EXCLUDED -> shortest(verdict.of(Rule.Verdict.EXCLUDES));
    };
  }

  private static String suitable(boolean asked, boolean chosen) {
    String as = chosen ? "Would do as well; " : "Would do; ";
    return as + (asked ? "another one was asked for." : "another one comes first.");
  }

  private static String shortest(List<Finding> findings) {
    String shortest = "";
    for (Finding finding : findings) {
      String reason = RuleTexts.reason(finding);
      int shorter = Integer.compare(reason.length(), shortest.length());
      if (shortest.isEmpty() || shorter < 0 || (shorter == 0 && reason.compareTo(shortest) < 0)) {
        shortest = reason;
      }
    }
    return shortest;
  }
}
