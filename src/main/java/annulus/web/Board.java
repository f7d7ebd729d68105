package annulus.web;

import annulus.advice.JointOrder;
import annulus.advice.Knowledge;
import annulus.advice.PromiseDesk;
import annulus.advice.Shop;
import annulus.exchange.LoggerRules;
import annulus.report.PromiseText;
import annulus.stock.Spelling;
import annulus.store.BoreFit;
import annulus.store.BoreTrend;
import annulus.store.CabinetStore;
import annulus.store.Job;
import annulus.store.JobChange;
import annulus.store.JobContent;
import annulus.store.JobState;
import annulus.store.JobStore;
import annulus.store.JobStore.Edit;
import annulus.store.Refused;
import annulus.store.Stamp;
import annulus.store.StoreFailed;
import annulus.store.TemperatureLog;
import annulus.store.Unknown;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/** What can be done with jobs; pages and the JSON interface both go through here. */
final class Board {
  private static final int MOST_ORDERS = 1000;

  /** What the history says of a call for a joint that was not ready after all. */
  static final String CALLED = "customer was called: it is not ready yet";

  private final Knowledge knowledge;
  private final PromiseDesk desk;
  private final JobStore jobs;
  private final Clock clock;
  private final Orders orders;
  private final Judge judge;
  private final ClockWords times;
  private final Closing closing;
  private final JobViews views;
  private final boolean hoursKnown;
  private final Kept<Shown, List<String>> unshown = new Kept<>(MOST_ORDERS);

  /** An order on the form of the bench; of a closed joint the board keeps more itself. */
  private record Shown(String order, boolean closed) {}

