package annulus.select;

import static org.junit.jupiter.api.Assertions.assertEquals;

import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.Material;
import annulus.catalog.Provenance;
import annulus.select.Condition.Comparison;
import annulus.select.Rule.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.statistics.Statistics;

/**
 * A book tries many rules at once, the joint's tests once for all classes; it must say what each
 * rule's test says when it is tried alone.
 */
class RuleBookPropertyTest {
  private static final List<Fact> NUMBERS =
      List.of(
          Fact.GAP_LIKELY,
          Fact.GAP_LARGEST,
          Fact.SERVICE_HIGH,
          Fact.CLASS_GAP_LOW,
          Fact.CLASS_GAP_HIGH,
          Fact.CLASS_COVERS);
  private static final List<Fact> FLAGS = List.of(Fact.SEAL_NEAR, Fact.WARRANTY);
  private static final double[] VALUES = {
    0, -0.0, 20, Math.nextUp(20.0), Math.nextDown(20.0), -3, 1e9, Double.MIN_VALUE
  };

  private static final class Drawn {
    private final Random random;

    Drawn(long seed) {
      this.random = new Random(seed);
    }

    <T> T one(List<T> of) {
      return of.get(random.nextInt(of.size()));
    }

    double value() {
      return VALUES[random.nextInt(VALUES.length)];
    }

    Condition test(int depth) {
      return switch (random.nextInt(depth > 0 ? 7 : 5)) {
        case 0 -> new Condition.Against(one(NUMBERS), one(List.of(Comparison.values())), value());
        case 1 ->
            new Condition.Between(one(NUMBERS), one(List.of(Comparison.values())), one(NUMBERS));
        case 2 -> new Condition.Is(one(FLAGS), Set.of(random.nextBoolean()));
        case 3 -> new Condition.Is(Fact.BORE_KIND, words("metal", "brittle-metal", "none-such"));
        case 4 -> new Condition.Is(Fact.CLASS_ROLE, words("film", "retain", "rebuild"));
        case 5 -> new Condition.All(tests(depth - 1));
        default -> new Condition.Any(tests(depth - 1));
      };
    }

    private Set<Object> words(String a, String b, String c) {
      return switch (random.nextInt(4)) {
        case 0 -> Set.of(a);
        case 1 -> Set.of(b, c);
        case 2 -> Set.of(c);
        default -> Set.of(a, b, c);
      };
    }

    private List<Condition> tests(int depth) {
      List<Condition> tests = new ArrayList<>();
      for (int i = random.nextInt(4); i >= 0; i--) {
        tests.add(test(depth));
      }
      return tests;
    }

    List<Rule> rules(int count) {
      List<Rule> rules = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        rules.add(
            new Rule(
                "rule-" + (random.nextInt(9000) + 1000) + "-" + i,
                "Summary.",
                one(List.of(Verdict.values())),
                test(2),
                "Reason.",
                new Provenance("drawn", Confidence.LOW)));
      }
      return rules;
    }

    Facts facts(boolean ofClass) {
      Facts.Builder facts = Facts.builder();
      for (Fact fact : NUMBERS) {
        if (fact.ofClass() == ofClass && random.nextInt(4) > 0) {
          facts.number(fact, value());
        }
      }
      for (Fact flag : ofClass ? List.<Fact>of() : FLAGS) {
        if (random.nextInt(3) > 0) {
          facts.flag(flag, random.nextBoolean());
        }
      }
      if (random.nextInt(4) > 0) {
        return ofClass
            ? facts.word(Fact.CLASS_ROLE, one(List.of(CompoundClass.Role.values()))).build()
            : facts.word(Fact.BORE_KIND, one(List.of(Material.Kind.values()))).build();
      }
      return facts.build();
    }
  }

  /** More rules than a machine word has bits, too. */
  @Property(tries = 2000)
  void a_book_says_what_its_rules_say_one_by_one(@ForAll long seed) {
    Drawn drawn = new Drawn(seed);
    List<Rule> rules = drawn.rules(1 + drawn.random.nextInt(150));
    RuleBook book = RuleBook.ofChecked(rules);
    Facts joint = drawn.facts(false);
    RuleBook.OnJoint open = book.on(joint);
    for (int i = 0; i < 3; i++) {
      Facts all = joint.about(drawn.facts(true));
      List<String> expected =
          rules.stream().filter(r -> r.when().holds(all)).map(Rule::id).sorted().toList();
      Spoken spoken = open.findings(all, "some-class");
      for (Verdict verdict : Verdict.values()) {
        List<Finding> ofVerdict =
            spoken.stream().filter(f -> f.rule().verdict() == verdict).toList();
        assertEquals(ofVerdict, spoken.of(verdict));
        assertEquals(ofVerdict.size(), spoken.count(verdict));
        assertEquals(!ofVerdict.isEmpty(), spoken.has(verdict));
      }
      assertEquals(expected, spoken.stream().map(f -> f.rule().id()).toList());
      assertEquals(expected, ids(book.findings(all, "some-class")));
      Statistics.label("rules that spoke")
          .collect(expected.isEmpty() ? "none" : expected.size() < rules.size() ? "some" : "all");
    }
  }

  private static List<String> ids(List<Finding> findings) {
    return findings.stream().map(f -> f.rule().id()).toList();
  }
}
