package annulus.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Instrument;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import annulus.quantity.Units;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;

class MeasurePropertyTest {
  private static final List<Interval> RANGES =
      List.of(new Interval(10, 50), new Interval(20, 75), new Interval(50, 125));

  /** Readings in whole micrometres at few depths and angles, so that places repeat. */
  @Provide
  Arbitrary<List<Reading>> readings() {
    Arbitrary<OptionalDouble> depth = maybe(0, 5, 10.5);
    Arbitrary<OptionalDouble> angle = maybe(0, 60, 90, 120, 240);
    Arbitrary<Integer> um = Arbitraries.integers().between(41_950, 42_050);
    return Combinators.combine(um, depth, angle)
        .as((m, d, a) -> new Reading(m / 1000.0, d, a))
        .list()
        .ofMinSize(1)
        .ofMaxSize(9);
  }

  private static Arbitrary<OptionalDouble> maybe(double... values) {
    List<OptionalDouble> all = new ArrayList<>(List.of(OptionalDouble.empty()));
    for (double v : values) {
      all.add(OptionalDouble.of(v));
    }
    return Arbitraries.of(all);
  }

  @Provide
  Arbitrary<Instrument> boreInstruments() {
    return Arbitraries.of(
        Samples.CALIPER, Samples.TELESCOPIC, Samples.DIAL_BORE, Samples.THREE_POINT);
  }

  @Property
  void the_order_of_readings_changes_nothing_at_all(
      @ForAll("readings") List<Reading> readings,
      @ForAll("boreInstruments") Instrument instrument,
      @ForAll long seed) {
    List<Reading> shuffled = new ArrayList<>(readings);
    Collections.shuffle(shuffled, new Random(seed));
    Statistics.label("really reordered").collect(!shuffled.equals(readings));
    assertEquals(Samples.bore(instrument, readings), Samples.bore(instrument, shuffled));
    assertEquals(
        Samples.bore(instrument, readings).toString(),
        Samples.bore(instrument, shuffled).toString());
  }

