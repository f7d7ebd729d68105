package annulus.select;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.CompoundClass;
import annulus.catalog.Confidence;
import annulus.catalog.Material;
import annulus.catalog.Provenance;
import annulus.catalog.Rows;
import annulus.quantity.Estimate;
import annulus.quantity.Interval;
import annulus.quantity.InvalidValue;
import annulus.select.ClassVerdict.Standing;
import annulus.select.Condition.Against;
import annulus.select.Condition.Comparison;
import annulus.select.Rule.Verdict;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Rules, facts and the choice among classes, in small cases worked by hand. */
class SelectTest {
  private static final Provenance SHOP = new Provenance("shop", Confidence.LOW);
  private static final Facts NOTHING = Facts.builder().build();

  private static Rule rule(String id, Verdict verdict, Condition when) {
    return new Rule(id, "Summary.", verdict, when, "Reason.", SHOP);
  }

  private static Facts gap(double um) {
    return Facts.builder().number(Fact.GAP_LIKELY, um).build();
  }

  private static Against gapIs(Comparison comparison, double limit) {
    return new Against(Fact.GAP_LIKELY, comparison, limit);
  }

  @ParameterizedTest
  @CsvSource({
    "ABOVE, false, false, true",
    "AT_LEAST, false, true, true",
    "BELOW, true, false, false",
    "AT_MOST, true, true, false"
  })
  void a_number_is_compared_below_at_and_above_its_limit(
      Comparison comparison, boolean below, boolean at, boolean above) {
    Condition fixed = gapIs(comparison, 20);
    assertEquals(below, fixed.holds(gap(19.99)));
    assertEquals(at, fixed.holds(gap(20)));
    assertEquals(above, fixed.holds(gap(20.01)));
    assertFalse(fixed.holds(NOTHING));
    Condition other = new Condition.Between(Fact.GAP_LIKELY, comparison, Fact.CLASS_GAP_HIGH);
    Facts limit = Facts.builder().number(Fact.CLASS_GAP_HIGH, 20).build();
    assertEquals(below, other.holds(gap(19.99).with(limit)));
    assertEquals(at, other.holds(gap(20).with(limit)));
    assertEquals(above, other.holds(gap(20.01).with(limit)));
    assertFalse(other.holds(gap(20)));
    assertFalse(other.holds(limit));
  }

  @Test
  void all_need_every_part_and_any_needs_one() {
    Condition wide = gapIs(Comparison.ABOVE, 20);
    Condition seal = new Condition.Is(Fact.SEAL_NEAR, Set.of(true));
    Condition both = new Condition.All(List.of(wide, seal));
    Condition either = new Condition.Any(List.of(wide, seal));
    Facts sealed = Facts.builder().flag(Fact.SEAL_NEAR, true).build();
    Facts open = Facts.builder().flag(Fact.SEAL_NEAR, false).build();
    assertTrue(both.holds(gap(21).with(sealed)));
    assertFalse(both.holds(gap(21).with(open)));
    assertFalse(both.holds(gap(19).with(sealed)));
    assertFalse(both.holds(gap(21)));
    assertTrue(either.holds(gap(21)));
    assertTrue(either.holds(gap(19).with(sealed)));
    assertFalse(either.holds(gap(19).with(open)));
    List<Fact> looked = List.of(Fact.GAP_LIKELY, Fact.SEAL_NEAR);
    assertEquals(looked, List.copyOf(both.facts()));
    assertEquals(looked, List.copyOf(either.facts()));
    assertEquals(Set.of(Fact.SEAL_NEAR), seal.facts());
    assertEquals(
        List.of(Fact.GAP_LARGEST, Fact.CLASS_GAP_HIGH),
        List.copyOf(
            new Condition.Between(Fact.GAP_LARGEST, Comparison.ABOVE, Fact.CLASS_GAP_HIGH)
                .facts()));
  }

  @Test
  void words_are_written_in_lower_case_with_dashes_in_any_language() {
    Facts facts = Facts.builder().word(Fact.BORE_KIND, Material.Kind.BRITTLE_METAL).build();
    assertTrue(new Condition.Is(Fact.BORE_KIND, Set.of("brittle-metal")).holds(facts));
    assertFalse(new Condition.Is(Fact.BORE_KIND, Set.of("metal")).holds(facts));
  }

  @Test
  void the_other_facts_win_and_neither_set_changes() {
    Facts first = Facts.builder().number(Fact.GAP_LIKELY, 10).build();
    Facts second = Facts.builder().number(Fact.GAP_LIKELY, 20).flag(Fact.SEAL_NEAR, true).build();
    Facts both = first.with(second);
    assertEquals(Map.of(Fact.GAP_LIKELY, 10.0), first.all());
    assertEquals(Map.of(Fact.GAP_LIKELY, 20.0, Fact.SEAL_NEAR, true), both.all());
    assertEquals(Map.of(Fact.GAP_LIKELY, 10.0, Fact.SEAL_NEAR, true), second.with(first).all());
    assertEquals(Map.of(), NOTHING.all());
  }

