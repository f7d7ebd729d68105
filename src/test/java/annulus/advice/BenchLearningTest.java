package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Observation.Fixed;
import annulus.advice.Observation.Joint;
import annulus.advice.Observation.Pull;
import annulus.catalog.Activity.Level;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.NamedNumber;
import annulus.catalog.Primer;
import annulus.catalog.Stage;
import annulus.exchange.DataFiles;
import annulus.exchange.LearningFile;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.hipparchus.special.Erf;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What counts of a shop's observations, at the limits of the policy and in closed form. The policy
 * as shipped: 8 joints on 3 days, 5 pulls for later stages, 8 for more strength, factors 0.6 to
 * 1.2.
 */
class BenchLearningTest {
  private static final Catalog CATALOG = DeskData.KNOWLEDGE.catalog();
  private static final CompoundClass CLASS = CATALOG.compounds().get("thin-lasting");
  private static final double FIXTURE_HOURS = CLASS.cure().at(Stage.FIXTURE).hours();
  private static final LearningRules RULES = rules();
  private static final BenchLearning LEARNING = new BenchLearning(CATALOG, RULES);
  private static final LocalDate FIRST = LocalDate.of(2027, 1, 1);

  private static LearningRules rules() {
    try {
      return LearningFile.rules(DataFiles.bundled());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Joint joint(
      int number, int day, double celsius, double gapUm, Level faces, Optional<Primer> primer) {
    return new Joint(
        "W-" + number, FIRST.plusDays(day), CLASS.id(), celsius, faces, faces, gapUm, primer);
  }

  private static Joint plain(int number, int day) {
    return joint(number, day, 22, 20, Level.ACTIVE, Optional.empty());
  }

  private static Duration hours(double value) {
    return Duration.ofMillis(Math.round(value * 3_600_000) + 1);
  }

  /** Joints on so many days that fixed between 0.95 and 1.05 of the shipped time by a factor. */
  private static List<Observation> joints(int count, int days, double factor) {
    List<Observation> seen = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      Joint joint = plain(i, i % days);
      seen.add(new Fixed(joint, hours(FIXTURE_HOURS * factor * 0.95), false));
      seen.add(new Fixed(joint, hours(FIXTURE_HOURS * factor * 1.05), true));
    }
    return seen;
  }

  private static Pull pull(Joint joint, double mpa) {
    return new Pull(joint, Duration.ofDays(30), mpa * Math.PI * 12.7 * 11, 12.7, 11);
  }

  private static List<Observation> pulls(int count, double mpa) {
    List<Observation> seen = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      seen.add(pull(plain(100 + i, i), mpa));
    }
    return seen;
  }

  private static Learned learn(List<Observation> seen) {
    return LEARNING.learn(seen).get(0);
  }

  @ParameterizedTest
  @CsvSource({"8, 3, true", "7, 3, false", "8, 2, false", "30, 2, false"})
  void times_come_sooner_only_on_eight_joints_of_three_days(int count, int days, boolean sooner) {
    Learned learned = learn(joints(count, days, 0.7));
    assertEquals(sooner, learned.timeFactor() < 1);
    assertEquals(
        !sooner,
        learned.held().stream().anyMatch(h -> h.startsWith("the times are not shortened")));
    assertEquals(count, learned.joints());
  }

  @ParameterizedTest
  @CsvSource({"5, true", "4, false"})
  void later_stages_and_spread_follow_only_on_five_pulls(int pulls, boolean followed) {
    List<Observation> seen = joints(30, 10, 0.7);
    seen.addAll(pulls(pulls, CLASS.strengthMPa().likely()));
    Learned learned = learn(seen);
    assertEquals(followed, learned.laterFactor() == learned.timeFactor());
    assertEquals(!followed, learned.laterFactor() == 1);
    assertEquals(followed, learned.learned().cure().spreadLn() < CLASS.cure().spreadLn());
    assertEquals(
        !followed, learned.held().stream().anyMatch(h -> h.startsWith("stages after fixture")));
    assertEquals(!followed, learned.held().contains("the spread stays as shipped"));
    double factor = learned.timeFactor();
    double later = followed ? factor : 1;
    CompoundClass.Cure cure = learned.learned().cure();
    assertEquals(FIXTURE_HOURS * factor, cure.at(Stage.FIXTURE).hours(), 1e-9);
    assertEquals(CLASS.cure().at(Stage.FULL).hours() * later, cure.at(Stage.FULL).hours(), 1e-9);
    assertEquals(CLASS.cure().completeHours() * later, cure.completeHours(), 1e-9);
  }

