package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.Advice.Kind;
import annulus.advice.OrderText;
import annulus.hold.Removal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is said of undoing a joint is the same in the cautions, with the hold and on the card. */
class RemovalTextsTest {
  private static final String NO_WAY =
      "there is no way to get it out with the press, the wrench and the heat counted on here";

  /** A joint of 80 mm, 40 mm long: more than a bench press and a wrench undo. */
  private static OrderText large() {
    return new OrderText()
        .bore(80.06, 80.061)
        .set("part.readingsMm", List.of(79.98, 79.981))
        .set("engagementMm", 40)
        .set("consequence", "stranding")
        .set("comesApartLater", true);
  }

  private static String text(Advice advice) {
    return TextReport.of(advice, SampleOrders.CATALOG, true).replaceAll("\\s+", " ");
  }

  private static String card(Advice advice) {
    return JobCard.of(advice, SampleOrders.CATALOG);
  }

  private static List<Removal.Outcome> outcomes(Advice advice) {
    return advice.hold().orElseThrow().ways().stream().map(Removal.Way::outcome).toList();
  }

  @Test
  void where_no_tool_will_do_that_is_said_first_of_all_cautions_and_on_the_card() {
    Advice advice = large().set("sealNear", true).advice();
    assertEquals(Kind.USE_COMPOUND, advice.decision().kind());
    assertEquals(
        List.of(
            Removal.Outcome.NOT_ENOUGH,
            Removal.Outcome.NOT_ENOUGH,
            Removal.Outcome.REFUSED,
            Removal.Outcome.REFUSED),
        outcomes(advice));
    String end = NO_WAY + ", short of destroying a member";
    assertTrue(text(advice).contains("Undoing it later " + end + " takes up to"), text(advice));
    assertTrue(text(advice).contains("Cautions ! It must come apart later, but " + end + "."));
    assertTrue(card(advice).contains("<li>! It must come apart later, but " + end + "."));
    assertTrue(
        card(advice)
            .contains(
                " No press, wrench or heat counted on here will do."
                    + " To undo it, never: hammer and drift, heat."));
    AnswerWords page = new AnswerWords(advice, SampleOrders.CATALOG);
    assertEquals("It must come apart later, but " + end + ".", page.cautions().get(0));
  }

  @Test
  void a_hammer_of_which_nobody_knows_the_force_is_no_way_to_count_on() {
    Advice advice = large().advice();
    assertTrue(outcomes(advice).contains(Removal.Outcome.DOUBTFUL));
    assertTrue(text(advice).contains(NO_WAY + "; at best hammer and drift may do."));
    assertTrue(card(advice).contains("counted on here will do. May do: hammer and drift."));
  }

  @Test
  void what_may_undo_it_is_named_on_the_card_and_nothing_else_is_promised() {
    Advice advice =
        new OrderText()
            .set("engagementMm", 5)
            .set("comesApartLater", true)
            .set("consequence", "stranding")
            .advice();
    assertEquals(Kind.USE_COMPOUND, advice.decision().kind());
    assertFalse(text(advice).contains("no way to get it out"), text(advice));
    assertTrue(card(advice).contains("May do: bench press"), card(advice));
    assertFalse(card(advice).contains("will do."), card(advice));
  }

  @Test
  void a_joint_that_need_not_come_apart_gets_no_caution_about_it() {
    Advice advice = large().set("comesApartLater", false).advice();
    assertTrue(text(advice).contains("Undoing it later " + NO_WAY));
    assertFalse(text(advice).contains("It must come apart later"));
  }

  /** The rules know no force, so they promise no tool; hot service leaves only a lasting class. */
  @Test
  void no_rule_promises_a_tool_that_the_same_answer_forbids() {
    Advice hot = large().set("serviceHighC", 110).advice();
    assertTrue(hot.cautions().stream().anyMatch(f -> f.rule().id().equals("apart-lasting")));
    assertTrue(outcomes(hot).contains(Removal.Outcome.REFUSED));
    for (Advice advice : List.of(hot, large().advice())) {
      String text = text(advice);
      assertFalse(text.contains("needs heat and a press"), text);
      assertFalse(text.contains("releases with hand tools"), text);
    }
  }
}