  @Test
  void a_fact_takes_only_values_of_its_kind() {
    Facts.Builder builder = Facts.builder();
    assertThrows(IllegalArgumentException.class, () -> builder.flag(Fact.GAP_LIKELY, true));
    assertThrows(IllegalArgumentException.class, () -> builder.number(Fact.FIT, 1));
    assertThrows(
        IllegalArgumentException.class, () -> builder.word(Fact.SEAL_NEAR, Material.Kind.METAL));
  }

  @ParameterizedTest
  @EnumSource(Fact.class)
  void a_fact_is_found_by_its_name_and_says_its_unit_and_meaning(Fact fact) {
    assertEquals(Optional.of(fact), Fact.named(fact.id()));
    assertFalse(fact.meaning().isBlank());
    boolean length = fact.id().endsWith("Um");
    assertEquals(length, fact.unit().contains("radial") || fact.unit().contains("between faces"));
    boolean degrees = fact.id().matches(".*[a-z]C$");
    assertEquals(degrees, fact.unit().equals("°C"));
    assertEquals(fact.id().startsWith("class."), fact.ofClass());
  }

  @Test
  void a_name_that_is_no_fact_is_not_found() {
    assertEquals(Optional.empty(), Fact.named("gap.likely"));
  }

  @Test
  void a_rule_shows_the_facts_it_looks_at_and_those_its_reason_mentions() {
    Rule mentions =
        new Rule(
            "r",
            "Summary.",
            Verdict.CAUTION,
            gapIs(Comparison.ABOVE, 20),
            "At {service.highC} and {gap.likelyUm}.",
            SHOP);
    Facts facts =
        gap(30)
            .with(Facts.builder().number(Fact.SERVICE_HIGH, 60).flag(Fact.WARRANTY, true).build());
    Finding finding = Finding.of(mentions, facts, "thin");
    assertEquals(
        List.of(Fact.GAP_LIKELY, Fact.SERVICE_HIGH), List.copyOf(finding.figures().keySet()));
    assertEquals(30.0, finding.figures().get(Fact.GAP_LIKELY));
    assertEquals("", finding.classId());
    Finding less = Finding.of(mentions, gap(30), "thin");
    assertEquals(Map.of(Fact.GAP_LIKELY, 30.0), less.figures());
    InvalidValue unknown =
        assertThrows(
            InvalidValue.class,
            () ->
                new Rule(
                    "r", "s", Verdict.CAUTION, gapIs(Comparison.ABOVE, 1), "{gap.likely}", SHOP));
    assertEquals("{gap.likely} is not a fact", unknown.problem());
  }

  @Test
  void a_rule_has_a_name_a_summary_and_a_reason() {
    Condition when = gapIs(Comparison.ABOVE, 1);
    assertThrows(InvalidValue.class, () -> new Rule("", "s", Verdict.CAUTION, when, "r", SHOP));
    assertThrows(InvalidValue.class, () -> new Rule("i", "", Verdict.CAUTION, when, "r", SHOP));
    assertThrows(InvalidValue.class, () -> new Rule("i", "s", Verdict.CAUTION, when, "", SHOP));
  }

  @Test
  void rules_are_equal_when_all_their_parts_are() {
    Rule rule = rule("a", Verdict.CAUTION, gapIs(Comparison.ABOVE, 1));
    Rule same = rule("a", Verdict.CAUTION, gapIs(Comparison.ABOVE, 1));
    assertEquals(rule, same);
    assertEquals(rule.hashCode(), same.hashCode());
    assertEquals("a", rule.toString());
    assertNotEquals(rule, rule("b", Verdict.CAUTION, gapIs(Comparison.ABOVE, 1)));
    assertNotEquals(rule, rule("a", Verdict.EXCLUDES, gapIs(Comparison.ABOVE, 1)));
    assertNotEquals(rule, rule("a", Verdict.CAUTION, gapIs(Comparison.ABOVE, 2)));
    assertFalse(rule.equals("a"));
    assertNotEquals(rule.hashCode(), rule("b", Verdict.CAUTION, rule.when()).hashCode());
  }

