package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.Advice.Kind;
import annulus.advice.OrderText;
import annulus.select.ClassVerdict;
import annulus.select.Finding;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class TextReportTest {
  private static String text(Advice advice) {
    return TextReport.of(advice, SampleOrders.CATALOG, false);
  }

  private static String why(Advice advice) {
    return TextReport.of(advice, SampleOrders.CATALOG, true);
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void the_samples_reach_every_decision() {
    Set<Kind> seen = EnumSet.noneOf(Kind.class);
    SampleOrders.all().values().forEach(a -> seen.add(a.decision().kind()));
    assertEquals(EnumSet.allOf(Kind.class), seen);
  }

  @Test
  void the_sections_stand_in_the_fixed_order() {
    List<String> order =
        List.of(
            "\nEarliest safe hand-back: ",
            "\nGap  ",
            "\nCure",
            "\nSteps\n",
            "\nCautions\n",
            "\nClasses\n",
            "\nAssumed: ",
            "\nData version ");
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      String text = text(sample.getValue());
      assertTrue(text.startsWith(DecisionTexts.of(sample.getValue()).line() + "\n"));
      int last = 0;
      for (String heading : order) {
        int at = text.indexOf(heading);
        assertTrue(at > last, sample.getKey() + ": " + heading.strip());
        last = at;
      }
    }
  }

  @Test
  void no_line_is_wider_than_a_hundred_columns() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      for (String line : why(sample.getValue()).split("\n", -1)) {
        assertTrue(line.codePointCount(0, line.length()) <= 100, sample.getKey() + ": " + line);
        assertEquals(line.stripTrailing(), line);
      }
    }
  }

  @Test
  void the_gap_stands_as_radial_and_as_diametral() {
    String text = text(SampleOrders.goodFit());
    assertTrue(text.contains("radial (per side)         diametral (across)"), text);
    assertTrue(text.contains("mean at 20 °C       30.0 ± 3.4 µm             60.0 ± 6.7 µm"), text);
  }

  @Test
  void a_no_promises_no_time_and_says_what_to_do_instead() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      Advice advice = sample.getValue();
      if (!advice.decision().kind().isYes()) {
        String text = text(advice);
        assertTrue(text.contains("hand-back: none can be promised"), sample.getKey());
        assertTrue(text.contains("Cure: no times"), sample.getKey());
        assertTrue(text.contains("  Instead: "), sample.getKey());
        String afterHandBack = text.substring(text.indexOf("hand-back:"));
        assertFalse(afterHandBack.contains("2026-"), sample.getKey());
      }
    }
  }

  @Test
  void calipers_are_told_what_would_decide() {
    String text = oneLine(text(SampleOrders.calipers()));
    assertTrue(text.startsWith("MEASURE AGAIN the digital or dial caliper"), text);
    assertTrue(text.contains("The gap could be anything from 5.4 to 60.6 µm radial"), text);
    assertTrue(text.contains("Would decide: inside micrometer"), text);
    assertTrue(text.contains("Nothing else is promised"), text);
    assertTrue(text.contains("wanted 95 %"), text);
  }

  @Test
  void too_tight_never_says_press_it_dry() {
    String text = text(SampleOrders.all().get("too tight"));
    String head = text.substring(0, text.indexOf("\nClasses"));
    assertTrue(head.startsWith("DO NOT PRESS"));
    assertFalse(head.contains("press it dry"), head);
  }

  @Test
  void a_joint_moved_too_late_is_stripped() {
    String text = text(SampleOrders.all().get("moved"));
    assertTrue(text.startsWith("STRIP AND REDO"));
    assertTrue(text.contains("Pull the part out."));
  }

  @Test
  void the_hand_back_time_stands_with_weekday_date_hour_and_offset() {
    String text = text(SampleOrders.all().get("nuisance"));
    assertTrue(
        text.contains("Earliest safe hand-back: Thu 2026-11-26 10:37 (+01:00), 1 d 2 h after"),
        text);
  }

  @Test
  void why_tells_every_rule_with_its_source_and_every_figure() {
    for (Advice advice : SampleOrders.all().values()) {
      String why = oneLine(why(advice));
      for (ClassVerdict verdict : advice.table()) {
        for (Finding finding : verdict.findings()) {
          assertTrue(why.contains(RuleTexts.reason(finding)), finding.rule().id());
          assertTrue(why.contains(finding.rule().provenance().source()), finding.rule().id());
        }
      }
      advice.figures().forEach(f -> assertTrue(why.contains(f.id() + " = "), f.id()));
      assertTrue(why.contains("Uncertainty of the mean gap, radial"));
    }
  }

  @Test
  void a_primer_too_old_is_named_before_the_want_of_one() {
    OrderText order = new OrderText().faces("aluminium-6061", "anodised");
    order.set("primer", Map.of("id", "primer-solvent", "on", "both", "minutesOnPart", 8 * 1440));
    String text = text(order.advice());
    assertTrue(text.startsWith("DO NOT BOND YET  the primer on a face is too old\n"), text);
    int old = text.indexOf("Because: The primer went on too long ago");
    assertTrue(old > 0 && old < text.indexOf("Because: Both faces are inert"), text);
  }

  @Test
  void headline_steps_and_cautions_agree_on_a_primer_too_old() {
    OrderText order = new OrderText();
    order.set("primer", Map.of("id", "primer-solvent", "on", "both", "minutesOnPart", 8 * 1440));
    String bare = text(order.advice()).replaceAll("\\s+", " ");
    assertTrue(bare.contains(", no primer "), bare);
    assertTrue(
        bare.contains("and the old primer is off. Let them dry. No primer is needed. 3."), bare);
    assertTrue(bare.contains("it is not counted. Clean it off before anything else"), bare);
    assertFalse(bare.contains("prime again"), bare);
    String anew = text(order.faces("aluminium-6061", "anodised").advice()).replaceAll("\\s+", " ");
    assertTrue(anew.contains("and the old primer is off. Let them dry. 3. Wipe or spray"), anew);
  }

  @Test
  void a_title_cannot_send_control_characters_to_the_terminal() {
    String text = text(SampleOrders.hostile());
    assertTrue(text.chars().noneMatch(c -> c < ' ' && c != '\n'), text);
  }

  @Test
  void a_word_longer_than_the_line_is_broken() {
    Advice advice = new SampleOrders.Draft().named("J".repeat(250), "t".repeat(333)).advice();
    for (String line : text(advice).split("\n", -1)) {
      assertTrue(line.length() <= 100, line);
    }
  }

  @Test
  void the_same_order_gives_the_same_text_byte_for_byte() {
    for (Advice advice : SampleOrders.all().values()) {
      assertEquals(why(advice), why(SampleOrders.ADVISOR.advise(advice.order())));
    }
  }
}