  /**
   * @param hoursKnown whether the shop has told its hours
   */
  Board(
      Knowledge knowledge,
      PromiseDesk desk,
      LoggerRules logRules,
      JobStore jobs,
      CabinetStore cabinet,
      Clock clock,
      boolean hoursKnown) {
    this.hoursKnown = hoursKnown;
    this.knowledge = knowledge;
    this.desk = desk;
    this.jobs = jobs;
    this.clock = clock;
    this.orders = new Orders(knowledge, desk.shop());
    this.judge = new Judge(desk, knowledge.catalog(), orders, logRules, this::log);
    this.times = new ClockWords(desk.shop().hours().zone(), clock);
    this.closing = new Closing(jobs, judge, knowledge.catalog().policy(), times);
    this.views = new JobViews(jobs, cabinet, judge, desk.shop());
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

  private TemperatureLog log(Job job, String id) {
    return jobs.log(id).orElseThrow(() -> new StoreFailed(lost(job), null));
  }

  /** Of a log that is lost nothing is left but what was noted when it was taken in. */
  private String lost(Job job) {
    String taken =
        JobChange.inForce(changes(job.id())).stream()
            .filter(c -> c.kind() == JobChange.Kind.LOG)
            .reduce((first, last) -> last)
            .map(c -> " On " + times.past(c.at()) + " " + c.who() + " took in: " + c.words() + ".")
            .orElse("");
    return "Its temperature log is not in the database any more."
        + taken
        + " Take that back and give the file of the logger again, or put the last backup in its"
        + " place.";
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
    JobContent.requireVisible("reference", reference);
    requireVisible(title, bore);
    JointOrder read = orders.read(order, now());
    String kept = orders.kept(order, read, reference, title);
    Answer answer = judge.answer(kept, now());
    JobContent content = JobContent.booked(reference, title, bore, kept, answer.json().toString());
    return jobs.enter(content, stamp(who));
  }

  private static void requireVisible(String title, String bore) {
    JobContent.requireVisible("title", title);
    JobContent.requireVisible("bore", bore);
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
    return views.of(job, now);
  }

  /** What the form of the bench can't show of a job's order; empty when it can show all. */
  List<String> unshownAtTheBench(JobContent content) {
    return unshown.get(
        new Shown(content.order(), content.closedAt().isPresent()),
        () -> new BenchFields(content, times).unshown());
  }

  /**
   * A job as its order is to be typed now: where the joint is late, primer that is on has aged
   * since the planned start.
   */
  JobContent asOfNow(JobContent content) {
    boolean late = content.closedAt().isEmpty() && Orders.start(content.order()).isBefore(now());
    return late
        ? content.ordered(orders.closedAt(content.order(), now().truncatedTo(ChronoUnit.SECONDS)))
        : content;
  }

  /** Today's jobs. */
  JobViews.Today today() {
    return views.today(now());
  }

  /**
   * Jobs whose reference or title holds a text, the newest first, those that are off the board too.
   */
  JobViews.Today named(String part) {
    return views.named(part, now());
  }

  /**
   * Jobs on the board that are called the same.
   *
   * @param but identity of the job that is asked for; empty for one that is not entered yet
   */
  List<Job> sameReference(String reference, String but) {
    return jobs.notOver(reference.strip()).stream().filter(j -> !j.id().equals(but)).toList();
  }

  /** What the jobs on the board are called, sorted. */
  List<String> references() {
    return views.jobs(now()).stream()
        .map(j -> j.content().reference())
        .distinct()
        .sorted()
        .toList();
  }

  /** Whether a recall would find a job by this reference, as one hand or another writes it. */
  boolean isCalled(String reference) {
    return jobs.isCalled(reference.strip())
        || !Spelling.jobsAlike(reference, references()).isEmpty();
  }

  /** Puts a job in another state. */
  Job put(String id, long seen, JobState to, String who) {
    return jobs.change(
        id,
        seen,
        current -> {
          JobView view = view(current);
          if (!view.next().contains(to)) {
            throw new Refused(refusal(view, to));
          }
          return new Edit(JobChange.Kind.STATE, to.words(), current.content().in(to));
        },
        Optional.empty(),
        stamp(who));
  }

  private String refusal(JobView view, JobState to) {
    if ((view.state() == JobState.CURING || view.unsafe()) && to.closed()) {
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
        + String.join(", ", view.next().stream().map(JobState::words).toList())
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
    closing.requireBelievable(job, closed);
    String order = orders.notMoved(orders.closedAt(job.content().order(), closed));
    Answer answer = judge.answer(order, job.createdAt());
    return jobs.change(
        id,
        seen,
        current -> {
          Closing.requireCloseable(view(current), answer);
          String words = "joint closed at " + times.past(closed);
          Optional<String> place = judge.place(order, job.createdAt());
          JobContent content =
              current.content().closed(closed, order, answer.json().toString(), place);
          return new Edit(JobChange.Kind.CLOSED, words, content);
        },
        closing.fit(job, answer, closed),
        stamp(who));
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
    String order = orders.moved(job.content().order(), movedAt(job), moved);
    return jobs.change(
        id,
        seen,
        current -> changed(job, movedAt(times, moved), current.content().ordered(order)),
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
    Answer answer = judge.measured(job.content(), job.createdAt(), log);
    judge.requireRightClock(answer);
    String ready = times.fullOr(answer.told().ready(), "never");
    String words = "temperature log " + log.name() + " read: safe from " + ready;
    return jobs.measure(
        id,
        seen,
        log,
        current -> {
          JobContent content = current.content().measured(log.id(), answer.json().toString());
          return judgedAnew(job, JobChange.Kind.LOG, words, content, answer);
        },
        stamp(who));
  }

  /** A job whose order is another one now; one with a temperature log is judged by it still. */
  private Edit changed(Job job, String words, JobContent content) {
    Answer answer = judge.answer(job.with(content));
    JobContent answered = content.answered(answer.json().toString());
    return judgedAnew(job, JobChange.Kind.ORDER, words, answered, answer);
  }

  /**
   * A job that was checked and is not safe by the answer cures again; of one that was collected
   * before it was safe, the customer has to be called.
   */
  private Edit judgedAnew(
      Job job, JobChange.Kind kind, String words, JobContent content, Answer answer) {
    JobState state = content.state();
    boolean checked = state == JobState.CHECKED || state == JobState.CUSTOMER_TOLD;
    if (checked && !answer.isSafe(now())) {
      return new Edit(kind, words + ", so it is curing again", content.in(JobState.CURING));
    }
    if (state.collected() && !answer.isSafe(collectedAt(job))) {
      String call = words + "; it has been collected, so call the customer";
      return new Edit(kind, call, content.in(JobState.CALL_CUSTOMER));
    }
    return new Edit(kind, words, content);
  }

  private Instant collectedAt(Job job) {
    return JobChange.inForce(changes(job.id())).stream()
        .filter(c -> c.kind() == JobChange.Kind.STATE)
        .filter(c -> c.state().equals(Optional.of(JobState.COLLECTED)))
        .map(JobChange::at)
        .reduce((earlier, later) -> later)
        .orElse(job.changedAt());
  }

  /** What the history says of a part that was moved. */
  static String movedAt(ClockWords times, Instant at) {
    return "part was moved at " + times.past(at);
  }

  private Optional<Instant> movedAt(Job job) {
    return judge.movedAt(job.content(), job.createdAt());
  }

  /** Replaces the order of a job; a closed joint keeps when it was closed and when it was moved. */
  Job reorder(String id, long seen, String title, String bore, String order, String who) {
    requireVisible(title, bore);
    Job job = job(id);
    JointOrder read = orders.read(order, now());
    String pinned = orders.kept(order, read, job.content().reference(), title);
    String kept = job.content().closedAt().map(c -> ofClosed(job, c, pinned, read)).orElse(pinned);
    return jobs.change(
        id,
        seen,
        current -> {
          JobContent was = current.content();
          JobContent typed = was.with(title, bore, kept, was.advice());
          JobContent becomes =
              was.closedAt().isPresent()
                  ? typed.curingIn(judge.place(kept, was, job.createdAt()))
                  : typed;
          return changed(job, whatChanged(was, becomes), becomes);
        },
        Optional.empty(),
        stamp(who));
  }

  private String whatChanged(JobContent before, JobContent now) {
    return new OrderChanges(new Choices(knowledge, shop()), times).words(before, now);
  }

  private String ofClosed(Job job, Instant closed, String order, JointOrder read) {
    String started = orders.startingAt(order, closed);
    return movedAt(job).map(m -> orders.moved(started, read.movedAt(), m)).orElse(started);
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
    long days = (long) knowledge.catalog().policy().value("start-horizon-days");
    if (Duration.between(now(), when).compareTo(Duration.ofDays(days)) > 0) {
      throw new Refused(
          times.full(when) + " is more than " + days + " days from now. " + first(view));
    }
  }

  private String first(JobView view) {
    return "The first time that can be kept is " + times.full(view.promisable().get()) + ".";
  }

  /**
   * Notes that the customer, who was told that it is ready, knows now that it is not.
   *
   * @throws Refused when the customer was not told so
   */
  Job called(String id, long seen, String who) {
    return jobs.change(
        id,
        seen,
        current -> {
          if (!view(current).toldTooEarly()) {
            throw new Refused("The customer was not told that it is ready: nobody has to call.");
          }
          return new Edit(JobChange.Kind.PROMISE, CALLED, current.content().customerCalled());
        },
        Optional.empty(),
        stamp(who));
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
}