  @Test
  void a_time_factor_is_never_taken_below_six_tenths() {
    Learned quick = learn(joints(40, 10, 0.4));
    assertEquals(0.6, quick.timeFactor());
    assertTrue(quick.held().contains("the time factor is held at 0.6"));
    Learned less = learn(joints(40, 10, 0.7));
    assertTrue(less.timeFactor() > 0.6 && less.timeFactor() < 0.75);
    assertFalse(less.held().contains("the time factor is held at 0.6"));
  }

  /**
   * Equal pull tests with a scatter τ of at least 0.15, more by an exponential law of mean 0.15:
   * given τ the update is the conjugate one (Gelman et al., Bayesian Data Analysis, section 2.5),
   * and the tests are {@code τ^(1-n)·N(ȳ; 0, σ₀² + τ²/n)} as likely; summed over τ here.
   */
  @ParameterizedTest
  @CsvSource({"1, 10", "3, 14", "8, 24", "20, 22"})
  void strength_is_the_conjugate_normal_update_with_its_scatter_summed_over(int count, double mpa) {
    Estimate shipped = CLASS.strengthMPa();
    double full = CLASS.cure().at(Stage.FULL).fraction();
    double prior = Math.log(shipped.high() / shipped.low()) / (2 * 1.6448536);
    double seen = Math.log(mpa / (shipped.likely() * full));
    Learned learned = learn(pulls(count, mpa));
    double median = learned.strengthLn();
    double[] wanted = summed(prior, count, seen, median);
    assertEquals(0.5, wanted[0], 1e-4);
    assertEquals(wanted[1], learned.strengthSigmaLn(), 1e-4);
    double likely =
        shipped.likely() * (median > 0 && count < 8 ? 1 : Math.min(1.2, Math.exp(median)));
    Estimate strength = learned.learned().strengthMPa();
    assertEquals(likely, strength.likely(), 1e-6);
    // Weak tests never narrow the spread: the first one's stays.
    double spread = seen < 0 ? summed(prior, 1, seen, 0)[2] : wanted[2];
    double low = Math.min(mpa / full, likely * Math.exp(-1.6448536 * spread));
    double cap = shipped.low() * Math.min(1, likely / shipped.likely());
    assertEquals(count < 8 ? Math.min(low, cap) : low, strength.low(), 1e-3);
    assertEquals(
        Math.max(likely, shipped.high() * likely / shipped.likely()), strength.high(), 1e-6);
    assertEquals(count, learned.pulls());
  }

  /** Probability below a value, standard deviation, and that of the next test. */
  private static double[] summed(double prior, int count, double seen, double value) {
    double[] sum = new double[5];
    int nodes = 60_000;
    for (int i = 0; i < nodes; i++) {
      double tau = 0.15 + 3 * (i + 0.5) / nodes;
      double about = prior * prior + tau * tau / count;
      double weight =
          Math.exp(-(tau - 0.15) / 0.15 - seen * seen / (2 * about))
              / Math.sqrt(about)
              * Math.pow(tau, 1 - count);
      double precision = 1 / (prior * prior) + count / (tau * tau);
      double mean = count * seen / (tau * tau) / precision;
      sum[0] += weight;
      sum[1] += weight * mean;
      sum[2] += weight * (1 / precision + mean * mean);
      sum[3] += weight * tau * tau;
      sum[4] += weight * 0.5 * Erf.erfc((mean - value) * Math.sqrt(precision / 2));
    }
    double square = sum[2] / sum[0] - Math.pow(sum[1] / sum[0], 2);
    return new double[] {sum[4] / sum[0], Math.sqrt(square), Math.sqrt(square + sum[3] / sum[0])};
  }

