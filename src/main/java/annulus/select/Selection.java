package annulus.select;

import annulus.catalog.CompoundClass;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The whole table of classes with their verdicts.
 *
 * @param table every class, in the catalogue's order
 */
public record Selection(List<ClassVerdict> table) {
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
    int best = -1;
    for (int i = 0; i < table.size(); i++) {
      ClassVerdict verdict = table.get(i);
      boolean asked = forced.isEmpty() || forced.get().equals(verdict.compound().id());
      if (verdict.usable()
          && asked
          && (best < 0 || comesBefore(verdict, table.get(best), releasableFirst))) {
        best = i;
      }
    }
    return best;
  }

  /**
   * First what comes apart, if that is wanted; then the least filling, then what the rules prefer,
   * then the stronger, then by name so that no file order decides.
   */
  private static boolean comesBefore(ClassVerdict a, ClassVerdict b, boolean releasableFirst) {
    CompoundClass one = a.compound();
    CompoundClass other = b.compound();
    int order = releasableFirst ? Boolean.compare(isReleasable(other), isReleasable(one)) : 0;
    if (order == 0) {
      order = Double.compare(one.gapUm().high(), other.gapUm().high());
    }
    if (order == 0) {
      order = Integer.compare(b.count(Rule.Verdict.PREFERS), a.count(Rule.Verdict.PREFERS));
    }
    if (order == 0) {
      order = Double.compare(other.strengthMPa().likely(), one.strengthMPa().likely());
    }
    return (order == 0 ? one.id().compareTo(other.id()) : order) < 0;
  }

  private static boolean isReleasable(CompoundClass compound) {
    return compound.permanence() == CompoundClass.Permanence.RELEASABLE;
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
