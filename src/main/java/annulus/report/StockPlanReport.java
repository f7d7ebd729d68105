package annulus.report;

import annulus.quantity.Numbers;
import annulus.stock.JobPlan;
import annulus.stock.Need;
import annulus.stock.Reorder;
import annulus.stock.UseRate;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Which lot goes to which job, what is short, and what to order.
 *
 * @param on the day of planning
 * @param zone the shop's zone
 * @param plans every job
 * @param orders what to order
 * @param refused rows that could not be read, as printed
 */
public record StockPlanReport(
    LocalDate on, ZoneId zone, List<JobPlan> plans, List<Reorder> orders, List<String> refused) {
  private static final DateTimeFormatter CLOCK =
      DateTimeFormatter.ofPattern("EEE uuuu-MM-dd HH:mm", Locale.ENGLISH);

  public StockPlanReport {
    plans = List.copyOf(plans);
    orders = List.copyOf(orders);
    refused = List.copyOf(refused);
  }

  /** Whether some job is short, or a row could not be read. */
  public boolean isNo() {
    return !refused.isEmpty() || plans.stream().anyMatch(JobPlan::isShort);
  }

  /** The text for a terminal. */
  public String text() {
    TextLines out = new TextLines();
    long shortOnes = plans.stream().filter(JobPlan::isShort).count();
    out.line("Plan on " + on + ": " + plans.size() + " jobs, " + shortOnes + " short of stock.");
    out.heading("Jobs, in the order of their days; first expired first out");
    plans.forEach(p -> job(out, p));
    if (!refused.isEmpty()) {
      out.heading("Rows that could not be read");
      refused.forEach(r -> out.hanging("  ", r));
    }
    out.heading("Order list");
    orders.forEach(o -> order(out, o));
    if (orders.isEmpty()) {
      out.line("  nothing");
    }
    return out.toString();
  }

  private void job(TextLines out, JobPlan plan) {
    Need need = plan.need();
    String name = need.job().isEmpty() ? "line " + need.line() : need.job();
    String head = "  " + TextLines.cell(name, 14) + TextLines.cell(need.day().toString(), 12);
    hanging(out, head, words(plan));
  }

  private static void hanging(TextLines out, String head, List<String> words) {
    out.hanging(head, words.get(0));
    words.subList(1, words.size()).forEach(w -> out.hanging("    ", w));
  }

  /** What a job gets, or lacks, and what that costs. */
  public List<String> words(JobPlan plan) {
    if (plan.need().options().isEmpty()) {
      return List.of("needs nothing from the cabinet: " + plan.need().answer());
    }
    List<String> words = new ArrayList<>();
    words.add(plan.isShort() ? missing(plan) : takes(plan));
    if (plan.secondBest()) {
      words.add(instead(plan));
    }
    return words;
  }

  private static String takes(JobPlan plan) {
    return plan.takes().stream()
        .map(
            t ->
                t.amount()
                    + " mL "
                    + t.item()
                    + " from lot "
                    + t.lot()
                    + (t.opens() ? " (open it)" : ""))
        .collect(Collectors.joining(", "));
  }

  private static String missing(JobPlan plan) {
    return "SHORT: "
        + plan.missing().stream()
            .map(m -> m.amount() + " mL " + m.item())
            .collect(Collectors.joining(", "));
  }

  /** What it costs to take what is there instead of the best. */
  private String instead(JobPlan plan) {
    Need.Option best = plan.need().options().get(0);
    Need.Option used = plan.used().orElseThrow();
    return "instead of "
        + name(best)
        + ": "
        + handBack(best.handBack(), used.handBack())
        + "; strength likely "
        + Numbers.plain(used.strengthMPa())
        + " MPa, was "
        + Numbers.plain(best.strengthMPa())
        + " MPa"
        + (used.lasting() && !best.lasting() ? "; lasting: not made to come apart again." : ".");
  }

  private static String name(Need.Option option) {
    return option.item() + option.primer().map(p -> " with " + p).orElse("");
  }

  private String handBack(Optional<Instant> best, Optional<Instant> used) {
    if (used.isEmpty()) {
      return "no hand-back can be promised";
    }
    if (best.isEmpty()) {
      return "hand-back " + clock(used.get());
    }
    Duration change = Duration.between(best.get(), used.get());
    String words =
        change.isZero()
            ? "the same hand-back"
            : ShopTime.up(change.abs()) + (change.isNegative() ? " earlier" : " later");
    return "hand-back " + clock(used.get()) + ", " + words;
  }

  private String clock(Instant instant) {
    return CLOCK.format(instant.atZone(zone));
  }

  private static void order(TextLines out, Reorder order) {
    hanging(out, "  " + TextLines.cell(order.item(), 20), words(order));
  }

  /** How much to order and when, and why. */
  public static List<String> words(Reorder order) {
    String hand = order.onHand() + " mL in date left after these jobs" + outBefore(order);
    if (order.rate().isEmpty() && !order.lacking().isPositive()) {
      return List.of(hand + "; no use recorded, so no rate and no date.");
    }
    String when = order.orderBy().map(d -> "order by " + d).orElse("no order due");
    String likely = order.likelyDay().map(d -> " (at the mean rate " + d + ")").orElse("");
    List<String> words = new ArrayList<>();
    words.add(order.amount() + " mL, " + when + likely + "; " + hand + lacking(order) + ".");
    order.rate().ifPresent(r -> words.add(rate(r, order)));
    if (order.staleBeforeEmpty()) {
      words.add(
          "At this rate "
              + order.container()
              + " mL is past its open life before it is empty: buy a smaller one if there is one.");
    }
    return words;
  }

  private static String outBefore(Reorder order) {
    return order.outBefore().isPositive()
        ? " (" + order.outBefore() + " mL more goes out of date before " + order.lastJob() + ")"
        : "";
  }

  private static String lacking(Reorder order) {
    return order.lacking().isPositive() ? ", " + order.lacking() + " mL short" : "";
  }

  private static String rate(UseRate rate, Reorder order) {
    return "used "
        + Numbers.fixed(rate.mlPerDay() * 30, 2)
        + " mL in 30 days ("
        + Numbers.fixed(rate.mlPerDayLimits().low() * 30, 2)
        + " to "
        + Numbers.fixed(rate.mlPerDayLimits().high() * 30, 2)
        + "), "
        + rate.uses()
        + (rate.uses() == 1 ? " use in " : " uses in ")
        + Numbers.plain(rate.days())
        + " days; order at "
        + order.point().map(p -> Numbers.fixed(p.at(), 2)).orElse("")
        + " mL, of it "
        + order.point().map(p -> Numbers.fixed(p.safety(), 2)).orElse("")
        + " mL for safety.";
  }
}
