package annulus.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice.HandBack;
import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.quantity.Estimate;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;

/**
 * The law that must never break, over drawn orders and drawn catalogues: whatever makes a case
 * worse never gives an earlier hand-back or a stronger hold of the same class.
 */
class WorseCasePropertyTest {
  private static final Duration NEVER = Duration.ofSeconds(Long.MAX_VALUE);

  /** A joint as drawn, its knowledge, and numbers for the change. */
  record Drawn(Knowledge knowledge, long seed) {
    static Drawn of(long seed) {
      return new Drawn(DrawnKnowledge.of(seed), seed);
    }

    /** The same draw each time it is asked for. */
    OrderText order() {
      Random random = new Random(~seed);
      OrderText order =
          new OrderText()
              .set("bore.material", pick(random, "steel-plain", "brass-c360", "aluminium-6061"))
              .set("part.material", pick(random, "steel-plain", "brass-c360", "titanium-6al4v"))
              .set("bore.finish", pick(random, List.copyOf(DrawnKnowledge.TWINS.values())))
              .set("part.finish", pick(random, List.copyOf(DrawnKnowledge.TWINS.values())))
              .set("temperatureC", (random.nextInt(550) - 50) / 10.0)
              .set("temperaturePlusMinusC", random.nextInt(50) / 10.0)
              .set("consequence", pick(random, "nuisance", "stranding", "injury"))
              .set("engagementMm", 5 + random.nextInt(60))
              .set("confidence", (800 + random.nextInt(200)) / 1000.0)
              .set("class", pick(random, DrawnKnowledge.CLASSES));
      gap(order, random.nextInt(450) - 30, 1 + random.nextInt(60) / 10.0);
      if (random.nextBoolean()) {
        order.set("load.axialN", 1 + random.nextInt(3000)).set("load.repeats", "light-repeated");
      }
      return primer(order, random);
    }

    private static OrderText primer(OrderText order, Random random) {
      String id = pick(random, DrawnKnowledge.PRIMERS);
      return switch (random.nextInt(4)) {
        case 0 -> order.set("primer", null);
        case 1 -> order.set("primer", "none");
        case 2 -> order.set("primer", id);
        default ->
            order.set(
                "primer",
                Map.of(
                    "id",
                    id,
                    "on",
                    pick(random, "bore", "part"),
                    "minutesOnPart",
                    random.nextInt(60)));
      };
    }

    Advice advice(OrderText order) {
      return new Advisor(knowledge).advise(order.order(knowledge));
    }

    /** Another stream of numbers, for the change. */
    Random change() {
      return new Random(seed * 31 + 7);
    }
  }

  static void gap(OrderText order, double um, double plusMinusUm) {
    order
        .set("bore.readingsMm", null)
        .set("part.readingsMm", null)
        .set("bore.instrument", null)
        .set("part.instrument", null)
        .set("diameterMm", 30)
        .set("radialGapUm", um)
        .set("radialGapPlusMinusUm", plusMinusUm);
  }

  static String pick(Random random, String... words) {
    return words[random.nextInt(words.length)];
  }

  static String pick(Random random, List<String> words) {
    return words.stream().sorted().toList().get(random.nextInt(words.size()));
  }

  static Duration after(Advice advice) {
    return advice.handBack().map(HandBack::after).orElse(NEVER);
  }

  static void neverBetter(String what, Advice better, Advice worse) {
    Statistics.label(what + ": worse is ready").collect(worse.handBack().isPresent());
    assertTrue(
        after(worse).compareTo(after(better)) >= 0,
        () ->
            what
                + ": hand-back "
                + after(better)
                + " became "
                + after(worse)
                + told(better)
                + told(worse));
    Optional<CompoundClass> same = better.decision().compound();
    if (same.isPresent() && same.equals(worse.decision().compound())) {
      weaker(what, better.hold(), worse.hold());
    }
  }

  private static String told(Advice advice) {
    JointOrder order = advice.order();
    return "\n"
        + List.of(
            advice.decision().kind(),
            advice.decision().compound().map(CompoundClass::id),
            advice.decision().primer().map(p -> p.primer().id() + p.onBore() + p.onPart()),
            order.bore().activity(),
            order.part().activity(),
            order.cure().describedAs(),
            order.primer(),
            advice.decision().because().stream().map(f -> f.rule().id()).toList());
  }

