package annulus.advice;

import annulus.catalog.Activity;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.Consequence;
import annulus.catalog.Finish;
import annulus.catalog.NamedNumber;
import annulus.catalog.Policy;
import annulus.catalog.Primer;
import annulus.catalog.Provenance;
import annulus.catalog.ReleaseRule;
import annulus.catalog.Stage;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** Valid catalogues nobody would print: every number anywhere within what its record allows. */
final class DrawnKnowledge {
  static final List<String> CLASSES = List.of("drawn-a", "drawn-b", "drawn-c");
  static final List<String> PRIMERS = List.of("drawn-primer-a", "drawn-primer-b");
  static final Map<Activity.Level, String> TWINS =
      Map.of(
          Activity.Level.ACTIVE, "twin-active",
          Activity.Level.SLOW, "twin-slow",
          Activity.Level.INERT, "twin-inert");
  private static final Provenance DRAWN = new Provenance("drawn", Confidence.LOW);

  private final Random random;

  private DrawnKnowledge(Random random) {
    this.random = random;
  }

  static Knowledge of(long seed) {
    return new DrawnKnowledge(new Random(seed)).knowledge();
  }

  private Knowledge knowledge() {
    Catalog base = OrderText.KNOWLEDGE.catalog();
    Map<String, Finish> finishes = new LinkedHashMap<>(base.finishes());
    Estimate strength = estimate(0, 1.2);
    TWINS.forEach(
        (level, id) ->
            finishes.put(
                id,
                new Finish(
                    id,
                    id,
                    Finish.Film.BARE,
                    Optional.of(level),
                    strength,
                    Estimate.exactly(2),
                    DRAWN)));
    return OrderText.KNOWLEDGE.withCatalog(
        new Catalog(
            "drawn",
            base.materials(),
            finishes,
            Catalog.index(
                List.of(
                    new Activity(Activity.Level.ACTIVE, mild(0.5, 2, 1e-3, 10), DRAWN),
                    new Activity(Activity.Level.SLOW, mild(0.2, 1, 1e-3, 10), DRAWN),
                    new Activity(Activity.Level.INERT, mild(0.05, 0.4, 1e-3, 10), DRAWN)),
                Activity::level),
            Catalog.index(CLASSES.stream().map(this::compound).toList(), CompoundClass::id),
            Catalog.index(PRIMERS.stream().map(this::primer).toList(), Primer::id),
            base.instruments(),
            Catalog.index(release(), ReleaseRule::consequence),
            base.cautions(),
            base.ranks(),
            base.limitedUse(),
            policy(base.policy())));
  }

  private double between(double low, double high) {
    return low + random.nextDouble() * (high - low);
  }

  /** Three numbers in order; now and then without any spread. */
  private Estimate estimate(double low, double high) {
    double[] three = {between(low, high), between(low, high), between(low, high)};
    Arrays.sort(three);
    return switch (random.nextInt(5)) {
      case 0 -> Estimate.exactly(three[1]);
      case 1 -> new Estimate(three[0], three[0], three[2]);
      case 2 -> new Estimate(three[0], three[2], three[2]);
      default -> new Estimate(three[0], three[1], three[2]);
    };
  }

  /** Mostly near what a shop would write, sometimes anywhere that is allowed. */
  private Estimate mild(double low, double high, double least, double most) {
    return random.nextInt(4) == 0 ? estimate(least, most) : estimate(low, high);
  }

  private double number(double low, double high, double least, double most) {
    return random.nextInt(4) == 0 ? between(least, most) : between(low, high);
  }

  private CompoundClass compound(String id) {
    double gapLow = between(-50, 60);
    double gapHigh = between(80, 760);
    double serviceLow = between(-100, 0);
    double serviceHigh = between(60, 350);
    return new CompoundClass(
        id,
        id,
        "drawn",
        random.nextBoolean()
            ? CompoundClass.Permanence.LASTING
            : CompoundClass.Permanence.RELEASABLE,
        CompoundClass.Role.values()[random.nextInt(3)],
        new Interval(gapLow, gapHigh),
        between(gapHigh, 760),
        new Interval(10, 1000),
        mild(3, 40, 0.2, 60),
        cure(),
        new Interval(serviceLow, serviceHigh),
        hot(),
        estimate(60, 400),
        new Interval(5, 25),
        Estimate.exactly(12),
        Estimate.exactly(6),
        DRAWN);
  }

