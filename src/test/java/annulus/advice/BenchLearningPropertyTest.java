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
import annulus.catalog.Stage;
import annulus.exchange.DataFiles;
import annulus.exchange.LearningFile;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Assume;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

class BenchLearningPropertyTest {
  private static final Catalog CATALOG = DeskData.KNOWLEDGE.catalog();
  private static final CompoundClass CLASS = CATALOG.compounds().get("thin-lasting");
  private static final double FIXTURE_MINUTES = CLASS.cure().at(Stage.FIXTURE).hours() * 60;
  private static final BenchLearning LEARNING = new BenchLearning(CATALOG, rules());

  private static LearningRules rules() {
    try {
      return LearningFile.rules(DataFiles.bundled());
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Joint joint(int number) {
    return new Joint(
        "W-" + number,
        LocalDate.of(2027, 1, 1).plusDays(number),
        CLASS.id(),
        22,
        Level.ACTIVE,
        Level.ACTIVE,
        20,
        Optional.empty());
  }

  private static Duration minutes(double value) {
    return Duration.ofMillis(Math.round(value * 60_000));
  }

  /** Joints that fixed between 0.9 and 1.1 of the shipped time times a factor. */
  private static List<Observation> joints(int count, double factor) {
    List<Observation> seen = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      seen.add(new Fixed(joint(i), minutes(FIXTURE_MINUTES * factor * 0.9), false));
      seen.add(new Fixed(joint(i), minutes(FIXTURE_MINUTES * factor * 1.1), true));
    }
    return seen;
  }

  private static List<Observation> pulls(int count, double factor) {
    List<Observation> seen = new ArrayList<>();
    double newton = CLASS.strengthMPa().likely() * factor * Math.PI * 12.7 * 11;
    for (int i = 0; i < count; i++) {
      seen.add(new Pull(joint(100 + i), Duration.ofDays(8), newton, 12.7, 11));
    }
    return seen;
  }

  private static Learned learn(List<Observation> seen) {
    return LEARNING.learn(seen).get(0);
  }

  private static Instant ready(CompoundClass compound, JointOrder order) {
    Map<String, CompoundClass> compounds = new LinkedHashMap<>(CATALOG.compounds());
    compounds.put(compound.id(), compound);
    Knowledge k = DeskData.KNOWLEDGE;
    Knowledge own = k.withCatalog(CATALOG.withCompounds(compounds));
    return new Advisor(own)
        .advise(OrderChange.compound(order, compound))
        .handBack()
        .map(h -> h.at())
        .orElse(Instant.MAX);
  }

  private static JointOrder order(String consequence) {
    return DeskData.order("2027-03-11T15:30", o -> o.put("consequence", consequence));
  }

  @Property(tries = 40)
  void thin_evidence_never_releases_sooner(
      @ForAll @IntRange(min = 1, max = 7) int count,
      @ForAll @DoubleRange(min = 0.2, max = 2.5) double factor,
      @ForAll @IntRange(min = 0, max = 4) int pulls) {
    List<Observation> seen = joints(count, factor);
    seen.addAll(pulls(pulls, 1.5));
    CompoundClass learned = learn(seen).learned();
    for (String consequence : List.of("nuisance", "injury")) {
      JointOrder order = order(consequence);
      assertFalse(ready(learned, order).isBefore(ready(CLASS, order)), consequence);
    }
    assertTrue(learned.cure().spreadLn() >= CLASS.cure().spreadLn());
    assertTrue(learned.strengthMPa().likely() <= CLASS.strengthMPa().likely());
    assertTrue(learned.strengthMPa().low() <= CLASS.strengthMPa().low());
    assertTrue(learned.cure().workingMinutes().low() <= CLASS.cure().workingMinutes().low());
  }

  @Test
  void any_number_of_fixtures_without_a_pull_test_brings_only_the_fixture_forward() {
    Learned learned = learn(joints(30, 0.7));
    assertTrue(learned.timeFactor() < 0.8);
    assertEquals(1, learned.laterFactor());
    JointOrder order = order("injury");
    assertFalse(ready(learned.learned(), order).isBefore(ready(CLASS, order)));
  }

  @Test
  void enough_of_both_brings_all_stages_forward_but_not_the_slowest_practice() {
    List<Observation> seen = joints(30, 0.7);
    seen.addAll(pulls(10, 1));
    Learned learned = learn(seen);
    assertTrue(learned.laterFactor() < 0.8);
    assertTrue(learned.learned().cure().spreadLn() < CLASS.cure().spreadLn());
    assertEquals(CLASS.cure().slowFullHours(), learned.learned().cure().slowFullHours());
    assertTrue(
        ready(learned.learned(), order("nuisance")).isBefore(ready(CLASS, order("nuisance"))));
  }

  @Test
  void a_slow_joint_counts_from_the_first_one_on() {
    Learned learned = learn(joints(1, 2));
    assertTrue(learned.timeFactor() > 1.2);
    JointOrder order = order("injury");
    assertTrue(ready(learned.learned(), order).isAfter(ready(CLASS, order)));
  }

  @Test
  void a_weak_pull_test_counts_from_the_first_one_on_and_a_strong_one_does_not() {
    assertTrue(learn(pulls(1, 0.5)).learned().strengthMPa().likely() < 20);
    assertTrue(learn(pulls(1, 0.5)).learned().strengthMPa().low() < 15);
    assertEquals(20, learn(pulls(1, 1.4)).learned().strengthMPa().likely(), 1e-9);
    assertTrue(learn(pulls(20, 1.4)).learned().strengthMPa().likely() > 20);
    assertTrue(learn(pulls(20, 1.4)).strengthFactor() <= 1.2);
  }

  @Test
  void a_pull_before_it_is_cured_says_nothing_about_the_strength() {
    Observation early = new Pull(joint(1), Duration.ofHours(2), 500, 12.7, 11);
    Learned learned = learn(List.of(early));
    assertEquals(0, learned.pulls());
    assertEquals(1, learned.notCounted().size());
    assertEquals(CLASS.strengthMPa(), learned.learned().strengthMPa());
  }

  @Test
  void fixed_first_and_not_fixed_later_is_refused() {
    List<Observation> seen =
        List.of(new Fixed(joint(1), minutes(20), true), new Fixed(joint(1), minutes(40), false));
    assertThrows(InvalidValue.class, () -> LEARNING.learn(seen));
  }

  /** Joints of a shop seen in any way, some not fixed yet, some long fixed when looked at. */
  private static List<Observation> drawn(Random random, int count) {
    List<Observation> seen = new ArrayList<>();
    double shop = random.nextBoolean() ? 0.6 : Math.exp(0.5 * random.nextGaussian());
    double scatter = random.nextInt(3) == 0 ? 0.7 : 0.1;
    for (int i = 0; i < count; i++) {
      double own =
          Math.min(6, Math.max(0.2, shop * Math.exp(scatter * random.nextGaussian())))
              * FIXTURE_MINUTES;
      int how = random.nextInt(6);
      if (how != 0) {
        seen.add(new Fixed(joint(i), minutes(own * (1 - 0.3 * random.nextDouble())), false));
      }
      if (how != 1) {
        seen.add(new Fixed(joint(i), minutes(own * (1.01 + random.nextDouble())), true));
      }
    }
    return seen;
  }

  /** How long the likeliest joint on the same faces and gap takes, min. */
  private static double expectedMinutes() {
    ObservedCure observed = new ObservedCure(CATALOG, CLASS.cure());
    return FIXTURE_MINUTES
        * observed.faces(joint(0)).orElseThrow().timeFactor()
        * observed.gapFactor(joint(0))
        / observed.hours(joint(0), Duration.ofHours(1));
  }

  private static double latestLooseMinutes(List<Observation> seen) {
    return seen.stream()
        .filter(o -> o instanceof Fixed f && !f.fixed())
        .mapToDouble(o -> o.after().toMillis() / 60_000.0)
        .max()
        .orElse(0);
  }

  @Property(tries = 60)
  void a_joint_slower_than_all_others_never_brings_anything_forward_or_narrows_it(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 20) int count,
      @ForAll boolean pulled,
      @ForAll boolean everFixed) {
    Random random = new Random(seed);
    List<Observation> seen = drawn(random, count);
    if (pulled) {
      seen.addAll(pulls(8, 1));
    }
    Learned without = learn(seen);
    double loose =
        Math.max(latestLooseMinutes(seen), without.timeFactor() * expectedMinutes())
            * (1.001 + 0.5 * random.nextDouble());
    Assume.that(loose < 9.9 * expectedMinutes());
    seen.add(new Fixed(joint(500), minutes(loose), false));
    if (everFixed) {
      seen.add(new Fixed(joint(500), minutes(loose * 1.3), true));
    }
    Learned with = learn(seen);
    Statistics.label("sooner without it").collect(without.timeFactor() < 1);
    Statistics.label("surer without it")
        .collect(without.learned().cure().spreadLn() < CLASS.cure().spreadLn());
    assertTrue(with.timeFactor() >= without.timeFactor() - 1e-4);
    assertTrue(with.laterFactor() >= without.laterFactor() - 1e-4);
    CompoundClass.Cure before = without.learned().cure();
    CompoundClass.Cure after = with.learned().cure();
    assertTrue(after.spreadLn() >= before.spreadLn() - 1e-4);
    assertTrue(after.slowFullHours() >= before.slowFullHours() - 1e-3);
    assertTrue(after.workingMinutes().low() <= before.workingMinutes().low() + 1e-4);
  }

