package annulus.advice;

import annulus.advice.FactorPosterior.Limits;
import annulus.advice.Observation.Pull;
import annulus.catalog.CompoundClass;
import annulus.cure.Spread;
import annulus.quantity.Numbers;
import java.util.ArrayList;
import java.util.List;

/** The pull tests of one class, as ln(expected strength over measured), the weakest last. */
final class PullTests {
  /** A strength is read, not bracketed: limits so close that only the value counts. */
  private static final double READ_LN = 1e-6;

  private final CompoundClass compound;
  private final ObservedCure observed;
  private final LearningRules rules;
  private final List<Limits> weakness = new ArrayList<>();
  private final List<String> notCounted = new ArrayList<>();
  private final List<String> tooWeak = new ArrayList<>();

  PullTests(
      CompoundClass compound, ObservedCure observed, LearningRules rules, List<Observation> seen) {
    this.compound = compound;
    this.observed = observed;
    this.rules = rules;
    for (Observation o : seen) {
      if (o instanceof Pull pull) {
        add(pull);
      }
    }
    weakness.sort(FactorLearning.WORST_LAST);
  }

  private void add(Pull pull) {
    double fraction = observed.likelyFraction(pull.joint(), pull.after());
    if (fraction < rules.value("pull-fraction-least")) {
      notCounted.add(
          pull.joint().id()
              + ": pulled when only "
              + Numbers.fixed(fraction * 100, 0)
              + " % of full strength was likely");
      return;
    }
    if (isSlip(pull)) {
      notCounted.add(
          pull.joint().id()
              + ": "
              + Numbers.fixed(pull.strengthMPa(), 0)
              + " MPa is far above the "
              + Numbers.plain(compound.strengthMPa().high())
              + " MPa of this class: a slip in force, diameter or length?");
      return;
    }
    double expected = observed.strengthMPa(pull, compound);
    double ln = Math.log(expected / pull.strengthMPa());
    weakness.add(new Limits(ln - READ_LN, ln + READ_LN, 0));
    if (ln > shippedLowLn()) {
      tooWeak.add(
          pull.joint().id()
              + " let go at "
              + Numbers.fixed(pull.strengthMPa(), 1)
              + " MPa, when 95 % of such joints hold "
              + Numbers.fixed(expected * Math.exp(-shippedLowLn()), 1)
              + " MPa: oil or old compound on the faces, another class or lot, a slip in force?");
    }
  }

  /** One zero too many would hide several weak joints. */
  private boolean isSlip(Pull pull) {
    return pull.strengthMPa() > compound.strengthMPa().high() * rules.value("pull-slip-factor");
  }

  private double shippedLowLn() {
    return Math.log(compound.strengthMPa().likely() / compound.strengthMPa().low());
  }

  /** Shipped spread on the weak side, ln. */
  double shippedSpreadLn() {
    return shippedLowLn() / Spread.LIMIT_Z;
  }

  List<Limits> weakness() {
    return List.copyOf(weakness);
  }

  int count() {
    return weakness.size();
  }

  /** How many of the first so many were no weaker than 95 % are said to be. */
  int sound(int first) {
    return (int) weakness.stream().limit(first).filter(w -> w.lowLn() <= shippedLowLn()).count();
  }

  /** Tests that could not be counted, in words. */
  List<String> notCounted() {
    return notCounted.stream().distinct().sorted().toList();
  }

  /** Tests weaker than 95 % are said to be, in words. */
  List<String> tooWeak() {
    return tooWeak.stream().distinct().sorted().toList();
  }
}
