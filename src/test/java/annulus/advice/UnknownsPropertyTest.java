package annulus.advice;

import static annulus.advice.WorseCasePropertyTest.after;
import static annulus.advice.WorseCasePropertyTest.neverBetter;
import static annulus.advice.WorseCasePropertyTest.pick;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.WorseCasePropertyTest.Drawn;
import annulus.catalog.Catalog;
import annulus.catalog.Instrument;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

/**
 * What is not known never gives an earlier hand-back or a stronger hold than the slow side of what
 * could be known; and a measurement that is less sure never does either. Over drawn orders and
 * drawn catalogues.
 */
class UnknownsPropertyTest {
  /** Readings in place of the drawn gap. */
  private static OrderText measured(Drawn drawn, double boreMm, int readings) {
    Random random = drawn.change();
    double gapMm = (random.nextInt(150) - 10) / 1000.0;
    OrderText order = drawn.order();
    for (String gap : List.of("diameterMm", "radialGapUm", "radialGapPlusMinusUm")) {
      order.set(gap, null);
    }
    return order
        .set("bore.readingsMm", Collections.nCopies(readings, boreMm))
        .set("part.readingsMm", List.of(boreMm - 2 * gapMm))
        .set("bore.instrument", "drawn-instrument")
        .set("part.instrument", "outside-micrometer");
  }

  /**
   * The same knowledge with an instrument whose errors are so many times those of a shipped one.
   */
  private static Knowledge with(Knowledge knowledge, String shipped, double times) {
    Catalog c = knowledge.catalog();
    Instrument was = c.instruments().get(shipped);
    List<Instrument.Span> spans =
        was.spans().stream()
            .map(
                s ->
                    new Instrument.Span(
                        s.use(),
                        s.overMm(),
                        s.upToMm(),
                        Math.min(500, s.mpeUm() * times),
                        s.resolutionUm(),
                        s.contacts(),
                        s.jawFlatMm(),
                        s.provenance()))
            .toList();
    Map<String, Instrument> instruments = new LinkedHashMap<>(c.instruments());
    instruments.put("drawn-instrument", new Instrument("drawn-instrument", "drawn", spans));
    return knowledge.withCatalog(
        new Catalog(
            c.version(),
            c.materials(),
            c.finishes(),
            c.activities(),
            c.compounds(),
            c.primers(),
            instruments,
            c.release(),
            c.cautions(),
            c.ranks(),
            c.limitedUse(),
            c.policy()));
  }

  private static Advice advice(OrderText order, Knowledge knowledge) {
    return new Advisor(knowledge).advise(order.order(knowledge));
  }

  @Property(tries = 400)
  void a_worse_instrument_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double times = 1 + drawn.change().nextInt(100) / 10.0;
    String shipped =
        pick(drawn.change(), "bore-micrometer-three-point", "bore-gauge-dial", "caliper-150");
    neverBetter(
        "worse instrument",
        advice(measured(drawn, 30, 1), with(drawn.knowledge(), shipped, 1)),
        advice(measured(drawn, 30, 1), with(drawn.knowledge(), shipped, times)));
  }

  @Property(tries = 300)
  void one_reading_is_never_better_than_many_that_agree(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    Knowledge knowledge = with(drawn.knowledge(), "bore-gauge-dial", 1);
    int many = 4 + drawn.change().nextInt(8);
    neverBetter(
        "one reading",
        advice(measured(drawn, 30, many), knowledge),
        advice(measured(drawn, 30, 1), knowledge));
  }

  /**
   * Only the time is compared: an instrument with flat jaws shifts the mean, and so the face that
   * holds, by a little.
   */
  @Property(tries = 300)
  void an_instrument_not_said_is_never_better_than_a_usual_one(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    Knowledge knowledge = drawn.knowledge();
    String known =
        pick(drawn.change(), "bore-micrometer-three-point", "bore-gauge-dial", "caliper-150");
    Advice said =
        advice(measured(drawn, 30, 1).set("load", null).set("bore.instrument", known), knowledge);
    Advice unsaid =
        advice(measured(drawn, 30, 1).set("load", null).set("bore.instrument", null), knowledge);
    Statistics.label("ready").collect(unsaid.handBack().isPresent());
    assertTrue(after(unsaid).compareTo(after(said)) >= 0, after(said) + " " + after(unsaid));
  }

  @Property(tries = 300)
  void service_temperatures_not_said_are_never_better_than_any_within_what_is_taken(
      @ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double high = drawn.knowledge().catalog().policy().value("service-high-c");
    double low = drawn.knowledge().catalog().policy().value("service-low-c");
    double said = 20 + (high - 20) * drawn.change().nextDouble();
    neverBetter(
        "service not said",
        drawn.advice(drawn.order().set("serviceLowC", low / 2).set("serviceHighC", said)),
        drawn.advice(drawn.order().set("serviceLowC", null).set("serviceHighC", null)));
  }

  @Property(tries = 300)
  void a_state_not_said_is_never_better_than_clean(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    String side = drawn.change().nextBoolean() ? "bore.state" : "part.state";
    neverBetter(
        "state not said",
        drawn.advice(drawn.order().set(side, "clean")),
        drawn.advice(drawn.order().set(side, null)));
  }

  @Property(tries = 300)
  void a_confidence_not_said_is_that_of_the_policy(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double wanted = drawn.knowledge().catalog().policy().value("wanted-confidence");
    Advice said = drawn.advice(drawn.order().set("confidence", wanted));
    Advice unsaid = drawn.advice(drawn.order().set("confidence", null));
    assertEquals(said.handBack(), unsaid.handBack());
  }

  /** Nobody can say what lies on a face that was not looked at: the answer asks for it, loudly. */
  @Test
  void a_finish_not_said_is_called_out() {
    for (String side : List.of("bore.finish", "part.finish")) {
      Advice unsaid =
          OrderText.ADVISOR.advise(new OrderText().set(side, null).order(OrderText.KNOWLEDGE));
      assertTrue(
          unsaid.cautions().stream().anyMatch(f -> f.rule().id().equals("finish-not-said")), side);
    }
    Advice said = OrderText.ADVISOR.advise(new OrderText().order(OrderText.KNOWLEDGE));
    assertTrue(said.cautions().stream().noneMatch(f -> f.rule().id().equals("finish-not-said")));
  }
}
