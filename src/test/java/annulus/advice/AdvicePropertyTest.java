package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.HandBack;
import annulus.catalog.Stage;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.statistics.Statistics;

/** Laws of the whole answer: nothing that makes a case worse makes it ready sooner. */
class AdvicePropertyTest {
  private static final Duration NEVER = Duration.ofDays(100_000);

  private static Duration handBack(OrderText order) {
    return order.advice().handBack().map(HandBack::after).orElse(NEVER);
  }

  private static void notEarlier(Duration better, Duration worse, String what) {
    assertTrue(worse.compareTo(better) >= 0, what + ": " + better + " became " + worse);
  }

  private static OrderText base(int gapUm, String material, String primer) {
    OrderText order = new OrderText().radialGapUm(gapUm).set("part.material", material);
    return primer.equals("open") ? order.set("primer", null) : order.set("primer", primer);
  }

  @Provide
  Arbitrary<String> metals() {
    return Arbitraries.of(
        "steel-plain", "brass-c360", "aluminium-6061", "stainless-316", "titanium-6al4v");
  }

  @Provide
  Arbitrary<String> primers() {
    return Arbitraries.of("none", "open", "primer-solvent", "primer-dry");
  }

  @Property(tries = 300)
  void colder_is_never_earlier(
      @ForAll @IntRange(min = 0, max = 260) int gap,
      @ForAll("metals") String metal,
      @ForAll("primers") String primer,
      @ForAll @IntRange(min = 20, max = 450) int tenthsC,
      @ForAll @IntRange(min = 1, max = 150) int colder) {
    Duration warm = handBack(base(gap, metal, primer).set("temperatureC", tenthsC / 10.0));
    Duration cold =
        handBack(base(gap, metal, primer).set("temperatureC", (tenthsC - colder) / 10.0));
    notEarlier(warm, cold, "colder");
    Statistics.label("warm is ready at all").collect(!warm.equals(NEVER));
  }

  @Property(tries = 300)
  void a_bigger_gap_never_cures_the_same_class_sooner(
      @ForAll @IntRange(min = 9, max = 120) int gap,
      @ForAll @IntRange(min = 1, max = 60) int wider,
      @ForAll("metals") String metal,
      @ForAll("primers") String primer) {
    Advice one = base(gap, metal, primer).advice();
    Advice two = base(gap + wider, metal, primer).advice();
    boolean same =
        one.decision().compound().isPresent()
            && one.decision().compound().equals(two.decision().compound());
    Statistics.label("same class").collect(same);
    if (same) {
      notEarlier(after(one), after(two), "wider gap");
    }
  }

  private static Duration after(Advice advice) {
    return advice.handBack().map(HandBack::after).orElse(NEVER);
  }

  @Property(tries = 200)
  void a_less_sure_measurement_is_never_ready_sooner(
      @ForAll @IntRange(min = 10, max = 110) int gap, @ForAll("metals") String metal) {
    OrderText fine = base(gap, metal, "none");
    OrderText coarse = base(gap, metal, "none").set("bore.instrument", "inside-micrometer");
    Advice one = fine.advice();
    Advice two = coarse.advice();
    if (two.decision().compound().isPresent()
        && two.decision().compound().equals(one.decision().compound())) {
      notEarlier(after(one), after(two), "less sure");
    }
  }

  @Property(tries = 200)
  void a_named_primer_is_never_later_than_none(
      @ForAll @IntRange(min = 10, max = 110) int gap,
      @ForAll("metals") String metal,
      @ForAll @IntRange(min = 6, max = 35) int celsius) {
    Duration bare = handBack(base(gap, metal, "none").set("temperatureC", celsius));
    Duration primed = handBack(base(gap, metal, "primer-solvent").set("temperatureC", celsius));
    notEarlier(primed, bare, "without primer");
  }

  @Property(tries = 200)
  void a_less_active_face_is_never_ready_sooner(
      @ForAll @IntRange(min = 10, max = 110) int gap, @ForAll("primers") String primer) {
    Duration active = handBack(base(gap, "steel-plain", primer));
    Duration slow = handBack(base(gap, "stainless-316", primer).set("serviceLowC", 15));
    Duration inert = handBack(base(gap, "steel-plain", primer).set("part.finish", "zinc-plated"));
    notEarlier(active, slow, "slow face");
    notEarlier(active, inert, "inert face");
  }

  @Property(tries = 150)
  void a_worse_consequence_is_never_ready_sooner(
      @ForAll @IntRange(min = 0, max = 120) int gap, @ForAll("primers") String primer) {
    Duration nuisance = handBack(base(gap, "steel-plain", primer).set("consequence", "nuisance"));
    Duration stranding = handBack(base(gap, "steel-plain", primer).set("consequence", "stranding"));
    Duration injury = handBack(base(gap, "steel-plain", primer).set("consequence", "injury"));
    notEarlier(nuisance, stranding, "stranding");
    notEarlier(stranding, injury, "injury");
  }

  @Property(tries = 200)
  void doubling_a_load_never_releases_earlier(
      @ForAll @IntRange(min = 10, max = 110) int gap,
      @ForAll @IntRange(min = 1, max = 4000) int newtons) {
    OrderText order = base(gap, "steel-plain", "none").set("consequence", "nuisance");
    Duration light = handBack(order.set("load.axialN", newtons).set("load.repeats", "static"));
    Duration heavy = handBack(order.set("load.axialN", 2 * newtons));
    notEarlier(light, heavy, "doubled load");
    Statistics.label("heavy ready").collect(!heavy.equals(NEVER));
  }

