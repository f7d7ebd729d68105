package annulus.advice;

import static annulus.advice.WorseCasePropertyTest.after;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.quantity.Estimate;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;

/** No wider service range and no less sure measurement makes parts that press hold more. */
class PressInServicePropertyTest {
  private static final String[] METALS = {
    "steel-plain",
    "brass-c260",
    "bronze-bearing",
    "aluminium-cast",
    "magnesium-az91",
    "copper",
    "cast-iron-grey",
    "steel-bearing"
  };

  /** A joint as drawn: the same for the same seed. */
  static OrderText drawn(Random random, double radialUm, double plusMinusUm) {
    double diameter = 10 + random.nextInt(600) / 10.0;
    OrderText order =
        PressedJoint.of(
                METALS[random.nextInt(METALS.length)],
                METALS[random.nextInt(METALS.length)],
                diameter,
                radialUm,
                plusMinusUm)
            .set("bore.outsideDiameterMm", diameter * (1.1 + random.nextDouble()))
            .set("part.insideDiameterMm", random.nextBoolean() ? 0 : diameter * random.nextDouble())
            .set("engagementMm", 5 + random.nextInt(50))
            .set("consequence", "stranding")
            .set("serviceLowC", 20 - random.nextInt(60))
            .set("serviceHighC", 20 + random.nextInt(70));
    if (random.nextBoolean()) {
      order.set("load.axialN", 1 + random.nextInt(300)).set("load.repeats", "static");
    }
    return order;
  }

  private static void neverBetter(Advice better, Advice worse) {
    assertTrue(
        after(worse).compareTo(after(better)) >= 0,
        () -> after(better) + " became " + after(worse) + " " + worse.press());
    Optional<Estimate> held = better.press().flatMap(PressReport::leastHold);
    Optional<Estimate> holds = worse.press().flatMap(PressReport::leastHold);
    if (held.isPresent() && holds.isPresent()) {
      assertTrue(
          holds.get().low() <= held.get().low() * (1 + 1e-9), () -> held + " became " + holds);
    }
    Optional<Estimate> bonded = better.hold().map(HoldReport::bondHot);
    Optional<Estimate> bonds = worse.hold().map(HoldReport::bondHot);
    if (bonded.isPresent() && bonds.isPresent()) {
      assertTrue(
          bonds.get().low() <= bonded.get().low() * (1 + 1e-9), () -> bonded + " became " + bonds);
    }
    Statistics.label("decision").collect(worse.decision().kind());
    Statistics.label("handed back").collect(after(better).equals(after(worse)));
    Statistics.label("standing").collect(worse.press().map(PressReport::standing));
  }

  @Property(tries = 500)
  void a_wider_service_range_is_never_better(@ForAll long seed) {
    Random random = new Random(seed);
    double um = -0.5 - random.nextInt(300) / 10.0;
    int colder = 20 - random.nextInt(70);
    int hotter = 20 + random.nextInt(75);
    Advice narrow =
        drawn(new Random(~seed), um, 0.5).set("serviceLowC", 20).set("serviceHighC", 20).advice();
    Advice hot =
        drawn(new Random(~seed), um, 0.5)
            .set("serviceLowC", 20)
            .set("serviceHighC", hotter)
            .advice();
    Advice both =
        drawn(new Random(~seed), um, 0.5)
            .set("serviceLowC", colder)
            .set("serviceHighC", hotter)
            .advice();
    neverBetter(narrow, hot);
    neverBetter(hot, both);
  }

  @Property(tries = 500)
  void a_less_sure_gap_or_a_surer_wish_is_never_better(@ForAll long seed) {
    Random random = new Random(seed);
    double um = -4.2 - random.nextInt(150) / 10.0;
    double sure = 0.2 + random.nextInt(30) / 10.0;
    double doubtful = sure + random.nextInt(60) / 10.0;
    double confidence = 0.85 + random.nextInt(10) / 100.0;
    double surer = Math.min(0.99, confidence + random.nextInt(14) / 100.0);
    Advice better = drawn(new Random(~seed), um, sure).set("confidence", confidence).advice();
    Advice worse = drawn(new Random(~seed), um, doubtful).set("confidence", surer).advice();
    neverBetter(better, worse);
  }
}
