package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.advice.WorseCasePropertyTest.Drawn;
import annulus.catalog.Catalog;
import annulus.catalog.CompoundClass;
import annulus.catalog.NamedNumber;
import annulus.catalog.Policy;
import annulus.catalog.Rows;
import annulus.exchange.InputRefused;
import annulus.measure.Component;
import annulus.measure.MeasuredDiameter;
import annulus.quantity.Estimate;
import annulus.quantity.InvalidValue;
import annulus.select.ClassVerdict;
import annulus.select.Finding;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Stream;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.lifecycle.AfterContainer;
import net.jqwik.api.statistics.Statistics;

/**
 * What an answer makes only when it is asked for never refuses late, and never changes: whatever is
 * wrong with an order is said before there is an answer, so that a row of a list and a single order
 * agree. Over drawn orders, many at the ends of what may be said, and all demo orders.
 */
class LatePartsPropertyTest {
  private static final Map<String, Function<Advice, Object>> PARTS = parts();
  private static final Map<String, double[]> POLICY_LIMITS = policyLimits();
  private static final ExecutorService THREADS = Executors.newFixedThreadPool(2);

  @AfterContainer
  static void stopThreads() {
    THREADS.shutdownNow();
  }

  /** Each as a copy, so that a later change would be seen. */
  private static Map<String, Function<Advice, Object>> parts() {
    Map<String, Function<Advice, Object>> parts = new LinkedHashMap<>();
    parts.put("holds", a -> List.copyOf(a.holds()));
    parts.put("hold", a -> a.hold().stream().toList());
    parts.put("remedies", a -> List.copyOf(a.gap().remedies()));
    parts.put("remedy", a -> a.gap().remedy().stream().toList());
    parts.put("primed", a -> List.copyOf(a.primed()));
    parts.put("steps", a -> List.copyOf(a.steps()));
    parts.put("figures", a -> List.copyOf(a.figures()));
    parts.put("curve", a -> a.cure().map(c -> List.copyOf(c.curve())).orElse(List.of()));
    parts.put("figures of cautions", a -> figures(a.cautions()));
    parts.put("figures of reasons", a -> figures(a.decision().because()));
    parts.put(
        "figures of classes",
        a -> a.table().stream().map(ClassVerdict::findings).map(f -> figures(f)).toList());
    parts.put("words of budgets", LatePartsPropertyTest::words);
    return parts;
  }

  private static List<Object> figures(List<Finding> findings) {
    return findings.stream()
        .map(f -> List.of(f.rule().id(), f.classId(), Map.copyOf(f.figures())))
        .map(Object.class::cast)
        .toList();
  }

  private static List<String> words(Advice advice) {
    return Stream.of(advice.gap().bore(), advice.gap().part())
        .flatMap(m -> m.stream())
        .flatMap((MeasuredDiameter m) -> Stream.of(m.budget(), m.extremeBudget()))
        .flatMap(b -> b.components().stream())
        .map(Component::toString)
        .toList();
  }