  private List<CompoundClass.HotPoint> hot() {
    List<CompoundClass.HotPoint> points = new ArrayList<>();
    Estimate before = estimate(0.8, 1);
    double at = between(0, 30);
    for (int i = random.nextInt(4); i >= 0; i--) {
      points.add(new CompoundClass.HotPoint(at, before));
      double share = between(0.5, 1);
      before = new Estimate(before.low() * share, before.likely() * share, before.high() * share);
      at += between(10, 80);
    }
    return points;
  }

  private CompoundClass.Cure cure() {
    double reference = number(15, 30, 0, 60);
    double minimum = number(Math.min(reference, 0), Math.min(reference, 10), -20, reference);
    double[] fractions = rising(4, 1e-6, 1);
    double[] hours = rising(4, 1e-4, random.nextInt(4) == 0 ? 2000 : 100);
    List<CompoundClass.StagePoint> stages = new ArrayList<>();
    for (Stage stage : Stage.values()) {
      stages.add(
          new CompoundClass.StagePoint(stage, fractions[stage.ordinal()], hours[stage.ordinal()]));
    }
    return new CompoundClass.Cure(
        reference,
        number(15, 60, 1, 500),
        mild(0.3, 1.5, 0, 3),
        mild(30, 70, 5, 150),
        minimum,
        between(minimum, 60),
        between(reference, 120),
        number(0, 0.5, 0, 2),
        stages,
        between(hours[3], 2000),
        between(hours[3], 2000),
        estimate(0.1, 240));
  }

  private double[] rising(int count, double least, double most) {
    double[] values = new double[count];
    for (int i = 0; i < count; i++) {
      values[i] = between(least, most);
    }
    Arrays.sort(values);
    return values;
  }

  private Primer primer(String id) {
    return new Primer(
        id,
        id,
        Primer.Application.AS_LABELLED,
        mild(0.5, 5, 0.01, 20),
        mild(0.5, 1, 0.05, 1),
        estimate(0, 120),
        mild(1, 30, 0.01, 365),
        estimate(0.01, 1),
        between(1, 2000),
        DRAWN);
  }

  /** A worse consequence never asks for less: that is what the catalogue allows. */
  private List<ReleaseRule> release() {
    int[] stages = {random.nextInt(4), random.nextInt(4), random.nextInt(4)};
    Arrays.sort(stages);
    double[] factors = rising(3, 1, 20);
    int slowFrom = random.nextInt(4);
    List<ReleaseRule> rules = new ArrayList<>();
    for (Consequence c : Consequence.values()) {
      int i = c.ordinal();
      rules.add(new ReleaseRule(c, Stage.values()[stages[i]], i >= slowFrom, factors[i], DRAWN));
    }
    return rules;
  }

  private Policy policy(Policy base) {
    Map<String, NamedNumber> numbers = new LinkedHashMap<>(base.numbers());
    put(numbers, "line-to-line-um", between(0, 20));
    put(numbers, "dry-press-from-um", between(-20, 0));
    put(numbers, "dry-press-least-um", between(-100, -20));
    put(numbers, "undisturbed-after-fixture-min", between(0, 600));
    put(numbers, "cure-temperature-plus-minus-c", between(0, 10));
    put(numbers, "bore-temperature-plus-minus-c", between(0, 10));
    put(numbers, "wanted-confidence", between(0.8, 0.999));
    put(numbers, "default-bench-c", between(0, 25));
    put(numbers, "service-high-c", between(30, 100));
    put(numbers, "waste-factor", between(1, 5));
    put(numbers, "tool-press-n", between(100, 50_000));
    return new Policy(numbers);
  }

  private static void put(Map<String, NamedNumber> numbers, String id, double value) {
    NamedNumber was = numbers.get(id);
    numbers.put(id, new NamedNumber(id, value, was.unit(), was.meaning(), DRAWN));
  }
}
