package annulus.select;

import annulus.catalog.CompoundClass;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The whole table of classes with their verdicts.
 *
 * @param table every class, in the catalogue's order
 */
public record Selection(List<ClassVerdict> table) {
  /**
   * The least filling, then what the rules prefer, then the stronger, then by name so that no file
   * order decides.
   */
  private static final Comparator<ClassVerdict> LEAST_FILLING =
      Comparator.<ClassVerdict>comparingDouble(v -> v.compound().gapUm().high())
          .thenComparingInt(v -> -v.count(Rule.Verdict.PREFERS))
          .thenComparingDouble(v -> -v.compound().strengthMPa().likely())
          .thenComparing(v -> v.compound().id());

  private static final Comparator<ClassVerdict> RELEASABLE_FIRST =
      Comparator.<ClassVerdict>comparingInt(
              v -> v.compound().permanence() == CompoundClass.Permanence.RELEASABLE ? 0 : 1)
          .thenComparing(LEAST_FILLING);

  public Selection {
    table = List.copyOf(table);
  }

  /**
   * Tries every rule on every class and chooses among the suitable ones.
   *
   * @param rules the rule book
   * @param classes all classes
   * @param joint facts of the joint
   * @param ofClass facts of the joint and of one class in it, among them {@link Fact#CLASS_COVERS}
   * @param releasableFirst whether coming apart is wanted
   * @param forced a class the user insists on; others are not chosen
   */
  public static Selection of(
      RuleBook rules,
      Collection<CompoundClass> classes,
      Facts joint,
      Function<CompoundClass, Facts> ofClass,
      boolean releasableFirst,
      Optional<String> forced) {
    List<ClassVerdict> table = new ArrayList<>(classes.size());
    RuleBook.OnJoint open = rules.on(joint);
    for (CompoundClass compound : classes) {
      Facts facts = ofClass.apply(compound);
      Spoken spoken = open.findings(facts, compound.id());
      double covers = facts.number(Fact.CLASS_COVERS);
      table.add(
          new ClassVerdict(compound, standing(spoken), Double.isNaN(covers) ? 0 : covers, spoken));
    }
    int best = best(table, releasableFirst, forced);
    if (best >= 0) {
      table.set(best, table.get(best).chosen());
    }
    return new Selection(table);
  }

  /** Where the best usable class stands; -1 for none. */
  private static int best(
      List<ClassVerdict> table, boolean releasableFirst, Optional<String> forced) {
    Comparator<ClassVerdict> order = releasableFirst ? RELEASABLE_FIRST : LEAST_FILLING;
    int best = -1;
    for (int i = 0; i < table.size(); i++) {
      ClassVerdict verdict = table.get(i);
      boolean asked = forced.isEmpty() || forced.get().equals(verdict.compound().id());
      if (verdict.usable() && asked && (best < 0 || order.compare(verdict, table.get(best)) < 0)) {
        best = i;
      }
    }
    return best;
  }

  private static ClassVerdict.Standing standing(Spoken spoken) {
    if (spoken.has(Rule.Verdict.EXCLUDES)) {
      return ClassVerdict.Standing.EXCLUDED;
    }
    return spoken.has(Rule.Verdict.NEEDS_PRIMER)
        ? ClassVerdict.Standing.NEEDS_PRIMER
        : ClassVerdict.Standing.SUITABLE;
  }

  /** The class chosen, if any is suitable. */
  public Optional<ClassVerdict> chosen() {
    for (int i = 0; i < table.size(); i++) { // quicker than an iterator; asked several times
      if (table.get(i).standing() == ClassVerdict.Standing.CHOSEN) {
        return Optional.of(table.get(i));
      }
    }
    return Optional.empty();
  }
}
