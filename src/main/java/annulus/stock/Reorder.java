package annulus.stock;

import annulus.catalog.Policy;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What to order and when.
 *
 * @param item id of the class or primer
 * @param onHand what may be used after the planned jobs, on the day of the last of them
 * @param outBefore what may be used today and goes out of date before that day
 * @param lastJob the day of the last planned job, today if there is none to come
 * @param lacking what the planned jobs lack
 * @param rate the measured rate of use; empty when none was recorded
 * @param point reorder point at that rate
 * @param orderBy day to order at the upper limit of the rate, lots counted to their use-by only, or
 *     so that it comes before the first job that is short; empty when nothing asks for an order
 * @param likelyDay day the stock reaches the reorder point at the mean rate, lots counted to their
 *     use-by only
 * @param amount how much to order, in whole containers
 * @param container size of a container
 * @param staleBeforeEmpty whether such a container outlives its use-by at the mean rate
 */
public record Reorder(
    String item,
    Millilitres onHand,
    Millilitres outBefore,
    LocalDate lastJob,
    Millilitres lacking,
    Optional<UseRate> rate,
    Optional<ReorderPoint> point,
    Optional<LocalDate> orderBy,
    Optional<LocalDate> likelyDay,
    Millilitres amount,
    Millilitres container,
    boolean staleBeforeEmpty) {
  private static final double DAYS_PER_MONTH = 30.4375;
  private static final long FAR = 3650;

  /**
   * The list for everything that is in the cabinet, is lacking or has been used.
   *
   * @param after the cabinet after the planned jobs
   * @param plans the planned jobs
   * @param ledger all movements
   * @param today the day
   * @param policy the numbers of the stock
   */
  public static List<Reorder> list(
      Cabinet after, List<JobPlan> plans, Ledger ledger, LocalDate today, Policy policy) {
    List<Reorder> list = new ArrayList<>();
    for (StockItem item : after.items().values()) {
      Millilitres lacking = lacking(plans, item.id());
      Optional<UseRate> rate =
          UseRate.of(
              ledger,
              item.id(),
              today,
              policy.value("rate-window-days"),
              policy.value("rate-level"));
      boolean held = after.lots().stream().anyMatch(l -> l.item().equals(item.id()));
      if (held || lacking.isPositive() || rate.isPresent()) {
        list.add(of(after, item, plans, rate, today, policy));
      }
    }
    return list;
  }

  private static Millilitres lacking(List<JobPlan> plans, String item) {
    return plans.stream()
        .flatMap(p -> p.missing().stream())
        .filter(m -> m.item().equals(item))
        .map(JobPlan.Missing::amount)
        .reduce(Millilitres.NONE, Millilitres::plus);
  }

  private static Reorder of(
      Cabinet after,
      StockItem item,
      List<JobPlan> plans,
      Optional<UseRate> rate,
      LocalDate today,
      Policy policy) {
    Millilitres lacking = lacking(plans, item.id());
    List<LotCheck> usable = usable(after, plans, item, today);
    LocalDate lastJob = lastJob(plans, today);
    Millilitres onHand = sum(after(usable, lastJob.minusDays(1)));
    Optional<ReorderPoint> point = rate.map(r -> point(r, policy));
    Optional<LocalDate> likely =
        rate.map(r -> at(r.mlPerDay(), usable, point.orElseThrow(), today, policy))
            .map(d -> d.isBefore(today) ? today : d)
            .filter(d -> d.isBefore(today.plusDays(FAR)));
    Optional<LocalDate> orderBy =
        Stream.of(
                firstShort(plans, item.id()).map(d -> d.minusDays(slowLead(policy))),
                rate.map(
                    r -> at(r.mlPerDayLimits().high(), usable, point.orElseThrow(), today, policy)))
            .flatMap(Optional::stream)
            .min(LocalDate::compareTo)
            .map(d -> d.isBefore(today) ? today : d);
    Millilitres container = container(after, item, policy);
    double wanted = lacking.value();
    if (rate.isPresent()) {
      double daily = rate.get().mlPerDay();
      double short0 = Math.max(0, point.orElseThrow().at() - onHand.value());
      wanted += daily * policy.value("order-cover-days") + short0;
    }
    long containers = (long) Math.ceil(wanted / container.value() - 1e-9);
    Millilitres amount = new Millilitres(container.microlitres() * Math.max(0, containers));
    boolean stale =
        rate.isPresent()
            && container.value() / rate.get().mlPerDay() > item.openMonths() * DAYS_PER_MONTH;
    return new Reorder(
        item.id(),
        onHand,
        sum(usable).minus(onHand),
        lastJob,
        lacking,
        rate,
        point,
        orderBy,
        likely,
        amount,
        container,
        stale);
  }

  private static LocalDate lastJob(List<JobPlan> plans, LocalDate today) {
    return plans.stream()
        .map(p -> p.need().day())
        .filter(today::isBefore)
        .max(LocalDate::compareTo)
        .orElse(today);
  }

  private static ReorderPoint point(UseRate rate, Policy policy) {
    return ReorderPoint.of(
        rate.mlPerDay(),
        rate.sdPerDay(),
        policy.value("lead-days"),
        policy.value("lead-sd-days"),
        policy.value("service-level"));
  }

  /** What may be used; a lot that a planned job opens, from that day on. */
  private static List<LotCheck> usable(
      Cabinet after, List<JobPlan> plans, StockItem item, LocalDate today) {
    return after.lots().stream()
        .filter(l -> l.item().equals(item.id()))
        .map(l -> LotCheck.of(l, item, opening(plans, l).orElse(today), 0))
        .filter(c -> c.usable() && !c.useBy().orElseThrow().date().isBefore(today))
        .toList();
  }

  private static Optional<LocalDate> opening(List<JobPlan> plans, Lot lot) {
    boolean opens =
        plans.stream()
            .flatMap(p -> p.takes().stream())
            .anyMatch(t -> t.opens() && t.lot().equals(lot.lot()));
    return opens ? lot.opened() : Optional.empty();
  }

  private static Millilitres sum(List<LotCheck> lots) {
    return lots.stream().map(c -> c.lot().left()).reduce(Millilitres.NONE, Millilitres::plus);
  }

  /**
   * When to order at a rate, no stock counted past its use-by. Whenever lots go out of date, those
   * that stay have to last from then on.
   */
  private static LocalDate at(
      double mlPerDay,
      List<LotCheck> usable,
      ReorderPoint reorder,
      LocalDate today,
      Policy policy) {
    double point = reorder.at();
    LocalDate by = usable.isEmpty() ? today : reached(today, sum(usable).value() - point, mlPerDay);
    for (LotCheck check : usable) {
      LocalDate end = check.useBy().orElseThrow().date();
      double ahead = sum(after(usable, end)).value() - point;
      LocalDate then = ahead > 0 ? reached(end, ahead, mlPerDay) : end.minusDays(slowLead(policy));
      by = then.isBefore(by) ? then : by;
    }
    return by;
  }

  private static List<LotCheck> after(List<LotCheck> usable, LocalDate end) {
    return usable.stream().filter(c -> c.useBy().orElseThrow().date().isAfter(end)).toList();
  }

  /** Days to allow for an order at the wanted service level. */
  private static long slowLead(Policy policy) {
    ReorderPoint days =
        ReorderPoint.of(
            1,
            0,
            policy.value("lead-days"),
            policy.value("lead-sd-days"),
            policy.value("service-level"));
    return (long) Math.ceil(days.at());
  }

  private static Optional<LocalDate> firstShort(List<JobPlan> plans, String item) {
    return plans.stream()
        .filter(p -> p.missing().stream().anyMatch(m -> m.item().equals(item)))
        .map(p -> p.need().day())
        .min(LocalDate::compareTo);
  }

  private static LocalDate reached(LocalDate today, double ahead, double perDay) {
    return ahead <= 0 ? today : today.plusDays(Math.min(FAR, (long) (ahead / perDay)));
  }

  private static Millilitres container(Cabinet after, StockItem item, Policy policy) {
    return after.lots().stream()
        .filter(l -> l.item().equals(item.id()))
        .map(Lot::container)
        .min(Millilitres::compareTo)
        .orElse(Millilitres.of(policy.value("default-container-ml")));
  }
}
