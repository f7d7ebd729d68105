package annulus.advice;

import annulus.advice.Observation.Fixed;
import annulus.advice.Observation.Joint;
import annulus.advice.Observation.Pull;
import annulus.catalog.CompoundClass;
import annulus.quantity.InvalidValue;
import annulus.quantity.Numbers;
import java.util.Optional;

/**
 * Within what an observation may be learned from. A joint that never cured says nothing about how
 * fast its class is, only that something is wrong with it; a table could not hold it either.
 */
final class BelievableRange {
  private final CompoundClass compound;
  private final ObservedCure observed;
  private final LearningRules rules;

  BelievableRange(CompoundClass compound, ObservedCure observed, LearningRules rules) {
    this.compound = compound;
    this.observed = observed;
    this.rules = rules;
  }

  /**
   * Refuses what lies outside.
   *
   * @throws InvalidValue with the row's value and what would be learned from
   */
  void check(Observation seen) {
    if (seen instanceof Fixed fixed) {
      check(fixed);
    } else if (seen instanceof Pull pull) {
      check(pull);
    }
  }

  private void check(Fixed fixed) {
    Joint joint = fixed.joint();
    Optional<Double> expected = observed.fixtureHours(joint);
    double hours = observed.hours(joint, fixed.after());
    if (expected.isEmpty() || hours <= 0) {
      return;
    }
    double most = rules.value("time-factor-believed");
    double times = hours / expected.get();
    double minutes = fixed.after().toMillis() / 60_000.0;
    if (!fixed.fixed() && times > most) {
      throw new InvalidValue(
          "minutes",
          joint.id()
              + " was not fixed after "
              + Numbers.plain(minutes)
              + " min, "
              + Numbers.fixed(times, 0)
              + " times what is expected: nothing is learned from that",
          "not fixed after at most "
              + Numbers.fixed(Math.floor(minutes / times * most), 0)
              + " min here, "
              + Numbers.plain(most)
              + " times the expected time; "
              + look("minutes"));
    }
    if (fixed.fixed() && times < 1 / most) {
      throw new InvalidValue(
          "minutes",
          joint.id()
              + " was fixed after "
              + Numbers.plain(minutes)
              + " min, when "
              + Numbers.fixed(minutes / times, 0)
              + " min are expected: nothing is learned from that",
          "fixed after at least "
              + Numbers.fixed(minutes / times / most, 1)
              + " min here, the expected time divided by "
              + Numbers.plain(most)
              + "; hours written for minutes, another class, or jammed without compound?");
    }
  }

  private void check(Pull pull) {
    double expected = observed.strengthMPa(pull, compound);
    double least = BenchLearning.LEAST_MPA;
    boolean counts =
        observed.likelyFraction(pull.joint(), pull.after()) >= rules.value("pull-fraction-least");
    if (counts && compound.strengthMPa().likely() * pull.strengthMPa() / expected < least) {
      throw new InvalidValue(
          "force_n",
          pull.joint().id()
              + " let go at "
              + Numbers.fixed(pull.strengthMPa(), 3)
              + " MPa, when "
              + Numbers.fixed(expected, 1)
              + " MPa are expected: nothing is learned from that",
          "at least "
              + Numbers.fixed(
                  Math.ceil(
                      least
                          * expected
                          / compound.strengthMPa().likely()
                          / pull.strengthMPa()
                          * pull.forceN()),
                  0)
              + " N here, "
              + Numbers.plain(least)
              + " MPa in full cure; "
              + look("force"));
    }
  }

  /**
   * @param mistyped what may have been
   */
  private static String look(String mistyped) {
    return "look at the joint (oil or old compound on the faces, another class or lot, less active"
        + " faces, colder than noted, a slip in the "
        + mistyped
        + "?), hand none like it out before the cause is known, and leave its rows out only then";
  }
}
