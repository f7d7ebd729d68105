package annulus.advice;

import annulus.catalog.CompoundClass;
import annulus.catalog.Provenance;
import annulus.quantity.Estimate;
import java.util.function.UnaryOperator;

/** The same class with something changed. */
final class ClassChange {
  private ClassChange() {}

  static CompoundClass cure(CompoundClass c, UnaryOperator<CompoundClass.Cure> change) {
    return with(c, c.strengthMPa(), change.apply(c.cure()), c.provenance());
  }

  static CompoundClass with(
      CompoundClass c, Estimate strengthMPa, CompoundClass.Cure cure, Provenance provenance) {
    return new CompoundClass(
        c.id(),
        c.name(),
        c.summary(),
        c.permanence(),
        c.role(),
        c.gapUm(),
        c.primedGapMaxUm(),
        c.viscosity(),
        strengthMPa,
        cure,
        c.serviceC(),
        c.hotStrength(),
        c.removalHeatC(),
        c.storageC(),
        c.shelfMonths(),
        c.openMonths(),
        provenance);
  }
}
