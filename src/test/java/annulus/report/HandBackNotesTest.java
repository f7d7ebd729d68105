package annulus.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.advice.Advice;
import annulus.advice.OrderText;
import annulus.catalog.Stage;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What stands beside a hand-back time. */
class HandBackNotesTest {
  private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");

  private static Advice nuisance() {
    return SampleOrders.all().get("nuisance");
  }

  private static Instant full(Advice advice) {
    Duration sure = advice.cure().orElseThrow().at(Stage.FULL).sure().orElseThrow();
    return advice.order().start().plus(sure);
  }

  @Test
  void the_limit_names_its_end_and_what_is_not_allowed() {
    Advice advice = nuisance();
    ShopTime time = new ShopTime(advice.order().zone(), advice.order().start());
    String words = SampleOrders.CATALOG.limitedUse().notAllowed();
    assertEquals(
        Optional.of("Limited use until " + time.brief(full(advice)) + ": " + words + "."),
        new HandBackNotes(advice).limitedUse());
    assertEquals(Optional.empty(), new HandBackNotes(SampleOrders.goodFit()).limitedUse());
  }

  @Test
  void whoever_takes_it_after_full_cure_is_told_of_no_limit() {
    HandBackNotes notes = new HandBackNotes(nuisance());
    Instant full = full(nuisance());
    assertTrue(notes.limitedUse(full.minusSeconds(1), VIENNA).isPresent());
    assertEquals(Optional.empty(), notes.limitedUse(full, VIENNA));
  }

  @Test
  void the_limit_is_told_in_every_answer_that_has_the_step() {
    int limited = 0;
    for (Map.Entry<String, Advice> sample : SampleOrders.all().entrySet()) {
      Advice advice = sample.getValue();
      boolean step =
          advice.steps().stream().anyMatch(s -> s.kind() == Advice.StepKind.TELL_LIMITED);
      String text = TextReport.of(advice, SampleOrders.CATALOG, false).replaceAll("\\s+", " ");
      String json = JsonReport.of(advice, SampleOrders.CATALOG);
      assertEquals(step, text.contains(" Limited use "), sample.getKey());
      assertEquals(step, json.contains("\"notAllowed\""), sample.getKey());
      limited += step ? 1 : 0;
    }
    assertTrue(limited > 0);
  }

  @Test
  void a_primer_that_the_order_does_not_name_is_said_not_to_count() {
    Advice planned = SampleOrders.inertPair();
    Advice.HandBack primed = planned.primed().get(0);
    assertTrue(primed.at().isBefore(planned.handBack().orElseThrow().at()));
    String note =
        "The primer is not counted in this time. When it is on, enter it and ask again: about "
            + ShopTime.up(primed.after())
            + " after closing.";
    assertEquals(Optional.of(note), new HandBackNotes(planned).primer());
    String text = TextReport.of(planned, SampleOrders.CATALOG, false).replaceAll("\\s+", " ");
    assertTrue(text.indexOf(note) < text.indexOf("Gap radial"), text);
  }

  @Test
  void a_primer_that_is_entered_counts_and_needs_no_note() {
    OrderText order = new OrderText().faces("aluminium-6061", "anodised").set("primer", null);
    Advice open = order.advice();
    assertTrue(open.primerNotCounted());
    order.set("primer", Map.of("id", "primer-solvent", "on", "both", "minutesOnPart", 0));
    Advice entered = order.advice();
    assertEquals(Optional.empty(), new HandBackNotes(entered).primer());
    assertEquals(open.primed().get(0), entered.handBack().orElseThrow());
    assertFalse(SampleOrders.goodFit().primerNotCounted());
  }
}
