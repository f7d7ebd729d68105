package annulus.web;

import annulus.advice.Advice;
import annulus.store.JobState;
import java.time.Duration;
import java.time.Instant;

/**
 * Why a promise can't be kept, in words.
 *
 * @param times of the shop
 */
record SlipReason(ClockWords times) {
  /** A few sentences for a job that slips. */
  String of(JobView view) {
    Instant promised = view.promised().orElseThrow();
    String now =
        view.promisable()
            .map(p -> "The first time that can be kept now is " + times.full(p) + ". ")
            .orElse("No time can be promised now. ");
    String door =
        view.comesToAClosedDoor()
            ? "The shop is closed at " + times.full(promised) + view.shut().orElseThrow() + ". "
            : "";
    return (now + door + (view.comesLater() ? reason(view, promised) : "")).strip();
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
    if (view.answer().shopFile().isPresent()) {
      return view.answer().shopFile().get();
    }
    if (view.late()) {
      return "It was to be closed at " + times.full(planned) + " and is still open.";
    }
    if (later.compareTo(Duration.ofMinutes(1)) > 0) {
      return (view.state().closed() ? "It was closed " : "The order now starts ")
          + ClockWords.length(later)
          + " later than the promise was reckoned from.";
    }
    return "The order has changed since the promise was given.";
  }
}