  @Property
  void the_same_readings_taken_again_never_widen_the_uncertainty(
      @ForAll("readings") List<Reading> readings,
      @ForAll("boreInstruments") Instrument instrument,
      @ForAll @IntRange(min = 2, max = 5) int times) {
    List<Reading> repeated = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      repeated.addAll(readings);
    }
    Budget once = Samples.bore(instrument, readings).budget();
    Budget often = Samples.bore(instrument, repeated).budget();
    boolean seen = once.component("repeatability").orElseThrow().shape() == Component.Shape.T;
    Statistics.label("scatter seen").collect(seen);
    assertTrue(often.combinedUm() <= once.combinedUm() * (1 + 1e-12));
    assertTrue(often.expandedUm(0.95) <= once.expandedUm(0.95) * (1 + 1e-12));
  }

  @Property
  void mean_lies_between_the_extremes(
      @ForAll("readings") List<Reading> readings,
      @ForAll("boreInstruments") Instrument instrument) {
    MeasuredDiameter bore = Samples.bore(instrument, readings);
    assertTrue(bore.smallestMm() <= bore.meanMm() + 1e-12);
    assertTrue(bore.meanMm() <= bore.largestMm() + 1e-12);
    assertTrue(1000 * (bore.largestMm() - bore.smallestMm()) >= bore.spreadUm() - 1e-6);
    bore.ovalityUm().ifPresent(o -> assertTrue(o >= 0));
    assertEquals(bore.notes().stream().sorted().distinct().toList(), bore.notes());
  }

  @Property
  void a_worse_instrument_never_narrows_the_uncertainty(
      @ForAll @IntRange(min = 1, max = 100) int mpe,
      @ForAll @IntRange(min = 1, max = 50) int more) {
    List<Reading> one = Samples.readings(42);
    Instrument.Use inside = Instrument.Use.INSIDE;
    Budget fine = Samples.bore(Samples.one("a", inside, 0, 150, mpe, 1, 2), one).budget();
    Budget coarse = Samples.bore(Samples.one("b", inside, 0, 150, mpe + more, 1, 2), one).budget();
    assertTrue(coarse.combinedUm() > fine.combinedUm());
    assertTrue(coarse.expandedUm(0.95) > fine.expandedUm(0.95));
  }

  @Property
  void a_budget_scales_with_its_sensitivity(
      @ForAll("readings") List<Reading> readings,
      @ForAll @IntRange(min = -40, max = 40) int tenths) {
    Budget budget = Samples.bore(Samples.CALIPER, readings).budget();
    Budget scaled = budget.scaled(tenths / 10.0);
    double expected = budget.combinedUm() * Math.abs(tenths) / 10.0;
    assertEquals(expected, scaled.combinedUm(), 1e-9);
    if (tenths != 0) {
      double dof = budget.effectiveDegreesOfFreedom();
      assertEquals(dof, scaled.effectiveDegreesOfFreedom(), dof * 1e-9);
    }
  }

  /**
   * What is believed of the largest gap with readings all at one place, or each at an angle of its
   * own, and with some or all of these places left out.
   */
  @Property
  void leaving_out_places_never_makes_a_range_surer(
      @ForAll @Size(min = 2, max = 8) List<@IntRange(min = 41_980, max = 42_060) Integer> um,
      @ForAll boolean onePlace,
      @ForAll("boreInstruments") Instrument instrument,
      @ForAll long seed,
      @ForAll @IntRange(max = 300) int below,
      @ForAll @IntRange(max = 300) int above) {
    Random random = new Random(seed);
    int all = random.nextInt(3); // in a third of the cases everything is left out
    List<Reading> placed = new ArrayList<>();
    List<Reading> leftOut = new ArrayList<>();
    for (int i = 0; i < um.size(); i++) {
      Reading reading = Reading.at(um.get(i) / 1000.0, 4, onePlace ? 0 : 7 * i);
      placed.add(reading);
      boolean keep = all > 0 && random.nextBoolean();
      OptionalDouble depth = random.nextBoolean() ? reading.depthMm() : OptionalDouble.empty();
      leftOut.add(keep ? reading : new Reading(reading.mm(), depth, OptionalDouble.empty()));
    }
    MeasuredDiameter known = Samples.bore(instrument, placed);
    MeasuredDiameter unknown = Samples.bore(instrument, leftOut);
    double sure = beliefInLargest(known).within(-below, above);
    double lessSure = beliefInLargest(unknown).within(-below, above);
    Statistics.label("less sure").collect(onePlace, lessSure < sure - 0.05);
    assertEquals(known.largestMm(), unknown.largestMm(), 1e-5); // jaws: by the mean
    assertTrue(lessSure <= sure + 1e-9, () -> lessSure + " is surer than " + sure);
  }

  /** About the value found, beside a part read once. */
  private static Belief beliefInLargest(MeasuredDiameter bore) {
    MeasuredDiameter part = Samples.part(Samples.MICROMETER, Samples.readings(41.9));
    Budget gap = Budget.ofGap(bore.extremeBudget(), part.extremeBudget());
    return new Belief(0, gap.combinedUm(), gap.effectiveDegreesOfFreedom());
  }

  @Property
  void readings_taken_in_inch_give_the_same_diameter(
      @ForAll @IntRange(min = 500, max = 50_000) int tenThousandths) {
    double mm = Units.mmFromInch(tenThousandths / 10_000.0);
    MeasuredDiameter bore = Samples.bore(Samples.IDEAL_BORE, Samples.readings(mm));
    assertEquals(tenThousandths / 10_000.0, Units.inchFromMm(bore.meanMm()), 1e-12);
  }

  @Property
  void probabilities_are_probabilities_and_parts_add_up(
      @ForAll @IntRange(min = -300, max = 300) int value,
      @ForAll @IntRange(min = 1, max = 90) int standard,
      @ForAll @IntRange(min = 1, max = 40) int dof,
      @ForAll @IntRange(min = -200, max = 200) int low,
      @ForAll @IntRange(min = 1, max = 200) int width) {
    double all = Double.POSITIVE_INFINITY;
    double below = Conformity.probabilityWithin(value, standard, dof, -all, low);
    double within = Conformity.probabilityWithin(value, standard, dof, low, low + width);
    double above = Conformity.probabilityWithin(value, standard, dof, low + width, all);
    assertTrue(within >= 0 && within <= 1);
    assertEquals(1, below + within + above, 1e-9);
  }

  @Property
  void inside_and_outside_always_have_the_probability_to_match(
      @ForAll @IntRange(min = -100, max = 200) int value,
      @ForAll @IntRange(min = 0, max = 40) int standard,
      @ForAll @IntRange(min = 1, max = 40) int dof) {
    Verdict verdict = Conformity.decide(value, standard, dof, 0, 100, 0.95);
    double p = Conformity.probabilityWithin(value, standard, dof, 0, 100);
    Statistics.label("verdict").collect(verdict);
    if (verdict == Verdict.OUTSIDE) {
      assertTrue(p <= 0.05 + 1e-9);
    } else if (verdict == Verdict.INSIDE) {
      assertTrue(p >= 0.90 - 1e-9); // at most 5 % beyond each end
    }
  }

  @Property(tries = 300)
  void every_remedy_named_reaches_the_level(
      @ForAll("readings") List<Reading> readings,
      @ForAll @IntRange(min = -20, max = 150) int gapUm,
      @ForAll @IntRange(min = 1, max = 6) int n) {
    MeasuredDiameter bore = Samples.bore(Samples.CALIPER, readings);
    MeasuredDiameter part = Samples.part(Samples.CALIPER, Samples.readings(41.9));
    Decider decider = new Decider(Samples.ALL, Samples.LIMITS);
    Remedy remedy = decider.remedyFor(new Decider.Question(gapUm, bore, part, RANGES, 0.95), n);
    Statistics.label("state").collect(remedy.state());
    for (Remedy.Pair p : remedy.pairs()) {
      assertTrue(p.probability() >= 0.95);
      assertTrue(p.range().contains(gapUm));
    }
    boolean reaches = remedy.moreReadings().outcome() == Remedy.Outcome.REACHES;
    assertEquals(reaches, remedy.moreReadings().perMember().isPresent());
    if (remedy.state() == Remedy.State.TOO_NEAR_AN_EDGE) {
      assertTrue(remedy.pairs().isEmpty() && !reaches && remedy.mostReachable() < 0.95);
    }
  }

  @Property
  void readings_out_of_range_are_refused_with_the_field_named(
      @ForAll @IntRange(min = 501, max = 1_000_000) int mm) {
    InvalidValue thrown = assertThrows(InvalidValue.class, () -> Reading.of(mm));
    assertEquals("mm", thrown.field());
    assertEquals("0.5 to 500 mm", thrown.allowed());
  }
}