  @ParameterizedTest
  @CsvSource({
    "ABOVE, 20, BELOW, 20, false",
    "ABOVE, 20, AT_MOST, 20, false",
    "AT_LEAST, 20, BELOW, 20, false",
    "AT_LEAST, 20, AT_MOST, 20, true",
    "ABOVE, 20, BELOW, 30, true",
    "BELOW, 20, AT_LEAST, 20.1, false",
    "BELOW, 20, ABOVE, 10, true",
    "ABOVE, 30, ABOVE, 20, true"
  })
  void a_rule_that_can_never_speak_is_refused(
      Comparison one, double from, Comparison two, double to, boolean possible) {
    Condition all = new Condition.All(List.of(gapIs(one, from), gapIs(two, to)));
    List<Rule> rules = List.of(rule("r", Verdict.CAUTION, all));
    if (possible) {
      assertEquals(rules, new RuleBook(rules).rules());
    } else {
      InvalidValue error = assertThrows(InvalidValue.class, () -> new RuleBook(rules));
      assertEquals("r", error.field());
    }
  }

  @Test
  void limits_narrow_over_all_the_parts_of_a_rule() {
    Condition three =
        new Condition.All(
            List.of(
                gapIs(Comparison.ABOVE, 30),
                gapIs(Comparison.ABOVE, 10),
                gapIs(Comparison.BELOW, 20)));
    assertThrows(
        InvalidValue.class, () -> new RuleBook(List.of(rule("r", Verdict.CAUTION, three))));
    Condition others =
        new Condition.All(
            List.of(
                gapIs(Comparison.ABOVE, 30), new Against(Fact.GAP_LARGEST, Comparison.BELOW, 20)));
    assertEquals(1, new RuleBook(List.of(rule("r", Verdict.CAUTION, others))).rules().size());
  }

  @Test
  void words_that_exclude_each_other_never_speak() {
    Condition clear = new Condition.Is(Fact.FIT, Set.of("clear", "line-to-line"));
    Condition tight = new Condition.Is(Fact.FIT, Set.of("interference", "line-to-line"));
    Condition press = new Condition.Is(Fact.FIT, Set.of("interference"));
    Condition can = new Condition.All(List.of(clear, tight));
    Condition never = new Condition.All(List.of(clear, tight, press));
    assertEquals(1, new RuleBook(List.of(rule("r", Verdict.CAUTION, can))).rules().size());
    assertThrows(
        InvalidValue.class, () -> new RuleBook(List.of(rule("r", Verdict.CAUTION, never))));
  }

  @Test
  void only_favour_and_exclusion_on_the_same_facts_contradict() {
    Condition same = gapIs(Comparison.ABOVE, 1);
    for (Verdict one : Verdict.values()) {
      for (Verdict two : Verdict.values()) {
        List<Rule> both = List.of(rule("a", one, same), rule("b", two, same));
        if (EnumSet.of(one, two).equals(EnumSet.of(Verdict.EXCLUDES, Verdict.PREFERS))) {
          assertThrows(InvalidValue.class, () -> new RuleBook(both));
        } else {
          assertEquals(2, new RuleBook(both).rules().size());
        }
      }
    }
  }

  private static CompoundClass compound(String id, double gapHigh, double strength) {
    CompoundClass wide = Rows.with(Rows.COMPOUND, "id", id);
    wide = Rows.with(wide, "gapUm", new Interval(0, gapHigh));
    return Rows.with(wide, "strengthMPa", Estimate.exactly(strength));
  }

  private static Facts covers(CompoundClass compound) {
    return Facts.builder()
        .number(Fact.CLASS_COVERS, compound.gapUm().high() / 100)
        .number(Fact.CLASS_GAP_HIGH, compound.gapUm().high())
        .word(Fact.CLASS_PERMANENCE, compound.permanence())
        .build();
  }

  private static Selection select(
      List<Rule> rules, List<CompoundClass> classes, boolean releasable, String forced) {
    return Selection.of(
        new RuleBook(rules),
        classes,
        gap(30),
        SelectTest::covers,
        releasable,
        Optional.ofNullable(forced));
  }

  private static String chosen(Selection selection) {
    return selection.chosen().map(v -> v.compound().id()).orElse("none");
  }

  private static final CompoundClass THIN = compound("thin", 50, 20);
  private static final CompoundClass THICK = compound("thick", 100, 25);

  @Test
  void the_least_filling_class_is_chosen_whatever_the_order_of_the_file() {
    assertEquals("thin", chosen(select(List.of(), List.of(THICK, THIN), false, null)));
    Selection selection = select(List.of(), List.of(THIN, THICK), false, null);
    assertEquals("thin", chosen(selection));
    assertEquals(
        List.of(Standing.CHOSEN, Standing.SUITABLE),
        selection.table().stream().map(ClassVerdict::standing).toList());
    assertEquals(0.5, selection.table().get(0).covers());
    assertEquals(1.0, selection.table().get(1).covers());
  }

