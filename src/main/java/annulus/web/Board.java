package annulus.web;

import annulus.advice.Advice;
import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.PromiseDesk;
import annulus.advice.Shop;
import annulus.exchange.InputRefused;
import annulus.exchange.LoggerRules;
import annulus.handback.Promise;
import annulus.measure.MeasuredDiameter;
import annulus.quantity.InvalidValue;
import annulus.report.PromiseText;
import annulus.store.BoreFit;
import annulus.store.BoreTrend;
import annulus.store.Job;
import annulus.store.JobChange;
import annulus.store.JobContent;
import annulus.store.JobState;
import annulus.store.JobStore;
import annulus.store.JobStore.Edit;
import annulus.store.Refused;
import annulus.store.Stamp;
import annulus.store.TemperatureLog;
import annulus.store.Unknown;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;

/** What can be done with jobs; pages and the JSON interface both go through here. */
final class Board {
  private static final Duration SHOWN_AFTER_COLLECTION = Duration.ofHours(12);

  private final Knowledge knowledge;
  private final PromiseDesk desk;
  private final JobStore jobs;
  private final Clock clock;
  private final Orders orders;
  private final Judge judge;
  private final ClockWords times;
  private final boolean hoursKnown;

  /**
   * @param hoursKnown whether the shop has told its hours
   */
  Board(
      Knowledge knowledge,
      PromiseDesk desk,
      LoggerRules logRules,
      JobStore jobs,
      Clock clock,
      boolean hoursKnown) {
    this.hoursKnown = hoursKnown;
    this.knowledge = knowledge;
    this.desk = desk;
    this.jobs = jobs;
    this.clock = clock;
    this.orders = new Orders(knowledge, desk.shop());
    this.judge = new Judge(desk, knowledge.catalog(), orders, logRules, this::log);
    this.times = new ClockWords(desk.shop().hours().zone());
  }

  Instant now() {
    return clock.instant();
  }

  Shop shop() {
    return desk.shop();
  }

  PromiseDesk desk() {
    return desk;
  }

  Knowledge knowledge() {
    return knowledge;
  }

  ClockWords times() {
    return times;
  }

  /** Whether the shop has told its hours; else every time counts as open. */
  boolean hoursKnown() {
    return hoursKnown;
  }

  private TemperatureLog log(String id) {
    return jobs.log(id).orElseThrow(() -> new Unknown("There is no temperature log " + id + "."));
  }

  Stamp stamp(String who) {
    return new Stamp(who, now());
  }

  /** The answer to an order as typed. */
  Answer judge(String order) {
    return judge.judged(orders.read(order, now()));
  }

  /** Enters a job. */
  Job enter(String reference, String title, String bore, String order, String who) {
    JointOrder read = orders.read(order, now());
    String kept = orders.kept(order, read, reference, title);
    Answer answer = judge.answer(kept, now());
    JobContent content = JobContent.booked(reference, title, bore, kept, answer.json().toString());
    return jobs.enter(content, stamp(who));
  }

  Job job(String id) {
    return jobs.job(id).orElseThrow(() -> new Unknown("There is no job " + id + "."));
  }

  List<JobChange> changes(String id) {
    return jobs.changes(id);
  }

  /** A job as it stands now. */
  JobView view(Job job) {
    return view(job, now());
  }

  JobView view(Job job, Instant now) {
    return view(job, now, from -> shop().rule().promise(from, shop().hours()));
  }

