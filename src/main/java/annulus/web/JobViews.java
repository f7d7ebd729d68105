package annulus.web;

import annulus.advice.Shop;
import annulus.exchange.InputRefused;
import annulus.handback.Promise;
import annulus.quantity.InvalidValue;
import annulus.report.PromiseText;
import annulus.stock.HeldUses;
import annulus.store.CabinetStore;
import annulus.store.Job;
import annulus.store.JobState;
import annulus.store.JobStore;
import annulus.store.StoreFailed;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Jobs as they stand at a moment. */
final class JobViews {
  private static final Duration SHOWN_AFTER_COLLECTION = Duration.ofHours(12);

  /** Of one search. */
  static final int MOST_FOUND = 50;

  private static final Comparator<JobView> ORDER =
      Comparator.<JobView, Integer>comparing(v -> v.urgent() ? 0 : 1)
          .thenComparing(v -> v.state().over() ? 1 : 0)
          .thenComparing(v -> v.promised().or(v::promisable).orElse(Instant.MAX))
          .thenComparing(v -> v.job().createdAt())
          .thenComparing(v -> v.job().id());

  private final JobStore jobs;
  private final CabinetStore cabinet;
  private final Judge judge;
  private final Shop shop;

  JobViews(JobStore jobs, CabinetStore cabinet, Judge judge, Shop shop) {
    this.jobs = jobs;
    this.cabinet = cabinet;
    this.judge = judge;
    this.shop = shop;
  }

  /** A job as it stands at a moment. */
  JobView of(Job job, Instant now) {
    return of(job, now, cabinet.heldUses(), from -> shop.rule().promise(from, shop.hours()));
  }

  private JobView of(
      Job job, Instant now, HeldUses held, Function<Instant, Optional<Promise>> promises) {
    String order = job.content().order();
    JobState stored = job.content().state();
    boolean late = !stored.closed() && now.isAfter(judge.start(order, job.createdAt()));
    Answer answer = late ? judge.ifClosed(order, job.createdAt(), now) : judge.answer(job);
    JobState state = stored.at(now, answer.told().ready());
    Optional<Instant> promisable = promisable(answer, now, promises);
    List<HeldUses.Use> heldBack = held.of(job.content().reference());
    return new JobView(job, answer, state, late, promisable, heldBack, shut(job), now);
  }

  private Optional<String> shut(Job job) {
    return job.content()
        .promised()
        .filter(p -> !shop.hours().isOpen(p))
        .map(p -> PromiseText.closedFor(p, shop.hours()));
  }

  /** The first time that can be promised: safe, checked after this moment, and the shop is open. */
  private static Optional<Instant> promisable(
      Answer answer, Instant now, Function<Instant, Optional<Promise>> promises) {
    return answer
        .told()
        .ready()
        .map(r -> r.isAfter(now) ? r : now)
        .flatMap(promises)
        .map(Promise::promise);
  }

  /**
   * The jobs of a day, or of a search.
   *
   * @param now the moment they are judged for
   * @param views of a day: those that slip first, then by the time the customer was told
   * @param unjudged jobs that can't be judged, with what is wrong
   */
  record Today(Instant now, List<JobView> views, Map<Job, String> unjudged) {
    /** Those whose joint is still open. */
    List<JobView> open() {
      return views.stream().filter(v -> !v.state().closed()).toList();
    }
  }

  /** What is wrong with a job that can't be judged; a fault of the program by its name too. */
  static String problem(RuntimeException e) {
    boolean told =
        e instanceof InputRefused || e instanceof InvalidValue || e instanceof StoreFailed;
    return told ? e.getMessage() : e.toString();
  }

  /** The jobs on the board at a moment, as stored. */
  List<Job> jobs(Instant now) {
    return jobs.onTheBoard(now.minus(SHOWN_AFTER_COLLECTION));
  }

  /** The jobs of the day of a moment. */
  Today today(Instant now) {
    Today today = judged(jobs(now), now);
    List<JobView> views = new ArrayList<>(today.views());
    views.sort(ORDER);
    return new Today(now, List.copyOf(views), today.unjudged());
  }

  /** Jobs whose reference holds a text, the newest first, whether they are over or not. */
  Today named(String part, Instant now) {
    return judged(jobs.named(part, MOST_FOUND), now);
  }

  private Today judged(List<Job> found, Instant now) {
    List<JobView> views = new ArrayList<>();
    Map<Job, String> unjudged = new LinkedHashMap<>();
    Map<Instant, Optional<Promise>> promises =
        new HashMap<>(); // many jobs are safe already: from now
    Function<Instant, Optional<Promise>> promise =
        from -> promises.computeIfAbsent(from, f -> shop.rule().promise(f, shop.hours()));
    HeldUses held = cabinet.heldUses();
    for (Job job : found) {
      try {
        views.add(of(job, now, held, promise));
      } catch (RuntimeException e) { // whatever it is, it is wrong with this job alone
        unjudged.put(job, problem(e));
      }
    }
    return new Today(now, List.copyOf(views), unjudged);
  }
}
