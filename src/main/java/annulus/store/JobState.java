package annulus.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Where a job stands, in the words of the trade, and where it may go from there. */
public enum JobState {
  BOOKED("booked"),
  WAITING_PARTS("waiting parts"),
  IN_WORK("in work"),
  /** Closed and left alone. Entered by closing the joint only. */
  CURING("curing"),
  /** Never stored: curing whose safe time has come. */
  CURED_TO_CHECK("cured, to check"),
  CHECKED("checked"),
  CUSTOMER_TOLD("customer told"),
  COLLECTED("collected"),
  /** Not safe when it was collected, by what was learnt since. */
  CALL_CUSTOMER("collected, call the customer"),
  CUSTOMER_CALLED("collected, customer called");

  private final String words;

  JobState(String words) {
    this.words = words;
  }

  /** As it is said in the shop. */
  public String words() {
    return words;
  }

  /** The states that somebody may put the job in from here; closing the joint is not among them. */
  public List<JobState> next() {
    return switch (this) {
      case BOOKED -> List.of(IN_WORK, WAITING_PARTS);
      case WAITING_PARTS -> List.of(IN_WORK, BOOKED);
      case IN_WORK -> List.of(WAITING_PARTS, BOOKED);
      case CURING -> List.of(IN_WORK);
      case CURED_TO_CHECK -> List.of(CHECKED, IN_WORK);
      case CHECKED -> List.of(CUSTOMER_TOLD, COLLECTED, IN_WORK);
      case CUSTOMER_TOLD -> List.of(COLLECTED, IN_WORK);
      case COLLECTED -> List.of();
      case CALL_CUSTOMER -> List.of(CUSTOMER_CALLED, IN_WORK);
      case CUSTOMER_CALLED -> List.of(IN_WORK);
    };
  }

  /** Whether the joint is closed in this state. */
  public boolean closed() {
    return compareTo(CURING) >= 0;
  }

  /** Whether the customer has it. */
  public boolean collected() {
    return compareTo(COLLECTED) >= 0;
  }

  /** Whether nothing is left to do, as far as is known. */
  public boolean over() {
    return this == COLLECTED || this == CUSTOMER_CALLED;
  }

  /** Whether the joint may be closed now. */
  public boolean mayClose() {
    return this == BOOKED || this == IN_WORK;
  }

  /**
   * The state as it is at a time.
   *
   * @param ready earliest safe hand-back; empty when none can be given
   */
  public JobState at(Instant now, Optional<Instant> ready) {
    boolean cured = this == CURING && ready.isPresent() && !now.isBefore(ready.get());
    return cured ? CURED_TO_CHECK : this;
  }
}
