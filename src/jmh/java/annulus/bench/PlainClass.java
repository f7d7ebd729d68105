package annulus.bench;

import annulus.catalog.CompoundClass;
import annulus.catalog.Stage;

/** One class's numbers, laid out flat. */
final class PlainClass {
  final String id;
  final double gapLow;
  final double gapHigh;
  final double serviceLow;
  final double serviceHigh;
  final boolean lasting;
  final boolean film;
  final boolean rebuild;
  final double strengthLow;
  final double strength;
  final double strengthHigh;
  final double referenceC;
  final double referenceGap;
  final double exponent;
  final double exponentHigh;
  final double activationLow;
  final double activation;
  final double activationHigh;
  final double minimumC;
  final double cautionC;
  final double heldC;
  final double spread;
  final double slowFullHours;
  final double workingLow;
  final double removalC;
  final double[] fraction;
  final double[] hours;
  final double[] hotC;
  final double[] hotLow;
  final double[] hot;
  final double[] hotHigh;

  PlainClass(CompoundClass c) {
    id = c.id();
    gapLow = c.gapUm().low();
    gapHigh = c.gapUm().high();
    serviceLow = c.serviceC().low();
    serviceHigh = c.serviceC().high();
    lasting = c.permanence() == CompoundClass.Permanence.LASTING;
    film = c.role() == CompoundClass.Role.FILM;
    rebuild = c.role() == CompoundClass.Role.REBUILD;
    strengthLow = c.strengthMPa().low();
    strength = c.strengthMPa().likely();
    strengthHigh = c.strengthMPa().high();
    CompoundClass.Cure cure = c.cure();
    referenceC = cure.referenceC();
    referenceGap = cure.referenceGapUm();
    exponent = cure.gapExponent().likely();
    exponentHigh = cure.gapExponent().high();
    activationLow = cure.activationKJ().low();
    activation = cure.activationKJ().likely();
    activationHigh = cure.activationKJ().high();
    minimumC = cure.minimumC();
    cautionC = cure.cautionBelowC();
    heldC = cure.heldAboveC();
    spread = cure.spreadLn();
    slowFullHours = cure.slowFullHours();
    workingLow = cure.workingMinutes().low();
    removalC = c.removalHeatC().likely();
    boolean rises =
        cure.completeHours() > cure.at(Stage.FULL).hours() && cure.at(Stage.FULL).fraction() < 1;
    int points = cure.stages().size() + (rises ? 1 : 0);
    fraction = new double[points];
    hours = new double[points];
    fraction[points - 1] = 1;
    hours[points - 1] = cure.completeHours();
    for (int i = 0; i < cure.stages().size(); i++) {
      fraction[i] = cure.stages().get(i).fraction();
      hours[i] = cure.stages().get(i).hours();
    }
    hotC = c.hotStrength().stream().mapToDouble(CompoundClass.HotPoint::celsius).toArray();
    hotLow = c.hotStrength().stream().mapToDouble(p -> p.fraction().low()).toArray();
    hot = c.hotStrength().stream().mapToDouble(p -> p.fraction().likely()).toArray();
    hotHigh = c.hotStrength().stream().mapToDouble(p -> p.fraction().high()).toArray();
  }
}
