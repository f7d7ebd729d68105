package annulus.stock;

import static annulus.stock.Lots.DAY;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import annulus.catalog.Confidence;
import annulus.catalog.NamedNumber;
import annulus.catalog.Policy;
import annulus.catalog.Provenance;
import annulus.stock.Movement.Kind;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * The list of what to order, worked by hand. Ten days of lead and a service level of one half, so
 * that no safety stock is added; an order covers 60 days.
 */
class ReorderTest {
  private static final Policy POLICY =
      policy(
          "rate-window-days", 365,
          "rate-level", 0.9,
          "lead-days", 10,
          "lead-sd-days", 3,
          "service-level", 0.5,
          "order-cover-days", 60,
          "default-container-ml", 10);

  private static Policy policy(Object... pairs) {
    Map<String, NamedNumber> numbers = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      String id = (String) pairs[i];
      double value = ((Number) pairs[i + 1]).doubleValue();
      Provenance test = new Provenance("test", Confidence.LOW);
      numbers.put(id, new NamedNumber(id, value, "", "Some meaning.", test));
    }
    return new Policy(numbers);
  }

  /** Received 100 days ago, counting today; so many uses of so much since. */
  private static Ledger ledger(int uses, double ml) {
    List<Movement> movements = new ArrayList<>();
    movements.add(Lots.move("in", Kind.RECEIVE, "1", 50, DAY.minusDays(99), ""));
    for (int i = 0; i < uses; i++) {
      movements.add(Lots.move("use" + i, Kind.USE, "1", ml, DAY.minusDays(i), "J" + i));
    }
    return Ledger.of(movements);
  }

  private static JobPlan lacks(String item, double ml, LocalDate day) {
    Need need = new Need("J", 1, day, List.of(), "bond");
    JobPlan.Missing missing = new JobPlan.Missing(item, Millilitres.of(ml));
    return new JobPlan(need, Optional.empty(), List.of(), List.of(missing));
  }

  private static List<Reorder> list(Ledger ledger, List<JobPlan> plans, Lot... lots) {
    return Reorder.list(new Cabinet(List.of(lots), Lots.items()), plans, ledger, DAY, POLICY);
  }

  private static Reorder only(List<Reorder> list) {
    assertEquals(1, list.size());
    return list.get(0);
  }

  private static Lot there(double ml, long days) {
    return Lots.sealed("1", "a", ml, DAY.plusDays(days));
  }

  /**
   * Two uses of 1 mL in 100 days: 0.02 mL a day, order at 0.2 mL. 1.21 mL last (1.21 - 0.2)/0.02 =
   * 50 days likely. The upper limit of two uses is 6.30 (Poisson, 95 % one-sided, Biometrika Tables
   * for Statisticians, table 40, from memory): 0.063 mL a day, 16 days for sure. 60 days take 1.2
   * mL: one container of 1.21.
   */
  @Test
  void a_class_in_use_is_ordered_before_it_may_run_out() {
    Reorder row = only(list(ledger(2, 1), List.of(), there(1.21, 1000)));
    assertEquals("a", row.item());
    assertEquals(Millilitres.of(1.21), row.onHand());
    assertEquals(Millilitres.NONE, row.lacking());
    assertEquals(0.2, row.point().orElseThrow().at(), 1e-9);
    assertEquals(Optional.of(DAY.plusDays(50)), row.likelyDay());
    assertEquals(Optional.of(DAY.plusDays(16)), row.orderBy());
    assertEquals(Millilitres.of(1.21), row.container());
    assertEquals(Millilitres.of(1.21), row.amount());
    assertFalse(row.staleBeforeEmpty());
  }

  @Test
  void what_goes_out_of_date_is_ordered_ten_days_before() {
    Reorder row = only(list(ledger(2, 1), List.of(), there(1.21, 20)));
    assertEquals(Optional.of(DAY.plusDays(10)), row.orderBy());
    Lot other = Lots.sealed("2", "b", 5, DAY.plusDays(900));
    List<Reorder> both = list(ledger(2, 1), List.of(), there(1.21, 20), other);
    assertEquals(List.of("a", "b"), both.stream().map(Reorder::item).toList());
    assertEquals(Optional.of(DAY.plusDays(10)), both.get(0).orderBy());
    Lot later = Lots.sealed("3", "a", 1, DAY.plusDays(22));
    Reorder two = only(list(ledger(2, 1), List.of(), there(1.21, 20), later));
    assertEquals(Optional.of(DAY.plusDays(12)), two.orderBy());
    Lot openedLongAgo = Lots.lot("4", "a", 1, null, DAY.minusYears(1), DAY.plusDays(40));
    Reorder unusable = only(list(ledger(2, 1), List.of(), there(1.21, 20), openedLongAgo));
    assertEquals(Optional.of(DAY.plusDays(10)), unusable.orderBy());
  }

  /**
   * Of 2.21 mL, 1 mL goes out of date after 5 days; the 1.21 mL that stay last 16 days at the upper
   * rate of 0.063 mL a day from then on, all of it would have lasted 31. Only 0.15 mL staying is
   * below the 0.2 at which to order: ten days before the fifth is past.
   */
  @Test
  void what_goes_out_of_date_before_the_rest_is_not_counted_after_its_day() {
    Lot soon = Lots.sealed("2", "a", 1, DAY.plusDays(5));
    Reorder row = only(list(ledger(2, 1), List.of(), there(1.21, 1000), soon));
    assertEquals(Millilitres.of(2.21), row.onHand());
    assertEquals(Optional.of(DAY.plusDays(21)), row.orderBy());
    Reorder little = only(list(ledger(2, 1), List.of(), there(0.15, 1000), soon));
    assertEquals(Optional.of(DAY), little.orderBy());
  }

  /**
   * The last job is on the seventh day; a lot that ends on that day still serves it. At 0.016 mL a
   * day 0.16 mL are wanted on hand and 0.96 mL for 60 days; of the 2 mL of today 0.1 are left: 1.02
   * mL are two containers of 1.
   */
  @Test
  void what_goes_out_of_date_before_the_last_job_is_not_left_after_it() {
    List<JobPlan> plans = List.of(lacks("b", 1, DAY.plusDays(7)), lacks("b", 1, DAY.plusDays(2)));
    Lot last = Lots.sealed("2", "a", 0.1, DAY.plusDays(7));
    Reorder row = list(ledger(2, 0.8), plans, there(1.9, 6), last).get(0);
    assertEquals(Millilitres.of(0.1), row.onHand());
    assertEquals(Millilitres.of(1.9), row.outBefore());
    assertEquals(DAY.plusDays(7), row.lastJob());
    assertEquals(Millilitres.of(2), row.amount());
    Reorder past = list(ledger(2, 1), List.of(lacks("b", 1, DAY.minusDays(3))), last).get(0);
    assertEquals(DAY, past.lastJob());
    assertEquals(Millilitres.NONE, past.outBefore());
  }

  /** A sealed lot that a job of next week opens is still there today. */
  @Test
  void what_a_planned_job_opens_is_on_hand_after_it() {
    Cabinet cabinet = new Cabinet(List.of(there(5, 1000)), Lots.items());
    Need.Option option =
        new Need.Option(
            "a", Millilitres.of(1), Optional.empty(), Millilitres.NONE, Optional.empty(), 20, true);
    Need need = new Need("J", 1, DAY.plusDays(7), List.of(option), "bond");
    Allocation.Result plan = Allocation.of(cabinet, DAY, List.of(need));
    List<Reorder> rows = Reorder.list(plan.after(), plan.plans(), Ledger.EMPTY, DAY, POLICY);
    assertEquals(Millilitres.of(4), only(rows).onHand());
  }

  /** Only the lot that the job opens counts from its day on: the other may be a slip of the pen. */
  @Test
  void a_lot_said_to_be_opened_on_a_day_to_come_is_not_on_hand() {
    Lot toCome = Lots.lot("2", "a", 3, null, DAY.plusDays(3), DAY.plusDays(1000));
    Need need = new Need("J", 1, DAY.plusDays(7), List.of(), "bond");
    JobPlan.Take take = new JobPlan.Take("1", "a", Millilitres.of(1), true);
    JobPlan plan = new JobPlan(need, Optional.empty(), List.of(take), List.of());
    List<Reorder> rows = list(Ledger.EMPTY, List.of(plan), there(5, 1000), toCome);
    assertEquals(Millilitres.of(5), only(rows).onHand());
  }

  /** 3 mL lack on a day: 3 + 1.2 mL in containers of 1.21 are four. */
  @Test
  void what_a_job_lacks_is_ordered_ten_days_before_the_job_and_no_day_is_past() {
    List<JobPlan> plans =
        List.of(
            lacks("a", 2, DAY.plusDays(13)),
            lacks("b", 1, DAY.plusDays(11)),
            lacks("a", 1, DAY.plusDays(12)));
    List<Reorder> rows = list(ledger(2, 1), plans, there(1.21, 1000));
    assertEquals(List.of("a", "b"), rows.stream().map(Reorder::item).toList());
    assertEquals(Millilitres.of(3), rows.get(0).lacking());
    assertEquals(Optional.of(DAY.plusDays(2)), rows.get(0).orderBy());
    assertEquals(Millilitres.of(4.84), rows.get(0).amount());
    Reorder b = rows.get(1);
    assertEquals(Optional.of(DAY.plusDays(1)), b.orderBy());
    assertEquals(Millilitres.of(10), b.container());
    assertEquals(Millilitres.of(10), b.amount());
    assertEquals(Optional.empty(), b.rate());
    assertEquals(Optional.empty(), b.likelyDay());
    Reorder late =
        only(list(ledger(2, 1), List.of(lacks("a", 3, DAY.plusDays(5))), there(1.21, 1000)));
    assertEquals(Optional.of(DAY), late.orderBy());
  }

  /** 0.1 mL left of the 0.2 at which to order: 1.2 and 0.1 mL are two containers of 1 mL. */
  @Test
  void below_the_reorder_point_the_rest_of_it_is_ordered_too_and_today() {
    Reorder row = only(list(ledger(2, 1), List.of(), there(0.1, 1000)));
    assertEquals(Optional.of(DAY), row.likelyDay());
    assertEquals(Optional.of(DAY), row.orderBy());
    assertEquals(Millilitres.of(2), row.amount());
    // 0.018 mL a day, order at 0.18: 1.08 and 0.13 mL are two, 1.08 less 0.13 would be one
    Reorder close = only(list(ledger(2, 0.9), List.of(), there(0.05, 1000)));
    assertEquals(Millilitres.of(2), close.amount());
  }

  /** 0.6 mL in 100 days: 1.09 mL last 181.7 days, 1.1 mL 183.3; an open one six months, 182.6. */
  @Test
  void a_container_that_spoils_before_it_is_empty_is_told() {
    assertTrue(only(list(ledger(1, 0.6), List.of(), there(1.21, 1000))).staleBeforeEmpty());
    assertFalse(only(list(ledger(1, 0.6), List.of(), there(1.09, 1000))).staleBeforeEmpty());
    assertTrue(only(list(ledger(1, 0.6), List.of(), there(1.1, 1000))).staleBeforeEmpty());
  }

  @Test
  void what_nobody_uses_and_nobody_lacks_is_not_ordered() {
    assertEquals(List.of(), list(Ledger.EMPTY, List.of()));
    Reorder idle = only(list(Ledger.EMPTY, List.of(), there(5, 1000)));
    assertEquals(Optional.empty(), idle.orderBy());
    assertEquals(Optional.empty(), idle.likelyDay());
    assertEquals(Millilitres.NONE, idle.amount());
    assertFalse(idle.staleBeforeEmpty());
  }

  @Test
  void what_was_used_is_listed_even_when_none_is_left() {
    Reorder row = only(list(ledger(2, 1), List.of()));
    assertEquals(Millilitres.NONE, row.onHand());
    assertEquals(Optional.of(DAY), row.orderBy());
  }

  /** 30 mL would last 1490 days at the mean rate, but they are dead after 80. */
  @Test
  void the_likely_day_counts_no_lot_past_its_use_by() {
    Reorder row = only(list(ledger(2, 1), List.of(), there(30.01, 80)));
    assertEquals(Optional.of(DAY.plusDays(70)), row.likelyDay());
    Reorder soon = only(list(ledger(2, 1), List.of(), there(30.01, 3)));
    assertEquals(Optional.of(DAY), soon.likelyDay());
  }

  /** 30 mL at 0.02 mL a day last 1490 days, 200 mL more than ten years: no day is likely. */
  @Test
  void a_day_more_than_ten_years_away_is_not_named() {
    Reorder row = only(list(ledger(2, 1), List.of(), there(30.01, 9000)));
    assertEquals(Optional.of(DAY.plusDays(1490)), row.likelyDay());
    assertEquals(
        Optional.empty(), only(list(ledger(2, 1), List.of(), there(200, 9000))).likelyDay());
  }

  /** 1, 2 and 3 mL in 100 days: mean 2, s 1; limits of three uses at 90 %: 0.82 and 7.75. */
  @Test
  void a_use_rate_has_mean_scatter_and_limits() {
    UseRate rate = UseRate.of(List.of(1.0, 2.0, 3.0), 100, 0.9);
    assertEquals(3, rate.uses());
    assertEquals(2, rate.mlPerUse(), 1e-12);
    assertEquals(1, rate.sdPerUse(), 1e-12);
    assertEquals(0.06, rate.mlPerDay(), 1e-12);
    assertEquals(Math.sqrt(0.15), rate.sdPerDay(), 1e-12);
    assertEquals(0.0164, rate.mlPerDayLimits().low(), 1e-4);
    assertEquals(0.1550, rate.mlPerDayLimits().high(), 1e-4);
    UseRate once = UseRate.of(List.of(2.0), 100, 0.9);
    assertEquals(2, once.sdPerUse());
  }
}