  @Test
  void more_strength_needs_eight_pulls_and_stops_at_a_fifth_more() {
    double strong = CLASS.strengthMPa().likely() * 1.1;
    assertEquals(1, learn(pulls(7, strong)).strengthFactor());
    assertTrue(
        learn(pulls(7, strong)).held().stream()
            .anyMatch(h -> h.startsWith("the strength is not raised")));
    Learned eight = learn(pulls(8, strong));
    assertTrue(eight.strengthFactor() > 1 && eight.strengthFactor() < 1.2);
    assertTrue(eight.held().stream().noneMatch(h -> h.startsWith("the strength")));
    Learned most = learn(pulls(20, CLASS.strengthMPa().likely() * 1.6));
    assertEquals(1.2, most.strengthFactor());
    assertTrue(most.held().contains("the strength factor is held at 1.2"));
  }

  @Test
  void a_primed_pin_is_expected_to_hold_what_the_primer_leaves() {
    Primer primer = CATALOG.primers().get("primer-solvent");
    double mpa = CLASS.strengthMPa().likely() * 0.9;
    Joint primed = joint(1, 1, 22, 20, Level.ACTIVE, Optional.of(primer));
    Learned with = learn(List.of(pull(primed, mpa * primer.strengthFactor().likely())));
    Learned without = learn(List.of(pull(plain(1, 1), mpa)));
    assertEquals(without.strengthLn(), with.strengthLn(), 1e-9);
  }

  /** The same slowness seen colder, across a wider gap and on slow faces is the same slowness. */
  @Test
  void what_the_model_explains_is_not_learned() {
    double kelvins = 1 / (12 + 273.15) - 1 / (CLASS.cure().referenceC() + 273.15);
    double energy = CLASS.cure().activationKJ().likely() * 1000 / 8.31446261815324;
    double colder = Math.exp(energy * kelvins);
    double wider =
        Math.pow(
            2 * CLASS.cure().referenceGapUm() / CLASS.cure().referenceGapUm(),
            CLASS.cure().gapExponent().likely());
    double slower = 1 / CATALOG.activities().get(Level.SLOW).rate().likely();
    double here = Math.exp(energy * (1 / 295.15 - 1 / (CLASS.cure().referenceC() + 273.15)));
    assertEquals(1.3, seen(22, 20, Level.ACTIVE, here), 0.02);
    assertEquals(1.3, seen(12, 20, Level.ACTIVE, colder), 0.02);
    assertEquals(
        1.3, seen(22, 2 * CLASS.cure().referenceGapUm(), Level.ACTIVE, here * wider), 0.02);
    assertEquals(1.3, seen(22, 20, Level.SLOW, here * slower), 0.06);
  }