  @Property(tries = 60)
  void no_joint_is_called_surely_fixed_before_one_that_was_seen_loose(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 1, max = 20) int count) {
    List<Observation> seen = drawn(new Random(seed), count);
    seen.addAll(pulls(8, 1));
    double loose = latestLooseMinutes(seen);
    Learned learned = learn(seen);
    double sure =
        learned.timeFactor()
            * Math.exp(1.6448536 * learned.learned().cure().spreadLn())
            * expectedMinutes();
    Statistics.label("sooner").collect(learned.timeFactor() < 1);
    Statistics.label("later than shipped says").collect(loose > 1.64 * expectedMinutes());
    assertTrue(sure >= loose * (1 - 1e-4), () -> sure + " min, but loose at " + loose);
  }

  @Property(tries = 30)
  void the_order_of_rows_says_nothing(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 2, max = 12) int count) {
    Random random = new Random(seed);
    List<Observation> seen = drawn(random, count);
    seen.addAll(pulls(4, 1));
    seen.addAll(List.of(new Pull(joint(90), Duration.ofDays(8), 300, 12.7, 11)));
    Learned before = learn(seen);
    Collections.shuffle(seen, random);
    assertEquals(before, learn(seen));
  }

  @Property(tries = 40)
  void a_pull_weaker_than_all_others_never_makes_it_stronger_or_sooner(
      @ForAll @LongRange(min = 0, max = 1_000_000) long seed,
      @ForAll @IntRange(min = 0, max = 12) int count) {
    Random random = new Random(seed);
    List<Observation> seen = joints(12, 0.7);
    double weakest = 0.7;
    for (int i = 0; i < count; i++) {
      double factor = Math.min(1.8, Math.max(0.5, 1.1 * Math.exp(0.15 * random.nextGaussian())));
      weakest = Math.min(weakest, factor);
      seen.add(pulls(i + 1, factor).get(i));
    }
    Learned without = learn(seen);
    double weak = weakest * (0.05 + 0.9 * random.nextDouble());
    seen.add(pulls(51, weak).get(50));
    Learned with = learn(seen);
    Statistics.label("stronger without it").collect(without.strengthFactor() > 1);
    Estimate before = without.learned().strengthMPa();
    Estimate after = with.learned().strengthMPa();
    assertTrue(after.likely() <= before.likely() + 1e-4);
    assertTrue(after.low() <= before.low() + 1e-4);
    double fraction = CLASS.cure().at(Stage.FULL).fraction();
    assertTrue(after.low() <= CLASS.strengthMPa().likely() * weak / fraction + 1e-4);
    assertTrue(with.laterFactor() >= without.laterFactor() - 1e-4);
    assertTrue(with.learned().cure().spreadLn() >= without.learned().cure().spreadLn() - 1e-4);
  }
}
