package annulus.web;

import annulus.catalog.Policy;
import annulus.measure.MeasuredDiameter;
import annulus.store.BoreFit;
import annulus.store.Job;
import annulus.store.JobChange;
import annulus.store.JobState;
import annulus.store.JobStore;
import annulus.store.Refused;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** What has to hold before a joint is taken as closed, and what is kept of it. */
final class Closing {
  private final JobStore jobs;
  private final Judge judge;
  private final Policy policy;
  private final ClockWords times;

  Closing(JobStore jobs, Judge judge, Policy policy, ClockWords times) {
    this.jobs = jobs;
    this.judge = judge;
    this.policy = policy;
    this.times = times;
  }

  /**
   * A closing time typed wrong by days would make a wet joint safe at once: one before the day on
   * which the job was entered has to agree with the start of the order, and a joint that was taken
   * apart, or not begun yet, can't have been closed before that.
   */
  void requireBelievable(Job job, Instant closed) {
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
    List<JobChange> changes = JobChange.inForce(jobs.changes(job.id()));
    requireBegun(job, changes, closed);
    takenApart(changes)
        .filter(at -> closed.isBefore(at.truncatedTo(ChronoUnit.SECONDS)))
        .ifPresent(
            at -> {
              throw new Refused(
                  "Closed "
                      + times.past(closed)
                      + "? It was taken apart "
                      + times.past(at)
                      + ". It can only have been closed again after that.");
            });
  }

  /**
   * A joint that waited for its parts was open until they came. One that was booked was open on the
   * day before it was put in work; on that day, and on the day the job was entered, the board may
   * have been told late.
   */
  private void requireBegun(Job job, List<JobChange> changes, Instant closed) {
    LocalDate entered = times.dayOf(job.createdAt());
    Optional<JobState> was = Optional.of(JobState.BOOKED);
    for (JobChange change : changes) {
      if (change.kind() == JobChange.Kind.STATE) {
        LocalDate day = times.dayOf(change.at());
        boolean waited =
            was.equals(Optional.of(JobState.WAITING_PARTS))
                && closed.isBefore(change.at().truncatedTo(ChronoUnit.SECONDS));
        boolean booked =
            was.equals(Optional.of(JobState.BOOKED))
                && day.isAfter(entered)
                && times.dayOf(closed).isBefore(day);
        if (waited || booked) {
          throw new Refused(notBegun(closed, was.get(), change));
        }
      }
      was = change.state();
    }
  }

  private String notBegun(Instant closed, JobState was, JobChange change) {
    return "Closed "
        + times.past(closed)
        + "? The job was "
        + was.words()
        + " until "
        + times.past(change.at())
        + ". If it really was closed before, take that change back first.";
  }

  /** When a joint closed before came apart last. */
  private static Optional<Instant> takenApart(List<JobChange> changes) {
    boolean closed = false;
    Instant apart = null;
    for (JobChange change : changes) {
      boolean opens = closed && change.opens();
      apart = opens ? change.at() : apart;
      closed = change.kind() == JobChange.Kind.CLOSED || (closed && !opens);
    }
    return Optional.ofNullable(apart);
  }

  /** A job in a state that has an open joint, and an answer that is yes. */
  static void requireCloseable(JobView view, Answer answer) {
    if (!view.state().mayClose()) {
      throw new Refused("A job that is " + view.state().words() + " has no joint to close.");
    }
    if (!answer.isYes()) {
      throw new Refused(
          "The answer for a joint closed then is no: "
              + answer.decision()
              + ". "
              + String.join(" ", answer.because())
              + " It can't be closed.");
    }
  }

  /** What the closing says of its bore; empty where none is named or it was not measured. */
  Optional<BoreFit> fit(Job job, Answer answer, Instant closed) {
    String bore = job.content().bore();
    Optional<MeasuredDiameter> measured = answer.told().advice().gap().bore();
    if (bore.isBlank() || measured.isEmpty()) {
      return Optional.empty();
    }
    double doubt = measured.get().budget().expandedUm(policy.value("bore-history-coverage"));
    return Optional.of(
        new BoreFit(bore, job.content().reference(), closed, measured.get().meanMm(), doubt));
  }
}