  @Property(tries = 100)
  void the_order_of_readings_does_not_matter(
      @ForAll @IntRange(min = 2, max = 6) int count, @ForAll long seed) {
    Random random = new Random(seed);
    List<Double> readings = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      readings.add(30.03 + random.nextInt(12) / 1000.0);
    }
    List<Double> shuffled = new ArrayList<>(readings);
    Collections.shuffle(shuffled, random);
    Advice one = new OrderText().set("bore.readingsMm", readings).advice();
    Advice two = new OrderText().set("bore.readingsMm", shuffled).advice();
    assertEquals(one.gap().gap(), two.gap().gap());
    assertEquals(one.handBack(), two.handBack());
  }

  @Property(tries = 100)
  void inch_and_fahrenheit_give_the_same_answer(
      @ForAll @IntRange(min = 10, max = 100) int gap,
      @ForAll @IntRange(min = 45, max = 95) int fahrenheit) {
    double mm = 30 + gap / 500.0;
    double inch = mm / 25.4;
    String asInch =
        new java.math.BigDecimal(inch).setScale(9, java.math.RoundingMode.HALF_UP) + " in";
    Advice metric =
        new OrderText().bore(mm).set("temperatureC", (fahrenheit - 32) * 5 / 9.0).advice();
    Advice imperial =
        new OrderText()
            .set("bore.readingsMm", List.of(asInch))
            .set("temperatureC", fahrenheit + " F")
            .advice();
    assertEquals(metric.decision().kind(), imperial.decision().kind());
    assertEquals(metric.gap().gap().meanUm(), imperial.gap().gap().meanUm(), 1e-3);
    Duration difference = after(metric).minus(after(imperial)).abs();
    assertTrue(difference.compareTo(Duration.ofMinutes(2)) <= 0, difference.toString());
  }

  @Property(tries = 200)
  void stages_come_in_order_and_sure_is_never_before_typical(
      @ForAll @IntRange(min = 0, max = 240) int gap,
      @ForAll("metals") String metal,
      @ForAll("primers") String primer,
      @ForAll @IntRange(min = 5, max = 45) int celsius) {
    Advice advice = base(gap, metal, primer).set("temperatureC", celsius).advice();
    if (advice.cure().isEmpty()) {
      return;
    }
    Duration lastTypical = Duration.ZERO;
    Duration lastSure = Duration.ZERO;
    for (Stage stage : Stage.values()) {
      Duration typical = advice.cure().get().at(stage).typical().orElse(NEVER);
      Duration sure = advice.cure().get().at(stage).sure().orElse(NEVER);
      assertTrue(typical.compareTo(lastTypical) > 0);
      assertTrue(sure.compareTo(lastSure) > 0 || sure.equals(NEVER));
      assertTrue(sure.compareTo(typical) >= 0);
      lastTypical = typical;
      lastSure = sure;
    }
  }

  @Property(tries = 200)
  void no_hand_back_comes_before_fixture_and_rest(
      @ForAll @IntRange(min = 0, max = 240) int gap,
      @ForAll("metals") String metal,
      @ForAll("primers") String primer) {
    Advice advice = base(gap, metal, primer).set("consequence", "nuisance").advice();
    if (advice.cure().isPresent() && advice.handBack().isPresent()) {
      Duration fixture = advice.cure().get().at(Stage.FIXTURE).sure().orElseThrow();
      Duration rest = Duration.ofMinutes(15);
      assertTrue(advice.handBack().get().after().compareTo(fixture.plus(rest)) >= 0);
    }
  }

  @Property(tries = 400)
  void every_valid_order_gets_an_answer_with_a_reason(@ForAll("orders") OrderText order) {
    Advice advice = order.advice();
    Statistics.label("kind").collect(advice.decision().kind());
    if (advice.decision().kind().isYes()) {
      assertTrue(advice.decision().because().isEmpty());
      assertFalse(advice.steps().isEmpty());
    } else if (advice.decision().kind() != Advice.Kind.STRIP_AND_REDO
        && advice.decision().kind() != Advice.Kind.TOO_TIGHT) {
      Optional<?> reason = advice.decision().because().stream().findFirst();
      boolean remedy = advice.gap().remedy().isPresent();
      assertTrue(reason.isPresent() || remedy, order.json());
    }
    assertEquals(OrderText.KNOWLEDGE.catalog().compounds().size(), advice.table().size());
  }

  @Provide
  Arbitrary<OrderText> orders() {
    Arbitrary<String> materials =
        Arbitraries.of(OrderText.KNOWLEDGE.catalog().materials().keySet());
    Arbitrary<String> finishes = Arbitraries.of(OrderText.KNOWLEDGE.catalog().finishes().keySet());
    Arbitrary<Integer> gaps = Arbitraries.integers().between(-95, 450);
    Arbitrary<Integer> temps = Arbitraries.integers().between(-20, 50);
    Arbitrary<String> tools =
        Arbitraries.of("caliper-150", "inside-micrometer", "bore-gauge-dial", "telescopic-gauge");
    return Combinators.combine(
            materials, materials, finishes, finishes, gaps, temps, tools, primers())
        .as(
            (mb, mp, fb, fp, gap, temp, tool, primer) ->
                base(gap, mp, primer)
                    .set("bore.material", mb)
                    .set("bore.finish", fb)
                    .set("part.finish", fp)
                    .set("temperatureC", temp)
                    .set("bore.instrument", tool)
                    .set("comesApartLater", gap % 2 == 0)
                    .set("serviceHighC", 40 + (gap + 95) % 140));
  }
}
