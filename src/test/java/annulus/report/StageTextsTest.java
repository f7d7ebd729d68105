package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.Advice.Kind;
import annulus.advice.Advice.Step;
import annulus.advice.Advice.StepKind;
import annulus.advice.OrderText;
import annulus.catalog.Stage;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The table of stages says the times that the steps say, and where the hand-back lies. */
class StageTextsTest {
  private static String words(Advice advice, Stage stage) {
    return new StageTexts(advice).mayBeDone(stage);
  }

  @Test
  void what_is_not_touched_until_a_time_is_so_in_the_table_and_in_the_step() {
    int seen = 0;
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      Advice advice = sample.getValue();
      for (Step step : advice.steps()) {
        if (step.kind() == StepKind.LEAVE_UNDISTURBED && step.at().isPresent()) {
          ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
          String clock = time.brief(step.at().get());
          String text = TextReport.of(advice, SampleOrders.CATALOG, false);
          String row = text.substring(text.indexOf("\n  fixture "), text.indexOf("\n  handling"));
          assertTrue(row.contains(clock), sample.getKey() + row);
          assertTrue(row.contains("before: fixture and 15 min rest."), row);
          assertTrue(text.contains("Do not touch or turn it until " + clock), text);
          seen++;
        }
      }
    }
    assertTrue(seen > 0);
  }

  @Test
  void a_joint_that_goes_when_it_is_functional_has_its_hand_back_in_that_row() {
    Advice advice = SampleOrders.all().get("nuisance");
    assertEquals("Hand back, limited use.", words(advice, Stage.FUNCTIONAL));
    assertEquals("Full use.", words(advice, Stage.FULL));
  }

  @Test
  void a_joint_that_goes_at_full_cure_has_its_hand_back_there() {
    Advice advice = new OrderText().set("consequence", "injury").advice();
    assertEquals(Kind.USE_COMPOUND, advice.decision().kind());
    assertEquals("Shop's own test only, until hand-back.", words(advice, Stage.FUNCTIONAL));
    String full = words(advice, Stage.FULL);
    ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
    String from = time.brief(advice.handBack().orElseThrow().at());
    boolean slow = advice.handBack().get().ruling() == Advice.Condition.SLOW_PRACTICE;
    assertEquals(
        slow
            ? "Shop's own test only. Hand back from " + from + ", full use."
            : "Hand back, full use.",
        full);
  }

  @Test
  void a_joint_that_waits_for_its_load_says_when_between_the_rows() {
    OrderText order = new OrderText().set("consequence", "stranding").set("engagementMm", 5);
    for (int newtons = 20; newtons < 20_000; newtons += newtons / 10) {
      Advice advice = order.set("load", Map.of("axialN", newtons)).advice();
      boolean waits =
          advice.handBack().map(h -> h.ruling() == Advice.Condition.HOLD_COVERS_LOAD).orElse(false);
      if (waits && advice.limited().isPresent()) {
        ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
        String from = time.brief(advice.handBack().orElseThrow().at());
        assertEquals(
            "Shop's own test only. Hand back from " + from + ", limited use.",
            words(advice, Stage.FUNCTIONAL));
        assertEquals("Full use.", words(advice, Stage.FULL));
        return;
      }
    }
    throw new AssertionError("no load rules the hand-back");
  }

  @Test
  void a_joint_that_never_goes_is_for_nobody_but_the_shop() {
    for (Advice advice : SampleOrders.all().values()) {
      if (advice.handBack().isEmpty()) {
        assertEquals("Shop's own test only.", words(advice, Stage.FUNCTIONAL));
        assertEquals("Not to be handed over as it is.", words(advice, Stage.FULL));
      }
    }
  }
}
