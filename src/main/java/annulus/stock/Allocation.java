package annulus.stock;

import annulus.stock.JobPlan.Missing;
import annulus.stock.JobPlan.Take;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Assigns lots to jobs in the order of their days, first expired first out. Open lots come before
 * sealed ones of the same class, so that nothing is opened while an open one is in date. A job gets
 * all it needs or takes nothing.
 */
public final class Allocation {
  private final Map<String, Lot> lots = new LinkedHashMap<>();
  private final Cabinet cabinet;
  private final List<JobPlan> plans = new ArrayList<>();

  private Allocation(Cabinet cabinet) {
    this.cabinet = cabinet;
    cabinet.lots().forEach(l -> lots.put(l.lot(), l));
  }

  /**
   * The plans of all jobs and the cabinet afterwards.
   *
   * @param plans in the order of the jobs' days, then of their lines
   * @param after what is left, opened lots marked
   */
  public record Result(List<JobPlan> plans, Cabinet after) {
    public Result {
      plans = List.copyOf(plans);
    }
  }

  /**
   * Plans all jobs.
   *
   * @param cabinet what is there
   * @param today no job is earlier than this
   * @param needs the jobs
   */
  public static Result of(Cabinet cabinet, LocalDate today, List<Need> needs) {
    Allocation allocation = new Allocation(cabinet);
    needs.stream()
        .sorted(Comparator.comparing((Need n) -> later(n.day(), today)).thenComparing(Need::line))
        .forEach(n -> allocation.plan(n, later(n.day(), today)));
    List<Lot> after = List.copyOf(allocation.lots.values());
    return new Result(allocation.plans, new Cabinet(after, cabinet.items()));
  }

  private static LocalDate later(LocalDate a, LocalDate b) {
    return a.isAfter(b) ? a : b;
  }

  private void plan(Need need, LocalDate day) {
    for (Need.Option option : need.options()) {
      Optional<List<Take>> takes = takes(option, day);
      if (takes.isPresent()) {
        takes.get().forEach(t -> draw(t, day));
        plans.add(new JobPlan(need, Optional.of(option), takes.get(), List.of()));
        return;
      }
    }
    List<Missing> missing =
        need.options().isEmpty() ? List.of() : missing(need.options().get(0), day);
    plans.add(new JobPlan(need, Optional.empty(), List.of(), missing));
  }

  private Optional<List<Take>> takes(Need.Option option, LocalDate day) {
    List<Take> takes = new ArrayList<>();
    for (Missing part : parts(option)) {
      Millilitres open = part.amount();
      for (Lot lot : inOrder(part.item(), day)) {
        Millilitres amount = open.atMost(lot.left());
        if (amount.isPositive()) {
          takes.add(new Take(lot.lot(), part.item(), amount, !lot.isOpenOn(day)));
          open = open.minus(amount);
        }
      }
      if (open.isPositive()) {
        return Optional.empty();
      }
    }
    return Optional.of(takes);
  }

  private static List<Missing> parts(Need.Option option) {
    List<Missing> parts = new ArrayList<>();
    parts.add(new Missing(option.item(), option.amount()));
    option.primer().ifPresent(p -> parts.add(new Missing(p, option.primerAmount())));
    return parts;
  }

  private List<Missing> missing(Need.Option option, LocalDate day) {
    List<Missing> missing = new ArrayList<>();
    for (Missing part : parts(option)) {
      Millilitres there =
          inOrder(part.item(), day).stream()
              .map(Lot::left)
              .reduce(Millilitres.NONE, Millilitres::plus);
      Millilitres lacking = part.amount().minus(there);
      if (lacking.isPositive()) {
        missing.add(new Missing(part.item(), lacking));
      }
    }
    return missing;
  }

  /** Open ones first, then the earliest use-by, then the smaller rest, then the lot number. */
  private List<Lot> inOrder(String item, LocalDate day) {
    StockItem what = cabinet.items().get(item);
    return lots.values().stream()
        .filter(l -> l.item().equals(item))
        .map(l -> LotCheck.of(l, what, day, 0))
        .filter(LotCheck::usable)
        .sorted(
            Comparator.comparing((LotCheck c) -> c.lot().isOpenOn(day) ? 0 : 1)
                .thenComparing(c -> c.useBy().orElseThrow().date())
                .thenComparing(c -> c.lot().left())
                .thenComparing(c -> c.lot().lot()))
        .map(LotCheck::lot)
        .toList();
  }

  private void draw(Take take, LocalDate day) {
    lots.computeIfPresent(
        take.lot(), (k, l) -> l.withLeft(l.left().minus(take.amount())).openedOn(day));
  }
}
