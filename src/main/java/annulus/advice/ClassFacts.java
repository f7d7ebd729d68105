package annulus.advice;

import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.select.Fact;
import annulus.select.Facts;
import java.util.HashMap;
import java.util.Map;

/**
 * What rules look at in a class and is the same in every joint.
 *
 * @param bare with at most one face primed
 * @param primed with both faces primed: it fills more
 */
record ClassFacts(Facts bare, Facts primed) {
  /** Those of every class, by id. */
  static Map<String, ClassFacts> of(Catalog catalog) {
    Map<String, ClassFacts> byId = new HashMap<>();
    for (CompoundClass compound : catalog.compounds().values()) {
      byId.put(compound.id(), of(compound));
    }
    return byId;
  }

  private static ClassFacts of(CompoundClass compound) {
    Facts bare =
        Facts.builder()
            .number(Fact.CLASS_GAP_LOW, compound.gapUm().low())
            .number(Fact.CLASS_GAP_HIGH, compound.gapUm().high())
            .number(Fact.CLASS_SERVICE_LOW, compound.serviceC().low())
            .number(Fact.CLASS_SERVICE_HIGH, compound.serviceC().high())
            .number(Fact.CLASS_MINIMUM, compound.cure().minimumC())
            .number(Fact.CLASS_CAUTION, compound.cure().cautionBelowC())
            .word(Fact.CLASS_PERMANENCE, compound.permanence())
            .word(Fact.CLASS_ROLE, compound.role())
            .build();
    Facts primed = bare.and().number(Fact.CLASS_GAP_HIGH, compound.primedGapMaxUm()).build();
    return new ClassFacts(bare, primed);
  }
}
