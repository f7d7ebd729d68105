package annulus.exchange;

import static annulus.exchange.ShippedCatalog.RULES;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Member.FaceState;
import annulus.advice.PressesWhen;
import annulus.advice.Which;
import annulus.catalog.Activity;
import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.Consequence;
import annulus.catalog.Finish;
import annulus.catalog.Material;
import annulus.catalog.Provenance;
import annulus.quantity.InvalidValue;
import annulus.select.Condition;
import annulus.select.Fact;
import annulus.select.Facts;
import annulus.select.Finding;
import annulus.select.Rule;
import annulus.select.RuleBook;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Every rule can be made to speak and to keep silent; books with faults are refused. */
class RulesSpeakTest {
  /** The words of {@link Fact#FIT}, which the advisor keeps to itself. */
  private enum Fit {
    CLEAR,
    LINE_TO_LINE,
    INTERFERENCE
  }

  private static final Map<Fact, Enum<?>[]> ENUMS = new EnumMap<>(Fact.class);

  static {
    ENUMS.put(Fact.FIT, Fit.values());
    ENUMS.put(Fact.PRESS, annulus.advice.PressReport.Standing.values());
    ENUMS.put(Fact.GAP_PRESSES, PressesWhen.values());
    ENUMS.put(Fact.ONE_READING_WHICH, Which.values());
    ENUMS.put(Fact.UNPRIMED_INERT_WHICH, Which.values());
    ENUMS.put(Fact.PART_COLDER_WHICH, Which.values());
    ENUMS.put(Fact.BORE_KIND, Material.Kind.values());
    ENUMS.put(Fact.PART_KIND, Material.Kind.values());
    ENUMS.put(Fact.BORE_ACTIVITY, Activity.Level.values());
    ENUMS.put(Fact.PART_ACTIVITY, Activity.Level.values());
    ENUMS.put(Fact.BORE_FILM, Finish.Film.values());
    ENUMS.put(Fact.PART_FILM, Finish.Film.values());
    ENUMS.put(Fact.BORE_ATTACK, Material.Attack.values());
    ENUMS.put(Fact.PART_ATTACK, Material.Attack.values());
    ENUMS.put(Fact.BORE_STATE, FaceState.values());
    ENUMS.put(Fact.PART_STATE, FaceState.values());
    ENUMS.put(Fact.CONSEQUENCE, Consequence.values());
    ENUMS.put(Fact.CLASS_PERMANENCE, CompoundClass.Permanence.values());
    ENUMS.put(Fact.CLASS_ROLE, CompoundClass.Role.values());
  }

  /**
   * What is never without the other: a standing and its temperature, a count and which they are.
   */
  private static final Map<String, List<String>> TOLD_WITH =
      Map.of(
          "press.standing", List.of("press.atC"),
          "gap.loosestUm", List.of("gap.loosestAtC"),
          "gap.tightestUm", List.of("gap.tightestAtC", "gap.pressesWhen"),
          "form.oneReading", List.of("form.oneReadingWhich"),
          "faces.inertUnprimed", List.of("faces.inertWhich"),
          "cure.partColderK", List.of("cure.colderWhich"));

  static Stream<Rule> rules() {
    return RULES.rules().stream();
  }

  @ParameterizedTest
  @EnumSource(Fact.class)
  void the_words_of_a_fact_are_those_of_the_program(Fact fact) {
    Enum<?>[] words = ENUMS.getOrDefault(fact, new Enum<?>[0]);
    assertEquals(Fields.words(words), FactWords.of(fact));
    assertEquals(fact.kind() == Fact.Kind.WORD, !FactWords.of(fact).isEmpty());
  }