  private static void weaker(String what, Optional<HoldReport> one, Optional<HoldReport> two) {
    if (one.isPresent() && two.isPresent()) {
      weaker(what, one.get().bondHot(), two.get().bondHot());
      weaker(what, one.get().bondCold(), two.get().bondCold());
    }
  }

  private static void weaker(String what, Estimate better, Estimate worse) {
    double rounding = 1 + 1e-12;
    assertTrue(
        worse.low() <= better.low() * rounding && worse.likely() <= better.likely() * rounding,
        () -> what + ": hold " + better + " became " + worse);
  }

  @Property(tries = 700)
  void colder_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double celsius = (drawn.change().nextInt(600) - 100) / 10.0;
    double colder = celsius - drawn.change().nextInt(100) / 10.0;
    neverBetter(
        "colder",
        drawn.advice(drawn.order().set("temperatureC", celsius)),
        drawn.advice(drawn.order().set("temperatureC", colder)));
  }

  @Property(tries = 500)
  void a_less_sure_temperature_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double wider = 5 + drawn.change().nextInt(100) / 10.0;
    neverBetter(
        "less sure temperature",
        drawn.advice(drawn.order()),
        drawn.advice(drawn.order().set("temperaturePlusMinusC", wider)));
  }

  /**
   * Below the gap at which bonds are strongest a wider gap holds better, so the hold is compared,
   * and the load asked for, only above it (Petrie: best 0.05 to 0.13 mm). What reads as a press fit
   * has to hold as one, too, which a wider gap need not.
   */
  @Property(tries = 700)
  void a_wider_gap_of_the_same_class_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    int um = drawn.change().nextInt(400) - 20;
    int wider = um + 1 + drawn.change().nextInt(200);
    OrderText narrow = drawn.order();
    OrderText wide = drawn.order();
    gap(narrow, um, 2);
    gap(wide, wider, 2);
    if (um - 2 < 25) {
      narrow.set("load", null);
      wide.set("load", null);
    }
    Advice one = drawn.advice(narrow);
    Advice two = drawn.advice(wide);
    boolean readsDry = um <= drawn.knowledge().catalog().policy().value("dry-press-from-um");
    boolean same =
        !readsDry
            && one.decision().compound().isPresent()
            && one.decision().compound().equals(two.decision().compound());
    Statistics.label("same class").collect(same);
    if (same) {
      assertTrue(after(two).compareTo(after(one)) >= 0, () -> after(one) + " became " + after(two));
      if (um - 2 >= 25) {
        neverBetter("wider", one, two);
      }
    }
  }

  @Property(tries = 700)
  void a_less_sure_gap_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    int um = drawn.change().nextInt(250) - 20;
    OrderText sure = drawn.order();
    OrderText doubtful = drawn.order();
    gap(sure, um, 1);
    gap(doubtful, um, 1 + drawn.change().nextInt(300) / 10.0);
    neverBetter("less sure", drawn.advice(sure), drawn.advice(doubtful));
  }

  @Property(tries = 700)
  void a_less_active_face_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    String side = drawn.change().nextBoolean() ? "bore.finish" : "part.finish";
    Advice before = null;
    for (Activity.Level level : Activity.Level.values()) {
      Advice now = drawn.advice(drawn.order().set(side, DrawnKnowledge.TWINS.get(level)));
      if (before != null) {
        neverBetter("less active", before, now);
      }
      before = now;
    }
  }

  @Property(tries = 700)
  void a_primer_that_is_too_old_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    String id = drawn.change().nextBoolean() ? "drawn-primer-a" : "drawn-primer-b";
    String on = pick(drawn.change(), "both", "bore", "part");
    double days = drawn.knowledge().catalog().primers().get(id).onPartDays().low();
    Advice fresh =
        drawn.advice(drawn.order().set("primer", Map.of("id", id, "on", on, "minutesOnPart", 0)));
    Advice old =
        drawn.advice(
            drawn
                .order()
                .set(
                    "primer",
                    Map.of(
                        "id",
                        id,
                        "on",
                        on,
                        "minutesOnPart",
                        Math.min(525_600, Math.ceil(days * 1440) + 1))));
    neverBetter("old primer", fresh, old);
  }

  @Property(tries = 700)
  void a_heavier_or_rougher_load_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    int newtons = 1 + drawn.change().nextInt(4000);
    OrderText none = drawn.order().set("load", null);
    OrderText light =
        drawn.order().set("load", null).set("load.axialN", newtons).set("load.repeats", "static");
    OrderText heavy =
        drawn
            .order()
            .set("load", null)
            .set("load.axialN", newtons * 1.7)
            .set("load.repeats", "static");
    OrderText rough =
        drawn
            .order()
            .set("load", null)
            .set("load.axialN", newtons * 1.7)
            .set("load.repeats", "shock");
    OrderText unsaid = drawn.order().set("load", null).set("load.axialN", newtons * 1.7);
    neverBetter("any load", drawn.advice(none), drawn.advice(light));
    neverBetter("heavier", drawn.advice(light), drawn.advice(heavy));
    neverBetter("rougher", drawn.advice(heavy), drawn.advice(rough));
    neverBetter("unsaid", drawn.advice(rough), drawn.advice(unsaid));
  }

  @Property(tries = 500)
  void a_worse_consequence_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    Advice nuisance = drawn.advice(drawn.order().set("consequence", "nuisance"));
    Advice stranding = drawn.advice(drawn.order().set("consequence", "stranding"));
    Advice injury = drawn.advice(drawn.order().set("consequence", "injury"));
    Advice unsaid = drawn.advice(drawn.order().set("consequence", null));
    neverBetter("stranding", nuisance, stranding);
    neverBetter("injury", stranding, injury);
    assertEquals(injury.handBack(), unsaid.handBack(), "not said is the worst");
  }

  @Property(tries = 500)
  void wanting_to_be_surer_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double confidence = 0.8 + drawn.change().nextInt(150) / 1000.0;
    double surer = Math.min(0.999, confidence + drawn.change().nextInt(100) / 1000.0);
    neverBetter(
        "surer",
        drawn.advice(drawn.order().set("confidence", confidence)),
        drawn.advice(drawn.order().set("confidence", surer)));
  }

  @Property(tries = 500)
  void a_hotter_service_never_holds_more(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    int celsius = 20 + drawn.change().nextInt(60);
    int hotter = celsius + 1 + drawn.change().nextInt(60);
    neverBetter(
        "hotter service",
        drawn.advice(drawn.order().set("serviceHighC", celsius)),
        drawn.advice(drawn.order().set("serviceHighC", hotter)));
  }

  @Property(tries = 500)
  void a_shorter_seat_is_never_better(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    int length = 10 + drawn.change().nextInt(60);
    neverBetter(
        "shorter",
        drawn.advice(drawn.order().set("engagementMm", length)),
        drawn.advice(drawn.order().set("engagementMm", length * 0.7)));
  }

  /** Nothing said about primer is the slower of no primer and one that the answer asks for. */
  @Property(tries = 500)
  void primer_left_open_is_never_better_than_fresh_primer_on_both_faces(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    Advice open = drawn.advice(drawn.order().set("primer", null));
    Advice none = drawn.advice(drawn.order().set("primer", "none"));
    if (open.decision().primer().isEmpty()) {
      assertEquals(none.handBack(), open.handBack());
    } else {
      Advice named = drawn.advice(drawn.order().set("primer", asPlanned(open)));
      neverBetter("open", named, open);
    }
    if (none.handBack().isPresent()) {
      neverBetter("open against none", none, open);
    }
  }

  private static Map<String, Object> asPlanned(Advice open) {
    Advice.PlannedPrimer plan = open.decision().primer().orElseThrow();
    String on = plan.onBore() && plan.onPart() ? "both" : plan.onBore() ? "bore" : "part";
    return Map.of("id", plan.primer().id(), "on", on, "minutesOnPart", 0);
  }

  @Property(tries = 300)
  void a_temperature_not_said_is_never_better_than_the_shops_default(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    double bench = drawn.knowledge().catalog().policy().value("default-bench-c");
    neverBetter(
        "not said",
        drawn.advice(drawn.order().set("temperatureC", bench).set("temperaturePlusMinusC", 0)),
        drawn.advice(drawn.order().set("temperatureC", null).set("temperaturePlusMinusC", null)));
  }

  @Property(tries = 500)
  void a_hold_at_hand_back_is_never_more_than_at_full_cure(@ForAll long seed) {
    Drawn drawn = Drawn.of(seed);
    Advice advice = drawn.advice(drawn.order());
    advice
        .hold()
        .flatMap(HoldReport::atHandBack)
        .ifPresent(h -> weaker("at hand-back", advice.hold().get().bondHot(), h));
  }
}
