package annulus.web;

import annulus.catalog.Stage;
import annulus.stock.HeldUses;
import annulus.store.Job;
import annulus.store.JobState;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A job as it stands at one moment: what every screen shows of it.
 *
 * @param job as stored
 * @param answer as closed, or as planned, or as if closed now when the planned start has passed
 * @param state with the clock taken into account
 * @param late whether the joint is open though its planned start has passed
 * @param promisable the first time that could be promised at this moment
 * @param heldBack what it got of lots that are held back now
 * @param shut why the shop is closed at the promised time, in brackets after a space or nothing;
 *     empty where it is open then
 * @param now the moment
 */
record JobView(
    Job job,
    Answer answer,
    JobState state,
    boolean late,
    Optional<Instant> promisable,
    List<HeldUses.Use> heldBack,
    Optional<String> shut,
    Instant now) {
  /** Earliest safe hand-back. */
  Optional<Instant> ready() {
    return answer.told().ready();
  }

  Optional<Instant> promised() {
    return job.content().promised();
  }

  /** What the customer was told, else what can be promised of a joint that is still here. */
  Optional<Instant> promise() {
    return promised().or(() -> state.collected() ? Optional.empty() : promisable);
  }

  private boolean stillToCome() {
    return state.compareTo(JobState.CHECKED) < 0;
  }

  /** Whether what the customer was told can't be kept. */
  boolean slips() {
    return comesLater() || comesToAClosedDoor();
  }

  /** Whether the joint can't be safe and checked at the promised time. */
  boolean comesLater() {
    if (promised().isEmpty() || !stillToCome()) {
      return false;
    }
    boolean passed = now.isAfter(promised().get());
    boolean early = promisable().isPresent() && !promisable().get().isAfter(promised().get());
    return passed || !early;
  }

  /** Whether the customer was told a time, still to come, at which the shop is closed by now. */
  boolean comesToAClosedDoor() {
    return shut.isPresent() && !state.collected() && !now.isAfter(promised().orElseThrow());
  }

  /** Whether it was checked or handed over though it is not safe by what is known now. */
  boolean unsafe() {
    boolean gone = state.compareTo(JobState.CHECKED) >= 0;
    return gone && !answer.isSafe(now);
  }

  /** Whether the customer has to be called: has it and should not use it, or may come in vain. */
  boolean callDue() {
    return goneTooEarly() || toldTooEarly();
  }

  /** Whether the customer was told that it is ready, it is not, and nobody has called. */
  boolean toldTooEarly() {
    return job.content().toldReady() && stillToCome();
  }

  /** Whether it has to be looked at first. */
  boolean urgent() {
    return callDue() || (!state.over() && (slips() || unsafe()));
  }

  /** Whether the customer has it, should not use it, and has not been called. */
  boolean goneTooEarly() {
    return state == JobState.CALL_CUSTOMER || (state == JobState.COLLECTED && unsafe());
  }

  /** Where it may go from here; one that is not safe can only be taken apart. */
  List<JobState> next() {
    if (goneTooEarly()) {
      return JobState.CALL_CUSTOMER.next();
    }
    return state.next().stream().filter(s -> !unsafe() || !s.closed()).toList();
  }

  /**
   * The one time to go by: what the customer was told, unless only another time can be kept. A time
   * that is not safe is never shown large.
   */
  Optional<Instant> goBy() {
    boolean later =
        slips() && promisable.filter(p -> p.isAfter(promised().orElseThrow())).isPresent();
    return slips() && (later || promisable.isEmpty() || comesToAClosedDoor())
        ? promisable
        : promised().or(() -> promisable);
  }

  /**
   * The time that a screen shows large: the one to go by, or from when it is safe where it was
   * checked or handed over too early. Of what the customer has, nothing is to be promised.
   */
  Optional<Instant> large() {
    if (unsafe()) {
      return ready();
    }
    return state.collected() ? Optional.empty() : goBy();
  }

  /**
   * What a tag on the part may say: what the customer was told, or the other time that alone can be
   * kept; empty without a promise and where the joint is never safe.
   */
  Optional<Instant> notBefore() {
    if (promised().isEmpty() || ready().isEmpty()) {
      return Optional.empty();
    }
    return Stream.of(promised().filter(p -> !comesToAClosedDoor()), ready(), goBy())
        .flatMap(Optional::stream)
        .max(Comparator.naturalOrder());
  }

  /** The last stage that is surely reached, while curing. */
  Optional<Stage> stage() {
    Stage found = null;
    for (Stage stage : Stage.values()) {
      boolean reached = reached(stage).filter(t -> !t.isAfter(now)).isPresent();
      found = reached ? stage : found;
    }
    return Optional.ofNullable(found);
  }

  /** When a stage is surely reached. */
  Optional<Instant> reached(Stage stage) {
    return answer
        .told()
        .advice()
        .cure()
        .flatMap(c -> c.at(stage).sure())
        .map(d -> answer.order().start().plus(d));
  }

  /** Time from now until the safe time. */
  Optional<Duration> left() {
    return ready().map(r -> Duration.between(now, r)).filter(d -> !d.isNegative());
  }
}