  @ParameterizedTest
  @MethodSource("rules")
  void words_that_a_rule_waits_for_exist(Rule rule) {
    for (Condition leaf : leaves(rule.when())) {
      if (leaf instanceof Condition.Is is && is.fact().kind() == Fact.Kind.WORD) {
        assertTrue(FactWords.of(is.fact()).containsAll(is.values()), rule.id() + " " + is);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("rules")
  void a_rule_can_be_made_to_speak_and_then_shows_its_figures(Rule rule) {
    Facts speaking = search(rule, true).orElseThrow(() -> new AssertionError(rule.id()));
    Finding finding =
        RULES.findings(speaking, "some-class").stream()
            .filter(f -> f.rule().equals(rule))
            .findFirst()
            .orElseThrow();
    assertTrue(finding.figures().keySet().containsAll(rule.when().facts()), rule.id());
    assertEquals(rule.ofJoint() ? "" : "some-class", finding.classId());
  }

  @ParameterizedTest
  @MethodSource("rules")
  void a_rule_can_keep_silent_with_all_facts_known(Rule rule) {
    Facts silent = search(rule, false).orElseThrow(() -> new AssertionError(rule.id()));
    assertTrue(RULES.findings(silent, "some-class").stream().noneMatch(f -> f.rule().equals(rule)));
  }

  @Test
  void without_facts_no_rule_speaks() {
    assertEquals(List.of(), RULES.findings(Facts.builder().build(), "some-class"));
  }

  @ParameterizedTest
  @MethodSource("rules")
  void figures_in_a_reason_are_of_the_test_or_always_known(Rule rule) {
    Set<String> known = new TreeSet<>(List.of("gap.likelyUm", "gap.oneSidedUm", "service.highC"));
    rule.when().facts().forEach(f -> known.add(f.id()));
    for (String fact : List.copyOf(known)) {
      known.addAll(TOLD_WITH.getOrDefault(fact, List.of()));
    }
    Matcher places = Pattern.compile("\\{([^}]*)}").matcher(rule.reason());
    while (places.find()) {
      assertTrue(known.contains(places.group(1)), rule.id() + " " + places.group(1));
    }
    assertTrue(rule.reason().endsWith("."), rule.id());
    assertTrue(rule.summary().endsWith("."), rule.id());
  }

  @Test
  void two_rules_never_look_at_the_same_and_say_the_same() {
    Set<List<Object>> seen = new LinkedHashSet<>();
    for (Rule rule : RULES.rules()) {
      assertTrue(seen.add(List.of(rule.when(), rule.verdict())), rule.id());
    }
  }

  /** Tries the corner values of every fact a rule looks at, in all combinations. */
  private static Optional<Facts> search(Rule rule, boolean wanted) {
    List<Fact> facts = List.copyOf(rule.when().facts());
    return search(rule, wanted, facts, 0, Facts.builder().build());
  }

  private static Optional<Facts> search(
      Rule rule, boolean wanted, List<Fact> facts, int next, Facts chosen) {
    if (next == facts.size()) {
      return rule.when().holds(chosen) == wanted ? Optional.of(chosen) : Optional.empty();
    }
    for (Facts value : values(rule, facts.get(next))) {
      Optional<Facts> found = search(rule, wanted, facts, next + 1, chosen.with(value));
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private static List<Facts> values(Rule rule, Fact fact) {
    return switch (fact.kind()) {
      case FLAG -> Stream.of(true, false).map(b -> Facts.builder().flag(fact, b).build()).toList();
      case WORD ->
          Arrays.stream(ENUMS.get(fact)).map(w -> Facts.builder().word(fact, w).build()).toList();
      case NUMBER ->
          numbers(rule, fact).stream().map(n -> Facts.builder().number(fact, n).build()).toList();
    };
  }

  private static Set<Double> numbers(Rule rule, Fact fact) {
    Set<Double> numbers = new TreeSet<>();
    for (Condition leaf : leaves(rule.when())) {
      if (leaf instanceof Condition.Against a && a.fact() == fact) {
        numbers.addAll(List.of(a.limit() - 0.1, a.limit(), a.limit() + 0.1));
      } else if (leaf instanceof Condition.Between b && b.facts().contains(fact)) {
        numbers.addAll(List.of(10.0, 20.0, 30.0));
      }
    }
    return numbers;
  }

  private static List<Condition> leaves(Condition condition) {
    List<Condition> leaves = new ArrayList<>();
    if (condition instanceof Condition.All all) {
      all.parts().forEach(p -> leaves.addAll(leaves(p)));
    } else if (condition instanceof Condition.Any any) {
      any.parts().forEach(p -> leaves.addAll(leaves(p)));
    } else {
      leaves.add(condition);
    }
    return leaves;
  }

  private static Rule rule(String id, Rule.Verdict verdict, Condition when) {
    return new Rule(id, "s", verdict, when, "r", new Provenance("shop", Confidence.LOW));
  }

  private static final Condition CLEAR = new Condition.Is(Fact.FIT, Set.of("clear"));

  @Test
  void two_rules_that_contradict_each_other_are_refused() {
    List<Rule> both =
        List.of(rule("a", Rule.Verdict.EXCLUDES, CLEAR), rule("b", Rule.Verdict.PREFERS, CLEAR));
    InvalidValue refused = assertThrows(InvalidValue.class, () -> new RuleBook(both));
    assertEquals("contradicts a on the same facts", refused.problem());
    List<Rule> other = List.of(both.get(1), both.get(0));
    assertThrows(InvalidValue.class, () -> new RuleBook(other));
  }

  @Test
  void a_caution_beside_a_preference_is_no_contradiction() {
    List<Rule> both =
        List.of(rule("a", Rule.Verdict.CAUTION, CLEAR), rule("b", Rule.Verdict.PREFERS, CLEAR));
    assertEquals(2, new RuleBook(both).rules().size());
  }

  @Test
  void two_rules_of_one_name_are_refused() {
    List<Rule> both =
        List.of(rule("a", Rule.Verdict.CAUTION, CLEAR), rule("a", Rule.Verdict.EXCLUDES, CLEAR));
    assertThrows(InvalidValue.class, () -> new RuleBook(both));
  }

  @Test
  void a_rule_whose_tests_exclude_each_other_is_refused() {
    Condition above = new Condition.Against(Fact.GAP_LIKELY, Condition.Comparison.ABOVE, 20);
    Condition below = new Condition.Against(Fact.GAP_LIKELY, Condition.Comparison.BELOW, 10);
    Condition never = new Condition.All(List.of(above, below));
    assertFalse(search(rule("n", Rule.Verdict.CAUTION, never), true).isPresent());
    assertThrows(
        InvalidValue.class, () -> new RuleBook(List.of(rule("n", Rule.Verdict.CAUTION, never))));
  }
}
