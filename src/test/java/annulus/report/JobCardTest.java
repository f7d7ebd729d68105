package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;

class JobCardTest {
  private static String card(Advice advice) {
    return JobCard.of(advice, SampleOrders.CATALOG);
  }

  private static Document page(Advice advice) throws Exception {
    String html = card(advice);
    String xml = html.replace("<!DOCTYPE html>\n", "").replace("<meta charset=\"utf-8\">", "");
    return PicturesTest.parsed(xml);
  }

  @Test
  void every_card_closes_its_elements_and_carries_no_script() throws Exception {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      Document page = page(sample.getValue());
      assertEquals(0, page.getElementsByTagName("script").getLength(), sample.getKey());
      assertEquals(0, page.getElementsByTagName("img").getLength());
      assertEquals(0, page.getElementsByTagName("link").getLength());
      assertFalse(card(sample.getValue()).contains("url("));
    }
  }

  @Test
  void every_card_shows_the_one_safe_time_or_that_there_is_none() throws Exception {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      Advice advice = sample.getValue();
      String words = page(advice).getDocumentElement().getTextContent();
      ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
      if (advice.handBack().isPresent()) {
        assertTrue(words.contains("DO NOT HAND BACK BEFORE"), sample.getKey());
        assertTrue(words.contains(time.full(advice.handBack().get().at())), sample.getKey());
      } else {
        assertTrue(words.contains("no time can be promised"), sample.getKey());
      }
      assertTrue(words.contains(DecisionTexts.of(advice).command()));
      assertTrue(words.contains("Checked by:"));
    }
  }

  @Test
  void hostile_words_stay_words() throws Exception {
    String html = card(SampleOrders.hostile());
    assertTrue(html.contains("J-&lt;script&gt;alert(1)&lt;/script&gt;"));
    assertTrue(html.contains("&lt;img src=x"));
    assertFalse(html.contains("<script") || html.contains("<img"));
    assertFalse(html.contains("\u001b"));
  }

  @Test
  void each_step_has_a_box_to_tick() throws Exception {
    for (Advice advice : SampleOrders.all().values()) {
      int ticks = card(advice).split("class=\"tick\"", -1).length - 1;
      assertEquals(advice.steps().size(), ticks);
    }
  }

  @Test
  void cautions_that_do_not_fit_are_counted() {
    Advice advice =
        new SampleOrders.Draft()
            .boreOf("carbon-epoxy", "moulded")
            .at(14)
            .surroundings(new JointOrder.Surroundings(true, true, true, true))
            .advice();
    String html = card(advice);
    assertTrue(html.contains("more in the full report: read them before you start."));
    assertTrue(html.contains("<li>! "), "at least one caution stands on the card");
  }

  @Test
  void every_card_carries_skin_air_data_sheet_and_who_checks_what_carries_a_person() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      String html = card(sample.getValue());
      for (String id : List.of("skin", "air", "sheet", "critical")) {
        String words = SampleOrders.CATALOG.ranks().get(id).card().orElseThrow();
        assertTrue(html.contains("<li>! " + words + "</li>"), sample.getKey() + ": " + id);
      }
    }
  }

  @Test
  void of_the_other_cautions_the_gravest_stand_on_the_card() {
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      String html = card(sample.getValue()).replace("\u00a0", " ");
      boolean left = false;
      for (CautionList.Caution caution :
          new CautionList(SampleOrders.CATALOG).of(sample.getValue())) {
        if (caution.card().isEmpty()) {
          boolean there = html.contains("<li>! " + Html.text(caution.text()) + "</li>");
          assertFalse(left && there, sample.getKey() + ": a lesser one took the place");
          left |= !there;
        }
      }
      assertEquals(left, html.contains("more in the full report"), sample.getKey());
    }
  }

  @Test
  void a_primer_that_is_planned_is_said_not_to_be_counted_under_the_time() {
    Advice advice = SampleOrders.inertPair();
    assertTrue(advice.primerNotCounted());
    String html = card(advice).replace("\u00a0", " ");
    String note =
        "The primer is not counted in this time. When it is on, enter it and ask again: about ";
    assertTrue(html.contains("<p class=\"note\">" + note), html);
    assertFalse(card(SampleOrders.goodFit()).contains("class=\"note\""));
  }

  @Test
  void a_joint_that_goes_before_full_cure_says_its_limit_under_the_time() {
    Advice advice = SampleOrders.all().get("nuisance");
    String limit = new HandBackNotes(advice).limitedUse().orElseThrow();
    assertTrue(card(advice).contains("<p class=\"note\">" + limit + "</p>"), card(advice));
  }

  @Test
  void long_words_are_cut_with_a_mark() {
    Advice advice = new SampleOrders.Draft().named("J".repeat(99), "t".repeat(500)).advice();
    assertTrue(card(advice).contains("<bdi>" + "t".repeat(69) + "…</bdi>"));
    assertTrue(card(advice).contains("<bdi>" + "J".repeat(29) + "…</bdi>"));
  }

  @Test
  void the_same_answer_gives_the_same_card_byte_for_byte() {
    for (Advice advice : SampleOrders.all().values()) {
      assertEquals(card(advice), card(SampleOrders.ADVISOR.advise(advice.order())));
    }
  }

  /** It is printed for its steps, before closing; a clock time in the box would be too early. */
  @Test
  void the_card_of_a_joint_that_is_still_open_promises_no_clock_time() {
    Advice advice = SampleOrders.all().values().iterator().next();
    Advice.HandBack back = advice.handBack().orElseThrow();
    String open = JobCard.of(advice, SampleOrders.CATALOG, "", false).replace('\u00a0', ' ');
    assertFalse(open.contains("DO NOT HAND BACK BEFORE"), open);
    assertTrue(open.contains("<h1>NOT CLOSED YET</h1>"), open);
    String after = ShopTime.up(back.after()) + " after closing";
    assertTrue(open.contains("<p class=\"when\">" + after), open);
    assertTrue(open.contains("as if closed at"), open);
    assertTrue(open.contains("Print the card again once it is."), open);
    assertTrue(card(advice).contains("DO NOT HAND BACK BEFORE"));
    assertFalse(card(advice).contains("as if closed at"));
  }
}
