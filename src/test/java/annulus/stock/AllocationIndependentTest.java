package annulus.stock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import net.jqwik.api.statistics.Statistics;
import org.junit.jupiter.api.Test;

/** First expired first out against every way there is to share small lots among small jobs. */
class AllocationIndependentTest {
  private static final LocalDate DAY = Lots.DAY;

  private static Need need(String job, long line, LocalDate day, String item, double ml) {
    Need.Option option =
        new Need.Option(
            item,
            Millilitres.of(ml),
            Optional.empty(),
            Millilitres.NONE,
            Optional.empty(),
            20,
            false);
    return new Need(job, line, day, List.of(option), "use compound");
  }

  /** A lot of 1 to 4 mL that keeps 0 to 5 days. */
  private static List<Lot> lots(List<Integer> codes) {
    List<Lot> lots = new ArrayList<>();
    for (int code : codes) {
      LocalDate expires = DAY.plusDays(code / 4);
      lots.add(Lots.lot("L" + lots.size(), "a", 1 + code % 4, null, DAY, expires));
    }
    return lots;
  }

  /** A job of 1 to 3 mL in 0 to 5 days. */
  private static List<Need> needs(List<Integer> codes) {
    List<Need> needs = new ArrayList<>();
    for (int code : codes) {
      long line = needs.size();
      needs.add(need("J" + line, line, DAY.plusDays(code / 3), "a", 1 + code % 3));
    }
    return needs;
  }

  @Property(tries = 400)
  void no_other_sharing_serves_the_jobs_better_in_their_order(
      @ForAll @Size(min = 1, max = 3) List<@IntRange(max = 23) Integer> lotCodes,
      @ForAll @Size(min = 1, max = 4) List<@IntRange(max = 17) Integer> jobCodes) {
    List<Lot> lots = lots(lotCodes);
    List<Need> needs = needs(jobCodes);
    Allocation.Result result = Allocation.of(new Cabinet(lots, Lots.items()), DAY, needs);
    String served = "";
    for (JobPlan plan : result.plans()) {
      served += plan.isShort() ? "0" : "1";
    }
    List<Need> ordered =
        needs.stream().sorted(Comparator.comparing(Need::day).thenComparing(Need::line)).toList();
    int[] left = lots.stream().mapToInt(l -> (int) l.left().value()).toArray();
    assertEquals(best(ordered, 0, lots, left, ""), served);
    Statistics.label("some job short").collect(served.contains("0"));
    Statistics.label("a later job served after a short one").collect(served.contains("01"));
  }

  /** The greatest string of served jobs over all ways to take whole millilitres from lots. */
  private static String best(List<Need> needs, int job, List<Lot> lots, int[] left, String served) {
    if (job == needs.size()) {
      return served;
    }
    int wanted = (int) needs.get(job).options().get(0).amount().value();
    String skipped = best(needs, job + 1, lots, left, served + "0");
    String taken = share(needs, job, lots, left, served, wanted, 0);
    return taken.compareTo(skipped) > 0 ? taken : skipped;
  }

  private static String share(
      List<Need> needs, int job, List<Lot> lots, int[] left, String served, int wanted, int from) {
    if (wanted == 0) {
      return best(needs, job + 1, lots, left, served + "1");
    }
    String found = "";
    for (int i = from; i < lots.size(); i++) {
      boolean inDate = !lots.get(i).expires().orElseThrow().isBefore(needs.get(job).day());
      for (int ml = 1; inDate && ml <= Math.min(wanted, left[i]); ml++) {
        left[i] -= ml;
        String way = share(needs, job, lots, left, served, wanted - ml, i + 1);
        left[i] += ml;
        found = way.compareTo(found) > 0 ? way : found;
      }
    }
    return found;
  }

