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
  public Selection {
    table = List.copyOf(table);
  }

  /**
   * Tries every rule on every class and chooses among the suitable ones.
   *
   * @param rules the rule book
   * @param classes all classes
   * @param joint facts of the joint
   * @param ofClass facts of one class in this joint, among them {@link Fact#CLASS_COVERS}
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
    List<ClassVerdict> table = new ArrayList<>();
    List<Finding> ofJoint = rules.ofJoint(joint);
    for (CompoundClass compound : classes) {
      Facts facts = joint.with(ofClass.apply(compound));
      List<Finding> findings = rules.ofClass(facts, compound.id(), ofJoint);
      double covers = facts.value(Fact.CLASS_COVERS) instanceof Double d ? d : 0;
      table.add(new ClassVerdict(compound, standing(findings), covers, findings));
    }
    Optional<ClassVerdict> best =
        table.stream()
            .filter(ClassVerdict::usable)
            .filter(v -> forced.isEmpty() || forced.get().equals(v.compound().id()))
            .min(order(releasableFirst));
    return new Selection(table.stream().map(v -> isSame(best, v) ? v.chosen() : v).toList());
  }

  private static boolean isSame(Optional<ClassVerdict> best, ClassVerdict verdict) {
    return best.filter(b -> b.compound().id().equals(verdict.compound().id())).isPresent();
  }

  private static ClassVerdict.Standing standing(List<Finding> findings) {
    boolean needsPrimer = false;
    for (Finding finding : findings) {
      if (finding.rule().verdict() == Rule.Verdict.EXCLUDES) {
        return ClassVerdict.Standing.EXCLUDED;
      }
      needsPrimer |= finding.rule().verdict() == Rule.Verdict.NEEDS_PRIMER;
    }
    return needsPrimer ? ClassVerdict.Standing.NEEDS_PRIMER : ClassVerdict.Standing.SUITABLE;
  }

  /**
   * Releasable first where wanted, then the least filling, then what the rules prefer, then the
   * stronger, then by name so that no file order decides.
   */
  private static Comparator<ClassVerdict> order(boolean releasableFirst) {
    Comparator<ClassVerdict> apart =
        Comparator.comparing(
            v -> v.compound().permanence() == CompoundClass.Permanence.RELEASABLE ? 0 : 1);
    Comparator<ClassVerdict> filling = Comparator.comparingDouble(v -> v.compound().gapUm().high());
    Comparator<ClassVerdict> rest =
        filling
            .thenComparingInt(v -> -v.of(Rule.Verdict.PREFERS).size())
            .thenComparingDouble(v -> -v.compound().strengthMPa().likely())
            .thenComparing(v -> v.compound().id());
    return releasableFirst ? apart.thenComparing(rest) : rest;
  }

  /** The class chosen, if any is suitable. */
  public Optional<ClassVerdict> chosen() {
    return table.stream().filter(v -> v.standing() == ClassVerdict.Standing.CHOSEN).findFirst();
  }
}