  private static Map<String, double[]> policyLimits() {
    Map<String, double[]> limits = new LinkedHashMap<>();
    try {
      for (String line : Files.readAllLines(Path.of("data/number-limits.csv"))) {
        String[] cells = line.split(",", -1);
        if (cells[0].equals("policy.csv")) {
          limits.put(
              cells[1], new double[] {Double.parseDouble(cells[2]), Double.parseDouble(cells[3])});
        }
      }
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
    return limits;
  }

  private static Map<String, Object> looked(Advice advice, Random random, String about) {
    List<String> names = new ArrayList<>(PARTS.keySet());
    Collections.shuffle(names, random);
    Map<String, Object> seen = new TreeMap<>();
    for (String name : names) {
      try {
        seen.put(name, PARTS.get(name).apply(advice));
      } catch (RuntimeException e) {
        throw new AssertionError(name + " refused late, of " + about, e);
      }
    }
    return seen;
  }

  private static List<Map<String, Object>> lookedFromTwoThreads(
      Advice advice, Random random, String about) throws Exception {
    CyclicBarrier together = new CyclicBarrier(2);
    List<Future<Map<String, Object>>> running = new ArrayList<>();
    for (int i = 0; i < 2; i++) {
      Random own = new Random(random.nextLong());
      running.add(
          THREADS.submit(
              () -> {
                together.await(1, TimeUnit.MINUTES);
                return looked(advice, own, about);
              }));
    }
    List<Map<String, Object>> seen = new ArrayList<>();
    for (Future<Map<String, Object>> one : running) {
      seen.add(one.get(2, TimeUnit.MINUTES));
    }
    return seen;
  }

  /** Three answers to one order: looked at twice, in another order, and by two threads at once. */
  private static void check(Supplier<Advice> asked, Random random, String about) throws Exception {
    Advice advice;
    try {
      advice = asked.get();
    } catch (InputRefused | InvalidValue e) {
      Statistics.label("answer").collect("refused");
      return;
    }
    Statistics.label("answer").collect(advice.decision().kind().toString());
    Map<String, Object> first = looked(advice, random, about);
    first.forEach(
        (name, part) ->
            Statistics.label("something in " + name).collect(!((Collection<?>) part).isEmpty()));
    assertEquals(first, looked(advice, random, about), "looked at again");
    assertEquals(first, looked(asked.get(), random, about), "another answer to the same order");
    for (Map<String, Object> seen : lookedFromTwoThreads(asked.get(), random, about)) {
      assertEquals(first, seen, "two threads");
    }
  }

  private static void check(OrderText text, Knowledge knowledge, Random random) throws Exception {
    check(() -> new Advisor(knowledge).advise(text.order(knowledge)), random, "\n" + text.json());
  }

  private static void allCameUp(int least) {
    PARTS
        .keySet()
        .forEach(
            name ->
                Statistics.label("something in " + name)
                    .coverage(c -> c.check(true).count(n -> n >= least)));
  }

  @Property(tries = 800)
  void no_part_refuses_late_for_the_shipped_tables(@ForAll long seed) throws Exception {
    Random random = new Random(seed);
    check(wide(random, OrderText.KNOWLEDGE), OrderText.KNOWLEDGE, random);
    allCameUp(5);
  }

  @Property(tries = 800)
  void no_part_refuses_late_for_tables_at_the_ends_of_what_is_allowed(@ForAll long seed)
      throws Exception {
    Random random = new Random(seed);
    Knowledge knowledge = atTheEnds(DrawnKnowledge.of(seed), random);
    check(wide(random, knowledge), knowledge, random);
    allCameUp(5);
  }

  @Property(tries = 300)
  void no_part_refuses_late_for_drawn_tables(@ForAll long seed) throws Exception {
    Drawn drawn = Drawn.of(seed);
    check(drawn.order(), drawn.knowledge(), drawn.change());
    Statistics.label("something in hold").coverage(c -> c.check(true).count(n -> n >= 20));
  }

  @Example
  void no_part_refuses_late_for_a_demo_order() throws Exception {
    try (Stream<Path> files = Files.list(Path.of("demo-data/orders"))) {
      List<Path> orders = files.sorted().toList();
      assertEquals(16, orders.size());
      for (Path file : orders) {
        JointOrder order = OrderText.read(Files.readString(file));
        check(() -> OrderText.ADVISOR.advise(order), new Random(file.hashCode()), file.toString());
      }
    }
    Statistics.label("answer").coverage(c -> c.check("refused").count(n -> n == 0));
    allCameUp(1);
  }

  private static Object any(Random random, Object... values) {
    return values[random.nextInt(values.length)];
  }

  /** What most orders say, or now and then one of the others. */
  private static Object mostly(Random random, Object usual, Object... others) {
    return oneIn(random, 5) ? any(random, others) : usual;
  }

  private static boolean oneIn(Random random, int times) {
    return random.nextInt(times) == 0;
  }

  private static String id(Random random, Map<String, ?> rows) {
    return WorseCasePropertyTest.pick(random, List.copyOf(rows.keySet()));
  }

  /** An order out of everything that may be said, now and then at the ends of the ranges. */
  private static OrderText wide(Random random, Knowledge knowledge) {
    Catalog catalog = knowledge.catalog();
    OrderText order =
        new OrderText()
            .set("engagementMm", mostly(random, 20, 0.5, 5, 60, 500))
            .set("temperatureC", mostly(random, 22, -20, 3, 12, 35, 50))
            .set("temperaturePlusMinusC", mostly(random, 2, 0, 20))
            .set("serviceLowC", mostly(random, 0, null, -100, -40, 20))
            .set("serviceHighC", mostly(random, 40, null, 20, 90, 180, 350))
            .set("confidence", mostly(random, null, 0.8, 0.95, 0.999))
            .set("consequence", any(random, null, "nuisance", "stranding", "injury"))
            .set("class", oneIn(random, 5) ? id(random, catalog.compounds()) : null)
            .set("comesApartLater", any(random, true, false))
            .set("sealNear", oneIn(random, 4))
            .set("electronicsNear", oneIn(random, 4))
            .set("warranty", oneIn(random, 8));
    members(order, random, catalog);
    size(order, random, catalog);
    primer(order, random, catalog);
    load(order, random);
    return clock(order, random, catalog);
  }

  private static void members(OrderText order, Random random, Catalog catalog) {
    for (String side : List.of("bore", "part")) {
      if (oneIn(random, 4)) {
        order
            .set(side + ".material", id(random, catalog.materials()))
            .set(side + ".finish", oneIn(random, 4) ? null : id(random, catalog.finishes()));
      }
      order
          .set(side + ".state", mostly(random, "clean", null, "oily", "old-compound", "unknown"))
          .set(side + ".arrivesAtC", mostly(random, null, -40, 10, 60));
    }
    order
        .set("bore.outsideDiameterMm", mostly(random, null, 40, 505, 2000))
        .set("part.insideDiameterMm", mostly(random, null, 0, 0.1, 20));
  }

  private static void size(OrderText order, Random random, Catalog catalog) {
    if (oneIn(random, 3)) {
      int um = (int) mostly(random, random.nextInt(130) - 5, -1000, -60, -20, 250, 1000);
      WorseCasePropertyTest.gap(order, um, 1);
      order
          .set("radialGapPlusMinusUm", mostly(random, 2, 0.1, 20, 500))
          .set("diameterMm", mostly(random, 30, 0.5, 1, 500));
      return;
    }
    double part = (double) mostly(random, 30.0, 0.5, 1.0, 12.0, 140.0, 499.0);
    int um = (int) mostly(random, random.nextInt(130) - 5, -60, -20, 250, 400);
    side(order, "bore", part + 2 * um / 1000.0, random, catalog);
    side(order, "part", part, random, catalog);
  }

  private static void side(
      OrderText order, String side, double mm, Random random, Catalog catalog) {
    List<Object> readings = new ArrayList<>();
    double scatterMm = (double) mostly(random, 0.002, 0.0, 0.02);
    boolean placed = oneIn(random, 2);
    for (int i = random.nextInt(5); i >= 0; i--) {
      double read = Math.min(500, mm + scatterMm * random.nextDouble());
      Map<String, Object> reading = new LinkedHashMap<>(Map.of("mm", read));
      if (placed) {
        reading.putAll(Map.of("depthMm", 5 * (i % 2), "angleDeg", 90 * (i / 2)));
      }
      readings.add(reading);
    }
    order
        .set(side + ".readingsMm", readings)
        .set(side + ".temperatureC", mostly(random, 20, null, -30, 60))
        .set(side + ".temperaturePlusMinusC", mostly(random, 2, null, 0, 20));
    if (oneIn(random, 3)) {
      order.set(side + ".instrument", oneIn(random, 5) ? null : id(random, catalog.instruments()));
    }
  }

  private static void primer(OrderText order, Random random, Catalog catalog) {
    switch (random.nextInt(4)) {
      case 0 -> {
        order.set("primer", null);
        if (oneIn(random, 2)) { // one that is planned: for a face that asks for it
          order.set("bore.material", "titanium-6al4v").set("bore.finish", "ground");
        }
      }
      case 1 -> order.set("primer", "none");
      default ->
          order.set(
              "primer",
              Map.of(
                  "id",
                  id(random, catalog.primers()),
                  "on",
                  any(random, "both", "bore", "part"),
                  "minutesOnPart",
                  any(random, 0, 0.01, 1, 30, 10_000, 525_600)));
    }
  }

  private static void load(OrderText order, Random random) {
    if (oneIn(random, 2)) {
      order
          .set("load.axialN", mostly(random, 800, 0.001, 50, 20_000, 1e7))
          .set("load.torqueNm", mostly(random, null, 0, 5, 1e6))
          .set("load.repeats", any(random, null, "static", "light-repeated", "reversing", "shock"))
          .set("load.safetyFactor", mostly(random, null, 1, 20));
    }
  }

  /** Now, or as far from now as an order may be; now and then moved after it was closed. */
  private static OrderText clock(OrderText order, Random random, Catalog catalog) {
    long days = (long) catalog.policy().value("start-horizon-days");
    long from = (long) mostly(random, 0L, days, -days);
    Instant start = OrderText.NOW.plus(Duration.ofDays(from));
    order.set("start", start.toString());
    if (oneIn(random, 8)) {
      order.set("movedAt", start.plusSeconds((int) any(random, 0, 60, 7200)).toString());
    }
    return order;
  }

  /** Some policy at an end of its range, and classes taken apart just where a hot point lies. */
  private static Knowledge atTheEnds(Knowledge knowledge, Random random) {
    Catalog c = knowledge.catalog();
    Map<String, NamedNumber> numbers = new LinkedHashMap<>(c.policy().numbers());
    POLICY_LIMITS.forEach(
        (id, limits) -> {
          if (oneIn(random, 3)) {
            NamedNumber was = numbers.get(id);
            double end = limits[random.nextInt(2)];
            numbers.put(id, new NamedNumber(id, end, was.unit(), was.meaning(), was.provenance()));
          }
        });
    List<CompoundClass> compounds =
        c.compounds().values().stream().map(was -> apartAtAPoint(was, random)).toList();
    return knowledge.withCatalog(
        new Catalog(
            c.version(),
            c.materials(),
            c.finishes(),
            c.activities(),
            Catalog.index(compounds, CompoundClass::id),
            c.primers(),
            c.instruments(),
            c.release(),
            c.cautions(),
            c.ranks(),
            c.limitedUse(),
            new Policy(numbers)));
  }

  private static CompoundClass apartAtAPoint(CompoundClass was, Random random) {
    List<CompoundClass.HotPoint> points = new ArrayList<>();
    for (CompoundClass.HotPoint p : was.hotStrength()) {
      Estimate kept = p.fraction();
      boolean last = points.size() + 1 == was.hotStrength().size();
      points.add(
          new CompoundClass.HotPoint(p.celsius() + 60, last ? Estimate.exactly(kept.low()) : kept));
    }
    double heat = points.get(random.nextInt(points.size())).celsius();
    return Rows.with(Rows.with(was, "hotStrength", points), "removalHeatC", Estimate.exactly(heat));
  }
}
