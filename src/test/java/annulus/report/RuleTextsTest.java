package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.catalog.Confidence;
import annulus.catalog.Provenance;
import annulus.select.ClassVerdict;
import annulus.select.Condition;
import annulus.select.Condition.Comparison;
import annulus.select.Fact;
import annulus.select.Finding;
import annulus.select.Rule;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class RuleTextsTest {
  private static String reason(Condition when, String reason, Object... figures) {
    Map<Fact, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < figures.length; i += 2) {
      map.put((Fact) figures[i], figures[i + 1]);
    }
    Provenance source = new Provenance("invented", Confidence.LOW);
    Rule rule = new Rule("r", "A rule.", Rule.Verdict.EXCLUDES, when, reason, source);
    return RuleTexts.reason(new Finding(rule, "c", map));
  }

  private static String wide(double gap) {
    return reason(
        new Condition.Between(Fact.GAP_LIKELY, Comparison.ABOVE, Fact.CLASS_GAP_HIGH),
        "{gap.likelyUm} µm is wider than {class.gapHighUm} µm",
        Fact.GAP_LIKELY,
        gap,
        Fact.CLASS_GAP_HIGH,
        50.0);
  }

  @Test
  void a_figure_gets_the_digits_it_needs_to_be_on_its_side_of_the_limit() {
    assertEquals("53 µm is wider than 50 µm", wide(53.2));
    assertEquals("50.3 µm is wider than 50 µm", wide(50.3));
    assertEquals("50.04 µm is wider than 50 µm", wide(50.04));
    assertEquals("50.0002 µm is wider than 50 µm", wide(50.0002));
  }

  @Test
  void a_figure_is_held_to_a_fixed_limit_as_well() {
    Condition above = new Condition.Against(Fact.GAP_ONE_SIDED, Comparison.ABOVE, 760);
    Condition all = new Condition.All(List.of(new Condition.Any(List.of(above))));
    assertEquals("760.1 apart", reason(all, "{gap.oneSidedUm} apart", Fact.GAP_ONE_SIDED, 760.11));
  }

  @Test
  void probabilities_are_percent_that_do_not_contradict_the_verdict() {
    Condition below =
        new Condition.Between(Fact.CLASS_COVERS, Comparison.BELOW, Fact.WANTED_CONFIDENCE);
    assertEquals(
        "94.97 %; wanted 95 %",
        reason(
            below,
            "{class.covers}; wanted {wanted.confidence}",
            Fact.CLASS_COVERS,
            0.9497,
            Fact.WANTED_CONFIDENCE,
            0.95));
  }

  @Test
  void after_by_only_the_size_is_said() {
    Condition tight = new Condition.Against(Fact.GAP_LIKELY, Comparison.BELOW, 0);
    assertEquals(
        "larger by 12 µm, gap -12 µm",
        reason(
            tight, "larger by {gap.likelyUm} µm, gap {gap.likelyUm} µm", Fact.GAP_LIKELY, -12.0));
  }

  @Test
  void ratios_have_two_decimals_and_temperatures_at_most_one() {
    Condition any = new Condition.Against(Fact.ENGAGEMENT_RATIO, Comparison.BELOW, 0.3);
    assertEquals(
        "0.29 at 4.6 °C and 5 °C",
        reason(
            any,
            "{engagement.ratio} at {cure.coldestC} °C and {class.minimumC} °C",
            Fact.ENGAGEMENT_RATIO,
            0.2854,
            Fact.COLDEST_CURE,
            4.56,
            Fact.CLASS_MINIMUM,
            5.0));
  }

  @Test
  void no_reason_of_any_sample_has_a_brace_or_an_unknown_figure_left() {
    int seen = 0;
    for (Advice advice : SampleOrders.all().values()) {
      for (ClassVerdict verdict : advice.table()) {
        for (Finding finding : verdict.findings()) {
          String reason = RuleTexts.reason(finding);
          assertFalse(reason.contains("{") || reason.contains("not known"), reason);
          seen++;
        }
      }
    }
    assertTrue(seen > 100);
  }
}