  private JobView view(Job job, Instant now, Function<Instant, Optional<Promise>> promises) {
    String order = job.content().order();
    JobState stored = job.content().state();
    boolean late = !stored.closed() && now.isAfter(judge.start(order, job.createdAt()));
    Answer answer =
        late
            ? judge.ifClosed(order, job.createdAt(), now)
            : judge.answer(job.content(), job.createdAt());
    JobState state = stored.at(now, answer.told().ready());
    return new JobView(job, answer, state, late, promisable(answer, now, promises), now);
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
   * The jobs of a day.
   *
   * @param now the moment they are judged for
   * @param views those that slip first, then by the time the customer was told
   * @param unjudged jobs that the data tables of today can't judge, with what is wrong
   */
  record Today(Instant now, List<JobView> views, Map<Job, String> unjudged) {
    /** Those whose joint is still open. */
    List<JobView> open() {
      return views.stream().filter(v -> !v.state().closed()).toList();
    }
  }

  /** Today's jobs. */
  Today today() {
    Instant now = now();
    List<JobView> views = new ArrayList<>();
    Map<Job, String> unjudged = new LinkedHashMap<>();
    Map<Instant, Optional<Promise>> promises =
        new HashMap<>(); // many jobs are safe already: from now
    Function<Instant, Optional<Promise>> promise =
        from -> promises.computeIfAbsent(from, f -> shop().rule().promise(f, shop().hours()));
    for (Job job : jobs.onTheBoard(now.minus(SHOWN_AFTER_COLLECTION))) {
      try {
        views.add(view(job, now, promise));
      } catch (InputRefused | InvalidValue e) {
        unjudged.put(job, e.getMessage());
      }
    }
    views.sort(ORDER);
    return new Today(now, List.copyOf(views), unjudged);
  }

  private static final Comparator<JobView> ORDER =
      Comparator.<JobView, Integer>comparing(v -> v.slips() ? 0 : 1)
          .thenComparing(v -> v.state() == JobState.COLLECTED ? 1 : 0)
          .thenComparing(v -> v.promised().or(v::promisable).orElse(Instant.MAX))
          .thenComparing(v -> v.job().createdAt())
          .thenComparing(v -> v.job().id());

  /** Puts a job in another state. */
  Job put(String id, long seen, JobState to, String who) {
    return jobs.change(
        id,
        seen,
        current -> {
          JobView view = view(current);
          if (!view.state().next().contains(to)) {
            throw new Refused(refusal(view, to));
          }
          return new Edit(JobChange.Kind.STATE, to.words(), current.content().in(to));
        },
        Optional.empty(),
        stamp(who));
  }

  private String refusal(JobView view, JobState to) {
    if (view.state() == JobState.CURING && to.closed()) {
      return "It is not safe before "
          + times.fullOr(view.ready(), "a time that can't be told")
          + ". It can't be "
          + to.words()
          + " yet.";
    }
    return "A job that is "
        + view.state().words()
        + " can't become "
        + to.words()
        + ". It may become: "
        + String.join(", ", view.state().next().stream().map(JobState::words).toList())
        + ".";
  }

  /**
   * Closes the joint: everything is reckoned from this time.
   *
   * @param at empty for now
   */
  Job close(String id, long seen, Optional<Instant> at, String who) {
    Instant now = now();
    Instant closed = at.orElse(now).truncatedTo(ChronoUnit.SECONDS);
    if (closed.isAfter(now)) {
      throw new Refused("The joint can't be closed in the future; it is " + times.past(now) + ".");
    }
    Job job = job(id);
    requireBelievable(job, closed);
    String order = orders.startingAt(orders.notMoved(job.content().order()), closed);
    Answer answer = judge.answer(order, job.createdAt());
    return jobs.change(
        id,
        seen,
        current -> {
          requireCloseable(view(current), answer);
          String words = "joint closed at " + times.past(closed);
          JobContent content = current.content().closed(closed, order, answer.json().toString());
          return new Edit(JobChange.Kind.CLOSED, words, content);
        },
        fit(job, answer, closed),
        stamp(who));
  }

  /**
   * A closing time typed wrong by days would make a wet joint safe at once: one before the day on
   * which the job was entered has to agree with the start of the order, and a joint that was taken
   * apart can't have been closed again before that.
   */
  private void requireBelievable(Job job, Instant closed) {
    Instant start = judge.start(job.content().order(), job.createdAt());
    Instant known = start.isBefore(job.createdAt()) ? start : job.createdAt();
    if (times.dayOf(closed).isBefore(times.dayOf(known))) {
      throw new Refused(
          "Closed "
              + times.past(closed)
              + "? The job was entered "
              + times.past(job.createdAt())
              + " and its order starts "
              + times.past(start)
              + ". If it really was closed before, change the start in the order first.");
    }
    lastClosing(job)
        .filter(last -> closed.isBefore(last.at()))
        .ifPresent(
            last -> {
              throw new Refused(
                  "Closed "
                      + times.past(closed)
                      + "? It was closed before and has been taken apart since: \""
                      + last.words()
                      + "\". It can only have been closed again after that.");
            });
  }

  private Optional<JobChange> lastClosing(Job job) {
    List<JobChange> changes = jobs.changes(job.id());
    Set<Long> undone = new HashSet<>();
    changes.forEach(c -> c.undoes().ifPresent(undone::add));
    return changes.stream()
        .filter(c -> c.kind() == JobChange.Kind.CLOSED && !undone.contains(c.id()))
        .reduce((first, second) -> second);
  }

  private static void requireCloseable(JobView view, Answer answer) {
    if (!view.state().mayClose()) {
      throw new Refused("A job that is " + view.state().words() + " has no joint to close.");
    }
    if (!answer.isYes()) {
      throw new Refused(
          "The answer for this joint is no: " + answer.decision() + ". It can't be closed.");
    }
  }

  /**
   * The part was moved after closing: it may have to come apart again.
   *
   * @param at empty for now
   */
  Job moved(String id, long seen, Optional<Instant> at, String who) {
    Instant now = now();
    Instant moved = at.orElse(now).truncatedTo(ChronoUnit.SECONDS);
    Job job = job(id);
    Instant closed =
        job.content()
            .closedAt()
            .orElseThrow(() -> new Refused("The joint is not closed; nothing was moved."));
    if (moved.isAfter(now) || moved.isBefore(closed)) {
      throw new Refused("It can only have been moved between closing and now.");
    }
    String order = orders.moved(job.content().order(), moved);
    Answer answer = judge.answer(order, job.createdAt());
    return jobs.change(
        id,
        seen,
        current -> {
          JobContent was = current.content();
          return new Edit(
              JobChange.Kind.ORDER,
              "part was moved at " + times.past(moved),
              was.with(was.title(), was.bore(), order, answer.json().toString()));
        },
        Optional.empty(),
        stamp(who));
  }

  /**
   * A log that was read out.
   *
   * @param name name of the file
   * @param text all of it
   * @param dateOrder {@code day-first}, {@code month-first} or empty
   * @param unit {@code C}, {@code F} or empty
   * @param column header of the column, or empty
   */
  record GivenLog(String name, String text, String dateOrder, String unit, String column) {}

  /**
   * Judges a closed joint by the temperature it really had until now, and by the plan after that. A
   * job that was checked and is not safe by the log is curing again.
   */
  Job measure(String id, long seen, GivenLog given, String who) {
    Instant now = now();
    Job job = job(id);
    if (job.content().closedAt().isEmpty()) {
      throw new Refused("The joint is not closed; there is nothing to judge by a log yet.");
    }
    TemperatureLog log =
        new TemperatureLog(
            UUID.randomUUID().toString(),
            given.name(),
            given.text(),
            given.dateOrder(),
            given.unit(),
            given.column(),
            now.truncatedTo(ChronoUnit.MILLIS));
    Answer answer = judge.measured(job.content().order(), job.createdAt(), log);
    boolean safe = answer.told().ready().filter(r -> !r.isAfter(now)).isPresent();
    return jobs.measure(
        id, seen, log, current -> measured(current.content(), log, answer, safe), stamp(who));
  }

  private Edit measured(JobContent current, TemperatureLog log, Answer answer, boolean safe) {
    boolean here = current.state().closed() && current.state() != JobState.COLLECTED;
    boolean again = !safe && here && current.state() != JobState.CURING;
    String ready = times.fullOr(answer.told().ready(), "never");
    String words =
        "temperature log "
            + log.name()
            + " read: safe from "
            + ready
            + (again ? ", so it is curing again" : "");
    JobState state = again ? JobState.CURING : current.state();
    return new Edit(
        JobChange.Kind.LOG, words, current.measured(log.id(), answer.json().toString(), state));
  }

  private static Optional<BoreFit> fit(Job job, Answer answer, Instant closed) {
    String bore = job.content().bore();
    Optional<MeasuredDiameter> measured = answer.told().advice().gap().bore();
    if (bore.isBlank() || measured.isEmpty()) {
      return Optional.empty();
    }
    double doubt = measured.get().budget().expandedUm(0.95);
    return Optional.of(
        new BoreFit(bore, job.content().reference(), closed, measured.get().meanMm(), doubt));
  }

  /** Replaces the order of a job; a closed joint keeps its closing time. */
  Job reorder(String id, long seen, String title, String bore, String order, String who) {
    Job job = job(id);
    JointOrder read = orders.read(order, now());
    String pinned = orders.kept(order, read, job.content().reference(), title);
    String kept = job.content().closedAt().map(c -> orders.startingAt(pinned, c)).orElse(pinned);
    Answer answer = judge.answer(kept, job.createdAt());
    return jobs.change(
        id,
        seen,
        current ->
            new Edit(
                JobChange.Kind.ORDER,
                "order changed",
                current.content().with(title, bore, kept, answer.json().toString())),
        Optional.empty(),
        stamp(who));
  }

  /**
   * Notes what the customer was told.
   *
   * @param when empty to take the promise back
   * @throws Refused for a time before the joint is safe and checked
   */
  Job promise(String id, long seen, Optional<Instant> when, String who) {
    return jobs.change(
        id,
        seen,
        current -> {
          JobView view = view(current);
          when.ifPresent(w -> requireKept(view, w));
          String words =
              when.map(w -> "customer was told " + times.full(w)).orElse("promise taken back")
                  + current.content().promised().map(p -> "; it was " + times.full(p)).orElse("");
          JobContent content =
              current.content().promising(when, when.map(w -> view.answer().order().start()));
          return new Edit(JobChange.Kind.PROMISE, words, content);
        },
        Optional.empty(),
        stamp(who));
  }

  private void requireKept(JobView view, Instant when) {
    if (view.promisable().isEmpty()) {
      throw new Refused("Nothing can be promised: the answer for this joint is no.");
    }
    if (!shop().hours().isOpen(when)) {
      throw new Refused(
          "The shop is closed at "
              + times.full(when)
              + PromiseText.closedFor(when, shop().hours())
              + ". "
              + first(view));
    }
    if (when.isBefore(view.promisable().get())) {
      throw new Refused(times.full(when) + " is too early. " + first(view));
    }
  }

  private String first(JobView view) {
    return "The first time that can be kept is " + times.full(view.promisable().get()) + ".";
  }

  /** Takes back the last change. */
  Job undo(String id, long seen, String who) {
    return jobs.undo(id, seen, stamp(who));
  }

  /** How a bore has opened; empty before the second fit. */
  Optional<BoreTrend> trend(String bore) {
    List<BoreFit> fits = bore.isBlank() ? List.of() : jobs.fits(bore);
    return fits.size() < 2 ? Optional.empty() : Optional.of(BoreTrend.of(fits));
  }

  List<BoreFit> fits(String bore) {
    return bore.isBlank() ? List.of() : jobs.fits(bore);
  }

  List<String> bores() {
    return jobs.bores();
  }

  /** Why a promise can't be kept, in words. */
  String slipWhy(JobView view) {
    Instant promised = view.promised().orElseThrow();
    String now =
        view.promisable()
            .map(p -> "The first time that can be kept now is " + times.full(p) + ". ")
            .orElse("No time can be promised now. ");
    return now + reason(view, promised);
  }

  /** Whether the promise could be kept by the plan, and can't by the log. */
  private static boolean byLog(JobView view, Instant promised) {
    return view.answer().measured().filter(m -> m.again().planned().meets(promised)).isPresent();
  }

  private String reason(JobView view, Instant promised) {
    Advice advice = view.answer().told().advice();
    if (!view.answer().isYes()) {
      return "The answer is no: " + view.answer().decision();
    }
    if (view.state() == JobState.CURED_TO_CHECK) {
      return "It is cured since " + times.full(view.ready().orElseThrow()) + " and not checked.";
    }
    Instant planned = view.job().content().promisedStart().orElse(promised);
    Duration later = Duration.between(planned, advice.order().start());
    if (byLog(view, promised)) {
      return "By the temperature log the joint cures later than planned.";
    }
    if (view.late()) {
      return "It was to be closed at " + times.full(planned) + " and is still open.";
    }
    if (later.compareTo(Duration.ofMinutes(1)) > 0) {
      return "It was closed "
          + ClockWords.length(later)
          + " later than the promise was reckoned from.";
    }
    return "The order has changed since the promise was given.";
  }
}
