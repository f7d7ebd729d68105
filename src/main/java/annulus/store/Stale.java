package annulus.store;

/** Somebody else has changed the job since it was read; nothing was written. */
public final class Stale extends RuntimeException {
  private static final long serialVersionUID = 1L;

  @SuppressWarnings("serial") // an immutable record; never serialised
  private final Job current;

  Stale(Job current) {
    super("job " + current.id() + " was changed by " + current.changedBy());
    this.current = current;
  }

  /** The job as it is now. */
  public Job current() {
    return current;
  }
}
