package annulus.store;

/** A change that the rules of the shop do not allow; nothing was written. */
public final class Refused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  /**
   * @param message what is wrong and what can be done, for the user
   */
  public Refused(String message) {
    super(message);
  }
}