  @Property(tries = 300)
  void nothing_is_taken_twice_late_or_out_of_turn(
      @ForAll @Size(min = 1, max = 3) List<@IntRange(max = 23) Integer> lotCodes,
      @ForAll @Size(min = 1, max = 4) List<@IntRange(max = 17) Integer> jobCodes) {
    List<Lot> lots = lots(lotCodes);
    List<Need> needs = needs(jobCodes);
    Allocation.Result result = Allocation.of(new Cabinet(lots, Lots.items()), DAY, needs);
    Map<String, Millilitres> taken = new HashMap<>();
    for (JobPlan plan : result.plans()) {
      Millilitres sum = Millilitres.NONE;
      for (JobPlan.Take take : plan.takes()) {
        Lot lot = find(lots, take.lot());
        assertFalse(lot.expires().orElseThrow().isBefore(plan.need().day()));
        taken.merge(take.lot(), take.amount(), Millilitres::plus);
        sum = sum.plus(take.amount());
      }
      assertEquals(plan.isShort() ? Millilitres.NONE : plan.need().options().get(0).amount(), sum);
    }
    for (Lot lot : lots) {
      Millilitres gone = taken.getOrDefault(lot.lot(), Millilitres.NONE);
      assertEquals(lot.left().minus(gone), find(result.after().lots(), lot.lot()).left());
    }
  }

  private static Lot find(List<Lot> lots, String name) {
    return lots.stream().filter(l -> l.lot().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void a_sealed_one_is_not_opened_while_an_open_one_is_in_date() {
    Lot sealed = Lots.sealed("sealed", "a", 5, DAY.plusDays(3));
    Lot open = Lots.lot("open", "a", 5, null, DAY.minusDays(1), DAY.plusDays(90));
    Cabinet cabinet = new Cabinet(List.of(sealed, open), Lots.items());
    JobPlan plan = Allocation.of(cabinet, DAY, List.of(need("J", 1, DAY, "a", 2))).plans().get(0);
    assertEquals("open", plan.takes().get(0).lot());
    assertFalse(plan.takes().get(0).opens());
  }

  @Test
  void a_lot_opened_for_one_job_lives_no_longer_than_its_open_life() {
    Lot sealed = Lots.sealed("sealed", "a", 5, DAY.plusYears(2));
    Cabinet cabinet = new Cabinet(List.of(sealed), Lots.items());
    List<Need> needs =
        List.of(
            need("now", 1, DAY, "a", 1),
            need("in time", 2, DAY.plusMonths(6), "a", 1),
            need("too late", 3, DAY.plusMonths(6).plusDays(1), "a", 1));
    List<JobPlan> plans = Allocation.of(cabinet, DAY, needs).plans();
    assertTrue(plans.get(0).takes().get(0).opens());
    assertFalse(plans.get(1).isShort());
    assertEquals(List.of(new JobPlan.Missing("a", Millilitres.of(1))), plans.get(2).missing());
  }

  @Test
  void the_second_best_is_taken_when_the_best_is_short_and_primer_counts() {
    Cabinet cabinet =
        new Cabinet(
            List.of(
                Lots.sealed("1", "a", 5, DAY),
                Lots.sealed("2", "b", 5, DAY),
                Lots.sealed("3", "p", 0.05, DAY)),
            Lots.items());
    Need.Option best =
        new Need.Option(
            "a",
            Millilitres.of(1),
            Optional.of("p"),
            Millilitres.of(0.1),
            Optional.empty(),
            20,
            false);
    Need.Option second =
        new Need.Option(
            "b",
            Millilitres.of(1),
            Optional.empty(),
            Millilitres.NONE,
            Optional.empty(),
            10,
            false);
    JobPlan plan =
        Allocation.of(cabinet, DAY, List.of(new Need("J", 1, DAY, List.of(best, second), "")))
            .plans()
            .get(0);
    assertTrue(plan.secondBest());
    assertEquals("2", plan.takes().get(0).lot());
    JobPlan alone =
        Allocation.of(cabinet, DAY, List.of(new Need("J", 1, DAY, List.of(best), "")))
            .plans()
            .get(0);
    assertEquals(List.of(new JobPlan.Missing("p", Millilitres.of(0.05))), alone.missing());
  }
}
