package annulus.web;

import annulus.catalog.Stage;
import annulus.store.JobState;

/** Marks and words of states and stages: never told by shade alone. */
final class StateWords {
  private StateWords() {}

  /** A mark that is told apart by its shape. */
  static String mark(JobState state) {
    return switch (state) {
      case BOOKED -> "○";
      case WAITING_PARTS -> "…";
      case IN_WORK -> "▷";
      case CURING -> "◔";
      case CURED_TO_CHECK -> "?";
      case CHECKED -> "✓";
      case CUSTOMER_TOLD -> "»";
      case COLLECTED -> "■";
      case CALL_CUSTOMER -> "!";
      case CUSTOMER_CALLED -> "☎";
    };
  }

  /** For a class attribute and the JSON interface. */
  static String id(JobState state) {
    return state.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }

  /** What putting a job from one state in another is called on a button. */
  static String action(JobState from, JobState to) {
    return switch (to) {
      case BOOKED -> "Back to booked";
      case WAITING_PARTS -> "Waiting for parts";
      case IN_WORK -> from.closed() ? "Taken apart: in work again" : "In work";
      case CHECKED -> "Checked and good";
      case CUSTOMER_TOLD -> "Customer told";
      case COLLECTED -> "Collected";
      case CUSTOMER_CALLED -> "Customer called";
      case CURING, CURED_TO_CHECK, CALL_CUSTOMER -> to.words();
    };
  }

  /** What stands on the button: the mark of the state it leads to, and words. */
  static void label(Markup button, JobState from, JobState to) {
    button.element("span", mark(to), "aria-hidden", "true").text(action(from, to));
  }

  static String stage(Stage stage) {
    return switch (stage) {
      case FIXTURE -> "fixture reached: still leave it alone";
      case HANDLING -> "may be handled, no load";
      case FUNCTIONAL -> "functional: shop's own test only";
      case FULL -> "full cure, but not safe yet";
    };
  }

  /** Where a curing joint stands, in one line. */
  static String now(JobView view) {
    return switch (view.state()) {
      case BOOKED, WAITING_PARTS ->
          view.late() ? "not begun; reckoned as if closed now" : "not begun";
      case IN_WORK -> "joint still open";
      case CURING ->
          view.ready().isEmpty()
              ? "take it apart"
              : view.stage().map(StateWords::stage).orElse("setting: do not touch");
      case CURED_TO_CHECK -> "cured: check it, then tell the customer";
      case CHECKED -> view.unsafe() ? "checked, but not safe" : "checked: may be collected";
      case CUSTOMER_TOLD ->
          view.unsafe() ? "customer knows, but not safe" : "checked, customer knows";
      case COLLECTED, CUSTOMER_CALLED -> view.unsafe() ? "gone, but not safe" : "gone";
      case CALL_CUSTOMER -> view.unsafe() ? "gone, but not safe" : "gone before it was safe";
    };
  }
}
