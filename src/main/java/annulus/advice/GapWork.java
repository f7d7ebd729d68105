package annulus.advice;

import annulus.advice.Advice.GapFinding;
import annulus.advice.Advice.ServiceGap;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Instrument;
import annulus.catalog.Policy;
import annulus.cure.TemperatureHistory;
import annulus.fit.Gap;
import annulus.fit.ThermalGap;
import annulus.measure.Decider;
import annulus.measure.FormLimits;
import annulus.measure.MeasuredDiameter;
import annulus.measure.Remedy;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.Units;
import annulus.quantity.WhenAsked;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** From readings to the gap, its course over temperature, and what would make it sure. */
final class GapWork {
  /** Coverage factor of a stated 95 % uncertainty: z(0.975) of the normal distribution. */
  private static final double Z975 = 1.959963984540054;

  private final JointOrder order;
  private final Catalog catalog;
  private final FormLimits form;

  GapWork(JointOrder order, Catalog catalog, FormLimits form) {
    this.order = order;
    this.catalog = catalog;
    this.form = form;
  }

  GapFinding find() {
    Optional<MeasuredDiameter> bore = measured(order.bore());
    Optional<MeasuredDiameter> part = measured(order.part());
    Gap gap =
        order
            .givenGap()
            .map(g -> Gap.stated(g.nominalMm(), g.radialUm(), g.radialPlusMinusUm(), Z975))
            .orElseGet(() -> Gap.of(bore.orElseThrow(), part.orElseThrow()));
    double assembly = order.cure().history().celsiusAt(0);
    Gap.Limits limits = gap.limits(order.confidence());
    return new GapFinding(
        gap,
        order.confidence(),
        limits,
        bore,
        part,
        gap.meanUm() + movement(gap, assembly, Side.LIKELY),
        widerInCold(gap, order.cure().history()),
        limits.upperUm() + widerInCold(gap, order.cure().coldSide()),
        service(gap, assembly),
        List.of());
  }

  /**
   * How much wider the coldest hour of the cure makes the gap than it is at 20 °C, µm. Compound
   * that cures on the way there has less to fill, but a joint closed at the warmest hour of a cold
   * week must not be ready sooner for that.
   */
  private double widerInCold(Gap gap, TemperatureHistory cure) {
    double coldest = cure.coldestC();
    return coldest < Units.REFERENCE_CELSIUS ? Math.max(0, movement(gap, coldest, Side.LIKELY)) : 0;
  }

  private Optional<MeasuredDiameter> measured(Member member) {
    return member
        .instrument()
        .filter(i -> !member.readings().isEmpty())
        .map(
            instrument ->
                MeasuredDiameter.of(
                    member.side(),
                    member.readings(),
                    instrument,
                    member.measuredAtC(),
                    member.measuredPlusMinusC(),
                    member.material().expansion(),
                    form));
  }

  private enum Side {
    LIKELY,
    OPENING,
    CLOSING
  }

  private ServiceGap service(Gap gap, double assemblyC) {
    double low = order.service().low();
    double high = order.service().high();
    double opensCold = movement(gap, low, Side.OPENING);
    double opensHot = movement(gap, high, Side.OPENING);
    double opens = Math.max(opensCold, opensHot);
    double closesCold = movement(gap, low, Side.CLOSING);
    double closesHot = movement(gap, high, Side.CLOSING);
    double closesInUse = Math.min(closesCold, closesHot);
    double closesFirst = movement(gap, assemblyC, Side.CLOSING);
    double tightInUseC = closesCold <= closesHot ? low : high;
    return new ServiceGap(
        gap.meanUm() + movement(gap, low, Side.LIKELY),
        gap.meanUm() + movement(gap, high, Side.LIKELY),
        gap.meanUm() + opens,
        Math.max(0, opens - movement(gap, assemblyC, Side.LIKELY)),
        gap.meanUm() + Math.min(closesFirst, closesInUse),
        opensCold >= opensHot ? low : high,
        closesFirst <= closesInUse ? assemblyC : tightInUseC);
  }

  /** Change of the mean radial gap from 20 °C, µm, both members at one temperature. */
  private double movement(Gap gap, double celsius, Side side) {
    Estimate bore = order.bore().material().expansion();
    Estimate part = order.part().material().expansion();
    boolean warmer = celsius >= Units.REFERENCE_CELSIUS;
    double outer = bore.likely();
    double inner = part.likely();
    if (side != Side.LIKELY) {
      boolean growing = warmer == (side == Side.OPENING);
      outer = growing ? bore.high() : bore.low();
      inner = growing ? part.low() : part.high();
    }
    return new ThermalGap(gap.nominalMm(), outer, inner).radialUm(0, celsius, celsius);
  }

  /**
   * What would decide between the classes and a dry press; looked for when it is asked for, as a
   * job list does not print it.
   */
  List<Remedy> remedies(GapFinding found) {
    if (found.bore().isEmpty() || found.part().isEmpty()) {
      return List.of();
    }
    return WhenAsked.list(() -> List.of(remedy(found)));
  }

  private Remedy remedy(GapFinding found) {
    Set<Interval> ranges = new LinkedHashSet<>(); // several classes have the same range
    for (CompoundClass compound : catalog.compounds().values()) {
      if (order.compound().map(c -> c.id().equals(compound.id())).orElse(true)) {
        ranges.add(compound.gapUm());
      }
    }
    Policy policy = catalog.policy();
    ranges.add(
        new Interval(-policy.value("entry-gap-limit-um"), policy.value("dry-press-from-um")));
    Decider.Question question =
        new Decider.Question(
            found.gap().largestUm(),
            found.bore().orElseThrow(),
            found.part().orElseThrow(),
            List.copyOf(ranges),
            order.confidence());
    int readings =
        Math.max(3, Math.max(order.bore().readings().size(), order.part().readings().size()));
    return remedy(question, readings);
  }

  private Remedy remedy(Decider.Question question, int readings) {
    List<Instrument> instruments = List.copyOf(catalog.instruments().values());
    return new Decider(instruments, form)
        .remedyFor(question, Math.min(readings, form.mostReadings()));
  }
}
