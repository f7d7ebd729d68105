package annulus.advice;

import annulus.advice.JointOrder.CurePlace;
import annulus.advice.JointOrder.GivenGap;
import annulus.advice.JointOrder.PrimerPlan;
import annulus.catalog.CompoundClass;
import annulus.fit.Gap;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The same joint with one thing changed. */
final class OrderChange {
  private OrderChange() {}

  static JointOrder cure(JointOrder o, CurePlace cure) {
    return with(o, o.bore(), o.part(), o.givenGap(), cure, o.primer(), o.start(), o.compound());
  }

  static JointOrder primer(JointOrder o, PrimerPlan primer) {
    return with(o, o.bore(), o.part(), o.givenGap(), o.cure(), primer, o.start(), o.compound());
  }

  static JointOrder compound(JointOrder o, CompoundClass compound) {
    return with(
        o,
        o.bore(),
        o.part(),
        o.givenGap(),
        o.cure(),
        o.primer(),
        o.start(),
        Optional.of(compound));
  }

  /** Closed later: the same clock, primer so much older. */
  static JointOrder start(JointOrder o, Instant start) {
    Duration later = Duration.between(o.start(), start);
    PrimerPlan primer =
        o.primer() instanceof PrimerPlan.Used used && !used.age().isZero()
            ? new PrimerPlan.Used(
                used.primer(), used.onBore(), used.onPart(), used.age().plus(later))
            : o.primer();
    CurePlace cure = o.cure();
    double seconds = later.toMillis() / 1000.0;
    CurePlace moved =
        seconds <= 0
            ? cure
            : new CurePlace(
                cure.history().from(seconds),
                cure.coldSide().from(seconds),
                cure.plusMinusC(),
                cure.describedAs(),
                cure.air().from(seconds));
    return with(o, o.bore(), o.part(), o.givenGap(), moved, primer, start, o.compound());
  }

  /** The gap stated without doubt instead of measured. */
  static JointOrder exactGap(JointOrder o, Gap gap, double radialUm) {
    GivenGap given = new GivenGap(gap.nominalMm(), radialUm, 0.1);
    return with(
        o,
        unmeasured(o.bore()),
        unmeasured(o.part()),
        Optional.of(given),
        o.cure(),
        o.primer(),
        o.start(),
        o.compound());
  }

  private static Member unmeasured(Member m) {
    return new Member(
        m.side(),
        m.name(),
        m.material(),
        m.finish(),
        List.of(),
        Optional.empty(),
        m.measuredAtC(),
        m.measuredPlusMinusC(),
        m.arrivesAtC(),
        m.state(),
        m.otherDiameterMm());
  }

  /** The parts come in as warm as the place ever is. */
  static JointOrder arrivedWarm(JointOrder o) {
    double warmest = o.cure().air().warmestC();
    return with(
        o,
        arriving(o.bore(), warmest),
        arriving(o.part(), warmest),
        o.givenGap(),
        o.cure(),
        o.primer(),
        o.start(),
        o.compound());
  }

  private static Member arriving(Member m, double celsius) {
    return new Member(
        m.side(),
        m.name(),
        m.material(),
        m.finish(),
        m.readings(),
        m.instrument(),
        m.measuredAtC(),
        m.measuredPlusMinusC(),
        OptionalDouble.of(celsius),
        m.state(),
        m.otherDiameterMm());
  }

  private static JointOrder with(
      JointOrder o,
      Member bore,
      Member part,
      Optional<GivenGap> gap,
      CurePlace cure,
      PrimerPlan primer,
      Instant start,
      Optional<CompoundClass> compound) {
    return new JointOrder(
        o.job(),
        o.title(),
        bore,
        part,
        gap,
        o.engagementMm(),
        cure,
        primer,
        o.service(),
        o.load(),
        o.consequence(),
        o.surroundings(),
        start,
        o.zone(),
        o.confidence(),
        compound,
        o.movedAt(),
        o.assumptions());
  }
}
