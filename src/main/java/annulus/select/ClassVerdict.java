package annulus.select;

import annulus.catalog.CompoundClass;
import java.util.ArrayList;
import java.util.List;

/**
 * What the rules say of one class.
 *
 * @param compound the class
 * @param standing the outcome
 * @param covers probability that the gap lies in its range
 * @param findings every rule that spoke, sorted by id
 */
public record ClassVerdict(
    CompoundClass compound, Standing standing, double covers, List<Finding> findings) {
  public ClassVerdict {
    findings = findings instanceof Spoken ? findings : List.copyOf(findings);
  }

  /** Outcome for a class. */
  public enum Standing {
    CHOSEN,
    SUITABLE,
    NEEDS_PRIMER,
    EXCLUDED
  }

  ClassVerdict chosen() {
    return new ClassVerdict(compound, Standing.CHOSEN, covers, findings);
  }

  /** Findings of one verdict. */
  public List<Finding> of(Rule.Verdict verdict) {
    if (findings instanceof Spoken spoken) {
      return spoken.of(verdict);
    }
    List<Finding> of = new ArrayList<>();
    for (Finding finding : findings) {
      if (finding.rule().verdict() == verdict) {
        of.add(finding);
      }
    }
    return of;
  }

  int count(Rule.Verdict verdict) {
    if (findings instanceof Spoken spoken) {
      return spoken.count(verdict);
    }
    int count = 0;
    for (Finding finding : findings) {
      count += finding.rule().verdict() == verdict ? 1 : 0;
    }
    return count;
  }

  /** Whether it may be used as the joint stands. */
  public boolean usable() {
    return standing == Standing.CHOSEN || standing == Standing.SUITABLE;
  }
}
