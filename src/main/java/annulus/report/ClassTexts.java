package annulus.report;

import annulus.select.ClassVerdict;
import annulus.select.Finding;
import annulus.select.Rule;
import java.util.Comparator;
import java.util.List;

/** A class's verdict in words. */
final class ClassTexts {
  private ClassTexts() {}

  static String standing(ClassVerdict verdict) {
    return switch (verdict.standing()) {
      case CHOSEN -> "chosen";
      case SUITABLE -> "suitable";
      case NEEDS_PRIMER -> "needs primer";
      case EXCLUDED -> "excluded";
    };
  }

  /** The shortest reason for its standing. */
  static String reason(ClassVerdict verdict) {
    return switch (verdict.standing()) {
      case CHOSEN -> "First choice of those that cover the gap.";
      case SUITABLE -> "Would do as well; another one comes first.";
      case NEEDS_PRIMER -> shortest(verdict.of(Rule.Verdict.NEEDS_PRIMER));
      case EXCLUDED -> shortest(verdict.of(Rule.Verdict.EXCLUDES));
    };
  }

  private static String shortest(List<Finding> findings) {
    return findings.stream()
        .map(RuleTexts::reason)
        .min(Comparator.comparingInt(String::length).thenComparing(Comparator.naturalOrder()))
        .orElse("");
  }
}