  private static double seen(double celsius, double gapUm, Level faces, double explained) {
    List<Observation> seen = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      Joint joint = joint(i, i, celsius, gapUm, faces, Optional.empty());
      double at = FIXTURE_HOURS * explained * 1.3;
      seen.add(new Fixed(joint, hours(at * 0.97), false));
      seen.add(new Fixed(joint, hours(at * 1.03), true));
    }
    return learn(seen).timeFactor();
  }

  /** 1 °C either way, rectangular, on E/(R T²): 45 kJ/mol at 22 °C gives 0.0359. */
  @Test
  void the_doubt_in_a_temperature_is_its_slope_times_the_rectangular_deviation() {
    ObservedCure observed = new ObservedCure(CATALOG, CLASS.cure());
    double slope =
        CLASS.cure().activationKJ().likely() * 1000 / (8.31446261815324 * 295.15 * 295.15);
    assertEquals(slope * 0.57735027, observed.temperatureSigma(plain(1, 1), 1), 1e-6);
    assertEquals(slope * 1.15470054, observed.temperatureSigma(plain(1, 1), 2), 1e-6);
  }

  @Test
  void the_doubt_in_faces_reaches_from_the_likely_to_the_least_rate() {
    ObservedCure observed = new ObservedCure(CATALOG, CLASS.cure());
    Estimate rate = CATALOG.activities().get(Level.SLOW).rate();
    ObservedCure.Faces slow =
        observed.faces(joint(1, 1, 22, 20, Level.SLOW, Optional.empty())).orElseThrow();
    assertEquals(1 / rate.likely(), slow.timeFactor(), 1e-9);
    assertEquals(Math.log(rate.likely() / rate.low()) / 1.6448536, slow.sigmaLn(), 1e-6);
  }

  @Test
  void the_share_of_strength_likely_reached_follows_the_stages() {
    ObservedCure observed = new ObservedCure(CATALOG, CLASS.cure());
    double reference = CLASS.cure().referenceC();
    double wide = 2 * CLASS.cure().referenceGapUm();
    double factor = Math.pow(2, CLASS.cure().gapExponent().likely());
    for (CompoundClass.StagePoint stage : CLASS.cure().stages()) {
      Joint close = joint(1, 1, reference, 1, Level.ACTIVE, Optional.empty());
      double active = observed.faces(close).orElseThrow().timeFactor();
      assertEquals(
          stage.fraction(), observed.likelyFraction(close, hours(stage.hours() * active)), 1e-4);
      Joint far = joint(1, 1, reference, wide, Level.ACTIVE, Optional.empty());
      assertEquals(
          stage.fraction(),
          observed.likelyFraction(far, hours(stage.hours() * active * factor)),
          1e-4);
    }
    Joint inert = joint(1, 1, 22, 1, Level.INERT, Optional.empty());
    assertEquals(0, observed.likelyFraction(inert, Duration.ofDays(30)));
  }

  @Test
  void what_cannot_cure_by_the_data_is_not_counted_and_says_why() {
    Joint inert = joint(1, 1, 22, 20, Level.INERT, Optional.empty());
    Learned never = learn(List.of(new Fixed(inert, hours(1), true)));
    assertEquals(List.of("W-1: by the data it never cures on such faces"), never.notCounted());
    Joint cold = joint(2, 1, CLASS.cure().minimumC() - 1, 20, Level.ACTIVE, Optional.empty());
    Learned tooCold = learn(List.of(new Fixed(cold, hours(1), true)));
    assertEquals(List.of("W-2: by the data it does not cure that cold"), tooCold.notCounted());
    assertEquals(0, tooCold.joints());
    assertEquals(CLASS.cure(), tooCold.learned().cure());
    Learned open = learn(List.of(new Fixed(cold, hours(1), false)));
    assertEquals(List.of(), open.notCounted());
  }

  @Test
  void the_source_names_how_much_was_seen_and_from_when_to_when() {
    List<Observation> seen = new ArrayList<>();
    seen.add(pull(plain(100, 5), 18));
    seen.add(new Fixed(plain(1, 9), hours(1), true));
    seen.add(new Fixed(plain(2, 2), hours(1), true));
    Learned learned = learn(seen);
    assertEquals(LocalDate.of(2027, 1, 3), learned.first());
    assertEquals(LocalDate.of(2027, 1, 10), learned.last());
    assertTrue(
        learned
            .learned()
            .provenance()
            .source()
            .startsWith("shop: 3 observations, 2027-01-03 to 2027-01-10; before: "));
  }

  @Test
  void the_working_time_is_never_made_longer_and_shorter_from_the_first_quick_joint_on() {
    Estimate shipped = CLASS.cure().workingMinutes();
    Estimate slow = learn(joints(20, 5, 1.5)).learned().cure().workingMinutes();
    assertEquals(shipped, slow);
    Learned one = learn(joints(1, 1, 0.5));
    double quick = one.time().factor(0.5);
    assertTrue(quick < 1);
    Estimate quicker = one.learned().cure().workingMinutes();
    assertEquals(shipped.low() * quick, quicker.low(), 1e-9);
    assertEquals(shipped.likely() * quick, quicker.likely(), 1e-9);
    assertEquals(shipped, learn(pulls(3, 20)).learned().cure().workingMinutes());
  }

  @ParameterizedTest
  @CsvSource({
    "least-joints-sooner, 3, 1000",
    "least-days-sooner, 1, 1000",
    "least-pulls-later-stages, 3, 1000",
    "least-pulls-stronger, 3, 1000",
    "time-factor-least, 0.3, 1",
    "time-factor-believed, 3, 20",
    "strength-factor-most, 1, 2",
    "spread-floor-ln, 0.05, 1",
    "joint-spread-ln, 0.05, 1",
    "joint-spread-more-ln, 0.05, 1",
    "pull-spread-more-ln, 0.05, 1",
    "pull-spread-ln, 0.05, 1",
    "temperature-plus-minus-c, 0, 10",
    "pull-fraction-least, 0.5, 1"
  })
  void a_policy_of_learning_that_believes_too_soon_is_refused(String id, double low, double high) {
    assertEquals(low, policy(id, low).value(id));
    assertEquals(high, policy(id, high).value(id));
    assertThrows(InvalidValue.class, () -> policy(id, low - 1e-6));
    assertThrows(InvalidValue.class, () -> policy(id, high + 1e-6));
    Map<String, NamedNumber> without = new LinkedHashMap<>(RULES.numbers());
    without.remove(id);
    assertThrows(InvalidValue.class, () -> new LearningRules(without));
  }

  private static LearningRules policy(String id, double value) {
    Map<String, NamedNumber> numbers = new LinkedHashMap<>(RULES.numbers());
    NamedNumber old = numbers.get(id);
    numbers.put(id, new NamedNumber(id, value, old.unit(), old.meaning(), old.provenance()));
    return new LearningRules(numbers);
  }

  /**
   * Found in the diary: 78000 N for 7800 N. Seven pulls at 14 MPa and one tenfold slip of 140 MPa
   * came out as 18.4 MPa on average of the logarithms, and hid that the bottle was weak.
   */
  @Test
  void a_pull_with_a_zero_too_many_is_not_counted_and_hides_no_weak_ones() {
    List<Observation> seen = new ArrayList<>(pulls(7, 14));
    Learned weak = learn(seen);
    seen.add(pull(joint(99, 5, 22, 25, Level.ACTIVE, Optional.empty()), 140));
    Learned slip = learn(seen);
    assertEquals(7, slip.pulls());
    assertEquals(weak.learned().strengthMPa(), slip.learned().strengthMPa());
    assertTrue(slip.notCounted().get(0).contains("140 MPa is far above the 25 MPa"));
  }

  private static Joint at20(String name, int day) {
    return new Joint(
        name,
        FIRST.plusDays(day),
        CLASS.id(),
        20,
        Level.ACTIVE,
        Level.ACTIVE,
        22,
        Optional.empty());
  }

  private static Fixed fixed(String name, int day, double minutes, boolean yes) {
    return new Fixed(at20(name, day), Duration.ofMinutes(Math.round(minutes)), yes);
  }

  /** Eight joints fixed when they were looked at, and pulled a week later. */
  private static List<Observation> quick(double minutes) {
    List<Observation> seen = new ArrayList<>();
    for (int i = 0; i < 8; i++) {
      seen.add(fixed("Q-" + i, i, minutes, true));
      seen.add(new Pull(at20("Q-" + i, i), Duration.ofDays(8), 9000, 12.7, 11));
    }
    return seen;
  }

  private static Advice.StageTime fixture(CompoundClass compound) {
    Map<String, CompoundClass> compounds = new LinkedHashMap<>(CATALOG.compounds());
    compounds.put(compound.id(), compound);
    Knowledge own = DeskData.KNOWLEDGE.withCatalog(CATALOG.withCompounds(compounds));
    JointOrder order = DeskData.order("2027-03-11T15:30", o -> o.put("temperatureC", 20));
    return new Advisor(own)
        .advise(OrderChange.compound(order, compound))
        .cure()
        .orElseThrow()
        .stages()
        .get(0);
  }

  /**
   * Two of ten joints were loose at 120 min. Their times came out as 0.81 of the shipped ones with
   * half the spread, sure after 29 min against 43 min shipped.
   */
  @Test
  void two_joints_out_of_ten_that_stayed_loose_make_nothing_shorter_or_surer() {
    List<Observation> seen = quick(12);
    for (int i = 0; i < 2; i++) {
      seen.add(fixed("S-" + i, 10 + i, 120, false));
      seen.add(fixed("S-" + i, 10 + i, 150, true));
    }
    Learned learned = learn(seen);
    assertTrue(learned.timeFactor() >= 1);
    assertTrue(learned.laterFactor() >= 1);
    assertTrue(learned.learned().cure().spreadLn() > CLASS.cure().spreadLn());
    assertTrue(learned.held().get(0).startsWith("the joints do not fit each other"));
    assertEquals(2, learned.lookAt().size());
    assertTrue(learned.lookAt().get(0).startsWith("S-0 was still loose after "));
    Duration sure = fixture(learned.learned()).sure().orElseThrow();
    assertTrue(sure.toMinutes() >= 120, sure::toString);
    assertTrue(learn(quick(12)).timeFactor() < 1);
  }

  @Test
  void a_joint_that_was_never_seen_fixed_is_named_and_widens_what_the_others_narrow() {
    List<Observation> seen = quick(12);
    Learned without = learn(seen);
    seen.add(fixed("D-1", 20, 180, false));
    Learned with = learn(seen);
    assertTrue(with.timeFactor() >= 1 && without.timeFactor() < 1);
    assertTrue(with.learned().cure().spreadLn() > without.learned().cure().spreadLn());
    assertEquals(1, with.lookAt().size());
    assertTrue(with.lookAt().get(0).startsWith("D-1 was never seen fixed: still loose after "));
    Duration sure = fixture(with.learned()).sure().orElseThrow();
    assertTrue(sure.toMinutes() >= 180, sure::toString);
    assertEquals(
        without.learned().cure().workingMinutes().low(),
        with.learned().cure().workingMinutes().low(),
        1e-5);
  }

  /** Seven quick joints are too few; a slow eighth is none of the eight that are asked for. */
  @Test
  void a_slow_joint_is_no_evidence_for_sooner() {
    List<Observation> seen = new ArrayList<>(quick(12));
    seen.removeIf(o -> o.joint().id().equals("Q-7"));
    seen.add(fixed("Q-7", 7, 120, true));
    Learned learned = learn(seen);
    assertEquals(1, learned.timeFactor());
    assertTrue(
        learned.held().get(0).startsWith("the times are not shortened: 7 of 8 joints"),
        () -> learned.held().toString());
  }

  /** One pull of 0.7 MPa among eight of 20.5 left a low end of 11.5 MPa. */
  @Test
  void a_pull_that_hardly_held_takes_the_low_end_with_it_and_is_named() {
    List<Observation> seen = pulls(8, 20.5);
    double before = learn(seen).learned().strengthMPa().low();
    seen.add(pull(plain(200, 9), 0.7));
    Learned learned = learn(seen);
    Estimate strength = learned.learned().strengthMPa();
    assertTrue(strength.low() <= 0.7 / CLASS.cure().at(Stage.FULL).fraction() + 1e-5);
    assertTrue(before > 11);
    assertTrue(strength.likely() < 20);
    assertTrue(learned.lookAt().get(0).startsWith("W-200 let go at 0.7 MPa"));
    assertTrue(learned.held().get(0).startsWith("the pull tests do not fit each other"));
  }

  /** Four sound pull tests and a bad one are not five. */
  @Test
  void a_weak_pull_is_no_evidence_for_sooner_later_stages() {
    List<Observation> seen = joints(30, 10, 0.7);
    seen.addAll(pulls(4, CLASS.strengthMPa().likely()));
    seen.add(pull(plain(200, 9), 5));
    assertEquals(1, learn(seen).laterFactor());
  }

  /** Loose at two days where twenty minutes are expected was learned as a factor of 5.97. */
  @Test
  void a_joint_that_never_cured_is_not_learned_from_but_looked_at() {
    List<Observation> seen = quick(8);
    seen.add(fixed("D-1", 20, 2880, false));
    InvalidValue refused = assertThrows(InvalidValue.class, () -> LEARNING.learn(seen));
    assertEquals("minutes", refused.field());
    assertTrue(refused.problem().startsWith("D-1 was not fixed after 2880 min, 1"));
    assertTrue(refused.allowed().contains("look at the joint (oil or old compound"));
    assertThrows(InvalidValue.class, () -> learn(List.of(fixed("D-1", 20, 2880, false))));
    assertEquals(1, learn(List.of(fixed("D-1", 20, 2880, true))).timeFactor());
  }

  @ParameterizedTest
  @CsvSource({
    "false, 9.99, true",
    "false, 10.01, false",
    "true, 0.1001, true",
    "true, 0.0999, false"
  })
  void ten_times_slower_or_quicker_than_expected_is_the_most_that_is_believed(
      boolean yes, double times, boolean believed) {
    ObservedCure observed = new ObservedCure(CATALOG, CLASS.cure());
    Joint joint = plain(1, 1);
    double rate = observed.hours(joint, Duration.ofHours(1));
    double expected = observed.fixtureHours(joint).orElseThrow() / rate;
    Fixed seen = new Fixed(joint, hours(expected * times), yes);
    if (believed) {
      assertEquals(seen, LEARNING.believed(seen));
    } else {
      assertThrows(InvalidValue.class, () -> LEARNING.believed(seen));
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.6, 2, 5, 9.9})
  void one_joint_still_loose_is_never_called_surely_fixed_before(double times) {
    ObservedCure observed = new ObservedCure(CATALOG, CLASS.cure());
    Joint joint = at20("D-1", 1);
    double rate = observed.hours(joint, Duration.ofHours(1));
    Duration loose = hours(observed.fixtureHours(joint).orElseThrow() / rate * times);
    Learned learned = learn(List.of(new Fixed(joint, loose, false)));
    Duration sure = fixture(learned.learned()).sure().orElseThrow();
    assertTrue(sure.compareTo(loose) >= 0, sure::toString);
    assertTrue(sure.compareTo(fixture(CLASS).sure().orElseThrow()) >= 0);
  }

  @Test
  void a_pull_below_what_any_class_may_hold_is_refused() {
    double full = CLASS.cure().at(Stage.FULL).fraction();
    assertEquals(1, learn(List.of(pull(plain(1, 1), 0.21 * full))).pulls());
    InvalidValue refused =
        assertThrows(InvalidValue.class, () -> learn(List.of(pull(plain(1, 1), 0.19 * full))));
    assertEquals("force_n", refused.field());
    assertTrue(refused.allowed().contains("0.2 MPa in full cure"));
  }

  @Test
  void what_slow_joints_and_weak_pulls_hold_back_is_told() {
    List<Observation> seen = pulls(8, CLASS.strengthMPa().likely() * 1.1);
    assertTrue(learn(seen).held().isEmpty());
    seen.remove(7);
    seen.add(pull(plain(200, 9), CLASS.strengthMPa().likely() * 0.9));
    Learned weak = learn(seen);
    assertEquals(1, weak.strengthFactor(), 1e-9);
    assertTrue(weak.strengthLn() > 0);
    assertTrue(weak.held().get(0).startsWith("a weak pull test is no evidence for stronger"));
    List<Observation> timed = joints(7, 4, 0.7);
    timed.add(new Fixed(plain(7, 7), hours(FIXTURE_HOURS * 1.2), false));
    timed.add(new Fixed(plain(7, 7), hours(FIXTURE_HOURS * 1.3), true));
    Learned slow = learn(timed);
    assertEquals(1, slow.timeFactor(), 1e-9);
    assertTrue(slow.time().factor(0.5) < 1);
    assertEquals(
        List.of("a slow joint is no evidence for sooner: the times are those of the others"),
        slow.held().stream().filter(h -> h.startsWith("a slow joint")).toList());
  }
}