  @Test
  void a_class_that_comes_apart_goes_first_only_where_that_is_wanted() {
    CompoundClass loose = Rows.with(THICK, "permanence", CompoundClass.Permanence.RELEASABLE);
    List<CompoundClass> classes = List.of(THIN, loose);
    assertEquals("thick", chosen(select(List.of(), classes, true, null)));
    assertEquals("thin", chosen(select(List.of(), classes, false, null)));
  }

  @Test
  void among_equally_filling_classes_preference_then_strength_then_the_name_decides() {
    CompoundClass strong = compound("strong", 50, 30);
    CompoundClass also = compound("also", 50, 20);
    assertEquals("strong", chosen(select(List.of(), List.of(THIN, strong, also), false, null)));
    assertEquals("also", chosen(select(List.of(), List.of(THIN, also), false, null)));
    CompoundClass loose = Rows.with(THIN, "permanence", CompoundClass.Permanence.RELEASABLE);
    Rule prefers =
        rule("p", Verdict.PREFERS, new Condition.Is(Fact.CLASS_PERMANENCE, Set.of("releasable")));
    assertEquals("thin", chosen(select(List.of(prefers), List.of(strong, loose), false, null)));
  }

  @Test
  void a_class_insisted_on_is_taken_and_no_other() {
    assertEquals("thick", chosen(select(List.of(), List.of(THIN, THICK), false, "thick")));
    assertEquals("none", chosen(select(List.of(), List.of(THIN, THICK), false, "paste")));
    Rule out =
        rule("out", Verdict.EXCLUDES, new Against(Fact.CLASS_GAP_HIGH, Comparison.ABOVE, 60));
    assertEquals("none", chosen(select(List.of(out), List.of(THIN, THICK), false, "thick")));
  }

  @Test
  void a_class_excluded_or_in_need_of_primer_is_not_chosen_and_says_why() {
    Against thin = new Against(Fact.CLASS_GAP_HIGH, Comparison.BELOW, 60);
    Rule needs = rule("needs", Verdict.NEEDS_PRIMER, thin);
    Rule out = rule("out", Verdict.EXCLUDES, new Condition.All(List.of(thin)));
    Rule joint = rule("joint", Verdict.CAUTION, gapIs(Comparison.ABOVE, 20));
    Selection primer = select(List.of(needs, joint), List.of(THIN, THICK), false, null);
    ClassVerdict needed = primer.table().get(0);
    assertEquals(Standing.NEEDS_PRIMER, needed.standing());
    assertFalse(needed.usable());
    assertEquals("thick", chosen(primer));
    assertTrue(primer.chosen().orElseThrow().usable());
    assertEquals(List.of("joint", "needs"), ids(needed.findings()));
    assertEquals(List.of("needs"), ids(needed.of(Verdict.NEEDS_PRIMER)));
    assertEquals(List.of(), needed.of(Verdict.EXCLUDES));
    assertEquals(List.of("", "thin"), needed.findings().stream().map(Finding::classId).toList());
    Selection excluded = select(List.of(needs, out), List.of(THIN), false, null);
    assertEquals(Standing.EXCLUDED, excluded.table().get(0).standing());
    assertEquals("none", chosen(excluded));
    Selection turned = select(List.of(out, needs), List.of(THIN), false, null);
    assertEquals(excluded, turned);
  }

  private static List<String> ids(List<Finding> findings) {
    return findings.stream().map(f -> f.rule().id()).toList();
  }

  @Test
  void rules_speak_in_the_order_of_their_names() {
    Condition when = gapIs(Comparison.ABOVE, 1);
    Rule a = rule("a", Verdict.CAUTION, when);
    Rule b = rule("b", Verdict.CAUTION, new Condition.Any(List.of(when)));
    Rule c = rule("aa", Verdict.CAUTION, new Against(Fact.CLASS_GAP_HIGH, Comparison.ABOVE, 1));
    List<Rule> rules = new ArrayList<>(List.of(a, b, c));
    for (int turn = 0; turn < 3; turn++) {
      Collections.rotate(rules, 1);
      RuleBook book = new RuleBook(rules);
      Facts facts = gap(30).with(covers(THIN));
      assertEquals(List.of("a", "aa", "b"), ids(book.findings(facts, "thin")));
      assertEquals(List.of("a", "aa", "b"), ids(book.on(gap(30)).findings(facts, "thin")));
    }
  }

  @Test
  void the_facts_of_the_class_are_those_of_its_own() {
    Selection selection = select(List.of(), List.of(THIN), false, null);
    assertEquals(1, selection.table().size());
    Facts without = Facts.builder().build();
    Selection unknown =
        Selection.of(
            new RuleBook(List.of()), List.of(THIN), gap(1), c -> without, false, Optional.empty());
    assertEquals(0, unknown.table().get(0).covers());
  }
}
